/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-read.c - versions out of the notebook */
#include "store/fm-names-private.h"
#include "store/fm-tastings-private.h"
#include "store/fm-versions-private.h"

#include <glib/gi18n-lib.h>

#define INFO_SQL                                                                                   \
  "SELECT v.id, v.blend_id, v.parent_id, v.number, v.reason, v.saved_at, v.fat_pct, v.n_lines,"    \
  " count(e.id), avg(nullif(e.rating, 0)),"                                                        \
  " (SELECT count(DISTINCT t.id) FROM experiments x"                                               \
  " JOIN tasting_samples s ON s.experiment_id = x.id"                                              \
  " JOIN tasting_outcomes o ON o.tasting_id = s.tasting_id AND o.sample = s.position"              \
  " JOIN tastings t ON t.id = s.tasting_id AND t.state = 2 WHERE x.version_id = v.id)"             \
  " FROM versions v LEFT JOIN experiments e ON e.version_id = v.id "

void
fm_version_info_free (FmVersionInfo *info)
{
  if (info == NULL)
    return;
  g_free (info->reason);
  g_free (info);
}

static void
set_no_version (GError **error)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                       _ ("This version is not in the notebook. Choose another one."));
}

char *
fm_versions_checksum (const char *reason, const char *json)
{
  g_autofree char *all = g_strjoin ("\n", reason, json, NULL);

  return g_compute_checksum_for_string (G_CHECKSUM_SHA256, all, -1);
}

/* The text of the row, when it is what was saved. */
static char *
take_json (FmStmt *stmt, GError **error)
{
  g_autofree char *json = fm_stmt_text (stmt, 0);
  g_autofree char *reason = fm_stmt_text (stmt, 1);
  g_autofree char *saved = fm_stmt_text (stmt, 2);
  g_autofree char *now =
      json != NULL && reason != NULL ? fm_versions_checksum (reason, json) : NULL;

  if (saved == NULL || g_strcmp0 (saved, now) == 0)
    return g_steal_pointer (&json);
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
               _ ("Version %d is damaged: it does not hold what was saved. The other versions are "
                  "not touched by that; look for this one in a backup or a saved copy."),
               (int)fm_stmt_int (stmt, 3));
  return NULL;
}

char *
fm_versions_read_json (FmDb *db, gint64 version_id, gint64 blend_id, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db,
                                           "SELECT formula_json, reason, sha256, number"
                                           " FROM versions WHERE id = ?1 AND ?2 IN (0, blend_id)",
                                           error);
  FmStep step;

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_int (stmt, 1, version_id);
  fm_stmt_bind_int (stmt, 2, blend_id);
  step = fm_stmt_step (db, stmt, error);
  if (step == FM_DONE)
    set_no_version (error);
  return step == FM_ROW ? take_json (stmt, error) : NULL;
}

static FmVersionInfo *
info_from_row (FmStmt *stmt)
{
  FmVersionInfo *info = g_new0 (FmVersionInfo, 1);

  info->id = fm_stmt_int (stmt, 0);
  info->blend_id = fm_stmt_int (stmt, 1);
  info->parent_id = fm_stmt_int (stmt, 2);
  info->number = (int)fm_stmt_int (stmt, 3);
  info->reason = fm_stmt_text (stmt, 4);
  info->saved_at = fm_stmt_int (stmt, 5);
  info->fat_pct = fm_stmt_double (stmt, 6);
  info->n_lines = (guint)fm_stmt_int (stmt, 7);
  info->n_experiments = (guint)fm_stmt_int (stmt, 8);
  info->mean_rating = fm_stmt_double (stmt, 9);
  info->n_tastings = (guint)fm_stmt_int (stmt, 10);
  return info;
}

/* All rows of @sql, whose parameter is @id. */
static GPtrArray *
read_infos (FmDb *db, const char *sql, gint64 id, GError **error)
{
  g_autoptr (GPtrArray) versions =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_version_info_free);
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, sql, error);
  FmStep step;

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_int (stmt, 1, id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    g_ptr_array_add (versions, info_from_row (stmt));
  return step == FM_DONE ? g_steal_pointer (&versions) : NULL;
}

GPtrArray *
fm_versions_list (FmNotebook *self, gint64 blend_id, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);

  return db != NULL ? read_infos (db,
                                  INFO_SQL "WHERE v.blend_id = ?1 GROUP BY v.id"
                                           " ORDER BY v.number",
                                  blend_id, error)
                    : NULL;
}

GPtrArray *
fm_versions_of_experiment (FmNotebook *self, gint64 experiment_id, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  GPtrArray *versions =
      db != NULL ? read_infos (db,
                               INFO_SQL "WHERE v.id = (SELECT x.version_id FROM experiments x"
                                        " WHERE x.id = ?1) GROUP BY v.id",
                               experiment_id, error)
                 : NULL;

  if (versions == NULL || versions->len > 0)
    return versions;
  g_ptr_array_unref (versions);
  set_no_version (error);
  return NULL;
}

static gboolean
check_tasting (FmDb *db, gint64 tasting_id, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, "SELECT 1 FROM tastings WHERE id = ?1", error);
  FmStep step;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, tasting_id);
  step = fm_stmt_step (db, stmt, error);
  return step == FM_ROW || (step == FM_DONE && fm_tastings_set_not_found (error));
}

GPtrArray *
fm_versions_of_tasting (FmNotebook *self, gint64 tasting_id, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);

  if (db == NULL || !check_tasting (db, tasting_id, error))
    return NULL;
  return read_infos (db,
                     INFO_SQL "WHERE v.id IN (SELECT x.version_id FROM tasting_samples s"
                              " JOIN experiments x ON x.id = s.experiment_id"
                              " WHERE s.tasting_id = ?1) GROUP BY v.id",
                     tasting_id, error);
}

FmVersionInfo *
fm_versions_info (FmNotebook *self, gint64 version_id, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (FmStmt) stmt = NULL;
  FmStep step;

  if (db == NULL)
    return NULL;
  stmt = fm_db_prepare (db, INFO_SQL "WHERE v.id = ?1 GROUP BY v.id", error);
  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_int (stmt, 1, version_id);
  step = fm_stmt_step (db, stmt, error);
  if (step == FM_DONE)
    set_no_version (error);
  return step == FM_ROW ? info_from_row (stmt) : NULL;
}

FmFormula *
fm_versions_load (FmNotebook *self, gint64 version_id, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autofree char *json = db != NULL ? fm_versions_read_json (db, version_id, 0, error) : NULL;

  return json != NULL ? fm_names_read_formula (db, json, error) : NULL;
}
