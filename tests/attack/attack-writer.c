/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* attack-writer.c - saves experiments until it is killed, and says each that is saved:
 * attack-writer NOTEBOOK. Ends with 1 when the notebook refuses. Used by tools/attack. */
#include <signal.h>
#include <stdio.h>

#include "store/fm-experiments.h"

static gint64
any_version (FmNotebook *notebook)
{
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, NULL);
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) trim = fm_ingredient_new ("Trim", FM_INGREDIENT_TRIM);

  if (blends != NULL && blends->len > 0) {
    const FmBlendInfo *blend = blends->pdata[0];
    g_autoptr (GPtrArray) versions = fm_versions_list (notebook, blend->id, NULL);
    if (versions != NULL && versions->len > 0)
      return ((const FmVersionInfo *)versions->pdata[0])->id;
  }
  trim->provenance = FM_PROVENANCE_DECLARED;
  trim->declared_fat_pct = 20;
  fm_formula_add (formula, trim, 1000);
  return fm_versions_save (notebook, fm_blends_add (notebook, "Blend", NULL), formula, "First",
                           NULL);
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = NULL;
  gint64 version;

  /* A file that may not grow is told like a full disk. */
  signal (SIGXFSZ, SIG_IGN);
  notebook = g_file_test (argv[1], G_FILE_TEST_EXISTS) ? fm_notebook_open (argv[1], NULL, &error)
                                                       : fm_notebook_create (argv[1], &error);
  version = notebook != NULL ? any_version (notebook) : 0;
  for (int i = 0; version != 0; i++) {
    g_autoptr (FmExperiment) experiment = fm_experiment_new ();

    experiment->version_id = version;
    experiment->title = g_strdup_printf ("%d-%d", (int)g_random_int_range (0, G_MAXINT), i);
    experiment->notes = g_strnfill (500, 'n');
    if (!fm_experiments_save (notebook, experiment, &error))
      break;
    printf ("%s\n", experiment->title);
    fflush (stdout);
  }
  fprintf (stderr, "%s\n", error != NULL ? error->message : "nothing could be saved");
  return 1;
}
