/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tastings-load.c - a tasting out of the notebook */
#include "store/fm-tastings-private.h"

#include <math.h>

/* Reads one row of a part into the tasting. */
typedef void (*ReadRow) (FmStmt *stmt, FmTasting *tasting);

static int
read_chosen (FmStmt *stmt, int column)
{
  double sample = fm_stmt_double (stmt, column);

  return isnan (sample) ? -1 : (int)CLAMP (sample, -1.0, G_MAXINT / 2);
}

/* Anything out of range becomes a value that the check of the parts refuses. */
static guint
read_guint (FmStmt *stmt, int column)
{
  gint64 value = fm_stmt_int (stmt, column);

  return value < 0 || value > G_MAXUINT ? G_MAXUINT : (guint)value;
}

static int
read_enum (FmStmt *stmt, int column)
{
  return (int)CLAMP (fm_stmt_int (stmt, column), -1, G_MAXINT);
}

static void
read_fields (FmStmt *stmt, FmTasting *tasting, gboolean *is_order_expected)
{
  tasting->held_at = fm_stmt_int (stmt, 1);
  tasting->title = fm_stmt_text (stmt, 2);
  tasting->tasks = read_guint (stmt, 3);
  tasting->seed = (guint64)fm_stmt_int (stmt, 4);
  tasting->max_per_taster = read_guint (stmt, 5);
  *is_order_expected = fm_stmt_int (stmt, 6) != 0;
  tasting->pair[0] = read_chosen (stmt, 7);
  tasting->pair[1] = read_chosen (stmt, 8);
  tasting->triangle[0] = read_chosen (stmt, 9);
  tasting->triangle[1] = read_chosen (stmt, 10);
  tasting->state = (FmTastingState)read_enum (stmt, 11);
  tasting->notes = fm_stmt_text (stmt, 12);
  tasting->hidden = (guint64)fm_stmt_int (stmt, 13);
  tasting->blinding = (FmTastingBlinding)read_enum (stmt, 14);
}

static gboolean
read_row (FmDb *db, gint64 id, FmTasting *tasting, gboolean *is_order_expected, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (
      db,
      "SELECT id, held_at, title, tasks, seed, max_per_taster, is_order_expected, pair_1, pair_2,"
      " triangle_1, triangle_2, state, notes, coalesce(hidden_part, 0), blinding FROM tastings "
      "WHERE id = ?1",
      error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  FmStep step = fm_stmt_step (db, stmt, error);
  if (step == FM_DONE)
    return fm_tastings_set_not_found (error);
  if (step == FM_ROW)
    read_fields (stmt, tasting, is_order_expected);
  return step == FM_ROW;
}

static void
read_sample (FmStmt *stmt, FmTasting *tasting)
{
  g_autofree char *name = fm_stmt_text (stmt, 2);
  guint place = read_guint (stmt, 3);
  GArray *places = g_steal_pointer (&tasting->expected_place);

  /* Adding a sample forgets the order, which is only read here. */
  fm_tasting_add_sample (tasting, fm_stmt_int (stmt, 0), fm_stmt_int (stmt, 1), name);
  tasting->expected_place = places;
  if (places != NULL)
    g_array_append_val (places, place);
}

static void
read_taster (FmStmt *stmt, FmTasting *tasting)
{
  g_autofree char *name = fm_stmt_text (stmt, 0);

  fm_tasting_add_taster (tasting, name);
  ((FmTaster *)tasting->tasters->pdata[tasting->tasters->len - 1])->sheet =
      (FmSheetState)read_enum (stmt, 1);
}

static void
read_attribute (FmStmt *stmt, FmTasting *tasting)
{
  g_ptr_array_add (tasting->attributes, fm_stmt_text (stmt, 0));
}

static void
read_cup (FmStmt *stmt, FmTasting *tasting)
{
  const FmTastingCup cup = {
    .taster = read_guint (stmt, 0),
    .round = (FmTastingRound)read_enum (stmt, 1),
    .position = read_guint (stmt, 2),
    .sample = read_guint (stmt, 3),
    .code = read_guint (stmt, 4),
  };

  g_array_append_val (tasting->cups, cup);
}

static void
read_mark (FmStmt *stmt, FmTasting *tasting)
{
  const FmTastingMark mark = {
    .taster = read_guint (stmt, 0),
    .code = read_guint (stmt, 1),
    .task = (FmTastingTask)read_enum (stmt, 2),
    .attribute = read_guint (stmt, 3),
    .value = fm_stmt_double (stmt, 4),
  };

  g_array_append_val (tasting->marks, mark);
}

static void
read_remark (FmStmt *stmt, FmTasting *tasting)
{
  FmTastingRemark *remark = g_new0 (FmTastingRemark, 1);

  remark->taster = read_guint (stmt, 0);
  remark->code = read_guint (stmt, 1);
  remark->text = fm_stmt_text (stmt, 2);
  g_ptr_array_add (tasting->remarks, remark);
}

static void
read_event (FmStmt *stmt, FmTasting *tasting)
{
  g_autofree char *text = fm_stmt_text (stmt, 2);

  fm_tasting_record (tasting, fm_stmt_int (stmt, 0), (FmTastingEventKind)read_enum (stmt, 1), text);
}

static const struct {
  const char *sql;
  ReadRow read_row;
} parts[] = {
  { "SELECT s.experiment_id, e.version_id, s.name, s.expected_place FROM tasting_samples s"
    " LEFT JOIN experiments e ON e.id = s.experiment_id"
    " WHERE s.tasting_id = ?1 ORDER BY s.position",
    read_sample },
  { "SELECT name, sheet FROM tasting_tasters WHERE tasting_id = ?1 ORDER BY position",
    read_taster },
  { "SELECT name FROM tasting_attributes WHERE tasting_id = ?1 ORDER BY position", read_attribute },
  { "SELECT taster, round, position, sample, code FROM tasting_cups WHERE tasting_id = ?1"
    " ORDER BY taster, round, position",
    read_cup },
  { "SELECT taster, code, task, attribute, value FROM tasting_marks WHERE tasting_id = ?1"
    " ORDER BY position",
    read_mark },
  { "SELECT taster, code, remark FROM tasting_remarks WHERE tasting_id = ?1 ORDER BY position",
    read_remark },
  { "SELECT at, kind, remark FROM tasting_events WHERE tasting_id = ?1 ORDER BY position",
    read_event },
};

static gboolean
read_part (FmDb *db, gint64 id, FmTasting *tasting, gsize part, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, parts[part].sql, error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    parts[part].read_row (stmt, tasting);
  return step == FM_DONE;
}

/* A file from a stranger may hold parts that do not fit each other. */
static gboolean
check_read (const FmTasting *tasting, GError **error)
{
  g_autoptr (GError) reason = NULL;

  if (fm_tastings_check_parts (tasting, &reason))
    return TRUE;
  fm_db_set_error_code (SQLITE_CORRUPT, reason->message, error);
  return FALSE;
}

FmTasting *
fm_tastings_read (FmDb *db, gint64 id, GError **error)
{
  g_autoptr (FmTasting) tasting = fm_tasting_new ();
  FmTastingState state;
  gboolean is_order_expected = FALSE;

  if (!read_row (db, id, tasting, &is_order_expected, error))
    return NULL;
  tasting->id = id;
  if (is_order_expected)
    tasting->expected_place = g_array_new (FALSE, TRUE, sizeof (guint));
  /* Parts are only added to a planned one. */
  state = tasting->state;
  tasting->state = FM_TASTING_PLANNED;
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++) {
    if (!read_part (db, id, tasting, i, error))
      return NULL;
  }
  tasting->state = state;
  return check_read (tasting, error) ? g_steal_pointer (&tasting) : NULL;
}

FmTasting *
fm_tastings_load (FmNotebook *self, gint64 id, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);

  return db != NULL ? fm_tastings_read (db, id, error) : NULL;
}
