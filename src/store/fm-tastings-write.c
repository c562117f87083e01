/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tastings-write.c - the parts of a tasting, row by row, inside a transaction */
#include "store/fm-tastings-private.h"

static const char *
text_or_blank (const char *text)
{
  return text != NULL ? text : "";
}

static gboolean
write_samples (FmDb *db, gint64 id, const FmTasting *tasting, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db, "INSERT INTO tasting_samples VALUES (?1, ?2, nullif(?3, 0), ?4, ?5)", error);

  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < tasting->samples->len; i++) {
    const FmTastingSample *sample = tasting->samples->pdata[i];
    const GArray *places = tasting->expected_place;

    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, i);
    fm_stmt_bind_int (stmt, 3, sample->experiment_id);
    fm_stmt_bind_text (stmt, 4, text_or_blank (sample->name));
    fm_stmt_bind_int (stmt, 5, places != NULL ? g_array_index (places, guint, i) : 0);
    if (!fm_stmt_run (db, stmt, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
write_tasters (FmDb *db, gint64 id, const GPtrArray *tasters, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "INSERT INTO tasting_tasters VALUES (?1, ?2, ?3, ?4)", error);

  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < tasters->len; i++) {
    const FmTaster *taster = tasters->pdata[i];

    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, i);
    fm_stmt_bind_text (stmt, 3, text_or_blank (taster->name));
    fm_stmt_bind_int (stmt, 4, taster->sheet);
    if (!fm_stmt_run (db, stmt, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
write_attributes (FmDb *db, gint64 id, const GPtrArray *attributes, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "INSERT INTO tasting_attributes VALUES (?1, ?2, ?3)", error);

  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < attributes->len; i++) {
    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, i);
    fm_stmt_bind_text (stmt, 3, text_or_blank (attributes->pdata[i]));
    if (!fm_stmt_run (db, stmt, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
write_cups (FmDb *db, gint64 id, const GArray *cups, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "INSERT INTO tasting_cups VALUES (?1, ?2, ?3, ?4, ?5, ?6)", error);

  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (cups, FmTastingCup, i);

    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, cup->taster);
    fm_stmt_bind_int (stmt, 3, cup->round);
    fm_stmt_bind_int (stmt, 4, cup->position);
    fm_stmt_bind_int (stmt, 5, cup->sample);
    fm_stmt_bind_int (stmt, 6, cup->code);
    if (!fm_stmt_run (db, stmt, error))
      return FALSE;
  }
  return TRUE;
}

gboolean
fm_tastings_write_plan (FmDb *db, gint64 id, const FmTasting *tasting, GError **error)
{
  return write_samples (db, id, tasting, error) &&
         write_tasters (db, id, tasting->tasters, error) &&
         write_attributes (db, id, tasting->attributes, error) &&
         write_cups (db, id, tasting->cups, error);
}

gboolean
fm_tastings_clear_plan (FmDb *db, gint64 id, GError **error)
{
  return fm_db_run_with_id (db, "DELETE FROM tasting_marks WHERE tasting_id = ?1", id, error) &&
         fm_db_run_with_id (db, "DELETE FROM tasting_remarks WHERE tasting_id = ?1", id, error) &&
         fm_db_run_with_id (db, "DELETE FROM tasting_cups WHERE tasting_id = ?1", id, error) &&
         fm_db_run_with_id (db, "DELETE FROM tasting_attributes WHERE tasting_id = ?1", id,
                            error) &&
         fm_db_run_with_id (db, "DELETE FROM tasting_tasters WHERE tasting_id = ?1", id, error) &&
         fm_db_run_with_id (db, "DELETE FROM tasting_samples WHERE tasting_id = ?1", id, error);
}

static gboolean
update_tasters (FmDb *db, gint64 id, const GPtrArray *tasters, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "UPDATE tasting_tasters SET sheet = ?3"
                     " WHERE tasting_id = ?1 AND position = ?2 AND sheet <> ?3",
                     error);

  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < tasters->len; i++) {
    const FmTaster *taster = tasters->pdata[i];

    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, i);
    fm_stmt_bind_int (stmt, 3, taster->sheet);
    if (!fm_stmt_run (db, stmt, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
write_marks (FmDb *db, gint64 id, const GArray *marks, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db, "INSERT INTO tasting_marks VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)", error);

  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < marks->len; i++) {
    const FmTastingMark *mark = &g_array_index (marks, FmTastingMark, i);

    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, i);
    fm_stmt_bind_int (stmt, 3, mark->taster);
    fm_stmt_bind_int (stmt, 4, fm_tastings_round (mark->task));
    fm_stmt_bind_int (stmt, 5, mark->code);
    fm_stmt_bind_int (stmt, 6, mark->task);
    fm_stmt_bind_int (stmt, 7, mark->attribute);
    fm_stmt_bind_double (stmt, 8, mark->value);
    if (!fm_stmt_run (db, stmt, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
write_remarks (FmDb *db, gint64 id, const GPtrArray *remarks, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "INSERT INTO tasting_remarks VALUES (?1, ?2, ?3, ?4, ?5, ?6)", error);

  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < remarks->len; i++) {
    const FmTastingRemark *remark = remarks->pdata[i];

    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, i);
    fm_stmt_bind_int (stmt, 3, remark->taster);
    fm_stmt_bind_int (stmt, 4, FM_TASTING_ROUND_MAIN);
    fm_stmt_bind_int (stmt, 5, remark->code);
    fm_stmt_bind_text (stmt, 6, text_or_blank (remark->text));
    if (!fm_stmt_run (db, stmt, error))
      return FALSE;
  }
  return TRUE;
}

gboolean
fm_tastings_write_sheets (FmDb *db, gint64 id, const FmTasting *tasting, GError **error)
{
  return update_tasters (db, id, tasting->tasters, error) &&
         fm_db_run_with_id (db, "DELETE FROM tasting_marks WHERE tasting_id = ?1", id, error) &&
         fm_db_run_with_id (db, "DELETE FROM tasting_remarks WHERE tasting_id = ?1", id, error) &&
         write_marks (db, id, tasting->marks, error) &&
         write_remarks (db, id, tasting->remarks, error);
}

gboolean
fm_tastings_write_events (
    FmDb *db, gint64 id, const GPtrArray *events, guint n_stored, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "INSERT INTO tasting_events VALUES (?1, ?2, ?3, ?4, ?5)", error);

  if (stmt == NULL)
    return FALSE;
  for (guint i = n_stored; i < events->len; i++) {
    const FmTastingEvent *event = events->pdata[i];

    fm_stmt_bind_int (stmt, 1, id);
    fm_stmt_bind_int (stmt, 2, i);
    fm_stmt_bind_int (stmt, 3, event->at);
    fm_stmt_bind_int (stmt, 4, event->kind);
    fm_stmt_bind_text (stmt, 5, event->text);
    if (!fm_stmt_run (db, stmt, error))
      return FALSE;
  }
  return TRUE;
}
