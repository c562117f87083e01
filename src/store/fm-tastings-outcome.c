/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tastings-outcome.c - keeping what an opened tasting found */
#include "store/fm-tastings-private.h"

#include <glib/gi18n-lib.h>

static gboolean
check_opened (FmDb *db, gint64 id, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, "SELECT state FROM tastings WHERE id = ?1", error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  FmStep step = fm_stmt_step (db, stmt, error);
  if (step == FM_DONE)
    return fm_tastings_set_not_found (error);
  if (step != FM_ROW)
    return FALSE;
  if (fm_stmt_int (stmt, 0) == FM_TASTING_OPENED)
    return TRUE;
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN,
                       _ ("This tasting is not open yet, so it has found nothing. Open it first."));
  return FALSE;
}

static gboolean
write_headline (FmDb *db, gint64 id, const char *headline, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "UPDATE tastings SET headline = ?2 WHERE id = ?1", error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  fm_stmt_bind_text (stmt, 2, headline);
  return fm_stmt_run (db, stmt, error);
}

static void
bind_outcome (FmStmt *stmt, gint64 id, guint sample, const FmTastingOutcome *outcome)
{
  fm_stmt_bind_int (stmt, 1, id);
  fm_stmt_bind_int (stmt, 2, sample);
  fm_stmt_bind_int (stmt, 3, outcome->code);
  fm_stmt_bind_int (stmt, 4, outcome->n_samples);
  fm_stmt_bind_int (stmt, 5, outcome->n_tasters);
  fm_stmt_bind_double (stmt, 6, outcome->rank_sum);
  fm_stmt_bind_int (stmt, 7, outcome->place);
  fm_stmt_bind_int (stmt, 8, outcome->is_separated != FALSE);
  fm_stmt_bind_double (stmt, 9, outcome->liking_mean);
  fm_stmt_bind_double (stmt, 10, outcome->liking_low);
  fm_stmt_bind_double (stmt, 11, outcome->liking_high);
  fm_stmt_bind_text (stmt, 12, outcome->sentence != NULL ? outcome->sentence : "");
}

static gboolean
write_outcome (FmDb *db, gint64 id, guint sample, const FmTastingOutcome *outcome, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "INSERT INTO tasting_outcomes"
                     " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)",
                     error);

  if (stmt == NULL)
    return FALSE;
  bind_outcome (stmt, id, sample, outcome);
  return fm_stmt_run (db, stmt, error);
}

static gboolean
check_n_samples (FmDb *db, gint64 id, guint n_outcomes, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "SELECT count(*) FROM tasting_samples WHERE tasting_id = ?1", error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  if (fm_stmt_step (db, stmt, error) != FM_ROW)
    return FALSE;
  if (fm_stmt_int (stmt, 0) == n_outcomes)
    return TRUE;
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                       _ ("The results do not fit the samples of this tasting. Read it again."));
  return FALSE;
}

static gboolean
save_in (FmDb *db, gint64 id, const char *headline, const GPtrArray *outcomes, GError **error)
{
  if (!check_opened (db, id, error) || !check_n_samples (db, id, outcomes->len, error) ||
      !write_headline (db, id, headline, error) ||
      !fm_db_run_with_id (db, "DELETE FROM tasting_outcomes WHERE tasting_id = ?1", id, error))
    return FALSE;
  for (guint i = 0; i < outcomes->len; i++) {
    if (!write_outcome (db, id, i, outcomes->pdata[i], error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
is_headline (FmReader *db, gint64 id, const char *headline)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "SELECT 1 FROM tastings WHERE id = ?1 AND headline = ?2", NULL);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  fm_stmt_bind_text (stmt, 2, headline);
  return fm_stmt_step (db, stmt, NULL) == FM_ROW;
}

static gboolean
is_kept (FmReader *db, gint64 id, guint sample, const FmTastingOutcome *outcome)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "SELECT 1 FROM tasting_outcomes WHERE tasting_id = ?1 AND sample = ?2"
                     " AND code = ?3 AND n_samples = ?4 AND n_tasters = ?5 AND rank_sum IS ?6"
                     " AND place = ?7 AND is_separated = ?8 AND liking_mean IS ?9"
                     " AND liking_low IS ?10 AND liking_high IS ?11 AND sentence = ?12",
                     NULL);

  if (stmt == NULL)
    return FALSE;
  bind_outcome (stmt, id, sample, outcome);
  return fm_stmt_step (db, stmt, NULL) == FM_ROW;
}

gboolean
fm_tastings_has_outcome (FmNotebook *self,
                         gint64 id,
                         const char *headline,
                         const GPtrArray *outcomes)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, NULL);
  gboolean same = db != NULL && is_headline (db, id, headline);

  for (guint i = 0; same && i < outcomes->len; i++)
    same = is_kept (db, id, i, g_ptr_array_index (outcomes, i));
  return same;
}

gboolean
fm_tastings_save_outcome (
    FmNotebook *self, gint64 id, const char *headline, const GPtrArray *outcomes, GError **error)
{
  FmDb *db = fm_notebook_begin (self, error);

  return db != NULL && fm_notebook_end (self, save_in (db, id, headline, outcomes, error), error);
}
