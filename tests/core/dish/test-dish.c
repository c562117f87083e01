/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-dish.c - a serving: what is eaten, what went in, and what is not known */
#include "core/dish/fm-dish.h"

#include <string.h>

#include "blends.h"
#include "core/base/fm-error.h"

static FmIngredient *
new_stuff (const char *name, FmAllergenSet allergens, double price_per_kg)
{
  FmIngredient *stuff = ingredient_with_fat (name, 4.0);

  stuff->kind = FM_INGREDIENT_OTHER;
  stuff->composition.per_100g[FM_NUTRIENT_SODIUM] = 500.0;
  stuff->allergens_known = TRUE;
  stuff->allergens = allergens;
  stuff->price_per_kg = price_per_kg;
  return stuff;
}

/* 60 g of bun and 20 g of a sauce that is a formula of its own, half of it oil. */
static FmDish *
new_dish (const FmFormula *patty)
{
  FmDish *dish = fm_dish_new (patty->brief);
  g_autoptr (FmIngredient) bun = new_stuff ("Bun", FM_ALLERGEN_BIT (FM_ALLERGEN_WHEAT), 5.0);
  g_autoptr (FmIngredient) egg = new_stuff ("Yolk", FM_ALLERGEN_BIT (FM_ALLERGEN_EGGS), 8.0);
  g_autoptr (FmIngredient) oil = new_stuff ("Oil", 0, NAN);
  FmFormula *sauce = fm_formula_new ();

  fm_formula_add (sauce, egg, 50.0);
  fm_formula_add (sauce, oil, 50.0);
  fm_dish_add_ingredient (dish, FM_DISH_BUN, bun, 60.0);
  fm_dish_add_formula (dish, FM_DISH_SAUCE, "Sauce (invented), version 1", sauce, 20.0);
  dish->n_patties = 2;
  dish->patty_raw_g = 100.0;
  dish->cook_yield_pct = 75.0;
  return dish;
}

static void
test_masses (void)
{
  g_autoptr (FmFormula) patty = three_line_blend ();
  g_autoptr (FmDish) dish = new_dish (patty);
  g_autoptr (FmDishSum) sum = fm_dish_sum_new (dish, patty, "Blend, version 1", NULL);

  assert_near (sum->cooked_g, 150.0, 1e-9);
  assert_near (sum->total_g, 230.0, 1e-9);
  assert_near (sum->eaten->brief->patty_mass_g, 230.0, 1e-9);
  g_assert_cmpstr (name_of (sum->eaten, 0), ==, "Blend, version 1, cooked");
  assert_near (mass_of (sum->eaten, 0), 150.0, 1e-9);
  /* The list is of what goes in: 200 g of raw meat. */
  assert_near (mass_of (sum->used, 0), 100.0, 1e-9);
  assert_near (fm_formula_total_g (sum->used), 280.0, 1e-9);
}

/* Prices of three lines and of the oil are not known: the least that it costs. */
static void
test_costs_and_allergens (void)
{
  g_autoptr (FmFormula) patty = three_line_blend ();
  g_autoptr (FmDish) dish = new_dish (patty);
  g_autoptr (FmDishSum) sum = fm_dish_sum_new (dish, patty, "Blend", NULL);

  assert_near (sum->cost, 0.060 * 5.0 + 0.010 * 8.0, 1e-9);
  g_assert_cmpuint (g_strv_length (sum->without_price), ==, 4);
  g_assert_cmpuint (sum->allergens, ==,
                    FM_ALLERGEN_BIT (FM_ALLERGEN_WHEAT) | FM_ALLERGEN_BIT (FM_ALLERGEN_EGGS));
  g_assert_cmpuint (g_strv_length (sum->not_stated), ==, 3);
  g_assert_cmpstr (sum->not_stated[0], ==, "Lean");
}

/* No pair of the dataset tells of an animal that nobody stated. */
static void
test_unknown (void)
{
  g_autoptr (FmFormula) patty = three_line_blend ();
  g_autoptr (FmDish) dish = new_dish (patty);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmDishSum) sum = fm_dish_sum_new (dish, patty, "Blend", NULL);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (sum->eaten);

  g_assert_true (isnan (fm_analysis_value (analysis, FM_NUTRIENT_SODIUM)));
  assert_near (analysis->amounts[FM_NUTRIENT_SODIUM].covered_pct, 100.0 * 80.0 / 230.0, 1e-9);
  dish->cook_yield_pct = NAN;
  g_assert_null (fm_dish_sum_new (dish, patty, "Blend", &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE);
}

/* Beef by the dataset's pairs: what the patty keeps per 100 g cooked is what the serving holds. */
static void
test_predicted (void)
{
  g_autoptr (FmFormula) patty = fm_formula_new ();
  g_autoptr (FmIngredient) beef = ingredient_with_fat ("Beef", 20.0);
  g_autoptr (FmDish) dish = NULL;

  beef->species = FM_SPECIES_BEEF;
  beef->composition.per_100g[FM_NUTRIENT_WATER] = 61.94;
  beef->composition.per_100g[FM_NUTRIENT_PROTEIN] = 17.17;
  beef->composition.per_100g[FM_NUTRIENT_ASH] = 0.87;
  beef->composition.per_100g[FM_NUTRIENT_CARBOHYDRATE] = 0.0;
  beef->composition.per_100g[FM_NUTRIENT_ENERGY_KCAL] = 254.0;
  fm_formula_add (patty, beef, 1000.0);
  dish = fm_dish_new (patty->brief);
  g_autoptr (FmAnalysis) raw = fm_analysis_new (patty);
  g_autoptr (FmCooked) cooked =
      fm_cooked_new (raw, fm_formula_species (patty), dish->method, NAN, NULL);
  g_autoptr (FmDishSum) sum = fm_dish_sum_new (dish, patty, "Blend", NULL);
  g_autoptr (FmAnalysis) eaten = fm_analysis_new (sum->eaten);

  assert_near (sum->cooked_g, dish->patty_raw_g * cooked->yield_pct / 100.0, 1e-9);
  assert_near (fm_analysis_value (eaten, FM_NUTRIENT_PROTEIN),
               cooked->amounts[FM_NUTRIENT_PROTEIN].known_g_per_100g, 1e-9);
  g_assert_nonnull (sum->basis);
}

static void
test_bad_figures (void)
{
  g_autoptr (FmFormula) patty = three_line_blend ();
  g_autoptr (FmDish) dish = new_dish (patty);
  g_autoptr (GError) error = NULL;

  ((FmDishPart *)g_ptr_array_index (dish->parts, 0))->mass_g = NAN;
  g_assert_null (fm_dish_sum_new (dish, patty, "Blend", &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_assert_nonnull (strstr (error->message, "Bun"));
  g_autoptr (FmDish) copy = new_dish (patty);
  copy->n_patties = 0;
  g_assert_false (fm_dish_check (copy, NULL));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/dish/masses", test_masses);
  g_test_add_func ("/dish/costs-and-allergens", test_costs_and_allergens);
  g_test_add_func ("/dish/unknown", test_unknown);
  g_test_add_func ("/dish/predicted", test_predicted);
  g_test_add_func ("/dish/bad-figures", test_bad_figures);
  return g_test_run ();
}
