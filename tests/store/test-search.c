/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-search.c - one search over all that a notebook holds */
#include "log-fixture.h"
#include "store/fm-image.h"
#include "store/fm-search.h"
#include "store/fm-tastings.h"
#include "store/fm-versions.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/search/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)

static FmSearchResult *
search (Fixture *fixture, const char *text)
{
  g_autoptr (GError) error = NULL;
  FmSearchResult *result = fm_search (fixture->notebook, text, 3, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (result);
  return result;
}

/* How much of @kind says @text. */
static guint
count (Fixture *fixture, const char *text, FmFoundKind kind)
{
  g_autoptr (FmSearchResult) result = search (fixture, text);
  guint n = 0;

  for (guint i = 0; i < result->found->len; i++)
    n += ((FmFound *)g_ptr_array_index (result->found, i))->kind == kind;
  return n;
}

static gint64
add_experiment (Fixture *fixture, const char *title, const char *notes, const char *surface)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (GError) error = NULL;

  experiment->version_id = fixture->version_id;
  experiment->made_at = 1740992400;
  experiment->title = g_strdup (title);
  experiment->notes = g_strdup (notes);
  experiment->surface = g_strdup (surface);
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, &error));
  g_assert_no_error (error);
  return experiment->id;
}

static void
test_versions_by_ingredient_note_and_reason (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) brisket = fm_ingredient_new (
      "Beef, brisket, whole, separable lean and fat, trimmed to 1/8 inch fat, all grades, raw",
      FM_INGREDIENT_CUT);
  g_autoptr (GError) error = NULL;

  fm_formula_add (formula, brisket, 500.0);
  formula->brief->notes = g_strdup ("A lunch patty for a Käserei");
  fm_versions_save (fixture->notebook, fixture->blend_id, formula, "More bite", &error);
  g_assert_no_error (error);
  g_autoptr (FmSearchResult) by_cut = search (fixture, "brisk WHOLE");
  g_assert_cmpuint (by_cut->found->len, ==, 1);
  const FmFound *found = g_ptr_array_index (by_cut->found, 0);
  g_assert_cmpint (found->kind, ==, FM_FOUND_VERSION);
  g_assert_cmpint (found->version_number, ==, 2);
  g_assert_cmpstr (found->blend_name, ==, "Blend");
  g_assert_cmpstr (found->title, ==, "More bite");
  g_assert_nonnull (strstr (found->text, "Brisket"));
  g_assert_cmpuint (count (fixture, "bite", FM_FOUND_VERSION), ==, 1);
  g_assert_cmpuint (count (fixture, "kaserei", FM_FOUND_VERSION), ==, 1);
  /* Reason and ingredient together; names of nutrients in the stored text are no find. */
  g_assert_cmpuint (count (fixture, "bite brisket", FM_FOUND_VERSION), ==, 1);
  g_assert_cmpuint (count (fixture, "per_100g", FM_FOUND_VERSION), ==, 0);
  g_assert_cmpuint (count (fixture, "blen", FM_FOUND_BLEND), ==, 1);
}

static void
test_experiments_by_title_note_and_surface (Fixture *fixture, gconstpointer data)
{
  add_experiment (fixture, "Trial one", "Dark crust, 100 % juicy", "Carbon steel pan");
  add_experiment (fixture, "Weißwurst", NULL, "Griddle");
  g_assert_cmpuint (count (fixture, "crust", FM_FOUND_EXPERIMENT), ==, 1);
  g_assert_cmpuint (count (fixture, "GRIDD", FM_FOUND_EXPERIMENT), ==, 1);
  g_assert_cmpuint (count (fixture, "weiß", FM_FOUND_EXPERIMENT), ==, 1);
  /* One word of the notes, one of the surface. */
  g_assert_cmpuint (count (fixture, "juicy steel", FM_FOUND_EXPERIMENT), ==, 1);
  g_assert_cmpuint (count (fixture, "juicy griddle", FM_FOUND_EXPERIMENT), ==, 0);
  /* A surface leads to the version that was cooked on it as well. */
  g_assert_cmpuint (count (fixture, "carbon", FM_FOUND_VERSION), ==, 1);
  /* What a pattern or a query would mean is a letter like any other here. */
  g_assert_cmpuint (count (fixture, "%", FM_FOUND_EXPERIMENT), ==, 0);
  g_assert_cmpuint (count (fixture, "\" OR *", FM_FOUND_EXPERIMENT), ==, 0);
}

static void
test_the_rest_is_found_by_its_words (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmIngredient) own = fm_ingredient_new ("Dry-aged trim", FM_INGREDIENT_TRIM);
  g_autoptr (FmTasting) tasting = fm_tasting_new ();
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_ingredients_save (fixture->notebook, own, &error));
  g_free (tasting->title);
  tasting->title = g_strdup ("Friday panel");
  g_assert_true (fm_tastings_save (fixture->notebook, tasting, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (count (fixture, "aged", FM_FOUND_OWN_ENTRY), ==, 1);
  g_assert_cmpuint (count (fixture, "panel fri", FM_FOUND_TASTING), ==, 1);
}

static void
test_a_kind_is_cut_and_says_so (Fixture *fixture, gconstpointer data)
{
  for (guint i = 0; i < 5; i++)
    add_experiment (fixture, "Trial", NULL, NULL);
  g_autoptr (FmSearchResult) result = search (fixture, "trial");
  g_assert_cmpuint (result->found->len, ==, 3);
  g_assert_true (result->is_cut[FM_FOUND_EXPERIMENT]);
  g_assert_false (result->is_cut[FM_FOUND_VERSION]);
  g_autoptr (FmSearchResult) nothing = search (fixture, " - ");
  g_assert_cmpuint (nothing->found->len, ==, 0);
}

static void
test_a_search_can_be_stopped (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  g_cancellable_cancel (cancellable);
  g_assert_null (fm_search (fixture->notebook, "trim", 3, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("versions-by-ingredient-note-and-reason", test_versions_by_ingredient_note_and_reason);
  ADD ("experiments-by-title-note-and-surface", test_experiments_by_title_note_and_surface);
  ADD ("the-rest-is-found-by-its-words", test_the_rest_is_found_by_its_words);
  ADD ("a-kind-is-cut-and-says-so", test_a_kind_is_cut_and_says_so);
  ADD ("a-search-can-be-stopped", test_a_search_can_be_stopped);
  return g_test_run ();
}
