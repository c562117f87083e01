/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-draft.c - the one draft of each blend, saved as it is typed */
#include "store/fm-names-private.h"
#include "store/fm-versions-private.h"

#include <glib/gi18n-lib.h>

char *
fm_formula_to_checked_json (const FmFormula *formula, GError **error)
{
  g_autofree char *json = fm_formula_to_json (formula);
  g_autoptr (GError) local_error = NULL;
  g_autoptr (FmFormula) again = fm_formula_from_json (json, &local_error);

  if (again != NULL)
    return g_steal_pointer (&json);
  if (!g_error_matches (local_error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED)) {
    g_propagate_error (error, g_steal_pointer (&local_error));
    return NULL;
  }
  g_set_error_literal (
      error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
      _ ("The formula was not saved: a name or a number in it is missing, negative "
         "or too large. Correct it; what was saved before is kept."));
  return NULL;
}

gboolean
fm_draft_read_parent (FmDb *db, gint64 blend_id, gint64 *parent_version_id, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "SELECT parent_id FROM drafts WHERE blend_id = ?1", error);
  FmStep step;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, blend_id);
  step = fm_stmt_step (db, stmt, error);
  *parent_version_id = step == FM_ROW ? fm_stmt_int (stmt, 0) : 0;
  return step != FM_FAILED;
}

gboolean
fm_draft_write (FmDb *db,
                gint64 blend_id,
                gint64 parent_version_id,
                const char *json,
                gboolean changed,
                GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "INSERT INTO drafts (blend_id, parent_id, changed, saved_at, formula_json)"
                     " VALUES (?1, nullif(?2, 0), ?3, ?4, ?5)"
                     " ON CONFLICT (blend_id) DO UPDATE SET parent_id = excluded.parent_id,"
                     " changed = excluded.changed, saved_at = excluded.saved_at,"
                     " formula_json = excluded.formula_json",
                     error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, blend_id);
  fm_stmt_bind_int (stmt, 2, parent_version_id);
  fm_stmt_bind_int (stmt, 3, changed);
  fm_stmt_bind_int (stmt, 4, g_get_real_time () / G_USEC_PER_SEC);
  fm_stmt_bind_text (stmt, 5, json);
  return fm_stmt_run (db, stmt, error);
}

/* Equal formulas have equal texts, so no parsing is needed to see a change. */
static char *
read_starting_point (FmDb *db, gint64 parent_version_id, GError **error)
{
  g_autoptr (FmFormula) empty = NULL;

  if (parent_version_id != 0)
    return fm_versions_read_json (db, parent_version_id, 0, error);
  empty = fm_formula_new ();
  return fm_formula_to_json (empty);
}

static gboolean
save_in (FmDb *db, gint64 blend_id, const char *json, GError **error)
{
  gint64 parent_version_id;
  g_autofree char *start = NULL;

  if (!fm_blends_check_exists (db, blend_id, error) ||
      !fm_draft_read_parent (db, blend_id, &parent_version_id, error))
    return FALSE;
  start = read_starting_point (db, parent_version_id, error);
  return start != NULL && fm_draft_write (db, blend_id, parent_version_id, json,
                                          g_strcmp0 (json, start) != 0, error);
}

gboolean
fm_draft_save (FmNotebook *self, gint64 blend_id, const FmFormula *formula, GError **error)
{
  g_autofree char *json = fm_formula_to_checked_json (formula, error);
  FmDb *db = json != NULL ? fm_notebook_begin (self, error) : NULL;

  return db != NULL && fm_notebook_end (self,
                                        save_in (db, blend_id, json, error) &&
                                            fm_names_remember (db, formula, error),
                                        error);
}

static gboolean
branch_in (FmDb *db, gint64 blend_id, gint64 version_id, GError **error)
{
  g_autofree char *json = NULL;

  if (!fm_blends_check_exists (db, blend_id, error))
    return FALSE;
  json = fm_versions_read_json (db, version_id, blend_id, error);
  return json != NULL && fm_draft_write (db, blend_id, version_id, json, FALSE, error);
}

gboolean
fm_draft_branch (FmNotebook *self, gint64 blend_id, gint64 version_id, GError **error)
{
  FmDb *db = fm_notebook_begin (self, error);

  return db != NULL && fm_notebook_end (self, branch_in (db, blend_id, version_id, error), error);
}

FmFormula *
fm_draft_load (FmNotebook *self, gint64 blend_id, gint64 *parent_version_id, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (FmStmt) stmt = NULL;
  g_autofree char *json = NULL;
  gint64 parent = 0;
  FmStep step;

  if (db == NULL || !fm_blends_check_exists (db, blend_id, error))
    return NULL;
  stmt =
      fm_db_prepare (db, "SELECT parent_id, formula_json FROM drafts WHERE blend_id = ?1", error);
  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_int (stmt, 1, blend_id);
  step = fm_stmt_step (db, stmt, error);
  if (step == FM_FAILED)
    return NULL;
  if (step == FM_ROW) {
    parent = fm_stmt_int (stmt, 0);
    json = fm_stmt_text (stmt, 1);
  }
  if (parent_version_id != NULL)
    *parent_version_id = parent;
  return step == FM_ROW ? fm_names_read_formula (db, json, error) : fm_formula_new ();
}
