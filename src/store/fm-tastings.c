/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tastings.c - one tasting into the notebook, whole or not at all */
#include "store/fm-tastings-private.h"

#include <glib/gi18n-lib.h>

static gboolean
set_frozen (GError **error, const char *text)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN, text);
  return FALSE;
}

/* An index of a sample, -1 in memory and NULL in the file for none. */
static void
bind_chosen (FmStmt *stmt, int index, int sample)
{
  if (sample >= 0)
    fm_stmt_bind_int (stmt, index, sample);
  else
    fm_stmt_bind_text (stmt, index, NULL);
}

/* Parameters 2 to 15 of both the insert and the update; 1 is the id (or NULL). */
static void
bind_fields (FmStmt *stmt, const FmTasting *tasting)
{
  fm_stmt_bind_int (stmt, 2, tasting->held_at);
  fm_stmt_bind_text (stmt, 3, tasting->title);
  fm_stmt_bind_int (stmt, 4, tasting->tasks);
  fm_stmt_bind_int (stmt, 5, (gint64)tasting->seed);
  fm_stmt_bind_int (stmt, 6, tasting->max_per_taster);
  fm_stmt_bind_int (stmt, 7, tasting->expected_place != NULL);
  bind_chosen (stmt, 8, tasting->pair[0]);
  bind_chosen (stmt, 9, tasting->pair[1]);
  bind_chosen (stmt, 10, tasting->triangle[0]);
  bind_chosen (stmt, 11, tasting->triangle[1]);
  fm_stmt_bind_int (stmt, 12, tasting->state);
  fm_stmt_bind_text (stmt, 13, tasting->notes);
  fm_stmt_bind_int (stmt, 14, (gint64)tasting->hidden);
  fm_stmt_bind_int (stmt, 15, tasting->blinding);
}

/* Planned at first: the schema takes no parts of a sealed tasting. */
static gboolean
insert_row (FmDb *db, const FmTasting *tasting, gint64 *id, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db,
      "INSERT INTO tastings (held_at, title, tasks, seed, max_per_taster, is_order_expected,"
      " pair_1, pair_2, triangle_1, triangle_2, state, notes, hidden_part, blinding)"
      " VALUES (?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, 0 * ?12, ?13, nullif(?14, 0), ?15)",
      error);

  if (stmt == NULL)
    return FALSE;
  bind_fields (stmt, tasting);
  if (!fm_stmt_run (db, stmt, error))
    return FALSE;
  *id = fm_db_last_id (db);
  return TRUE;
}

static gboolean
update_row (FmDb *db, gint64 id, const FmTasting *tasting, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db,
      "UPDATE tastings SET held_at = ?2, title = ?3, tasks = ?4, seed = ?5, max_per_taster = ?6,"
      " is_order_expected = ?7, pair_1 = ?8, pair_2 = ?9, triangle_1 = ?10, triangle_2 = ?11,"
      " state = ?12, notes = ?13, hidden_part = nullif(?14, 0), blinding = ?15 WHERE id = ?1",
      error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  bind_fields (stmt, tasting);
  return fm_stmt_run (db, stmt, error);
}

/* The version of each sample's experiment, 0 from outside; a sentence when one is gone. */
static gboolean
find_versions (FmDb *db, const FmTasting *tasting, GArray *versions, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "SELECT version_id FROM experiments WHERE id = ?1", error);

  for (guint i = 0; stmt != NULL && i < tasting->samples->len; i++) {
    const FmTastingSample *sample = tasting->samples->pdata[i];
    gint64 version_id = 0;

    if (sample->experiment_id != 0) {
      fm_stmt_bind_int (stmt, 1, sample->experiment_id);
      FmStep step = fm_stmt_step (db, stmt, error);
      if (step == FM_DONE)
        g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                     _ ("The experiment of sample %u is not in the notebook any more. Take the "
                        "sample out, or choose another experiment."),
                     i + 1);
      if (step != FM_ROW)
        return FALSE;
      version_id = fm_stmt_int (stmt, 0);
      fm_stmt_release (stmt);
    }
    g_array_append_val (versions, version_id);
  }
  return stmt != NULL;
}

static gboolean
is_same_event (const FmTastingEvent *a, const FmTastingEvent *b)
{
  return a->at == b->at && a->kind == b->kind && g_strcmp0 (a->text, b->text) == 0;
}

/* What was recorded stays; a copy that knows less of it is an old one. */
static gboolean
check_record (const FmTasting *stored, const FmTasting *tasting, GError **error)
{
  gboolean is_known = stored->events->len <= tasting->events->len;

  for (guint i = 0; is_known && i < stored->events->len; i++)
    is_known = is_same_event (stored->events->pdata[i], tasting->events->pdata[i]);
  return is_known ||
         set_frozen (error,
                     _ ("This tasting was changed elsewhere meanwhile, and what was recorded "
                        "of it stays. Load it again, then repeat the change."));
}

/* The stored tasting with all that may still change taken from @tasting. */
static FmTasting *
with_same_sheets (const FmTasting *stored, const FmTasting *tasting)
{
  FmTasting *copy = fm_tasting_copy (tasting);

  copy->held_at = stored->held_at;
  copy->state = stored->state;
  g_free (copy->title);
  copy->title = g_strdup (stored->title);
  g_free (copy->notes);
  copy->notes = g_strdup (stored->notes);
  g_array_set_size (copy->marks, 0);
  g_array_append_vals (copy->marks, stored->marks->data, stored->marks->len);
  g_clear_pointer (&copy->remarks, g_ptr_array_unref);
  copy->remarks = g_ptr_array_ref (stored->remarks);
  g_clear_pointer (&copy->events, g_ptr_array_unref);
  copy->events = g_ptr_array_ref (stored->events);
  for (guint i = 0; i < MIN (copy->tasters->len, stored->tasters->len); i++)
    ((FmTaster *)copy->tasters->pdata[i])->sheet = ((FmTaster *)stored->tasters->pdata[i])->sheet;
  for (guint i = 0; i < MIN (copy->samples->len, stored->samples->len); i++)
    ((FmTastingSample *)copy->samples->pdata[i])->version_id =
        ((FmTastingSample *)stored->samples->pdata[i])->version_id;
  return copy;
}

static gboolean
check_unchanged_plan (const FmTasting *stored, const FmTasting *tasting, GError **error)
{
  g_autoptr (FmTasting) same = with_same_sheets (stored, tasting);

  if (tasting->state < stored->state)
    return set_frozen (error,
                       tasting->state == FM_TASTING_PLANNED
                           ? _ ("The samples of this tasting are arranged. It cannot be planned "
                                "anew; plan another tasting.")
                           : _ ("This tasting was opened, so it cannot be sealed again. "
                                "Plan another tasting."));
  if (!fm_tasting_equal (stored, same))
    return set_frozen (error,
                       _ ("The codes of this tasting are given out, so its samples, tasters, "
                          "questions and codes cannot change. Plan another tasting."));
  return check_record (stored, tasting, error);
}

static gboolean
rewrite_plan (FmDb *db, const FmTasting *stored, const FmTasting *tasting, GError **error)
{
  return check_record (stored, tasting, error) && fm_tastings_clear_plan (db, stored->id, error) &&
         fm_tastings_write_plan (db, stored->id, tasting, error);
}

/* @id is that of the tasting, or 0 for a new one, and then set. */
static gboolean
save_in (FmDb *db, const FmTasting *tasting, gint64 *id, GArray *versions, GError **error)
{
  g_autoptr (FmTasting) stored = *id != 0 ? fm_tastings_read (db, *id, error) : NULL;

  if ((*id != 0 && stored == NULL) || !find_versions (db, tasting, versions, error))
    return FALSE;
  if (stored == NULL) {
    if (!insert_row (db, tasting, id, error) || !fm_tastings_write_plan (db, *id, tasting, error))
      return FALSE;
  } else if (stored->state == FM_TASTING_PLANNED) {
    if (!rewrite_plan (db, stored, tasting, error))
      return FALSE;
  } else if (!check_unchanged_plan (stored, tasting, error)) {
    return FALSE;
  }
  return fm_tastings_write_sheets (db, *id, tasting, error) &&
         fm_tastings_write_events (db, *id, tasting->events,
                                   stored != NULL ? stored->events->len : 0, error) &&
         update_row (db, *id, tasting, error);
}

gboolean
fm_tastings_save (FmNotebook *self, FmTasting *tasting, GError **error)
{
  g_autoptr (GArray) versions = g_array_new (FALSE, TRUE, sizeof (gint64));
  gint64 id = tasting->id;

  if (!fm_tastings_check_parts (tasting, error) ||
      (tasting->state != FM_TASTING_PLANNED && !fm_tasting_check (tasting, error)))
    return FALSE;
  FmDb *db = fm_notebook_begin (self, error);
  if (db == NULL || !fm_notebook_end (self, save_in (db, tasting, &id, versions, error), error))
    return FALSE;
  tasting->id = id;
  for (guint i = 0; i < versions->len; i++)
    ((FmTastingSample *)tasting->samples->pdata[i])->version_id =
        g_array_index (versions, gint64, i);
  return TRUE;
}

gboolean
fm_tastings_save_all (FmNotebook *self, const GPtrArray *tastings, GError **error)
{
  gboolean saved = TRUE;

  if (fm_notebook_begin (self, error) == NULL)
    return FALSE;
  for (guint i = 0; saved && i < tastings->len; i++)
    saved = fm_tastings_save (self, tastings->pdata[i], error);
  return fm_notebook_end (self, saved, error);
}

static gboolean
remove_in (FmDb *db, gint64 id, GError **error)
{
  if (!fm_db_run_with_id (db, "DELETE FROM tastings WHERE id = ?1", id, error))
    return FALSE;
  return fm_db_changes (db) > 0 || fm_tastings_set_not_found (error);
}

gboolean
fm_tastings_remove (FmNotebook *self, gint64 id, GError **error)
{
  FmDb *db = fm_notebook_begin (self, error);

  return db != NULL && fm_notebook_end (self, remove_in (db, id, error), error);
}
