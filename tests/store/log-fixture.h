/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* log-fixture.h - a notebook in a folder of its own, with one blend and one version */
#pragma once

#include <glib/gstdio.h>

#include "store/fm-experiments.h"

typedef struct {
  char *folder;
  char *path;
  FmNotebook *notebook;
  gint64 blend_id;
  gint64 version_id;
} Fixture;

static inline gint64
fixture_add_version (FmNotebook *notebook, gint64 blend_id, double fat_pct)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) trim = fm_ingredient_new ("Trim", FM_INGREDIENT_TRIM);
  g_autoptr (GError) error = NULL;

  trim->provenance = FM_PROVENANCE_DECLARED;
  trim->declared_fat_pct = fat_pct;
  fm_formula_add (formula, trim, 1000);
  gint64 id = fm_versions_save (notebook, blend_id, formula, "For a test", &error);
  g_assert_no_error (error);
  return id;
}

static inline void
fixture_set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  fixture->folder = g_dir_make_tmp ("forcemeat-XXXXXX", &error);
  g_assert_no_error (error);
  fixture->path = g_build_filename (fixture->folder, "test.forcemeat", NULL);
  fixture->notebook = fm_notebook_create (fixture->path, &error);
  g_assert_no_error (error);
  fixture->blend_id = fm_blends_add (fixture->notebook, "Blend", &error);
  g_assert_no_error (error);
  fixture->version_id = fixture_add_version (fixture->notebook, fixture->blend_id, 20);
}

static inline void
fixture_remove_folder (const char *folder)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    g_unlink (path);
  }
  g_dir_close (dir);
  g_rmdir (folder);
}

static inline void
fixture_tear_down (Fixture *fixture, gconstpointer data)
{
  g_clear_pointer (&fixture->notebook, fm_notebook_unref);
  fixture_remove_folder (fixture->folder);
  g_free (fixture->path);
  g_free (fixture->folder);
}

static inline void
fixture_reopen (Fixture *fixture)
{
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&fixture->notebook, fm_notebook_unref);
  fixture->notebook = fm_notebook_open (fixture->path, NULL, &error);
  g_assert_no_error (error);
}

/* Saves a making with this title and these notes; returns its id. */
static inline gint64
fixture_add_experiment (Fixture *fixture, const char *title, const char *notes)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (GError) error = NULL;

  experiment->version_id = fixture->version_id;
  experiment->title = g_strdup (title);
  experiment->notes = g_strdup (notes);
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, &error));
  g_assert_no_error (error);
  return experiment->id;
}
