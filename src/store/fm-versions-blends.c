/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-blends.c - the lines of development in a notebook */
#include "store/fm-versions-private.h"

#include <glib/gi18n-lib.h>

#define INFO_SQL                                                                                   \
  "SELECT b.id, b.name, b.created_at, d.parent_id, d.changed,"                                     \
  " (SELECT count(*) FROM versions v WHERE v.blend_id = b.id),"                                    \
  " (SELECT count(*) FROM experiments e WHERE e.blend_id = b.id)"                                  \
  " FROM blends b LEFT JOIN drafts d ON d.blend_id = b.id "

void
fm_blend_info_free (FmBlendInfo *info)
{
  if (info == NULL)
    return;
  g_free (info->name);
  g_free (info);
}

static void
set_no_blend (GError **error)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                       _ ("This blend is not in the notebook any more. Choose another one."));
}

gboolean
fm_blends_check_exists (FmDb *db, gint64 blend_id, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, "SELECT 1 FROM blends WHERE id = ?1", error);
  FmStep step;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, blend_id);
  step = fm_stmt_step (db, stmt, error);
  if (step == FM_DONE)
    set_no_blend (error);
  return step == FM_ROW;
}

static FmBlendInfo *
info_from_row (FmStmt *stmt)
{
  FmBlendInfo *info = g_new0 (FmBlendInfo, 1);

  info->id = fm_stmt_int (stmt, 0);
  info->name = fm_stmt_text (stmt, 1);
  info->created_at = fm_stmt_int (stmt, 2);
  info->draft_parent_version_id = fm_stmt_int (stmt, 3);
  info->has_draft_changes = fm_stmt_int (stmt, 4) != 0;
  info->n_versions = (guint)fm_stmt_int (stmt, 5);
  info->n_experiments = (guint)fm_stmt_int (stmt, 6);
  return info;
}

GPtrArray *
fm_blends_list (FmNotebook *self, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (GPtrArray) blends =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_blend_info_free);
  g_autoptr (FmStmt) stmt = db != NULL ? fm_db_prepare (db, INFO_SQL "ORDER BY b.id", error) : NULL;
  FmStep step;

  if (stmt == NULL)
    return NULL;
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    g_ptr_array_add (blends, info_from_row (stmt));
  return step == FM_DONE ? g_steal_pointer (&blends) : NULL;
}

FmBlendInfo *
fm_blends_info (FmNotebook *self, gint64 blend_id, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (FmStmt) stmt =
      db != NULL ? fm_db_prepare (db, INFO_SQL "WHERE b.id = ?1", error) : NULL;
  FmStep step;

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_int (stmt, 1, blend_id);
  step = fm_stmt_step (db, stmt, error);
  if (step == FM_DONE)
    set_no_blend (error);
  return step == FM_ROW ? info_from_row (stmt) : NULL;
}

/* NULL + error when @name is blank. */
static char *
clean_name (const char *name, GError **error)
{
  g_autofree char *clean = g_strstrip (g_utf8_make_valid (name != NULL ? name : "", -1));

  if (*clean != '\0')
    return g_steal_pointer (&clean);
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                       _ ("The blend needs a name. Type one and try again."));
  return NULL;
}

static gint64
add_in (FmDb *db, const char *name, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "INSERT INTO blends (name, created_at) VALUES (?1, ?2)", error);

  if (stmt == NULL)
    return 0;
  fm_stmt_bind_text (stmt, 1, name);
  fm_stmt_bind_int (stmt, 2, g_get_real_time () / G_USEC_PER_SEC);
  return fm_stmt_run (db, stmt, error) ? fm_db_last_id (db) : 0;
}

gint64
fm_blends_add (FmNotebook *self, const char *name, GError **error)
{
  g_autofree char *clean = clean_name (name, error);
  FmDb *db = clean != NULL ? fm_notebook_begin (self, error) : NULL;
  gint64 id;

  if (db == NULL)
    return 0;
  id = add_in (db, clean, error);
  return fm_notebook_end (self, id != 0, error) ? id : 0;
}

static gboolean
rename_in (FmDb *db, gint64 blend_id, const char *name, GError **error)
{
  g_autoptr (FmStmt) stmt = NULL;

  if (!fm_blends_check_exists (db, blend_id, error))
    return FALSE;
  stmt = fm_db_prepare (db, "UPDATE blends SET name = ?1 WHERE id = ?2", error);
  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_text (stmt, 1, name);
  fm_stmt_bind_int (stmt, 2, blend_id);
  return fm_stmt_run (db, stmt, error);
}

gboolean
fm_blends_rename (FmNotebook *self, gint64 blend_id, const char *name, GError **error)
{
  g_autofree char *clean = clean_name (name, error);
  FmDb *db = clean != NULL ? fm_notebook_begin (self, error) : NULL;

  return db != NULL && fm_notebook_end (self, rename_in (db, blend_id, clean, error), error);
}

static gboolean
check_no_experiments (FmDb *db, gint64 blend_id, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "SELECT count(*) FROM experiments WHERE blend_id = ?1", error);
  int n_experiments;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, blend_id);
  if (fm_stmt_step (db, stmt, error) != FM_ROW)
    return FALSE;
  n_experiments = (int)fm_stmt_int (stmt, 0);
  if (n_experiments == 0)
    return TRUE;
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN,
               ngettext ("This blend has %d experiment, so it cannot be removed. Remove the "
                         "experiment first.",
                         "This blend has %d experiments, so it cannot be removed. Remove the "
                         "experiments first.",
                         (gulong)n_experiments),
               n_experiments);
  return FALSE;
}

static gboolean
check_no_maps (FmDb *db, gint64 blend_id, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "SELECT count(*) FROM maps WHERE blend_id = ?1", error);
  int n_maps;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, blend_id);
  if (fm_stmt_step (db, stmt, error) != FM_ROW)
    return FALSE;
  n_maps = (int)fm_stmt_int (stmt, 0);
  if (n_maps == 0)
    return TRUE;
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN,
               ngettext ("This blend has %d map, so it cannot be removed. Remove the map first.",
                         "This blend has %d maps, so it cannot be removed. Remove the maps first.",
                         (gulong)n_maps),
               n_maps);
  return FALSE;
}

static gboolean
remove_in (FmDb *db, gint64 blend_id, GError **error)
{
  g_autoptr (FmStmt) stmt = NULL;

  if (!fm_blends_check_exists (db, blend_id, error) ||
      !check_no_experiments (db, blend_id, error) || !check_no_maps (db, blend_id, error))
    return FALSE;
  stmt = fm_db_prepare (db, "DELETE FROM blends WHERE id = ?1", error);
  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, blend_id);
  return fm_stmt_run (db, stmt, error);
}

gboolean
fm_blends_remove (FmNotebook *self, gint64 blend_id, GError **error)
{
  FmDb *db = fm_notebook_begin (self, error);

  return db != NULL && fm_notebook_end (self, remove_in (db, blend_id, error), error);
}
