/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions.c - saving the immutable, numbered versions of a blend */
#include "store/fm-names-private.h"
#include "store/fm-versions-private.h"

#include <glib/gi18n-lib.h>

#include "core/formula/fm-analysis.h"

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
  g_autofree char *sha256 = fm_versions_checksum (version->reason, version->json);

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
