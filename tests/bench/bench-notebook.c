/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* bench-notebook.c - 10,000 experiments and 3,000 tastings: open, list, search, memory */
#include <glib/gstdio.h>
#include <math.h>
#include <stdio.h>

#include "store/notebook/fm-db.h"
#include "store/fm-experiments.h"
#include "store/fm-tastings.h"

#define N_EXPERIMENTS 10000
#define N_TASTINGS 3000
#define N_SAMPLES 4
#define N_TASTERS 6
#define FRAME_MS 16.7

static double
resident_mb (void)
{
  g_autofree char *text = NULL;
  unsigned long size = 0, resident = 0;

  if (g_file_get_contents ("/proc/self/statm", &text, NULL, NULL))
    sscanf (text, "%lu %lu", &size, &resident);
  return (double)resident * 4096 / 1e6;
}

static double
ms_since (gint64 start)
{
  return (double)(g_get_monotonic_time () - start) / 1000.0;
}

static void
fill (FmNotebook *notebook)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new ("Invented cut", FM_INGREDIENT_CUT);
  g_autoptr (GError) error = NULL;
  gint64 blend = fm_blends_add (notebook, "Benchmark", &error);
  gint64 version;

  g_assert_no_error (error);
  fm_formula_add (formula, ingredient, 1000.0);
  version = fm_versions_save (notebook, blend, formula, "Made up for a benchmark", &error);
  g_assert_no_error (error);
  for (int i = 0; i < N_EXPERIMENTS; i++) {
    g_autoptr (FmExperiment) experiment = fm_experiment_new ();

    experiment->version_id = version;
    experiment->title = g_strdup_printf ("Trial %d", i);
    experiment->notes = g_strdup_printf ("Crust %s, note %d", i % 7 == 0 ? "dark" : "pale", i);
    experiment->made_at = 1700000000 + i * 3600;
    experiment->rating = 1 + i % 10;
    fm_experiment_plan (experiment, formula);
    fm_experiments_save (notebook, experiment, &error);
    g_assert_no_error (error);
  }
}

static FmTasting *
new_tasting (int number)
{
  FmTasting *tasting = fm_tasting_new ();
  g_autoptr (GError) error = NULL;

  tasting->title = g_strdup_printf ("Panel %d", number);
  tasting->held_at = 1700000000 + number * 3600;
  tasting->tasks = FM_TASTING_LIKING;
  for (int i = 0; i < N_SAMPLES; i++) {
    g_autofree char *name = g_strdup_printf ("Sample %d", i);
    fm_tasting_add_sample (tasting, 1 + (number + i) % N_EXPERIMENTS, 0, name);
  }
  for (int i = 0; i < N_TASTERS; i++) {
    g_autofree char *name = g_strdup_printf ("Taster %d", i);
    fm_tasting_add_taster (tasting, name);
  }
  fm_tasting_arrange (tasting, 7, tasting->held_at, &error);
  g_assert_no_error (error);
  for (guint i = 0; i < tasting->cups->len; i++) {
    const FmTastingCup *cup = &g_array_index (tasting->cups, FmTastingCup, i);
    fm_tasting_set_mark (tasting, 1, cup->taster, cup->code, FM_TASTING_LIKING, 0,
                         1 + (number + i) % 9, &error);
    g_assert_no_error (error);
    fm_tasting_set_sheet (tasting, 1, cup->taster, FM_SHEET_IN);
  }
  fm_tasting_open (tasting, tasting->held_at + 60, NULL, &error);
  g_assert_no_error (error);
  return tasting;
}

static void
save_outcome (FmNotebook *notebook, const FmTasting *tasting)
{
  g_autoptr (GPtrArray) outcomes =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_tasting_outcome_free);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < N_SAMPLES; i++) {
    FmTastingOutcome *outcome = g_new0 (FmTastingOutcome, 1);

    outcome->n_samples = N_SAMPLES;
    outcome->n_tasters = N_TASTERS;
    outcome->rank_sum = NAN;
    outcome->liking_mean = 5.5;
    outcome->liking_low = 4.5;
    outcome->liking_high = 6.5;
    outcome->sentence = g_strdup ("Invented for a benchmark");
    g_ptr_array_add (outcomes, outcome);
  }
  fm_tastings_save_outcome (notebook, tasting->id, "Nobody could tell them apart", outcomes,
                            &error);
  g_assert_no_error (error);
}

/* One transaction, as thousands of separate ones would only measure the disk. */
static void
fill_tastings (FmNotebook *notebook)
{
  g_autoptr (GError) error = NULL;

  fm_notebook_begin (notebook, &error);
  g_assert_no_error (error);
  for (int i = 0; i < N_TASTINGS; i++) {
    g_autoptr (FmTasting) tasting = new_tasting (i);

    fm_tastings_save (notebook, tasting, &error);
    g_assert_no_error (error);
    save_outcome (notebook, tasting);
  }
  fm_notebook_end (notebook, TRUE, &error);
  g_assert_no_error (error);
}

static void
print_rows (const char *what, const GPtrArray *rows, gint64 start)
{
  double took_ms = ms_since (start);

  g_print ("%s, %u rows: %.1f ms, ratio to a frame %.2f\n", what, rows->len, took_ms,
           took_ms / FRAME_MS);
}

static void
measure_tastings (FmNotebook *notebook)
{
  gint64 start = g_get_monotonic_time ();
  g_autoptr (GPtrArray) all = fm_tastings_list (notebook, 0, NULL);

  print_rows ("list of tastings", all, start);
  start = g_get_monotonic_time ();
  g_autoptr (GPtrArray) of_blend = fm_tastings_list (notebook, 1, NULL);
  print_rows ("tastings of a blend", of_blend, start);
  start = g_get_monotonic_time ();
  g_autoptr (GPtrArray) of_one = fm_tastings_outcomes (notebook, 0, 0, 100, NULL);
  print_rows ("outcomes of an experiment", of_one, start);
  start = g_get_monotonic_time ();
  g_autoptr (GPtrArray) scores = fm_tastings_scores (notebook, 1, NULL);
  print_rows ("liking scores of a blend", scores, start);
}

static GPtrArray *
measure_list (FmNotebook *notebook, const char *text)
{
  FmExperimentFilter filter = { .text = text, .descending = TRUE };
  g_autoptr (GError) error = NULL;
  gint64 start = g_get_monotonic_time ();
  GPtrArray *found = fm_experiments_list (notebook, &filter, NULL, &error);
  double took_ms = ms_since (start);

  g_assert_no_error (error);
  g_print ("%s, %u rows: %.1f ms, ratio to a frame %.2f\n", text ? "search" : "whole list",
           found->len, took_ms, took_ms / FRAME_MS);
  return found;
}

static void
measure (const char *path)
{
  g_autoptr (GError) error = NULL;
  double before_mb = resident_mb ();
  gint64 start = g_get_monotonic_time ();
  g_autoptr (FmNotebook) notebook = fm_notebook_open (path, NULL, &error);
  double open_ms = ms_since (start);
  g_autoptr (GPtrArray) all = NULL;
  g_autoptr (GPtrArray) found = NULL;

  g_assert_no_error (error);
  g_print ("open: %.1f ms, ratio to a frame %.2f\n", open_ms, open_ms / FRAME_MS);
  all = measure_list (notebook, NULL);
  found = measure_list (notebook, "dark");
  g_print ("memory grown with both lists held: %.1f MB for %u experiments\n",
           resident_mb () - before_mb, all->len);
  measure_tastings (notebook);
}

/* Measured in a process of its own, so that no memory is left over from the filling. */
static void
measure_afresh (const char *program, const char *path)
{
  const char *const argv[] = { program, path, NULL };
  g_autoptr (GError) error = NULL;

  g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, NULL, NULL, NULL, &error);
  g_assert_no_error (error);
}

static void
remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_unlink (path);
  }
  g_rmdir (folder);
}

int
main (int argc, char **argv)
{
  g_autofree char *folder = NULL;
  g_autofree char *path = NULL;
  g_autoptr (GError) error = NULL;
  FmNotebook *notebook;

  if (argc == 2) {
    measure (argv[1]);
    return 0;
  }
  folder = g_dir_make_tmp ("forcemeat-bench-XXXXXX", NULL);
  path = g_build_filename (folder, "bench.forcemeat", NULL);
  notebook = fm_notebook_create (path, &error);
  g_assert_no_error (error);
  fill (notebook);
  fill_tastings (notebook);
  fm_notebook_unref (notebook);
  measure_afresh (argv[0], path);
  remove_folder (folder);
  return 0;
}
