/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-maps.c - one map into the notebook, whole or not at all */
#include "store/fm-maps-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

gboolean
fm_maps_set_not_found (GError **error)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                       _ ("This map is no longer in the notebook. Choose another one."));
  return FALSE;
}

/* The blend of a version, 0 when there is no such version. */
static gboolean
find_blend (FmDb *db, gint64 version_id, gint64 *blend_id, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "SELECT blend_id FROM versions WHERE id = ?1", error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, version_id);
  FmStep step = fm_stmt_step (db, stmt, error);
  *blend_id = step == FM_ROW ? fm_stmt_int (stmt, 0) : 0;
  return step != FM_FAILED;
}

static gboolean
check_version (FmDb *db, const FmMap *map, gint64 version_id, const char *text, GError **error)
{
  gint64 blend_id;

  if (!find_blend (db, version_id, &blend_id, error))
    return FALSE;
  if (blend_id != 0 && blend_id == map->blend_id)
    return TRUE;
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND, text);
  return FALSE;
}

static gboolean
check_versions (FmDb *db, const FmMap *map, GError **error)
{
  if (!check_version (db, map, map->base_version_id,
                      _ ("The version that this map starts from is not in this blend. Save the "
                         "version first, or choose another one."),
                      error))
    return FALSE;
  for (guint i = 0; i < map->points->len; i++) {
    gint64 version_id = g_array_index (map->points, FmMapPoint, i).version_id;
    if (version_id != 0 &&
        !check_version (db, map, version_id,
                        _ ("A blend of this map stands for a version that is not in this blend of "
                           "the notebook. Make the version again."),
                        error))
      return FALSE;
  }
  return TRUE;
}

/* Parameters 2 to 10 of both the insert and the update; 1 is the id (or NULL). */
static void
bind_fields (FmStmt *stmt, const FmMap *map)
{
  fm_stmt_bind_int (stmt, 2, map->blend_id);
  fm_stmt_bind_int (stmt, 3, map->base_version_id);
  fm_stmt_bind_text (stmt, 4, map->name != NULL ? map->name : "");
  fm_stmt_bind_int (stmt, 5, map->created_at);
  fm_stmt_bind_int (stmt, 6, map->design);
  fm_stmt_bind_int (stmt, 7, map->degree);
  fm_stmt_bind_int (stmt, 8, map->order);
  fm_stmt_bind_int (stmt, 9, map->n_trials);
  fm_stmt_bind_int (stmt, 10, (gint64)map->seed);
}

static gboolean
write_row (FmDb *db, const FmMap *map, gint64 *id, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db,
      *id == 0 ? "INSERT INTO maps (id, blend_id, base_version_id, name, created_at, design,"
                 " degree, model_order, n_trials, seed)"
                 " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)"
               : "UPDATE maps SET blend_id = ?2, base_version_id = ?3, name = ?4, created_at = ?5,"
                 " design = ?6, degree = ?7, model_order = ?8, n_trials = ?9, seed = ?10"
                 " WHERE id = ?1",
      error);

  if (stmt == NULL)
    return FALSE;
  if (*id != 0)
    fm_stmt_bind_int (stmt, 1, *id);
  bind_fields (stmt, map);
  if (!fm_stmt_run (db, stmt, error))
    return FALSE;
  if (*id != 0)
    return fm_db_changes (db) > 0 || fm_maps_set_not_found (error);
  *id = fm_db_last_id (db);
  return TRUE;
}

static gboolean
write_members (FmDb *db, gint64 id, guint component, const FmMixComponent *members, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "INSERT INTO map_members VALUES (?1, ?2, ?3, ?4, ?5)", error);

  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < members->members->len; i++) {
    gboolean has_ratio = i < members->ratio->len;

    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, component);
    fm_stmt_bind_int (stmt, 3, i);
    fm_stmt_bind_text (stmt, 4, members->members->pdata[i]);
    fm_stmt_bind_double (stmt, 5,
                         has_ratio ? g_array_index (members->ratio, double, i) : (double)NAN);
    if (!fm_stmt_run (db, stmt, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
write_components (FmDb *db, gint64 id, const FmMap *map, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "INSERT INTO map_components VALUES (?1, ?2, ?3, ?4, ?5)", error);

  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < map->components->len; i++) {
    const FmMixComponent *component = map->components->pdata[i];

    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, i);
    fm_stmt_bind_text (stmt, 3, component->name != NULL ? component->name : "");
    fm_stmt_bind_double (stmt, 4, map->lower[i]);
    fm_stmt_bind_double (stmt, 5, map->upper[i]);
    if (!fm_stmt_run (db, stmt, error) || !write_members (db, id, i, component, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
write_points (FmDb *db, gint64 id, const FmMap *map, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db,
                                           "INSERT INTO map_points VALUES (?1, ?2, ?3,"
                                           " nullif(?4, 0), ?5, ?6, ?7, ?8, ?9, ?10)",
                                           error);

  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < map->points->len; i++) {
    const FmMapPoint *point = &g_array_index (map->points, FmMapPoint, i);

    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, i);
    fm_stmt_bind_int (stmt, 3, point->kind);
    fm_stmt_bind_int (stmt, 4, point->version_id);
    for (guint j = 0; j < FM_MIX_BLEND_MAX_COMPONENTS; j++)
      fm_stmt_bind_double (stmt, 5 + (int)j, j < map->components->len ? point->x[j] : (double)NAN);
    if (!fm_stmt_run (db, stmt, error))
      return FALSE;
  }
  return TRUE;
}

/* Members go with their component by the foreign key. */
static gboolean
save_in (FmDb *db, const FmMap *map, gint64 *id, GError **error)
{
  return check_versions (db, map, error) && write_row (db, map, id, error) &&
         fm_db_run_with_id (db, "DELETE FROM map_components WHERE map_id = ?1", *id, error) &&
         fm_db_run_with_id (db, "DELETE FROM map_points WHERE map_id = ?1", *id, error) &&
         write_components (db, *id, map, error) && write_points (db, *id, map, error);
}

gboolean
fm_maps_save (FmNotebook *self, FmMap *map, GError **error)
{
  gint64 id = map->id;

  if (!fm_maps_check_parts (map, error))
    return FALSE;
  FmDb *db = fm_notebook_begin (self, error);
  if (db == NULL || !fm_notebook_end (self, save_in (db, map, &id, error), error))
    return FALSE;
  map->id = id;
  return TRUE;
}

static gboolean
remove_in (FmDb *db, gint64 id, GError **error)
{
  if (!fm_db_run_with_id (db, "DELETE FROM maps WHERE id = ?1", id, error))
    return FALSE;
  return fm_db_changes (db) > 0 || fm_maps_set_not_found (error);
}

gboolean
fm_maps_remove (FmNotebook *self, gint64 id, GError **error)
{
  FmDb *db = fm_notebook_begin (self, error);

  return db != NULL && fm_notebook_end (self, remove_in (db, id, error), error);
}
