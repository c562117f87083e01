/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-log.c - what happened at the pan, one row an event, written as it happens */
#include "store/fm-kitchen-log.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/notebook/fm-db.h"

/* NULL for a kind that there is not: a notebook of a newer program is not opened at all. */
static FmKitchenEvent *
read_event (FmStmt *stmt)
{
  FmKitchenMoment at = {
    .wall_us = fm_stmt_int (stmt, 1),
    .monotonic_us = fm_stmt_int (stmt, 2),
    .boot_us = fm_stmt_int (stmt, 3),
  };
  g_autofree char *boot_id = fm_stmt_text (stmt, 4);
  g_autofree char *words = fm_stmt_text (stmt, 8);
  const gint64 kind = fm_stmt_int (stmt, 5);

  g_strlcpy (at.boot_id, boot_id != NULL ? boot_id : "", sizeof at.boot_id);
  if (kind < 0 || kind >= FM_N_KITCHEN_KINDS)
    return NULL;
  return fm_kitchen_event_new ((guint)fm_stmt_int (stmt, 0), &at, (FmKitchenKind)kind,
                               (int)fm_stmt_int (stmt, 6), fm_stmt_double (stmt, 7), words);
}

static gboolean
set_damaged (GError **error)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
                       _ ("The log of this cook is damaged. It was left as it is; open a backup or "
                          "a saved copy of the notebook."));
  return FALSE;
}

GPtrArray *
fm_kitchen_log_load (FmNotebook *self, gint64 experiment_id, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (GPtrArray) events = fm_kitchen_events_new ();
  g_autoptr (FmStmt) stmt = NULL;
  FmStep step;

  if (db == NULL)
    return NULL;
  stmt = fm_db_prepare (db,
                        "SELECT number, wall_us, monotonic_us, boot_us, boot_id, kind, portion,"
                        " value, words FROM kitchen_events WHERE experiment_id = ?1"
                        " ORDER BY number",
                        error);
  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_int (stmt, 1, experiment_id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    FmKitchenEvent *event = read_event (stmt);

    if (event == NULL || event->number != events->len) {
      fm_kitchen_event_free (event);
      set_damaged (error);
      return NULL;
    }
    g_ptr_array_add (events, event);
  }
  return step == FM_DONE ? g_steal_pointer (&events) : NULL;
}

static gboolean
add_in (FmDb *db, gint64 experiment_id, const FmKitchenEvent *event, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "INSERT INTO kitchen_events (experiment_id, number, wall_us, monotonic_us,"
                     " boot_us, boot_id, kind, portion, value, words)"
                     " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)"
                     " ON CONFLICT (experiment_id, number) DO NOTHING",
                     error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, experiment_id);
  fm_stmt_bind_int (stmt, 2, event->number);
  fm_stmt_bind_int (stmt, 3, event->at.wall_us);
  fm_stmt_bind_int (stmt, 4, event->at.monotonic_us);
  fm_stmt_bind_int (stmt, 5, event->at.boot_us);
  fm_stmt_bind_text (stmt, 6, event->at.boot_id);
  fm_stmt_bind_int (stmt, 7, event->kind);
  fm_stmt_bind_int (stmt, 8, event->portion);
  fm_stmt_bind_double (stmt, 9, event->value);
  fm_stmt_bind_text (stmt, 10, event->words);
  return fm_stmt_run (db, stmt, error);
}

gboolean
fm_kitchen_log_add (FmNotebook *self,
                    gint64 experiment_id,
                    const FmKitchenEvent *event,
                    GError **error)
{
  FmDb *db = fm_notebook_begin (self, error);

  return db != NULL && fm_notebook_end (self, add_in (db, experiment_id, event, error), error);
}
