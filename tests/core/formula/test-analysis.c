/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-analysis.c - what a formula is made of, with its unknowns */
#include "core/formula/fm-analysis.h"
#include "core/formula/fm-gaps.h"

#include "blends.h"

static FmAmount
amount_of (const FmAnalysis *analysis, FmNutrient nutrient)
{
  return analysis->amounts[nutrient];
}

static FmIngredient *
ingredient_at (const FmFormula *formula, guint index)
{
  return fm_formula_line (formula, index)->ingredient;
}

static void
test_fat_of_a_blend (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  assert_near (analysis->total_g, 1000.0, 1e-9);
  assert_near (analysis->fat_pct, 32.0, 1e-9);
  assert_near (analysis->lean_pct, 68.0, 1e-9);
  assert_near (analysis->line_fat_g[2], 180.0, 1e-9);
  assert_near (analysis->line_fat_share_pct[2], 56.25, 1e-9);
  assert_near (analysis->line_share_pct[1], 30.0, 1e-9);
  g_assert_true (isnan (analysis->fat_u_pct));
  g_assert_true (isnan (analysis->cost_per_kg));
}

static void
test_unknown_is_never_zero (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  ingredient_at (formula, 0)->composition.per_100g[FM_NUTRIENT_SODIUM] = 60.0;
  ingredient_at (formula, 1)->composition.per_100g[FM_NUTRIENT_SODIUM] = 70.0;
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  assert_near (amount_of (analysis, FM_NUTRIENT_SODIUM).known_g_per_100g, 51.0, 1e-9);
  assert_near (amount_of (analysis, FM_NUTRIENT_SODIUM).covered_pct, 80.0, 1e-9);
  g_assert_true (isnan (fm_analysis_value (analysis, FM_NUTRIENT_SODIUM)));
  g_assert_true (isnan (amount_of (analysis, FM_NUTRIENT_ZINC).known_g_per_100g));
  g_assert_cmpfloat (amount_of (analysis, FM_NUTRIENT_ZINC).covered_pct, ==, 0.0);
}

static void
test_missing_names (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  ingredient_at (formula, 1)->composition.per_100g[FM_NUTRIENT_SODIUM] = 70.0;
  add_line (formula, "Lean", 12.0, 50.0);
  add_line (formula, "Left out", 12.0, 0.0);
  g_auto (GStrv) missing = fm_analysis_missing (formula, FM_NUTRIENT_SODIUM);
  /* Another ingredient of the same name is named apart. */
  g_assert_cmpuint (g_strv_length (missing), ==, 3);
  g_assert_cmpstr (missing[0], ==, "Lean");
  g_assert_cmpstr (missing[1], ==, "Backfat");
  g_assert_cmpstr (missing[2], ==, "Lean (2)");
  g_auto (GStrv) none = fm_analysis_missing (formula, FM_NUTRIENT_FAT);
  g_assert_cmpuint (g_strv_length (none), ==, 0);
}

static void
test_ingredient_without_analysis (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  add_line (formula, "Mystery trim", NAN, 100.0);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  g_assert_true (isnan (analysis->fat_pct));
  g_assert_true (isnan (analysis->lean_pct));
  g_assert_true (isnan (analysis->fat_u_pct));
  g_assert_true (isnan (analysis->line_fat_g[3]));
  g_assert_true (isnan (analysis->line_fat_share_pct[3]));
  assert_near (analysis->line_fat_share_pct[2], 56.25, 1e-9);
  assert_near (amount_of (analysis, FM_NUTRIENT_FAT).known_g_per_100g, 320.0 / 11.0, 1e-9);
}

static void
test_weightless_unknown_does_not_count (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  add_line (formula, "Mystery trim", NAN, 0.0);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  assert_near (analysis->fat_pct, 32.0, 1e-9);
}

static void
test_nothing_to_weigh (void)
{
  g_autoptr (FmFormula) empty = fm_formula_new ();
  g_autoptr (FmAnalysis) no_lines = fm_analysis_new (empty);
  g_assert_true (isnan (no_lines->fat_pct));
  add_line (empty, "Lean", 10.0, 0.0);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (empty);
  g_assert_cmpfloat (analysis->total_g, ==, 0.0);
  g_assert_true (isnan (analysis->fat_pct));
  g_assert_true (isnan (analysis->declared_fat_pct));
  g_assert_true (isnan (analysis->cost_per_kg));
  g_assert_true (isnan (analysis->line_share_pct[0]));
  for (int i = 0; i < FM_N_TARGETS; i++)
    g_assert_true (isnan (fm_analysis_target_value (analysis, empty->brief, (FmTargetKind)i)));
}

static void
test_declared_beside_analysed (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  add_line (formula, "Trim", 23.0, 500.0);
  add_line (formula, "Supplier's trim", NAN, 500.0);
  ingredient_at (formula, 0)->declared_fat_pct = 20.0;
  ingredient_at (formula, 1)->declared_fat_pct = 30.0;
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  assert_near (analysis->fat_pct, 26.5, 1e-9);
  assert_near (analysis->declared_fat_pct, 25.0, 1e-9);
}

static void
test_uncertainty_of_fat (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  add_line (formula, "A", 20.0, 300.0);
  add_line (formula, "B", 20.0, 400.0);
  ingredient_at (formula, 0)->fat_u_g_per_100g = 1.0;
  ingredient_at (formula, 1)->fat_u_g_per_100g = 1.0;
  g_autoptr (FmAnalysis) apart = fm_analysis_new (formula);
  assert_near (apart->fat_u_pct, 5.0 / 7.0, 1e-12);

  add_line (formula, "C", 20.0, 1.0);
  g_autoptr (FmAnalysis) unstated = fm_analysis_new (formula);
  g_assert_true (isnan (unstated->fat_u_pct));
  fm_formula_remove (formula, 2);

  fm_formula_set_ingredient (formula, 1, ingredient_at (formula, 0));
  g_autoptr (FmAnalysis) same = fm_analysis_new (formula);
  assert_near (same->fat_u_pct, 1.0, 1e-12);
}

static void
test_cost_over_edible_portion (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  add_line (formula, "Boned", 20.0, 500.0);
  add_line (formula, "Bone-in", 20.0, 500.0);
  ingredient_at (formula, 0)->price_per_kg = 10.0;
  g_autoptr (FmAnalysis) unpriced = fm_analysis_new (formula);
  g_assert_true (isnan (unpriced->cost_per_kg));
  assert_near (unpriced->known_cost_per_kg, 5.0, 1e-12);
  assert_near (unpriced->cost_covered_pct, 50.0, 1e-12);
  g_auto (GStrv) lacking = fm_analysis_unpriced (formula);
  g_assert_cmpstr (lacking[0], ==, "Bone-in");
  g_assert_null (lacking[1]);
  g_autofree char *gaps = fm_gaps_text (formula, unpriced);
  g_assert_nonnull (strstr (gaps, "Cost: known for 50 % of the mass, not for Bone-in."));
  ingredient_at (formula, 1)->price_per_kg = 6.0;
  ingredient_at (formula, 1)->ep_yield_pct = 75.0;
  g_autoptr (FmAnalysis) priced = fm_analysis_new (formula);
  assert_near (priced->cost_per_kg, 9.0, 1e-12);
  assert_near (fm_analysis_target_value (priced, formula->brief, FM_TARGET_COST), 1.62, 1e-12);
}

static void
test_gaps_are_told_once (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  for (guint i = 0; i < 3; i++) {
    FmComposition *composition = &ingredient_at (formula, i)->composition;
    composition->per_100g[FM_NUTRIENT_PROTEIN] = i < 2 ? 18.0 : NAN;
    composition->per_100g[FM_NUTRIENT_WATER] = i < 2 ? 60.0 : NAN;
    composition->per_100g[FM_NUTRIENT_ENERGY_KCAL] = 200.0;
  }
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  g_autofree char *expected = g_strdup_printf (
      "Protein, Water: known for 80 %% of the mass, not for %s.", ingredient_at (formula, 2)->name);
  g_autofree char *text = fm_gaps_text (formula, analysis);
  g_assert_cmpstr (text, ==, expected);
  /* Nobody has a price: that is no gap but a notebook without prices. */
  g_assert_true (isnan (analysis->known_cost_per_kg));
  g_assert_cmpfloat (analysis->cost_covered_pct, ==, 0.0);
}

static void
test_targets_per_patty (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  add_line (formula, "Chuck", 20.0, 500.0);
  FmComposition *composition = &ingredient_at (formula, 0)->composition;
  composition->per_100g[FM_NUTRIENT_SODIUM] = 70.0;
  composition->per_100g[FM_NUTRIENT_ENERGY_KCAL] = 254.0;
  composition->per_100g[FM_NUTRIENT_SATURATED_FAT] = 7.5;
  composition->per_100g[FM_NUTRIENT_PROTEIN] = 17.0;
  formula->brief->patty_mass_g = 200.0;
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  const FmBrief *brief = formula->brief;
  assert_near (fm_analysis_target_value (analysis, brief, FM_TARGET_FAT_PCT), 20.0, 1e-9);
  assert_near (fm_analysis_target_value (analysis, brief, FM_TARGET_PROTEIN_PCT), 17.0, 1e-9);
  assert_near (fm_analysis_target_value (analysis, brief, FM_TARGET_SODIUM_MG), 140.0, 1e-9);
  assert_near (fm_analysis_target_value (analysis, brief, FM_TARGET_ENERGY_KCAL), 508.0, 1e-9);
  assert_near (fm_analysis_target_value (analysis, brief, FM_TARGET_SATURATED_FAT_G), 15.0, 1e-9);
  g_assert_true (isnan (fm_analysis_target_value (analysis, brief, FM_TARGET_MOISTURE_PCT)));
}

/* 1.5 % of 200 g are 3 g of salt, and 100 g of it hold 38,758 mg of sodium (SR28, row 02047). */
static void
test_salt_on_the_surface (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  add_line (formula, "Chuck", 20.0, 500.0);
  ingredient_at (formula, 0)->composition.per_100g[FM_NUTRIENT_SODIUM] = 70.0;
  formula->brief->patty_mass_g = 200.0;
  formula->brief->surface_salt_pct = 1.5;
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  assert_near (fm_analysis_target_value (analysis, formula->brief, FM_TARGET_SODIUM_MG),
               140.0 + 3.0 * 387.58, 1e-9);
  assert_near (analysis->fat_pct, 20.0, 1e-12);
  ingredient_at (formula, 0)->composition.per_100g[FM_NUTRIENT_SODIUM] = NAN;
  g_autoptr (FmAnalysis) unknown = fm_analysis_new (formula);
  g_assert_true (isnan (fm_analysis_value (unknown, FM_NUTRIENT_SODIUM)));
}

static void
assert_lean_point (double fat_pct, const char *expected)
{
  g_autofree char *text = fm_lean_point_format (fat_pct);
  g_assert_cmpstr (text, ==, expected);
}

static void
test_lean_point (void)
{
  assert_lean_point (22.0, "78/22");
  assert_lean_point (21.5, "78/22");
  assert_lean_point (21.49, "79/21");
  assert_lean_point (0.0, "100/0");
  assert_lean_point (100.0, "0/100");
  assert_lean_point (NAN, "—");
  assert_lean_point (-3.0, "—");
  assert_lean_point (INFINITY, "—");
}

/* Water, protein, fat, ash and carbohydrate that add up to 100 g. */
static void
fill_closed_composition (FmComposition *composition, GRand *rand)
{
  const FmNutrient parts[] = { FM_NUTRIENT_WATER, FM_NUTRIENT_PROTEIN, FM_NUTRIENT_FAT,
                               FM_NUTRIENT_ASH, FM_NUTRIENT_CARBOHYDRATE };
  double sum = 0.0;
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    sum += composition->per_100g[parts[i]] = g_rand_double_range (rand, 0.1, 50.0);
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    composition->per_100g[parts[i]] *= 100.0 / sum;
}

static FmFormula *
random_formula (GRand *rand)
{
  FmFormula *formula = fm_formula_new ();
  int n = g_rand_int_range (rand, 1, 31);
  for (int i = 0; i < n; i++) {
    g_autoptr (FmIngredient) ingredient = fm_ingredient_new ("Random", FM_INGREDIENT_CUT);
    fill_closed_composition (&ingredient->composition, rand);
    fm_formula_add (formula, ingredient, pow (10.0, g_rand_double_range (rand, -2.0, 5.0)));
  }
  return formula;
}

static void
assert_balance (const FmFormula *formula)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  double shares = 0.0, fat_shares = 0.0, fat_g = 0.0, low = 100.0, high = 0.0;
  for (guint i = 0; i < analysis->n_lines; i++) {
    double fat = fm_ingredient_fat_g_per_100g (ingredient_at (formula, i));
    low = MIN (low, fat);
    high = MAX (high, fat);
    shares += analysis->line_share_pct[i];
    fat_shares += analysis->line_fat_share_pct[i];
    fat_g += analysis->line_fat_g[i];
  }
  assert_near (shares, 100.0, 1e-9);
  assert_near (fat_shares, 100.0, 1e-9);
  assert_near (fat_g, analysis->total_g * analysis->fat_pct / 100.0, fat_g * 1e-12);
  g_assert_cmpfloat (analysis->fat_pct, >=, low - 1e-9);
  g_assert_cmpfloat (analysis->fat_pct, <=, high + 1e-9);
  double closed = fm_analysis_value (analysis, FM_NUTRIENT_WATER) +
                  fm_analysis_value (analysis, FM_NUTRIENT_PROTEIN) +
                  fm_analysis_value (analysis, FM_NUTRIENT_FAT) +
                  fm_analysis_value (analysis, FM_NUTRIENT_ASH) +
                  fm_analysis_value (analysis, FM_NUTRIENT_CARBOHYDRATE);
  assert_near (closed, 100.0, 1e-9);
}

static void
test_mass_balance_closes (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1009);
  for (int i = 0; i < 1000; i++) {
    g_autoptr (FmFormula) formula = random_formula (rand);
    assert_balance (formula);
  }
}

static void
test_scaling_changes_no_share (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (31);
  for (int i = 0; i < 200; i++) {
    g_autoptr (FmFormula) formula = random_formula (rand);
    g_autoptr (FmAnalysis) before = fm_analysis_new (formula);
    g_assert_true (fm_formula_scale_to (formula, 1234.5, NULL));
    g_autoptr (FmAnalysis) after = fm_analysis_new (formula);
    assert_near (after->total_g, 1234.5, 1e-8);
    assert_near (after->fat_pct, before->fat_pct, 1e-9);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/analysis/fat-of-a-blend", test_fat_of_a_blend);
  g_test_add_func ("/analysis/unknown-is-never-zero", test_unknown_is_never_zero);
  g_test_add_func ("/analysis/missing-names", test_missing_names);
  g_test_add_func ("/analysis/ingredient-without-analysis", test_ingredient_without_analysis);
  g_test_add_func ("/analysis/weightless-unknown", test_weightless_unknown_does_not_count);
  g_test_add_func ("/analysis/nothing-to-weigh", test_nothing_to_weigh);
  g_test_add_func ("/analysis/declared-beside-analysed", test_declared_beside_analysed);
  g_test_add_func ("/analysis/uncertainty-of-fat", test_uncertainty_of_fat);
  g_test_add_func ("/analysis/gaps-are-told-once", test_gaps_are_told_once);
  g_test_add_func ("/analysis/cost-over-edible-portion", test_cost_over_edible_portion);
  g_test_add_func ("/analysis/targets-per-patty", test_targets_per_patty);
  g_test_add_func ("/analysis/salt-on-the-surface", test_salt_on_the_surface);
  g_test_add_func ("/analysis/lean-point", test_lean_point);
  g_test_add_func ("/analysis/mass-balance-closes", test_mass_balance_closes);
  g_test_add_func ("/analysis/scaling-changes-no-share", test_scaling_changes_no_share);
  return g_test_run ();
}
