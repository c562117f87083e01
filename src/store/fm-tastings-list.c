/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tastings-list.c - tastings at a glance, and what opened ones found */
#include "store/fm-tastings-private.h"

#define INFO_SQL                                                                                   \
  "SELECT t.id, coalesce(t.title, ''), t.held_at, t.state, t.tasks,"                               \
  " (SELECT count(*) FROM tasting_samples s WHERE s.tasting_id = t.id),"                           \
  " (SELECT count(*) FROM tasting_tasters p WHERE p.tasting_id = t.id),"                           \
  " (SELECT count(*) FROM tasting_tasters p WHERE p.tasting_id = t.id AND p.sheet = 1),"           \
  " CASE t.state WHEN 2 THEN t.headline END,"                                                      \
  " (SELECT count(s.experiment_id) FROM tasting_samples s WHERE s.tasting_id = t.id)"              \
  " FROM tastings t "

/* Nothing of a sealed tasting gets through here, whatever the file holds. */
#define OUTCOME_SQL                                                                                \
  "SELECT t.id, coalesce(t.title, ''), t.held_at, e.id, e.version_id, o.code, o.n_samples,"        \
  " o.n_tasters, o.rank_sum, o.place, o.is_separated, o.liking_mean, o.liking_low,"                \
  " o.liking_high, o.sentence FROM tasting_outcomes o"                                             \
  " JOIN tastings t ON t.id = o.tasting_id AND t.state = 2"                                        \
  " JOIN tasting_samples s ON s.tasting_id = o.tasting_id AND s.position = o.sample"               \
  " LEFT JOIN experiments e ON e.id = s.experiment_id "

void
fm_tasting_info_free (FmTastingInfo *info)
{
  if (info == NULL)
    return;
  g_free (info->title);
  g_free (info->headline);
  g_free (info);
}

void
fm_tasting_score_free (FmTastingScore *score)
{
  if (score == NULL)
    return;
  g_free (score->taster);
  g_free (score);
}

static guint
read_count (FmStmt *stmt, int column)
{
  return (guint)CLAMP (fm_stmt_int (stmt, column), 0, G_MAXINT);
}

static gpointer
read_info (FmStmt *stmt)
{
  FmTastingInfo *info = g_new0 (FmTastingInfo, 1);

  info->id = fm_stmt_int (stmt, 0);
  info->title = fm_stmt_text (stmt, 1);
  info->held_at = fm_stmt_int (stmt, 2);
  info->state =
      (FmTastingState)CLAMP (fm_stmt_int (stmt, 3), FM_TASTING_PLANNED, FM_TASTING_OPENED);
  info->tasks = read_count (stmt, 4);
  info->n_samples = read_count (stmt, 5);
  info->n_tasters = read_count (stmt, 6);
  info->n_in = read_count (stmt, 7);
  info->headline = fm_stmt_text (stmt, 8);
  info->n_experiments = read_count (stmt, 9);
  return info;
}

static gpointer
read_outcome (FmStmt *stmt)
{
  FmTastingOutcome *outcome = g_new0 (FmTastingOutcome, 1);

  outcome->tasting_id = fm_stmt_int (stmt, 0);
  outcome->tasting_title = fm_stmt_text (stmt, 1);
  outcome->held_at = fm_stmt_int (stmt, 2);
  outcome->experiment_id = fm_stmt_int (stmt, 3);
  outcome->version_id = fm_stmt_int (stmt, 4);
  outcome->code = read_count (stmt, 5);
  outcome->n_samples = read_count (stmt, 6);
  outcome->n_tasters = read_count (stmt, 7);
  outcome->rank_sum = fm_stmt_double (stmt, 8);
  outcome->place = read_count (stmt, 9);
  outcome->is_separated = fm_stmt_int (stmt, 10) != 0;
  outcome->liking_mean = fm_stmt_double (stmt, 11);
  outcome->liking_low = fm_stmt_double (stmt, 12);
  outcome->liking_high = fm_stmt_double (stmt, 13);
  outcome->sentence = fm_stmt_text (stmt, 14);
  return outcome;
}

static gpointer
read_score (FmStmt *stmt)
{
  FmTastingScore *score = g_new0 (FmTastingScore, 1);

  score->tasting_id = fm_stmt_int (stmt, 0);
  score->taster = fm_stmt_text (stmt, 1);
  score->experiment_id = fm_stmt_int (stmt, 2);
  score->version_id = fm_stmt_int (stmt, 3);
  score->liking = fm_stmt_double (stmt, 4);
  return score;
}

/* All rows of @sql, whose parameters (if any) are @id and @other_id. */
static GPtrArray *
read_list_of_two (FmNotebook *self,
                  const char *sql,
                  gint64 id,
                  gint64 other_id,
                  gpointer (*read_row) (FmStmt *stmt),
                  GDestroyNotify free_row,
                  GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func (free_row);
  g_autoptr (FmStmt) stmt = db != NULL ? fm_db_prepare (db, sql, error) : NULL;
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return NULL;
  if (id != 0)
    fm_stmt_bind_int (stmt, 1, id);
  if (other_id != 0)
    fm_stmt_bind_int (stmt, 2, other_id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    g_ptr_array_add (list, read_row (stmt));
  return step == FM_DONE ? g_steal_pointer (&list) : NULL;
}

static GPtrArray *
read_list (FmNotebook *self,
           const char *sql,
           gint64 id,
           gpointer (*read_row) (FmStmt *stmt),
           GDestroyNotify free_row,
           GError **error)
{
  return read_list_of_two (self, sql, id, 0, read_row, free_row, error);
}

GPtrArray *
fm_tastings_list (FmNotebook *self, gint64 blend_id, GError **error)
{
  const char *sql = blend_id == 0 ? INFO_SQL "ORDER BY t.held_at DESC, t.id DESC"
                                  : INFO_SQL
                        "WHERE t.id IN (SELECT s.tasting_id FROM tasting_samples s"
                        " JOIN experiments e ON e.id = s.experiment_id"
                        " WHERE e.blend_id = ?1) ORDER BY t.held_at DESC, t.id DESC";

  return read_list (self, sql, blend_id, read_info, (GDestroyNotify)fm_tasting_info_free, error);
}

GPtrArray *
fm_tastings_list_near (FmNotebook *self, gint64 blend_id, gint64 only_id, GError **error)
{
  static const char sql[] =
      INFO_SQL "WHERE (?1 IS NULL OR t.id IN (SELECT s.tasting_id FROM tasting_samples s"
               " JOIN experiments e ON e.id = s.experiment_id WHERE e.blend_id = ?1)"
               " OR NOT EXISTS (SELECT 1 FROM tasting_samples s WHERE s.tasting_id = t.id"
               " AND s.experiment_id IS NOT NULL)) AND (?2 IS NULL OR t.id = ?2)"
               " ORDER BY t.held_at DESC, t.id DESC";

  return read_list_of_two (self, sql, blend_id, only_id, read_info,
                           (GDestroyNotify)fm_tasting_info_free, error);
}

GPtrArray *
fm_tastings_outcomes (
    FmNotebook *self, gint64 blend_id, gint64 version_id, gint64 experiment_id, GError **error)
{
  const char *sql = OUTCOME_SQL "ORDER BY t.held_at DESC, t.id DESC, o.sample";
  gint64 id = 0;

  if (experiment_id != 0) {
    sql = OUTCOME_SQL "WHERE s.experiment_id = ?1 ORDER BY t.held_at DESC, t.id DESC, o.sample";
    id = experiment_id;
  } else if (version_id != 0) {
    sql = OUTCOME_SQL "WHERE e.version_id = ?1 ORDER BY t.held_at DESC, t.id DESC, o.sample";
    id = version_id;
  } else if (blend_id != 0) {
    sql = OUTCOME_SQL "WHERE e.blend_id = ?1 ORDER BY t.held_at DESC, t.id DESC, o.sample";
    id = blend_id;
  }
  return read_list (self, sql, id, read_outcome, (GDestroyNotify)fm_tasting_outcome_free, error);
}

/* Of the sheets that count: in, or of a taster who left. */
GPtrArray *
fm_tastings_scores (FmNotebook *self, gint64 blend_id, GError **error)
{
  static const char sql[] =
      "SELECT t.id, p.name, e.id, e.version_id, m.value FROM experiments e"
      " JOIN tasting_samples s ON s.experiment_id = e.id"
      " JOIN tastings t ON t.id = s.tasting_id AND t.state = 2"
      " JOIN tasting_cups c ON c.tasting_id = t.id AND c.sample = s.position AND c.round = 0"
      " JOIN tasting_tasters p ON p.tasting_id = t.id AND p.position = c.taster"
      " AND p.sheet IN (1, 3)"
      " JOIN tasting_marks m ON m.tasting_id = t.id AND m.taster = c.taster AND m.round = 0"
      " AND m.code = c.code AND m.task = 2 AND m.attribute = 0"
      " WHERE e.blend_id = ?1 ORDER BY t.held_at, t.id, c.taster, c.position";

  return read_list (self, sql, blend_id, read_score, (GDestroyNotify)fm_tasting_score_free, error);
}

static gpointer
read_name (FmStmt *stmt)
{
  return fm_stmt_text (stmt, 0);
}

GPtrArray *
fm_tastings_tasters (FmNotebook *self, GError **error)
{
  static const char sql[] =
      "SELECT p.name FROM tasting_tasters p JOIN tastings t ON t.id = p.tasting_id"
      " WHERE p.name <> '' GROUP BY p.name"
      " ORDER BY max(t.held_at) DESC, max(t.id) DESC, min(p.position)";

  return read_list (self, sql, 0, read_name, g_free, error);
}
