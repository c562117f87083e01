/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-demo-version.c - a version with a date in the past, for the demo */
#include "store/demo/fm-demo-version.h"

#include "store/fm-versions-private.h"

gboolean
fm_demo_version_insert (FmDb *db, const FmDemoSaved *saved, FmDemoMade *made, GError **error)
{
  g_autofree char *json = fm_formula_to_checked_json (made->formula, error);
  g_autoptr (FmStmt) stmt =
      json == NULL
          ? NULL
          : fm_db_prepare (
                db,
                "INSERT INTO versions (blend_id, parent_id, number, reason, saved_at, fat_pct,"
                " n_lines, formula_json) VALUES (?1, nullif(?2, 0), ?3, ?4, ?5, ?6, ?7, ?8)",
                error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, saved->blend_id);
  fm_stmt_bind_int (stmt, 2, saved->parent_id);
  fm_stmt_bind_int (stmt, 3, saved->number);
  fm_stmt_bind_text (stmt, 4, saved->reason);
  fm_stmt_bind_int (stmt, 5, saved->saved_at);
  fm_stmt_bind_double (stmt, 6, made->fat_pct);
  fm_stmt_bind_int (stmt, 7, fm_formula_n_lines (made->formula));
  fm_stmt_bind_text (stmt, 8, json);
  if (!fm_stmt_run (db, stmt, error))
    return FALSE;
  made->version_id = fm_db_last_id (db);
  return TRUE;
}
