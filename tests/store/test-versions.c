/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-versions.c - blends, drafts, versions, own ingredients and settings */
#include "store-fixture.h"

#include <string.h>

#include "store/notebook/fm-db.h"
#include "store/fm-experiments.h"

static void
test_blends (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 first = add_blend (notebook, "  House blend ");
  gint64 second = add_blend (notebook, "Lean blend");
  g_autoptr (GPtrArray) blends = NULL;
  FmBlendInfo *info;

  g_assert_cmpint (fm_blends_add (notebook, " \t", &error), ==, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
  g_clear_error (&error);
  g_assert_true (fm_blends_rename (notebook, second, "Leaner blend", NULL));
  g_assert_false (fm_blends_rename (notebook, 99, "x", &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);

  blends = fm_blends_list (notebook, NULL);
  g_assert_cmpuint (blends->len, ==, 2);
  info = g_ptr_array_index (blends, 0);
  g_assert_cmpint (info->id, ==, first);
  g_assert_cmpstr (info->name, ==, "House blend");
  g_assert_cmpint (info->draft_parent_version_id, ==, 0);
  g_assert_false (info->has_draft_changes);
  info = g_ptr_array_index (blends, 1);
  g_assert_cmpstr (info->name, ==, "Leaner blend");
}

static gboolean
draft_has_changes (FmNotebook *notebook)
{
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, NULL);
  FmBlendInfo *info = g_ptr_array_index (blends, 0);

  return info->has_draft_changes;
}

static void
test_draft (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  g_autoptr (FmFormula) changed = new_formula (700.0, 300.0);
  g_autoptr (FmFormula) empty = fm_draft_load (notebook, blend_id, NULL, NULL);
  g_autoptr (FmFormula) loaded = NULL;
  gint64 version_id, parent_id;

  g_assert_cmpuint (fm_formula_n_lines (empty), ==, 0);
  g_assert_true (fm_draft_save (notebook, blend_id, empty, NULL));
  g_assert_false (draft_has_changes (notebook));
  g_assert_true (fm_draft_save (notebook, blend_id, formula, NULL));
  g_assert_true (draft_has_changes (notebook));

  version_id = save_version (notebook, blend_id, formula, "first try");
  g_assert_false (draft_has_changes (notebook));
  g_assert_true (fm_draft_save (notebook, blend_id, changed, NULL));
  g_assert_true (draft_has_changes (notebook));

  fm_notebook_unref (g_steal_pointer (&notebook));
  notebook = open_notebook (self->path);
  loaded = fm_draft_load (notebook, blend_id, &parent_id, NULL);
  g_assert_true (fm_formula_equal (loaded, changed));
  g_assert_cmpint (parent_id, ==, version_id);
  g_assert_true (fm_draft_save (notebook, blend_id, formula, NULL));
  g_assert_false (draft_has_changes (notebook));
}

static void
test_draft_refuses_bad_numbers (Fixture *self, gconstpointer data)
{
  static const double bad[] = { -1.0, 1e9, (double)INFINITY, (double)NAN };
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  g_autoptr (FmFormula) kept = NULL;

  g_assert_true (fm_draft_save (notebook, blend_id, formula, NULL));
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (FmFormula) broken = fm_formula_copy (formula);

    fm_formula_line (broken, 0)->mass_g = bad[i];
    g_assert_false (fm_draft_save (notebook, blend_id, broken, &error));
    g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
    g_clear_error (&error);
    g_assert_cmpint (fm_versions_save (notebook, blend_id, broken, "x", &error), ==, 0);
    g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
  }
  kept = fm_draft_load (notebook, blend_id, NULL, NULL);
  g_assert_true (fm_formula_equal (kept, formula));
}

static void
assert_version (FmVersionInfo *info, int number, gint64 parent_id, const char *reason, double fat)
{
  g_assert_cmpint (info->number, ==, number);
  g_assert_cmpint (info->parent_id, ==, parent_id);
  g_assert_cmpstr (info->reason, ==, reason);
  g_assert_cmpfloat_with_epsilon (info->fat_pct, fat, 1e-9);
  g_assert_cmpuint (info->n_lines, ==, 2);
  g_assert_cmpuint (info->n_experiments, ==, 0);
  g_assert_true (isnan (info->mean_rating));
}

static void
test_tree (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  gint64 other_id = add_blend (notebook, "Other");
  g_autoptr (FmFormula) a = new_formula (800.0, 200.0);
  g_autoptr (FmFormula) b = new_formula (700.0, 300.0);
  g_autoptr (FmFormula) c = new_formula (900.0, 100.0);
  g_autoptr (FmFormula) loaded = NULL;
  g_autoptr (GPtrArray) versions = NULL;
  gint64 one = save_version (notebook, blend_id, a, "start");
  gint64 two = save_version (notebook, blend_id, b, " juicier\n");
  gint64 three;

  g_assert_true (fm_draft_branch (notebook, blend_id, one, NULL));
  three = save_version (notebook, blend_id, c, "leaner");
  save_version (notebook, other_id, c, "its own numbers");

  versions = fm_versions_list (notebook, blend_id, NULL);
  g_assert_cmpuint (versions->len, ==, 3);
  assert_version (g_ptr_array_index (versions, 0), 1, 0, "start", 24.0);
  assert_version (g_ptr_array_index (versions, 1), 2, one, "juicier", 31.0);
  assert_version (g_ptr_array_index (versions, 2), 3, one, "leaner", 17.0);
  loaded = fm_versions_load (notebook, two, NULL);
  g_assert_true (fm_formula_equal (loaded, b));
  g_assert_cmpint (three, >, two);
}

static void
test_refusals (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  gint64 other_id = add_blend (notebook, "Other");
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  g_autoptr (FmFormula) weightless = new_formula (0.0, 0.0);
  gint64 version_id = save_version (notebook, blend_id, formula, "start");

  g_assert_cmpint (fm_versions_save (notebook, blend_id, formula, " \n", &error), ==, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
  g_clear_error (&error);
  g_assert_cmpint (fm_versions_save (notebook, blend_id, weightless, "x", &error), ==, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
  g_clear_error (&error);
  g_assert_cmpint (fm_versions_save (notebook, 99, formula, "x", &error), ==, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_false (fm_draft_branch (notebook, other_id, version_id, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_null (fm_versions_load (notebook, 99, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_null (fm_draft_load (notebook, 99, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
}

/* The database itself refuses, whatever the program above it does. */
static void
test_frozen (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  gint64 version_id = save_version (notebook, blend_id, formula, "start");
  FmDb *db = fm_notebook_begin (notebook, NULL);
  g_autoptr (FmVersionInfo) info = NULL;

  g_assert_false (fm_notebook_end (
      notebook, fm_db_exec (db, "UPDATE versions SET reason = 'other'", &error), NULL));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN);
  info = fm_versions_info (notebook, version_id, NULL);
  g_assert_cmpstr (info->reason, ==, "start");
}

/* One flipped bit, which SQLite does not see. */
static void
test_flipped (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  g_autoptr (FmFormula) loaded = NULL;
  gint64 first_id = save_version (notebook, blend_id, formula, "a bit of this");
  gint64 second_id = save_version (notebook, blend_id, formula, "another");
  g_autofree char *bytes = NULL;
  char *there;
  gsize length;

  g_clear_pointer (&notebook, fm_notebook_unref);
  g_assert_true (g_file_get_contents (self->path, &bytes, &length, NULL));
  there = memmem (bytes, length, "a bit of this", strlen ("a bit of this"));
  g_assert_nonnull (there);
  *there ^= 4;
  g_assert_true (g_file_set_contents (self->path, bytes, (gssize)length, NULL));

  notebook = open_notebook (self->path);
  g_assert_null (fm_versions_load (notebook, first_id, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED);
  g_assert_nonnull (strstr (error->message, "Version 1 is damaged"));
  loaded = fm_versions_load (notebook, second_id, NULL);
  g_assert_true (fm_formula_equal (loaded, formula));
}

/* An edit of the stocked ingredient must not reach into the past. */
static void
test_frozen_composition (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  g_autoptr (FmIngredient) ingredient = new_ingredient ("Shoulder", 12.0);
  g_autoptr (FmIngredient) edited = NULL;
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmFormula) loaded = NULL;
  g_autoptr (GPtrArray) stocked = NULL;
  gint64 version_id;

  g_assert_true (fm_ingredients_save (notebook, ingredient, NULL));
  fm_formula_add (formula, ingredient, 500.0);
  version_id = save_version (notebook, blend_id, formula, "start");

  edited = fm_ingredient_copy (ingredient);
  edited->composition.per_100g[FM_NUTRIENT_FAT] = 25.0;
  edited->price_per_kg = 9.5;
  g_assert_true (fm_ingredients_save (notebook, edited, NULL));

  loaded = fm_versions_load (notebook, version_id, NULL);
  g_assert_true (fm_formula_equal (loaded, formula));
  stocked = fm_ingredients_list (notebook, NULL, NULL);
  g_assert_cmpuint (stocked->len, ==, 1);
  g_assert_true (fm_ingredient_equal (g_ptr_array_index (stocked, 0), edited));
}

static void
test_remove (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  gint64 version_id = save_version (notebook, blend_id, formula, "start");
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (FmVersionInfo) info = NULL;
  g_autoptr (GPtrArray) blends = NULL;

  save_version (notebook, blend_id, formula, "again");
  experiment->version_id = version_id;
  experiment->rating = 7;
  g_assert_true (fm_experiments_save (notebook, experiment, &error));
  g_assert_no_error (error);
  info = fm_versions_info (notebook, version_id, NULL);
  g_assert_cmpuint (info->n_experiments, ==, 1);
  g_assert_cmpfloat (info->mean_rating, ==, 7.0);

  g_assert_false (fm_blends_remove (notebook, blend_id, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN);
  g_assert_true (fm_experiments_remove (notebook, experiment->id, NULL));
  g_assert_true (fm_blends_remove (notebook, blend_id, NULL));
  blends = fm_blends_list (notebook, NULL);
  g_assert_cmpuint (blends->len, ==, 0);
}

static guint
count_found (FmNotebook *notebook, const char *search)
{
  g_autoptr (GPtrArray) found = fm_ingredients_list (notebook, search, NULL);

  return found->len;
}

static void
test_ingredients (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autoptr (FmIngredient) chuck = new_ingredient ("Chuck, grass fed", 15.0);
  g_autoptr (FmIngredient) suet = new_ingredient ("Suet ÉPAIS", 94.0);
  g_autoptr (FmIngredient) bad = new_ingredient ("Bad", -5.0);

  g_assert_true (fm_ingredients_save (notebook, chuck, NULL));
  g_assert_true (fm_ingredients_save (notebook, suet, NULL));
  g_assert_false (fm_ingredients_save (notebook, bad, &error));
  g_assert_nonnull (error);
  g_clear_error (&error);
  g_assert_cmpuint (count_found (notebook, NULL), ==, 2);
  g_assert_cmpuint (count_found (notebook, "fed CHUCK"), ==, 1);
  g_assert_cmpuint (count_found (notebook, "épais"), ==, 1);
  g_assert_cmpuint (count_found (notebook, "%"), ==, 0);
  g_assert_true (fm_ingredients_remove (notebook, suet->id, NULL));
  g_assert_false (fm_ingredients_remove (notebook, suet->id, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
}

/* A draft keeps the entry from going; a frozen version does not. */
static void
test_ingredient_in_use (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autoptr (FmIngredient) suet = new_ingredient ("Suet", 94.0);
  g_autoptr (FmFormula) with = fm_formula_new ();
  g_autoptr (FmFormula) without = fm_formula_new ();
  const gint64 blend_id = fm_blends_add (notebook, "House, coarse", NULL);

  fm_formula_add (with, suet, 100.0);
  g_assert_true (fm_ingredients_save (notebook, suet, NULL));
  g_assert_true (fm_draft_save (notebook, blend_id, with, NULL));
  g_assert_false (fm_ingredients_remove (notebook, suet->id, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE);
  g_assert_nonnull (strstr (error->message, "House, coarse"));
  g_assert_cmpuint (count_found (notebook, NULL), ==, 1);
  g_assert_true (fm_draft_save (notebook, blend_id, without, NULL));
  g_assert_true (fm_ingredients_remove (notebook, suet->id, NULL));
  g_assert_cmpuint (count_found (notebook, NULL), ==, 0);
}

static void
test_settings (Fixture *self, gconstpointer data)
{
  const char *const keys[] = { "page", "paper", NULL };
  const char *const values[] = { "map", "A5" };
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autofree char *value = NULL;

  g_assert_null (fm_notebook_get_setting (notebook, "currency"));
  g_assert_true (fm_notebook_set_setting (notebook, "currency", "EUR", NULL));
  g_assert_true (fm_notebook_set_setting (notebook, "currency", "€", NULL));
  value = fm_notebook_get_setting (notebook, "currency");
  g_assert_cmpstr (value, ==, "€");
  g_assert_true (fm_notebook_set_settings (notebook, keys, values, NULL));
  g_free (value);
  value = fm_notebook_get_setting (notebook, "paper");
  g_assert_cmpstr (value, ==, "A5");
  g_assert_true (fm_notebook_set_setting (notebook, "currency", NULL, NULL));
  g_assert_null (fm_notebook_get_setting (notebook, "currency"));
}

#define N_THREADS 4
#define N_ROUNDS 25

static gpointer
work (gpointer data)
{
  FmNotebook *notebook = data;
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);

  for (int i = 0; i < N_ROUNDS; i++) {
    g_autoptr (GPtrArray) versions = NULL;

    g_assert_cmpint (fm_versions_save (notebook, 1, formula, "round", NULL), >, 0);
    versions = fm_versions_list (notebook, 1, NULL);
    g_assert_nonnull (versions);
    for (guint k = 0; k < versions->len; k++) {
      FmVersionInfo *info = g_ptr_array_index (versions, k);

      g_assert_cmpint (info->number, ==, (int)k + 1);
    }
  }
  return NULL;
}

static void
test_threads (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autoptr (GPtrArray) versions = NULL;
  GThread *threads[N_THREADS];

  g_assert_cmpint (add_blend (notebook, "Shared"), ==, 1);
  for (int i = 0; i < N_THREADS; i++)
    threads[i] = g_thread_new ("work", work, notebook);
  for (int i = 0; i < N_THREADS; i++)
    g_thread_join (threads[i]);
  versions = fm_versions_list (notebook, 1, NULL);
  g_assert_cmpuint (versions->len, ==, N_THREADS * N_ROUNDS);
}

static guint
n_versions (FmNotebook *notebook, gint64 blend_id)
{
  g_autoptr (GPtrArray) versions = fm_versions_list (notebook, blend_id, NULL);

  return versions->len;
}

static void
test_added_versions (Fixture *self, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  gint64 blend_id = add_blend (notebook, "House blend");
  gint64 other_id = add_blend (notebook, "Other blend");
  g_autoptr (FmFormula) formula = new_formula (800.0, 200.0);
  g_autoptr (FmFormula) draft = new_formula (500.0, 500.0);
  g_autoptr (FmFormula) empty = fm_formula_new ();
  g_autoptr (FmFormula) loaded = NULL;
  g_autoptr (GPtrArray) formulas = g_ptr_array_new ();
  g_autoptr (GArray) ids = NULL;
  const char *reasons[] = { "trial 1", "trial 2", NULL };
  gint64 parent_id = save_version (notebook, blend_id, formula, "base");
  gint64 draft_parent_id;

  g_assert_true (fm_draft_save (notebook, blend_id, draft, NULL));
  g_ptr_array_add (formulas, formula);
  g_ptr_array_add (formulas, draft);
  g_assert_null (fm_versions_add (notebook, other_id, parent_id, formulas, reasons, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  formulas->pdata[1] = empty;
  g_assert_null (fm_versions_add (notebook, blend_id, parent_id, formulas, reasons, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
  g_assert_cmpuint (n_versions (notebook, blend_id), ==, 1);
  formulas->pdata[1] = draft;
  ids = fm_versions_add (notebook, blend_id, parent_id, formulas, reasons, NULL);
  g_assert_cmpuint (ids->len, ==, 2);
  g_assert_cmpuint (n_versions (notebook, blend_id), ==, 3);
  loaded = fm_draft_load (notebook, blend_id, &draft_parent_id, NULL);
  g_assert_true (fm_formula_equal (loaded, draft));
  g_assert_cmpint (draft_parent_id, ==, parent_id);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  FIXTURE_TEST ("/versions/blends", test_blends);
  FIXTURE_TEST ("/versions/draft", test_draft);
  FIXTURE_TEST ("/versions/draft-refuses-bad-numbers", test_draft_refuses_bad_numbers);
  FIXTURE_TEST ("/versions/tree", test_tree);
  FIXTURE_TEST ("/versions/added", test_added_versions);
  FIXTURE_TEST ("/versions/refusals", test_refusals);
  FIXTURE_TEST ("/versions/frozen", test_frozen);
  FIXTURE_TEST ("/versions/flipped", test_flipped);
  FIXTURE_TEST ("/versions/frozen-composition", test_frozen_composition);
  FIXTURE_TEST ("/versions/remove", test_remove);
  FIXTURE_TEST ("/versions/ingredients", test_ingredients);
  FIXTURE_TEST ("/versions/ingredient-in-use", test_ingredient_in_use);
  FIXTURE_TEST ("/versions/settings", test_settings);
  FIXTURE_TEST ("/versions/threads", test_threads);
  return g_test_run ();
}
