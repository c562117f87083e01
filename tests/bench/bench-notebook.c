/* bench-notebook.c - a notebook of 10,000 experiments: open, list, search, memory */
#include <stdio.h>

#include "store/fm-experiments.h"

#define N_EXPERIMENTS 10000
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
  fm_notebook_unref (notebook);
  measure_afresh (argv[0], path);
  return 0;
}
