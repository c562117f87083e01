/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-maps-load.c - maps out of the notebook */
#include <math.h>

#include "store/fm-maps-private.h"

void
fm_map_info_free (FmMapInfo *info)
{
  if (info == NULL)
    return;
  g_free (info->name);
  g_free (info);
}

static FmMapInfo *
read_info (FmStmt *stmt)
{
  FmMapInfo *info = g_new0 (FmMapInfo, 1);

  info->id = fm_stmt_int (stmt, 0);
  info->name = fm_stmt_text (stmt, 1);
  info->created_at = fm_stmt_int (stmt, 2);
  info->n_points = (guint)CLAMP (fm_stmt_int (stmt, 3), 0, G_MAXINT);
  info->n_versions = (guint)CLAMP (fm_stmt_int (stmt, 4), 0, G_MAXINT);
  return info;
}

GPtrArray *
fm_maps_list (FmNotebook *self, gint64 blend_id, gint64 only_id, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (GPtrArray) maps = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_map_info_free);
  g_autoptr (FmStmt) stmt = NULL;
  FmStep step = FM_FAILED;

  if (db == NULL)
    return NULL;
  stmt = fm_db_prepare (db,
                        "SELECT m.id, m.name, m.created_at, count(p.position), count(p.version_id)"
                        " FROM maps m LEFT JOIN map_points p ON p.map_id = m.id"
                        " WHERE m.blend_id = ?1 AND ?2 IN (0, m.id)"
                        " GROUP BY m.id ORDER BY m.created_at DESC, m.id DESC",
                        error);
  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_int (stmt, 1, blend_id);
  fm_stmt_bind_int (stmt, 2, only_id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    g_ptr_array_add (maps, read_info (stmt));
  return step == FM_DONE ? g_steal_pointer (&maps) : NULL;
}

/* Anything out of range becomes a value that the check of the parts refuses. */
static int
read_enum (FmStmt *stmt, int column)
{
  return (int)CLAMP (fm_stmt_int (stmt, column), -1, G_MAXINT);
}

static void
read_fields (FmStmt *stmt, FmMap *map)
{
  map->id = fm_stmt_int (stmt, 0);
  map->blend_id = fm_stmt_int (stmt, 1);
  map->base_version_id = fm_stmt_int (stmt, 2);
  map->name = fm_stmt_text (stmt, 3);
  map->created_at = fm_stmt_int (stmt, 4);
  map->design = (FmMapDesign)read_enum (stmt, 5);
  map->degree = (guint)CLAMP (fm_stmt_int (stmt, 6), 0, G_MAXINT);
  map->order = (FmMixOrder)read_enum (stmt, 7);
  map->n_trials = (guint)CLAMP (fm_stmt_int (stmt, 8), 0, G_MAXINT);
  map->seed = (guint64)fm_stmt_int (stmt, 9);
}

static gboolean
read_row (FmReader *db, gint64 id, FmMap *map, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db,
      "SELECT id, blend_id, base_version_id, name, created_at, design, degree, model_order,"
      " n_trials, seed FROM maps WHERE id = ?1",
      error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  FmStep step = fm_stmt_step (db, stmt, error);
  if (step == FM_DONE)
    return fm_maps_set_not_found (error);
  if (step == FM_ROW)
    read_fields (stmt, map);
  return step == FM_ROW;
}

static gboolean
read_components (FmReader *db, FmMap *map, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db, "SELECT name, lower, upper FROM map_components WHERE map_id = ?1 ORDER BY position",
      error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, map->id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    g_autofree char *name = fm_stmt_text (stmt, 0);
    guint i = map->components->len;

    if (i < FM_MIX_BLEND_MAX_COMPONENTS) {
      map->lower[i] = fm_stmt_double (stmt, 1);
      map->upper[i] = fm_stmt_double (stmt, 2);
    }
    g_ptr_array_add (map->components, fm_mix_component_new (name));
  }
  return step == FM_DONE;
}

/* Proportions are known of all members of a group or of none. */
static void
forget_half_known_ratios (FmMap *map)
{
  for (guint i = 0; i < map->components->len; i++) {
    FmMixComponent *component = map->components->pdata[i];

    for (guint j = 0; j < component->ratio->len; j++)
      if (isnan (g_array_index (component->ratio, double, j)))
        g_array_set_size (component->ratio, 0);
  }
}

static gboolean
read_members (FmReader *db, FmMap *map, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db,
                                           "SELECT component, ingredient, ratio FROM map_members"
                                           " WHERE map_id = ?1 ORDER BY component, position",
                                           error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, map->id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    gint64 index = fm_stmt_int (stmt, 0);
    double ratio = fm_stmt_double (stmt, 2);
    g_autofree char *ingredient = fm_stmt_text (stmt, 1);

    if (index < 0 || index >= map->components->len || ingredient == NULL)
      continue;
    FmMixComponent *component = map->components->pdata[index];
    g_ptr_array_add (component->members, g_steal_pointer (&ingredient));
    g_array_append_val (component->ratio, ratio);
  }
  forget_half_known_ratios (map);
  return step == FM_DONE;
}

static gboolean
read_points (FmReader *db, FmMap *map, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "SELECT kind, version_id, x_1, x_2, x_3, x_4, x_5, x_6 FROM map_points"
                     " WHERE map_id = ?1 ORDER BY position",
                     error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, map->id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    FmMapPoint point = { .kind = (FmMixPointKind)read_enum (stmt, 0),
                         .version_id = fm_stmt_int (stmt, 1) };

    for (guint i = 0; i < MIN (map->components->len, FM_MIX_BLEND_MAX_COMPONENTS); i++)
      point.x[i] = fm_stmt_double (stmt, 2 + (int)i);
    g_array_append_val (map->points, point);
  }
  return step == FM_DONE;
}

/* A file from a stranger may hold parts that do not fit each other. */
static gboolean
check_read (const FmMap *map, GError **error)
{
  g_autoptr (GError) reason = NULL;

  if (fm_maps_check_parts (map, &reason))
    return TRUE;
  fm_db_set_error_code (SQLITE_CORRUPT, reason->message, error);
  return FALSE;
}

FmMap *
fm_maps_load (FmNotebook *self, gint64 id, GError **error)
{
  g_autoptr (FmMap) map = fm_map_new ();
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);

  if (db == NULL || !read_row (db, id, map, error) || !read_components (db, map, error) ||
      !read_members (db, map, error) || !read_points (db, map, error) || !check_read (map, error))
    return NULL;
  return g_steal_pointer (&map);
}
