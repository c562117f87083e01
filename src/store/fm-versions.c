/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions.c - the immutable, numbered versions of a blend */
#include "store/fm-names-private.h"
#include "store/fm-tastings-private.h"
#include "store/fm-versions-private.h"

#include <glib/gi18n-lib.h>

#include "core/formula/fm-analysis.h"

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

/* A version is told by a sum of all that it says. */
static char *
checksum_of (const char *reason, const char *json)
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
  g_autofree char *now = json != NULL && reason != NULL ? checksum_of (reason, json) : NULL;

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

typedef struct {
  gint64 blend_id;
  char *reason;
  char *json;
  double fat_pct;
  guint n_lines;
} NewVersion;

static void
new_version_clear (NewVersion *self)
{
  g_free (self->reason);
  g_free (self->json);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (NewVersion, new_version_clear)

static gboolean
refuse (GError **error, const char *message)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED, message);
  return FALSE;
}

static gboolean
new_version_init (
    NewVersion *self, gint64 blend_id, const FmFormula *formula, const char *reason, GError **error)
{
  g_autoptr (FmAnalysis) analysis = NULL;

  self->blend_id = blend_id;
  self->reason = g_strstrip (g_utf8_make_valid (reason != NULL ? reason : "", -1));
  if (*self->reason == '\0')
    return refuse (error, _ ("A version needs a reason for the change. Type one and save again."));
  self->json = fm_formula_to_checked_json (formula, error);
  if (self->json == NULL)
    return FALSE;
  if (!(fm_formula_total_g (formula) > 0.0))
    return refuse (error,
                   _ ("The formula weighs nothing yet. Add an ingredient and its mass, then save "
                      "again."));
  analysis = fm_analysis_new (formula);
  self->fat_pct = analysis->fat_pct;
  self->n_lines = fm_formula_n_lines (formula);
  return TRUE;
}

static gint64
insert_in (FmDb *db, const NewVersion *version, gint64 parent_id, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db,
      "INSERT INTO versions (blend_id, parent_id, number, reason, saved_at, fat_pct, n_lines,"
      " formula_json, sha256) VALUES (?1, nullif(?2, 0),"
      " (SELECT ifnull(max(number), 0) + 1 FROM versions WHERE blend_id = ?1),"
      " ?3, ?4, ?5, ?6, ?7, ?8)",
      error);
  g_autofree char *sha256 = checksum_of (version->reason, version->json);

  if (stmt == NULL)
    return 0;
  fm_stmt_bind_int (stmt, 1, version->blend_id);
  fm_stmt_bind_int (stmt, 2, parent_id);
  fm_stmt_bind_text (stmt, 3, version->reason);
  fm_stmt_bind_int (stmt, 4, g_get_real_time () / G_USEC_PER_SEC);
  fm_stmt_bind_double (stmt, 5, version->fat_pct);
  fm_stmt_bind_int (stmt, 6, version->n_lines);
  fm_stmt_bind_text (stmt, 7, version->json);
  fm_stmt_bind_text (stmt, 8, sha256);
  return fm_stmt_run (db, stmt, error) ? fm_db_last_id (db) : 0;
}

/* The draft goes on from the version just saved. */
static gint64
save_in (FmDb *db, const NewVersion *version, GError **error)
{
  gint64 parent_id, id;

  if (!fm_blends_check_exists (db, version->blend_id, error) ||
      !fm_draft_read_parent (db, version->blend_id, &parent_id, error))
    return 0;
  id = insert_in (db, version, parent_id, error);
  if (id == 0 || !fm_draft_write (db, version->blend_id, id, version->json, FALSE, error))
    return 0;
  return id;
}

gint64
fm_versions_save (
    FmNotebook *self, gint64 blend_id, const FmFormula *formula, const char *reason, GError **error)
{
  g_auto (NewVersion) version = { 0 };
  FmDb *db;
  gint64 id;

  if (!new_version_init (&version, blend_id, formula, reason, error))
    return 0;
  db = fm_notebook_begin (self, error);
  if (db == NULL)
    return 0;
  id = save_in (db, &version, error);
  return fm_notebook_end (self, id != 0, error) ? id : 0;
}

/* The text of the parent is only asked for to know that it belongs to the blend. */
static gboolean
check_parent (FmDb *db, gint64 blend_id, gint64 parent_id, GError **error)
{
  g_autofree char *json = NULL;

  if (!fm_blends_check_exists (db, blend_id, error))
    return FALSE;
  if (parent_id == 0)
    return TRUE;
  json = fm_versions_read_json (db, parent_id, blend_id, error);
  return json != NULL;
}

static gboolean
add_in (
    FmDb *db, const NewVersion *versions, guint n, gint64 parent_id, GArray *ids, GError **error)
{
  for (guint i = 0; i < n; i++) {
    gint64 id = insert_in (db, &versions[i], parent_id, error);

    if (id == 0)
      return FALSE;
    g_array_append_val (ids, id);
  }
  return TRUE;
}

GArray *
fm_versions_add (FmNotebook *self,
                 gint64 blend_id,
                 gint64 parent_id,
                 const GPtrArray *formulas,
                 const char *const *reasons,
                 GError **error)
{
  const guint n = formulas->len;
  g_autofree NewVersion *versions = g_new0 (NewVersion, n);
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  gboolean good = TRUE;

  for (guint i = 0; good && i < n; i++)
    good = new_version_init (&versions[i], blend_id, g_ptr_array_index (formulas, i), reasons[i],
                             error);
  if (good) {
    FmDb *db = fm_notebook_begin (self, error);

    good = db != NULL && fm_notebook_end (self,
                                          check_parent (db, blend_id, parent_id, error) &&
                                              add_in (db, versions, n, parent_id, ids, error),
                                          error);
  }
  for (guint i = 0; i < n; i++)
    new_version_clear (&versions[i]);
  return good ? g_steal_pointer (&ids) : NULL;
}
