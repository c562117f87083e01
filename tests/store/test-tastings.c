/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-tastings.c - tastings in and out of the notebook, sealed and opened */
#include "tasting-fixture.h"

#include <string.h>

#include "store/fm-experiments.h"
#include "store/notebook/fm-db.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/tastings/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)

static void
test_round_trip (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) blank = fm_tasting_new ();
  g_autoptr (FmTasting) planned = new_tasting (fixture);
  g_autoptr (FmTasting) sealed = new_sealed (fixture);
  g_autoptr (FmTasting) opened = new_opened (fixture);

  fill_sheet (sealed, 1);
  sealed->notes = g_strdup ("Rain");
  fm_tasting_set_sheet (sealed, 1, 0, FM_SHEET_DROPPED_OUT);
  save_tasting (fixture, blank);
  save_tasting (fixture, planned);
  save_tasting (fixture, sealed);
  save_tasting (fixture, opened);
  fixture_reopen (fixture);
  assert_stored (fixture, blank);
  assert_stored (fixture, planned);
  assert_stored (fixture, sealed);
  assert_stored (fixture, opened);
}

static void
test_whole_life (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_tasting (fixture);

  save_tasting (fixture, tasting);
  fm_tasting_add_taster (tasting, "Dora");
  fm_tasting_remove_sample (tasting, 2);
  g_clear_pointer (&tasting->title, g_free);
  tasting->triangle[0] = 0;
  tasting->triangle[1] = 1;
  save_tasting (fixture, tasting);
  assert_stored (fixture, tasting);
  g_assert_true (fm_tasting_arrange (tasting, 7, 1750000100, NULL));
  save_tasting (fixture, tasting);
  assert_stored (fixture, tasting);
  fill_sheet (tasting, 3);
  save_tasting (fixture, tasting);
  fm_tasting_record (tasting, 1750000150, FM_TASTING_EVENT_KEY_SHEET, NULL);
  fill_sheet (tasting, 0);
  set_mark (tasting, 3, cup_at (tasting, 3, FM_TASTING_ROUND_MAIN, 0)->code, FM_TASTING_LIKING, 0,
            NAN);
  save_tasting (fixture, tasting);
  assert_stored (fixture, tasting);
  g_assert_true (fm_tasting_open (tasting, 1750000200, "Two went home", NULL));
  save_tasting (fixture, tasting);
  fm_tasting_set_sheet (tasting, 1, 1, FM_SHEET_MISSING);
  save_tasting (fixture, tasting);
  fixture_reopen (fixture);
  assert_stored (fixture, tasting);
}

/* The second sample of the second plan stands on an experiment that is not there. */
static void
test_all_or_none (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GPtrArray) plans = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_tasting_free);
  g_autoptr (GPtrArray) rows = NULL;
  g_autoptr (GPtrArray) saved = NULL;
  g_autoptr (GError) error = NULL;

  g_ptr_array_add (plans, new_tasting (fixture));
  g_ptr_array_add (plans, new_tasting (fixture));
  fm_tasting_add_sample (plans->pdata[1], 999, 0, "Gone");
  g_assert_false (fm_tastings_save_all (fixture->notebook, plans, &error));
  g_assert_nonnull (error);
  rows = fm_tastings_list (fixture->notebook, 0, NULL);
  g_assert_cmpuint (rows->len, ==, 0);
  g_ptr_array_remove_index (plans, 1);
  ((FmTasting *)plans->pdata[0])->id = 0;
  g_ptr_array_add (plans, new_tasting (fixture));
  g_assert_true (fm_tastings_save_all (fixture->notebook, plans, NULL));
  saved = fm_tastings_list (fixture->notebook, 0, NULL);
  g_assert_cmpuint (saved->len, ==, 2);
}

/* What the notebook knows of each sample: outside samples and unread cores stay unknown. */
static void
test_cautions (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_tasting (fixture);
  const FmTastingSample *sample = tasting->samples->pdata[1];
  g_autoptr (FmExperiment) made =
      fm_experiments_load (fixture->notebook, sample->experiment_id, NULL);
  g_autoptr (FmFormula) formula = fm_versions_load (fixture->notebook, sample->version_id, NULL);
  g_autoptr (GPtrArray) cautions = NULL;
  g_autoptr (GError) error = NULL;

  g_array_set_size (made->core_readings, 0);
  g_assert_true (fm_experiment_parse_readings (made, "1:00 50\n2:00 69.5\n", FALSE, &error));
  fm_experiment_add_weighing (made, NULL, "crumbs", 0, 20);
  g_assert_true (fm_experiments_save (fixture->notebook, made, &error));
  cautions = fm_tastings_cautions (fixture->notebook, tasting, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (cautions->len, ==, 4);

  const FmTastingCaution *read = cautions->pdata[1];
  const FmTastingCaution *outside = cautions->pdata[3];
  g_assert_cmpstr (read->name, ==, "Secret sample 2");
  g_assert_cmpfloat (read->peak_core_c, ==, 69.5);
  g_assert_cmpuint (read->species, ==, fm_formula_species (formula));
  g_assert_cmpuint (read->n_parts, ==, fm_formula_n_lines (formula) + 1);
  g_assert_cmpuint (read->n_unstated, ==, read->n_parts);
  g_assert_true (outside->is_outside && isnan (outside->peak_core_c));
  g_assert_cmpuint (outside->n_parts, ==, 0);
}

/* A copy of the notebook can be opened without a trace in the first: so it says that it is one. */
static void
test_copy_is_marked (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) sealed = new_sealed (fixture);
  g_autoptr (FmTasting) opened = new_opened (fixture);
  g_autofree char *path = g_strconcat (fixture->path, ".copy", NULL);
  g_autoptr (GError) error = NULL;

  save_tasting (fixture, sealed);
  save_tasting (fixture, opened);
  g_assert_true (fm_notebook_save_copy (fixture->notebook, path, NULL, &error));
  g_assert_no_error (error);
  assert_stored (fixture, sealed);

  g_autoptr (FmNotebook) copy = fm_notebook_open (path, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (FmTasting) copied = fm_tastings_load (copy, sealed->id, NULL);
  g_autoptr (FmTasting) copied_opened = fm_tastings_load (copy, opened->id, NULL);
  g_assert_cmpuint (copied->events->len, ==, sealed->events->len + 1);
  g_assert_cmpint (((FmTastingEvent *)copied->events->pdata[sealed->events->len])->kind, ==,
                   FM_TASTING_EVENT_COPIED);
  g_assert_true (fm_tasting_equal (copied_opened, opened));
  /* the mark is part of the record: it cannot be left out again */
  g_ptr_array_set_size (copied->events, (int)sealed->events->len);
  g_assert_false (fm_tastings_save (copy, copied, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN);
}

/* The version is that of the experiment, whatever the caller thinks. */
static void
test_version_of_experiment (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_tasting (fixture);

  ((FmTastingSample *)tasting->samples->pdata[0])->version_id = 0;
  ((FmTastingSample *)tasting->samples->pdata[1])->version_id = 77;
  save_tasting (fixture, tasting);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpint (((FmTastingSample *)tasting->samples->pdata[i])->version_id, ==,
                     fixture->version_id);
  assert_stored (fixture, tasting);
}

/* Frees @changed; the stored tasting stays @tasting. */
static void
assert_frozen (Fixture *fixture, const FmTasting *tasting, FmTasting *changed, const char *word)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (fm_tastings_save (fixture->notebook, changed, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, word));
  g_assert_null (strstr (error->message, "Secret"));
  assert_stored (fixture, tasting);
  fm_tasting_free (changed);
}

static void
test_sealed_plan_is_frozen (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_sealed (fixture);
  FmTasting *changed;
  guint sample;

  save_tasting (fixture, tasting);
  changed = fm_tasting_copy (tasting);
  changed->seed = 5;
  assert_frozen (fixture, tasting, changed, "cannot change");
  changed = fm_tasting_copy (tasting);
  sample = g_array_index (changed->cups, FmTastingCup, 0).sample;
  g_array_index (changed->cups, FmTastingCup, 0).sample =
      g_array_index (changed->cups, FmTastingCup, 1).sample;
  g_array_index (changed->cups, FmTastingCup, 1).sample = sample;
  g_array_index (changed->cups, FmTastingCup, 0).code = 100;
  g_array_index (changed->cups, FmTastingCup, 1).code = 101;
  assert_frozen (fixture, tasting, changed, "cannot change");
  changed = fm_tasting_copy (tasting);
  g_free (((FmTastingSample *)changed->samples->pdata[0])->name);
  ((FmTastingSample *)changed->samples->pdata[0])->name = g_strdup ("Another");
  assert_frozen (fixture, tasting, changed, "cannot change");
  changed = fm_tasting_copy (tasting);
  ((FmTastingSample *)changed->samples->pdata[0])->experiment_id =
      fixture_add_experiment (fixture, "Later", NULL);
  assert_frozen (fixture, tasting, changed, "cannot change");
  changed = fm_tasting_copy (tasting);
  changed->hidden = 5;
  assert_frozen (fixture, tasting, changed, "cannot change");
  changed = fm_tasting_copy (tasting);
  changed->blinding = FM_TASTING_BLINDING_UNDER_PLATE;
  assert_frozen (fixture, tasting, changed, "cannot change");
  changed = fm_tasting_copy (tasting);
  changed->tasks &= ~(guint)FM_TASTING_JAR;
  assert_frozen (fixture, tasting, changed, "cannot change");
  changed = fm_tasting_copy (tasting);
  changed->state = FM_TASTING_PLANNED;
  assert_frozen (fixture, tasting, changed, "planned anew");
}

static void
test_opened_stays_open (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_opened (fixture);
  FmTasting *changed = fm_tasting_copy (tasting);

  save_tasting (fixture, tasting);
  changed->id = tasting->id;
  changed->state = FM_TASTING_SEALED;
  assert_frozen (fixture, tasting, changed, "sealed again");
}

static void
test_record_stays (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_sealed (fixture);
  FmTasting *stale, *forged;

  save_tasting (fixture, tasting);
  stale = fm_tasting_copy (tasting);
  fm_tasting_record (tasting, 1750000150, FM_TASTING_EVENT_KEY_SHEET, NULL);
  save_tasting (fixture, tasting);
  assert_frozen (fixture, tasting, stale, "changed elsewhere");
  forged = fm_tasting_copy (tasting);
  ((FmTastingEvent *)forged->events->pdata[1])->at--;
  assert_frozen (fixture, tasting, forged, "changed elsewhere");
}

static gboolean
try_sql (Fixture *fixture, const char *sql, GError **error)
{
  FmDb *db = fm_notebook_begin (fixture->notebook, error);
  return db != NULL && fm_notebook_end (fixture->notebook, fm_db_exec (db, sql, error), error);
}

/* Even code that forgets the rules cannot break the seal: the file itself refuses. */
static void
test_schema_keeps_the_seal (Fixture *fixture, gconstpointer data)
{
  static const char *const acts[] = {
    "UPDATE tastings SET state = 0",
    "UPDATE tastings SET seed = 1",
    "UPDATE tastings SET tasks = 1",
    "UPDATE tastings SET pair_1 = 2",
    "UPDATE tasting_cups SET sample = 1",
    "DELETE FROM tasting_cups WHERE taster = 0",
    "INSERT INTO tasting_cups VALUES (1, 0, 0, 9, 1, 999)",
    "UPDATE tasting_samples SET name = 'x'",
    "DELETE FROM tasting_samples WHERE position = 0",
    "INSERT INTO tasting_samples VALUES (1, 11, NULL, 'x', 0)",
    "INSERT INTO tasting_tasters VALUES (1, 11, 'x', 0)",
    "DELETE FROM tasting_tasters",
    "DELETE FROM tasting_attributes",
    "UPDATE tasting_events SET at = 0",
    "DELETE FROM tasting_events",
    "INSERT INTO tasting_outcomes VALUES (1, 0, 100, 4, 3, 1, 1, 1, 1, 1, 1, 'x')",
  };
  g_autoptr (FmTasting) tasting = new_sealed (fixture);

  save_tasting (fixture, tasting);
  g_assert_cmpint (tasting->id, ==, 1);
  for (gsize i = 0; i < G_N_ELEMENTS (acts); i++) {
    g_autoptr (GError) error = NULL;

    g_test_message ("%s", acts[i]);
    g_assert_false (try_sql (fixture, acts[i], &error));
    g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN);
    g_test_message ("%s", error->message);
  }
  g_assert_false (try_sql (fixture, "UPDATE tastings SET headline = 'x'", NULL));
  g_assert_false (try_sql (fixture, "DELETE FROM experiments", NULL));
  assert_stored (fixture, tasting);
}

static void
assert_refused (Fixture *fixture, FmTasting *tasting, const char *word)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) list = NULL;

  g_assert_false (fm_tastings_save (fixture->notebook, tasting, &error));
  g_assert_nonnull (error);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, word));
  g_assert_null (strstr (error->message, "Secret"));
  g_assert_cmpint (tasting->id, ==, 0);
  list = fm_tastings_list (fixture->notebook, 0, NULL);
  g_assert_cmpuint (list->len, ==, 0);
  fm_tasting_free (tasting);
}

static FmTasting *
with_mark (Fixture *fixture, FmTastingMark mark)
{
  FmTasting *tasting = new_sealed (fixture);

  if (mark.code == 0)
    mark.code = cup_at (tasting, 0, FM_TASTING_ROUND_MAIN, 0)->code;
  g_array_append_val (tasting->marks, mark);
  return tasting;
}

static void
test_hostile_marks (Fixture *fixture, gconstpointer data)
{
  static const struct {
    FmTastingMark mark; /* code 0 = that of the taster's first cup */
    const char *word;
  } cases[] = {
    { { 0, 0, FM_TASTING_LIKING, 0, 10 }, "outside its scale" },
    { { 0, 0, FM_TASTING_LIKING, 0, 0 }, "outside its scale" },
    { { 0, 0, FM_TASTING_LIKING, 0, (double)NAN }, "outside its scale" },
    { { 0, 0, FM_TASTING_RANK, 0, INFINITY }, "outside its scale" },
    { { 0, 0, FM_TASTING_JAR, 1, 6 }, "outside its scale" },
    { { 0, 0, FM_TASTING_JAR, 2, 3 }, "does not ask for" },
    { { 0, 0, FM_TASTING_LIKING, 1, 3 }, "does not ask for" },
    { { 0, 0, FM_TASTING_REMARKS, 0, 1 }, "does not ask for" },
    { { 0, 0, (FmTastingTask)64, 0, 1 }, "does not ask for" },
    { { 7, 0, FM_TASTING_LIKING, 0, 5 }, "did not get" },
    { { 0, 5000, FM_TASTING_LIKING, 0, 5 }, "did not get" },
    { { 0, 0, FM_TASTING_TRIANGLE, 0, 1 }, "did not get" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_refused (fixture, with_mark (fixture, cases[i].mark), cases[i].word);
}

/* A triangle's cups have codes of their own for each taster. */
static void
test_foreign_cup (Fixture *fixture, gconstpointer data)
{
  FmTasting *tasting = new_sealed (fixture);
  guint code = cup_at (tasting, 1, FM_TASTING_ROUND_TRIANGLE, 0)->code;
  const FmTastingMark mark = { 0, code, FM_TASTING_TRIANGLE, 0, 1 };

  g_array_append_val (tasting->marks, mark);
  assert_refused (fixture, tasting, "did not get");
  tasting = new_sealed (fixture);
  code = cup_at (tasting, 1, FM_TASTING_ROUND_TRIANGLE, 0)->code;
  fm_tasting_set_remark (tasting, 1, 0, code, "not mine");
  assert_refused (fixture, tasting, "did not get");
}

static void
test_hostile_codes (Fixture *fixture, gconstpointer data)
{
  FmTasting *tasting = new_sealed (fixture);
  FmTastingCup *cups = (FmTastingCup *)(void *)tasting->cups->data;

  cups[1].code = cups[0].code;
  assert_refused (fixture, tasting, "given twice");
  tasting = new_sealed (fixture);
  g_array_index (tasting->cups, FmTastingCup, 0).code = 99;
  assert_refused (fixture, tasting, "99");
  tasting = new_sealed (fixture);
  g_array_index (tasting->cups, FmTastingCup, 0).code = G_MAXUINT;
  assert_refused (fixture, tasting, "three-digit");
  tasting = new_sealed (fixture);
  g_array_index (tasting->cups, FmTastingCup, 0).sample = 12;
  assert_refused (fixture, tasting, "not there");
}

static void
test_two_choices (Fixture *fixture, gconstpointer data)
{
  FmTasting *tasting = new_sealed (fixture);

  for (guint i = 0; i < 2; i++) {
    FmTastingMark mark = { 0, cup_at (tasting, 0, FM_TASTING_ROUND_PAIR, i)->code,
                           FM_TASTING_PREFERENCE, 0, 1 };
    g_array_append_val (tasting->marks, mark);
  }
  assert_refused (fixture, tasting, "twice");
}

static void
test_hostile_plans (Fixture *fixture, gconstpointer data)
{
  FmTasting *tasting = new_tasting (fixture);

  tasting->seed = G_MAXUINT64;
  assert_refused (fixture, tasting, "seed");
  tasting = new_tasting (fixture);
  tasting->max_per_taster = 1;
  assert_refused (fixture, tasting, "two samples");
  tasting = new_tasting (fixture);
  tasting->pair[1] = 9;
  assert_refused (fixture, tasting, "pair");
  tasting = new_tasting (fixture);
  for (guint i = 0; i < FM_TASTING_MAX_TASTERS; i++)
    fm_tasting_add_taster (tasting, "Crowd");
  assert_refused (fixture, tasting, "200");
  tasting = new_tasting (fixture);
  ((FmTastingSample *)tasting->samples->pdata[1])->experiment_id = 4711;
  assert_refused (fixture, tasting, "The experiment of sample 2");
  tasting = new_opened (fixture);
  g_ptr_array_remove_index (tasting->events, tasting->events->len - 1);
  assert_refused (fixture, tasting, "not recorded when it was opened");
  tasting = new_tasting (fixture);
  tasting->state = FM_TASTING_SEALED;
  g_ptr_array_set_size (tasting->tasters, 0);
  assert_refused (fixture, tasting, "at least one taster");
}

static void
test_list (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) sealed = new_sealed (fixture);
  g_autoptr (FmTasting) outside = fm_tasting_new ();
  gint64 other = fm_blends_add (fixture->notebook, "Other", NULL);

  fill_sheet (sealed, 2);
  save_tasting (fixture, sealed);
  outside->held_at = sealed->held_at + 1;
  fm_tasting_add_sample (outside, 0, 0, "From the market");
  save_tasting (fixture, outside);

  g_autoptr (GPtrArray) all = fm_tastings_list (fixture->notebook, 0, NULL);
  g_autoptr (GPtrArray) some = fm_tastings_list (fixture->notebook, fixture->blend_id, NULL);
  g_autoptr (GPtrArray) none = fm_tastings_list (fixture->notebook, other, NULL);
  g_assert_cmpuint (all->len, ==, 2);
  g_assert_cmpint (((FmTastingInfo *)all->pdata[0])->id, ==, outside->id);
  g_assert_cmpuint (some->len, ==, 1);
  g_assert_cmpuint (none->len, ==, 0);
  const FmTastingInfo *info = some->pdata[0];
  g_assert_cmpint (info->id, ==, sealed->id);
  g_assert_cmpstr (info->title, ==, "Tuesday");
  g_assert_cmpint (info->state, ==, FM_TASTING_SEALED);
  g_assert_cmpuint (info->tasks, ==, sealed->tasks);
  g_assert_cmpuint (info->n_samples, ==, 4);
  g_assert_cmpuint (info->n_experiments, ==, 3);
  g_assert_cmpuint (info->n_tasters, ==, N_TASTERS);
  g_assert_cmpuint (info->n_in, ==, 1);
  g_assert_null (info->headline);
}

static GPtrArray *
new_outcomes (void)
{
  GPtrArray *outcomes = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_tasting_outcome_free);

  for (guint i = 0; i < 4; i++) {
    FmTastingOutcome *outcome = g_new0 (FmTastingOutcome, 1);
    outcome->code = 200 + i;
    outcome->n_samples = 4;
    outcome->n_tasters = N_TASTERS;
    outcome->rank_sum = i == 3 ? NAN : 5.5 + i;
    outcome->place = i + 1;
    outcome->is_separated = i == 0;
    outcome->liking_mean = outcome->liking_low = 4.25;
    outcome->liking_high = NAN;
    outcome->sentence = g_strdup_printf ("number %u of four", i + 1);
    g_ptr_array_add (outcomes, outcome);
  }
  return outcomes;
}

static guint
n_tastings (Fixture *fixture)
{
  g_autoptr (FmVersionInfo) info = fm_versions_info (fixture->notebook, fixture->version_id, NULL);
  g_autoptr (GPtrArray) list = fm_versions_list (fixture->notebook, fixture->blend_id, NULL);

  for (guint i = 0; i < list->len; i++) {
    const FmVersionInfo *listed = list->pdata[i];

    if (listed->id == fixture->version_id)
      g_assert_cmpuint (listed->n_tastings, ==, info->n_tastings);
  }
  return info->n_tastings;
}

static void
test_sealed_finds_nothing (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_sealed (fixture);
  g_autoptr (GPtrArray) outcomes = new_outcomes ();
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < N_TASTERS; i++)
    fill_sheet (tasting, i);
  save_tasting (fixture, tasting);
  g_assert_false (
      fm_tastings_save_outcome (fixture->notebook, tasting->id, "One won", outcomes, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN);
  g_autoptr (GPtrArray) found = fm_tastings_outcomes (fixture->notebook, 0, 0, 0, NULL);
  g_autoptr (GPtrArray) scores = fm_tastings_scores (fixture->notebook, fixture->blend_id, NULL);
  g_assert_cmpuint (found->len, ==, 0);
  g_assert_cmpuint (scores->len, ==, 0);
  g_assert_cmpuint (n_tastings (fixture), ==, 0);
  g_clear_error (&error);
  g_assert_false (fm_tastings_save_outcome (fixture->notebook, 99, "x", outcomes, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
}

/* What was found is the same at each look, so nothing is to be written again. */
static void
test_kept_already (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_opened (fixture);
  g_autoptr (GPtrArray) outcomes = new_outcomes ();
  FmTastingOutcome *first = outcomes->pdata[0];

  save_tasting (fixture, tasting);
  g_assert_false (fm_tastings_has_outcome (fixture->notebook, tasting->id, "One won", outcomes));
  g_assert_true (
      fm_tastings_save_outcome (fixture->notebook, tasting->id, "One won", outcomes, NULL));
  fixture_reopen (fixture);
  g_assert_true (fm_tastings_has_outcome (fixture->notebook, tasting->id, "One won", outcomes));
  g_assert_false (fm_tastings_has_outcome (fixture->notebook, tasting->id, "Two won", outcomes));
  first->liking_mean = isnan (first->liking_mean) ? 5 : NAN;
  g_assert_false (fm_tastings_has_outcome (fixture->notebook, tasting->id, "One won", outcomes));
}

static void
test_taster_names (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) earlier = new_tasting (fixture);
  g_autoptr (FmTasting) later = fm_tasting_new ();
  const char *const expected[] = { "Dan", "Ben", "Ada", "Cleo" };

  save_tasting (fixture, earlier);
  later->title = g_strdup ("Wednesday");
  later->held_at = earlier->held_at + 1;
  fm_tasting_add_taster (later, "Dan");
  fm_tasting_add_taster (later, "Ben");
  save_tasting (fixture, later);
  g_autoptr (GPtrArray) names = fm_tastings_tasters (fixture->notebook, NULL);
  g_assert_cmpuint (names->len, ==, G_N_ELEMENTS (expected));
  for (guint i = 0; i < names->len; i++)
    g_assert_cmpstr (names->pdata[i], ==, expected[i]);
}

static void
test_outcomes (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_opened (fixture);
  g_autoptr (GPtrArray) outcomes = new_outcomes ();
  g_autoptr (GError) error = NULL;
  gint64 second;

  save_tasting (fixture, tasting);
  second = ((FmTastingSample *)tasting->samples->pdata[1])->experiment_id;
  for (guint i = 0; i < 2; i++)
    g_assert_true (
        fm_tastings_save_outcome (fixture->notebook, tasting->id, "One won", outcomes, &error));
  fixture_reopen (fixture);
  g_autoptr (GPtrArray) all = fm_tastings_outcomes (fixture->notebook, 0, 0, 0, NULL);
  g_autoptr (GPtrArray) of_blend =
      fm_tastings_outcomes (fixture->notebook, fixture->blend_id, 0, 0, NULL);
  g_autoptr (GPtrArray) of_version =
      fm_tastings_outcomes (fixture->notebook, 0, fixture->version_id, 0, NULL);
  g_autoptr (GPtrArray) of_one = fm_tastings_outcomes (fixture->notebook, 0, 0, second, NULL);
  g_assert_cmpuint (all->len, ==, 4);
  g_assert_cmpuint (of_blend->len, ==, 3);
  g_assert_cmpuint (of_version->len, ==, 3);
  g_assert_cmpuint (n_tastings (fixture), ==, 1);
  g_assert_cmpuint (of_one->len, ==, 1);
  const FmTastingOutcome *outcome = of_one->pdata[0];
  g_assert_cmpint (outcome->tasting_id, ==, tasting->id);
  g_assert_cmpstr (outcome->tasting_title, ==, "Tuesday");
  g_assert_cmpint (outcome->held_at, ==, tasting->held_at);
  g_assert_cmpint (outcome->experiment_id, ==, second);
  g_assert_cmpint (outcome->version_id, ==, fixture->version_id);
  g_assert_cmpuint (outcome->code, ==, 201);
  g_assert_cmpfloat (outcome->rank_sum, ==, 6.5);
  g_assert_cmpuint (outcome->place, ==, 2);
  g_assert_false (outcome->is_separated);
  g_assert_cmpfloat (outcome->liking_mean, ==, 4.25);
  g_assert_true (isnan (outcome->liking_high));
  g_assert_cmpstr (outcome->sentence, ==, "number 2 of four");
  g_autoptr (GPtrArray) list = fm_tastings_list (fixture->notebook, 0, NULL);
  g_assert_cmpstr (((FmTastingInfo *)list->pdata[0])->headline, ==, "One won");
  g_ptr_array_remove_index (outcomes, 0);
  g_assert_false (fm_tastings_save_outcome (fixture->notebook, tasting->id, "x", outcomes, &error));
}

/* Missing sheets do not count; what was tasted before somebody left does. */
static void
test_scores (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_opened (fixture);
  g_autoptr (GPtrArray) scores = NULL;

  fm_tasting_set_sheet (tasting, 1, 0, FM_SHEET_MISSING);
  fm_tasting_set_sheet (tasting, 1, 1, FM_SHEET_DROPPED_OUT);
  save_tasting (fixture, tasting);
  scores = fm_tastings_scores (fixture->notebook, fixture->blend_id, NULL);
  g_assert_cmpuint (scores->len, ==, 3 * (N_TASTERS - 1));
  for (guint i = 0; i < scores->len; i++) {
    const FmTastingScore *score = scores->pdata[i];
    guint taster = g_strcmp0 (score->taster, "Ben") == 0 ? 1 : 2;
    guint sample = 0;

    while (((FmTastingSample *)tasting->samples->pdata[sample])->experiment_id !=
           score->experiment_id)
      sample++;
    g_assert_cmpint (score->tasting_id, ==, tasting->id);
    g_assert_cmpint (score->version_id, ==, fixture->version_id);
    g_assert_cmpfloat (score->liking, ==, 1 + sample + taster);
  }
}

static void
test_tasted_experiment_stays (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) tasting = new_opened (fixture);
  gint64 experiment_id = ((FmTastingSample *)tasting->samples->pdata[0])->experiment_id;
  g_autoptr (GError) error = NULL;

  save_tasting (fixture, tasting);
  g_assert_false (fm_experiments_remove (fixture->notebook, experiment_id, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN);
  g_assert_cmpstr (error->message, ==,
                   "The tasting “Tuesday” uses this experiment as a sample, so it cannot be "
                   "removed. Remove the tasting first.");
  g_clear_error (&error);
  g_assert_false (fm_blends_remove (fixture->notebook, fixture->blend_id, &error));
  g_clear_error (&error);
  g_assert_true (fm_tastings_remove (fixture->notebook, tasting->id, &error));
  g_assert_false (fm_tastings_remove (fixture->notebook, tasting->id, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_true (fm_experiments_remove (fixture->notebook, experiment_id, &error));
  g_assert_null (fm_tastings_load (fixture->notebook, tasting->id, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_false (fm_tastings_save (fixture->notebook, tasting, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
}

static void
test_saved_copy (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) sealed = new_sealed (fixture);
  g_autoptr (FmTasting) opened = new_opened (fixture);
  g_autoptr (GPtrArray) outcomes = new_outcomes ();
  g_autofree char *path = g_build_filename (fixture->folder, "copy.forcemeat", NULL);

  fill_sheet (sealed, 0);
  save_tasting (fixture, sealed);
  save_tasting (fixture, opened);
  g_assert_true (
      fm_tastings_save_outcome (fixture->notebook, opened->id, "One won", outcomes, NULL));
  g_assert_true (fm_notebook_save_copy (fixture->notebook, path, NULL, NULL));
  fm_notebook_unref (fixture->notebook);
  fixture->notebook = fm_notebook_open (path, NULL, NULL);
  /* the one still sealed says that it is a copy */
  g_autoptr (FmTasting) copied = load_tasting (fixture, sealed->id);
  fm_tasting_record (sealed, ((FmTastingEvent *)copied->events->pdata[1])->at,
                     FM_TASTING_EVENT_COPIED, NULL);
  assert_stored (fixture, sealed);
  assert_stored (fixture, opened);
  g_autoptr (GPtrArray) found = fm_tastings_outcomes (fixture->notebook, 0, 0, 0, NULL);
  g_assert_cmpuint (found->len, ==, 4);
}

/* What this program would never write, but a stranger's file may hold. */
static void
test_hostile_file (Fixture *fixture, gconstpointer data)
{
  static const char *const acts[] = {
    "UPDATE tasting_marks SET value = 1e300 WHERE position = 0",
    "UPDATE tasting_marks SET code = 5 WHERE position = 0",
    "UPDATE tasting_marks SET taster = 77 WHERE position = 0",
    "UPDATE tasting_marks SET attribute = -3 WHERE position = 0",
    "UPDATE tasting_remarks SET taster = 77 WHERE position = 0",
    "UPDATE tasting_tasters SET sheet = 9",
    "UPDATE tastings SET state = 9",
    "INSERT INTO tasting_events VALUES (1, 50, 0, 88, NULL)",
  };
  g_autoptr (FmTasting) tasting = new_opened (fixture);

  save_tasting (fixture, tasting);
  for (gsize i = 0; i < G_N_ELEMENTS (acts); i++) {
    g_autoptr (GError) error = NULL;
    FmDb *db = fm_notebook_begin (fixture->notebook, NULL);

    g_test_message ("%s", acts[i]);
    fm_db_exec (db, "PRAGMA ignore_check_constraints = ON; PRAGMA defer_foreign_keys = ON", NULL);
    g_assert_true (fm_db_exec (db, acts[i], NULL));
    g_assert_null (fm_tastings_load (fixture->notebook, tasting->id, &error));
    g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED);
    fm_db_exec (db, "PRAGMA ignore_check_constraints = OFF", NULL);
    fm_notebook_end (fixture->notebook, FALSE, NULL);
  }
  assert_stored (fixture, tasting);
}

/* Two opened tastings of one version and an outsider; sealed ones and those left out say nothing.
 */
static void
test_pool (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmTasting) first = new_opened (fixture);
  g_autoptr (FmTasting) second = new_opened (fixture);
  g_autoptr (FmTasting) sealed = new_sealed (fixture);
  g_autoptr (GArray) left_out = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_autoptr (GError) error = NULL;

  save_tasting (fixture, first);
  save_tasting (fixture, second);
  save_tasting (fixture, sealed);
  g_autoptr (FmTastingPool) both =
      fm_tastings_pool (fixture->notebook, fixture->blend_id, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (both->tastings->len, ==, 2);
  g_assert_cmpuint (both->tasters->len, ==, N_TASTERS);
  g_assert_cmpuint (both->items->len, ==, 2);
  g_assert_cmpstr (both->items->pdata[0], ==, "version 1");
  g_assert_cmpstr (both->items->pdata[1], ==, "Secret outside");
  g_assert_cmpuint (both->scores->len, ==, 2 * N_TASTERS * 4);
  g_array_append_val (left_out, first->id);
  g_autoptr (FmTastingPool) one =
      fm_tastings_pool (fixture->notebook, fixture->blend_id, left_out, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (one->tastings->len, ==, 1);
  g_assert_cmpint (g_array_index (one->ids, gint64, 0), ==, second->id);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("round-trip", test_round_trip);
  ADD ("whole-life", test_whole_life);
  ADD ("all-or-none", test_all_or_none);
  ADD ("cautions", test_cautions);
  ADD ("copy-is-marked", test_copy_is_marked);
  ADD ("version-of-experiment", test_version_of_experiment);
  ADD ("sealed-plan-is-frozen", test_sealed_plan_is_frozen);
  ADD ("opened-stays-open", test_opened_stays_open);
  ADD ("record-stays", test_record_stays);
  ADD ("schema-keeps-the-seal", test_schema_keeps_the_seal);
  ADD ("hostile-marks", test_hostile_marks);
  ADD ("foreign-cup", test_foreign_cup);
  ADD ("hostile-codes", test_hostile_codes);
  ADD ("two-choices", test_two_choices);
  ADD ("hostile-plans", test_hostile_plans);
  ADD ("list", test_list);
  ADD ("sealed-finds-nothing", test_sealed_finds_nothing);
  ADD ("outcomes", test_outcomes);
  ADD ("kept-already", test_kept_already);
  ADD ("taster-names", test_taster_names);
  ADD ("scores", test_scores);
  ADD ("pool", test_pool);
  ADD ("tasted-experiment-stays", test_tasted_experiment_stays);
  ADD ("saved-copy", test_saved_copy);
  ADD ("hostile-file", test_hostile_file);
  return g_test_run ();
}
