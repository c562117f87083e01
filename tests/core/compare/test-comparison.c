/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-comparison.c - what stands in which row and column */
#include <math.h>
#include <string.h>

#include "core/compare/fm-comparison-derivation.h"

static FmIngredient *
beef (const char *name, double fat_pct)
{
  FmIngredient *self = fm_ingredient_new (name, FM_INGREDIENT_TRIM);

  self->provenance = FM_PROVENANCE_ANALYSIS;
  self->composition.per_100g[FM_NUTRIENT_FAT] = fat_pct;
  self->composition.per_100g[FM_NUTRIENT_PROTEIN] = 20.0;
  return self;
}

static FmFormula *
blend (FmIngredient *a, double a_g, FmIngredient *b, double b_g)
{
  FmFormula *self = fm_formula_new ();

  fm_formula_add (self, a, a_g);
  if (b != NULL)
    fm_formula_add (self, b, b_g);
  return self;
}

static FmComparison *
two_versions (FmIngredient *lean, FmIngredient *fat)
{
  GPtrArray *items = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);

  g_ptr_array_add (items, fm_compare_item_new_version (
                              1, "One", "1", NULL, blend (lean, 800.0, fat, 200.0), 2, 27.5, 7.5));
  g_ptr_array_add (items, fm_compare_item_new_version (
                              2, "Two", "2", NULL, blend (lean, 500.0, NULL, 0.0), 0, NAN, NAN));
  return fm_comparison_new (items);
}

static void
test_union_of_ingredients (void)
{
  g_autoptr (FmIngredient) lean = beef ("Lean", 5.0);
  g_autoptr (FmIngredient) fat = beef ("Fat", 80.0);
  g_autoptr (FmComparison) comparison = two_versions (lean, fat);
  g_autofree char *key = g_strconcat ("ingredient:", fm_ingredient_identity (fat), NULL);
  const FmCompareRow *row = fm_comparison_find_row (comparison, key);

  g_assert_cmpfloat_with_epsilon (row->values[0], 20.0, 1e-9);
  g_assert_cmpfloat (row->values[1], ==, 0.0);
  row = fm_comparison_find_row (comparison, "fat");
  g_assert_cmpfloat_with_epsilon (row->values[0], 20.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (fm_compare_row_value (row, 1, 0), -15.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (fm_compare_row_value (row, 0, 0), 20.0, 1e-9);
}

/* Each cell tells its masses, and a difference its two values. */
static void
test_derivation (void)
{
  g_autoptr (FmIngredient) lean = beef ("Lean", 5.0);
  g_autoptr (FmIngredient) fat = beef ("Fat", 80.0);
  g_autoptr (FmComparison) comparison = two_versions (lean, fat);
  g_autofree char *key = g_strconcat ("ingredient:", fm_ingredient_identity (fat), NULL);
  const FmCompareRow *fat_row = fm_comparison_find_row (comparison, "fat");
  const FmCompareRow *share_row = fm_comparison_find_row (comparison, key);
  const FmCompareRow *loss_row = fm_comparison_find_row (comparison, "cook_loss");
  g_autofree char *of_fat = fm_comparison_derivation (comparison, fat_row, 0);
  g_autofree char *of_share = fm_comparison_derivation (comparison, share_row, -1);
  g_autofree char *of_loss = fm_comparison_derivation (comparison, loss_row, 0);

  g_assert_nonnull (strstr (of_fat, "200.0 g × 80.000 g per 100 g = 160.000 g"));
  g_assert_nonnull (strstr (of_fat, "Sum 200.000 g ÷ 1000.0 g × 100 = 20.000 g in 100 g"));
  g_assert_nonnull (strstr (of_fat, "Two: 5.000 − 20.000 = -15.000"));
  g_assert_nonnull (strstr (of_share, "200.0 g ÷ 1000.0 g × 100"));
  g_assert_nonnull (strstr (of_loss, "Mean of what was recorded in 2 experiments"));
  g_assert_nonnull (strstr (of_loss, "Two: one of the two is not known"));
}

/* A step that differs says so; a field that nobody plans has no row. */
static void
test_process_in_words (void)
{
  g_autoptr (FmIngredient) lean = beef ("Lean", 5.0);
  GPtrArray *items = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);
  FmFormula *one = blend (lean, 500.0, NULL, 0.0);
  FmFormula *two = blend (lean, 500.0, NULL, 0.0);
  g_autoptr (FmComparison) comparison = NULL;
  g_autofree char *same = NULL;
  g_autofree char *unplanned = NULL;
  const FmCompareRow *row;

  fm_process_set_words (one->process, FM_PROCESS_STEPS, "Chill.\nGrind once.\nForm.");
  fm_process_set_words (two->process, FM_PROCESS_STEPS, "Chill.\nGrind twice.");
  g_ptr_array_add (items, fm_compare_item_new_version (1, "One", "1", NULL, one, 0, NAN, NAN));
  g_ptr_array_add (items, fm_compare_item_new_version (2, "Two", "2", NULL, two, 0, NAN, NAN));
  comparison = fm_comparison_new (items);
  row = fm_comparison_find_row (comparison, "process_step_1");
  g_assert_false (fm_compare_row_texts_differ (row, 2));
  same = fm_compare_row_text (row, 1, 0);
  g_assert_cmpstr (same, ==, "the same");
  row = fm_comparison_find_row (comparison, "process_step_2");
  g_assert_true (fm_compare_row_texts_differ (row, 2));
  g_assert_cmpstr (row->texts[1], ==, "Grind twice.");
  row = fm_comparison_find_row (comparison, "process_step_3");
  unplanned = fm_compare_row_text (row, 1, -1);
  g_assert_cmpstr (unplanned, ==, "— not planned");
  g_assert_true (isnan (fm_compare_row_value (row, 0, -1)));
  g_assert_null (fm_comparison_find_row (comparison, "process_step_4"));
  g_assert_null (fm_comparison_find_row (comparison, "process_surface"));
}

static void
test_lines_of_one_ingredient_add (void)
{
  g_autoptr (FmIngredient) lean = beef ("Lean", 5.0);
  GPtrArray *items = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);
  g_autoptr (FmComparison) comparison = NULL;
  g_autofree char *key = g_strconcat ("ingredient:", fm_ingredient_identity (lean), NULL);

  g_ptr_array_add (items, fm_compare_item_new_version (
                              1, "One", "1", NULL, blend (lean, 100.0, lean, 300.0), 0, NAN, NAN));
  comparison = fm_comparison_new (items);
  g_assert_cmpfloat_with_epsilon (fm_comparison_find_row (comparison, key)->values[0], 100.0, 1e-9);
}

static void
test_unknown_is_said (void)
{
  g_autoptr (FmIngredient) lean = beef ("Lean", 5.0);
  g_autoptr (FmIngredient) fat = beef ("Fat", 80.0);
  g_autoptr (FmComparison) comparison = NULL;
  const FmCompareRow *row;
  g_autofree char *partial = NULL;
  g_autofree char *unknown = NULL;
  g_autofree char *difference = NULL;

  lean->composition.per_100g[FM_NUTRIENT_IRON] = 2.0;
  lean->composition.per_100g[FM_NUTRIENT_SODIUM] = NAN;
  comparison = two_versions (lean, fat);
  row = fm_comparison_find_row (comparison, "nutrient_iron");
  partial = fm_compare_row_text (row, 0, -1);
  g_assert_cmpstr (partial, ==, "≥ 1.60");
  difference = fm_compare_row_text (row, 1, 0);
  g_assert_cmpstr (difference, ==, "— not known");
  unknown = fm_compare_row_text (fm_comparison_find_row (comparison, "nutrient_sodium"), 0, -1);
  g_assert_cmpstr (unknown, ==, "— not known");
  g_assert_true (isnan (fm_comparison_find_row (comparison, "rating")->values[1]));
  g_assert_cmpfloat (fm_comparison_find_row (comparison, "rating")->values[0], ==, 7.5);
}

static void
test_signs (void)
{
  double values[] = { 20.0, 20.6, 19.0, 20.04 };
  const char *expected[] = { "20.0", "+0.6", "−1.0", "0.0" };
  FmCompareRow row = { .unit = "%", .decimals = 1, .values = values, .at_least = values };

  for (guint i = 0; i < G_N_ELEMENTS (values); i++) {
    g_autofree char *text = fm_compare_row_text (&row, i, 0);

    g_assert_cmpstr (text, ==, expected[i]);
  }
}

static FmExperiment *
experiment_of (const FmFormula *formula, gboolean complete)
{
  FmExperiment *self = fm_experiment_new ();
  FmPattyMass patty = { 180.0, 126.0 };

  self->id = 7;
  self->rating = 8;
  g_array_append_val (self->patties, patty);
  fm_experiment_add_weighing (self, fm_formula_line (formula, 0)->id, "Lean", 800.0, 700.0);
  fm_experiment_add_weighing (self, fm_formula_line (formula, 1)->id, "Fat", 200.0,
                              complete ? 300.0 : NAN);
  return self;
}

static void
test_experiment_as_weighed (void)
{
  g_autoptr (FmIngredient) lean = beef ("Lean", 5.0);
  g_autoptr (FmIngredient) fat = beef ("Fat", 80.0);

  for (int complete = 0; complete < 2; complete++) {
    FmFormula *formula = blend (lean, 800.0, fat, 200.0);
    FmExperiment *experiment = experiment_of (formula, complete);
    g_autoptr (FmCompareItem) item =
        fm_compare_item_new_experiment ("Trial", "T", NULL, formula, experiment);

    g_assert_cmpint (item->as_weighed, ==, complete);
    g_assert_cmpfloat_with_epsilon (item->analysis->fat_pct, complete ? 27.5 : 20.0, 1e-9);
    g_assert_cmpfloat_with_epsilon (item->cook_loss_pct, 30.0, 1e-9);
    g_assert_cmpfloat (item->rating, ==, 8.0);
  }
}

/* Salt strewn on counts in the sodium of that making: 1 % brings 387.58 mg to 100 g (SR28, 02047).
 */
static void
test_salt_on_the_surface (void)
{
  const double recorded_pct[] = { NAN, 1.0, 0.0 };
  const double sodium_mg[] = { 60.0 + 0.5 * 387.58, 60.0 + 387.58, 60.0 };

  for (guint i = 0; i < G_N_ELEMENTS (recorded_pct); i++) {
    g_autoptr (FmIngredient) lean = beef ("Lean", 5.0);
    GPtrArray *items = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);
    FmExperiment *experiment = fm_experiment_new ();
    g_autoptr (FmComparison) comparison = NULL;

    lean->composition.per_100g[FM_NUTRIENT_SODIUM] = 60.0;
    FmFormula *formula = blend (lean, 800.0, NULL, 0.0);
    formula->brief->surface_salt_pct = 0.5;
    experiment->surface_salt_pct = recorded_pct[i];
    g_ptr_array_add (items,
                     fm_compare_item_new_experiment ("Trial", "T", NULL, formula, experiment));
    comparison = fm_comparison_new (items);
    g_assert_cmpfloat_with_epsilon (
        fm_comparison_find_row (comparison, "nutrient_sodium")->values[0], sodium_mg[i], 1e-9);
  }
}

static void
test_empty_formula (void)
{
  GPtrArray *items = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);
  g_autoptr (FmComparison) comparison = NULL;

  g_ptr_array_add (
      items, fm_compare_item_new_version (1, "Empty", "E", NULL, fm_formula_new (), 0, NAN, NAN));
  comparison = fm_comparison_new (items);
  g_assert_true (isnan (fm_comparison_find_row (comparison, "fat")->values[0]));
  g_assert_null (fm_comparison_find_row (comparison, "peak_core"));
  for (guint i = 0; i < comparison->rows->len; i++) {
    g_autofree char *text = fm_compare_row_text (g_ptr_array_index (comparison->rows, i), 0, -1);

    g_assert_cmpuint (strlen (text), >, 0);
  }
}

static void
test_liking_in_blind_tastings (void)
{
  g_autoptr (FmIngredient) lean = beef ("Lean", 5.0);
  g_autoptr (FmIngredient) fat = beef ("Fat", 80.0);
  g_autoptr (FmComparison) comparison = two_versions (lean, fat);
  GPtrArray *items = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);
  g_autofree char *unknown = NULL;

  unknown = fm_compare_row_text (fm_comparison_find_row (comparison, "liking"), 0, -1);
  g_assert_cmpstr (unknown, ==, "— not known");
  g_assert_cmpfloat (fm_comparison_find_row (comparison, "tasters")->values[0], ==, 0.0);
  g_clear_pointer (&comparison, fm_comparison_free);

  g_ptr_array_add (items, fm_compare_item_new_version (
                              1, "One", "1", NULL, blend (lean, 100.0, NULL, 0.0), 0, NAN, NAN));
  fm_compare_item_set_liking (items->pdata[0], 6.75, 8);
  comparison = fm_comparison_new (items);
  g_assert_cmpfloat (fm_comparison_find_row (comparison, "liking")->values[0], ==, 6.75);
  g_assert_cmpfloat (fm_comparison_find_row (comparison, "tasters")->values[0], ==, 8.0);
}

/* Rows that read the same go, also where the numbers differ by less than is shown. */
static void
test_only_what_differs (void)
{
  g_autoptr (FmIngredient) lean = beef ("Lean", 5.0);
  g_autoptr (FmIngredient) almost = beef ("Almost", 5.0004);
  GPtrArray *items = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);
  g_autoptr (FmComparison) comparison = NULL;
  g_autoptr (GPtrArray) rows = NULL;

  g_ptr_array_add (items, fm_compare_item_new_version (
                              1, "One", "1", NULL, blend (lean, 500.0, NULL, 0.0), 0, NAN, NAN));
  g_ptr_array_add (
      items, fm_compare_item_new_draft (3, "Two", "2", NULL, blend (almost, 700.0, NULL, 0.0)));
  comparison = fm_comparison_new (items);
  rows = fm_comparison_shown_rows (comparison, TRUE);
  g_assert_false (g_ptr_array_find (rows, fm_comparison_find_row (comparison, "fat"), NULL));
  g_assert_false (g_ptr_array_find (rows, fm_comparison_find_row (comparison, "rating"), NULL));
  g_assert_true (g_ptr_array_find (rows, fm_comparison_find_row (comparison, "batch"), NULL));
  g_ptr_array_unref (rows);
  rows = fm_comparison_shown_rows (comparison, FALSE);
  g_assert_cmpuint (rows->len, ==, comparison->rows->len);
}

/* What a draft cannot have is said, and what its neighbour has stands beside it. */
static void
test_findings (void)
{
  g_autoptr (FmIngredient) lean = beef ("Lean", 5.0);
  GPtrArray *items = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);
  FmCompareItem *made = fm_compare_item_new_version (1, "One", "1", NULL,
                                                     blend (lean, 500.0, NULL, 0.0), 2, NAN, 7.0);
  g_autoptr (FmComparison) comparison = NULL;

  fm_compare_item_set_findings (made, g_strdup ("Crumbly"), NULL, 2);
  g_ptr_array_add (items, made);
  g_ptr_array_add (items,
                   fm_compare_item_new_draft (3, "Two", "2", NULL, blend (lean, 700.0, NULL, 0.0)));
  comparison = fm_comparison_new (items);
  const FmCompareRow *notes = fm_comparison_find_row (comparison, "notes");
  const FmCompareRow *photos = fm_comparison_find_row (comparison, FM_COMPARE_PHOTOS_KEY);
  g_autofree char *of_made = fm_compare_row_text (notes, 0, -1);
  g_autofree char *of_draft = fm_compare_row_text (notes, 1, -1);
  g_autofree char *n_photos = fm_compare_row_text (photos, 0, -1);
  const FmCompareRow *rating = fm_comparison_find_row (comparison, "rating");
  g_autofree char *why = fm_comparison_derivation (comparison, rating, -1);

  g_assert_cmpstr (of_made, ==, "Crumbly");
  g_assert_cmpstr (of_draft, ==, "— none");
  g_assert_cmpstr (n_photos, ==, "2 photos");
  g_assert_null (fm_comparison_find_row (comparison, "tastings"));
  g_assert_nonnull (strstr (why, "Only a saved version has experiments."));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/comparison/union-of-ingredients", test_union_of_ingredients);
  g_test_add_func ("/comparison/only-what-differs", test_only_what_differs);
  g_test_add_func ("/comparison/findings", test_findings);
  g_test_add_func ("/comparison/derivation", test_derivation);
  g_test_add_func ("/comparison/process-in-words", test_process_in_words);
  g_test_add_func ("/comparison/lines-of-one-ingredient-add", test_lines_of_one_ingredient_add);
  g_test_add_func ("/comparison/unknown-is-said", test_unknown_is_said);
  g_test_add_func ("/comparison/signs", test_signs);
  g_test_add_func ("/comparison/experiment-as-weighed", test_experiment_as_weighed);
  g_test_add_func ("/comparison/salt-on-the-surface", test_salt_on_the_surface);
  g_test_add_func ("/comparison/empty-formula", test_empty_formula);
  g_test_add_func ("/comparison/liking-in-blind-tastings", test_liking_in_blind_tastings);
  return g_test_run ();
}
