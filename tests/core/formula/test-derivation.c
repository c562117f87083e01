/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-derivation.c - the text under a figure adds up to the figure and hides no gap */
#include "core/formula/fm-derivation.h"

#include <string.h>

#include "blends.h"

static void
assert_holds (const char *text, const char *part)
{
  g_test_message ("%s", text);
  if (strstr (text, part) == NULL)
    g_error ("\"%s\" does not stand in it", part);
}

static FmIngredient *
ingredient_at (const FmFormula *formula, guint index)
{
  return fm_formula_line (formula, index)->ingredient;
}

static void
test_fat (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  FmIngredient *lean = ingredient_at (formula, 0);

  lean->provenance = FM_PROVENANCE_DATASET;
  lean->source_ref = g_strdup ("23562");
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  g_autofree char *text = fm_derivation_nutrient (formula, analysis, FM_NUTRIENT_FAT);
  assert_holds (text, "Lean (USDA SR28, row 23562): 500.0 g × 10.000 g per 100 g = 50.000 g");
  assert_holds (text, "Plate (Own laboratory analysis): 300.0 g × 30.000 g per 100 g = 90.000 g");
  assert_holds (text, "Sum 320.000 g ÷ 1000.0 g × 100 = 32.000 g in 100 g");
  assert_holds (text, "One of them is not known, so that of the blend is not known.");
  assert_holds (text, "Release 28");

  g_autofree char *lean_text = fm_derivation_lean (formula, analysis);
  assert_holds (lean_text, "100 − 32.00 = 68.00 %");
  assert_holds (lean_text, "68/32");
}

static void
test_gap_and_surface_salt (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();

  ingredient_at (formula, 0)->composition.per_100g[FM_NUTRIENT_SODIUM] = 60.0;
  ingredient_at (formula, 1)->composition.per_100g[FM_NUTRIENT_SODIUM] = 70.0;
  formula->brief->surface_salt_pct = 0.5;
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  g_autofree char *text = fm_derivation_nutrient (formula, analysis, FM_NUTRIENT_SODIUM);
  assert_holds (text, "Backfat (Own laboratory analysis): 200.0 g, not known");
  assert_holds (text, "0.50 g × 387.58 mg per g = 193.790 mg");
  /* 300 + 210 = 510 mg in 1000 g, and the salt */
  assert_holds (text,
                "Sum of the ingredients 510.000 mg ÷ 1000.0 g × 100, and the salt: 244.79 mg");
  assert_holds (text, "Not known for Backfat: the figure covers 80.0 % of the mass");

  g_autofree char *nothing = fm_derivation_nutrient (formula, analysis, FM_NUTRIENT_ZINC);
  assert_holds (nothing, "Nothing of it is known");
}

static void
test_cost (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();

  add_line (formula, "Chuck", 20.0, 800.0);
  add_line (formula, "Bone-in rib", 30.0, 200.0);
  ingredient_at (formula, 0)->price_per_kg = 10.0;
  ingredient_at (formula, 1)->price_per_kg = 8.0;
  ingredient_at (formula, 1)->ep_yield_pct = 80.0;
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  g_autofree char *text = fm_derivation_cost (formula, analysis);
  assert_holds (text, "Bone-in rib: 0.2000 kg × 8.00 per kg as purchased ÷ 80.0 % edible = 2.000");
  assert_holds (text, "Their sum ÷ 1.0000 kg = 10.000 per kg");
  ingredient_at (formula, 0)->price_per_kg = NAN;
  g_autoptr (FmAnalysis) without = fm_analysis_new (formula);
  g_autofree char *gap = fm_derivation_cost (formula, without);
  assert_holds (gap, "Chuck: 0.8000 kg, no price");
  assert_holds (gap, "Without every price there is no figure.");
  g_autofree char *mass = fm_derivation_mass (formula, analysis);
  assert_holds (mass, "Together 1000.0 g.");
}

/* Each once, and only of what is in the blend. */
static void
test_doubts (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_autofree char *none = fm_derivation_doubts (formula);
  FmIngredient *plate = ingredient_at (formula, 1);
  FmIngredient *bread = ingredient_at (formula, 2);

  g_assert_null (none);
  plate->composition.per_100g[FM_NUTRIENT_SATURATED_FAT] = 40.0;
  bread->provenance = FM_PROVENANCE_DATASET;
  bread->source_ref = g_strdup ("28377");
  fm_formula_add (formula, plate, 10.0);
  g_autofree char *text = fm_derivation_doubts (formula);
  assert_holds (text, "Plate: The fatty acids add up to 40.00 g, the fat is 30.00 g.");
  assert_holds (text, "Backfat: the dataset gives 0.01 g protein");
  g_assert_null (strstr (strstr (text, "Plate") + 1, "Plate"));
}

/* Each target that is set, with its band, and what its value is worked out of, once. */
static void
test_targets (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();

  formula->brief->patty_mass_g = 150.0;
  formula->brief->bands[FM_TARGET_FAT_PCT] = (FmBand){ 18.0, 22.0 };
  formula->brief->bands[FM_TARGET_COST] = (FmBand){ NAN, 2.0 };
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  g_autofree char *text = fm_derivation_targets (formula, analysis);
  assert_holds (text, "Fat: 32.");
  assert_holds (text, "above the band");
  assert_holds (text, "The cost of a kilogram × 150.0 g of a raw patty ÷ 1000");
  assert_holds (text, "Sum 320.000 g ÷ 1000.0 g × 100 = 32.000 g in 100 g");
  assert_holds (text, "Without every price there is no figure.");
  g_assert_null (strstr (text, "Protein"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/derivation/fat", test_fat);
  g_test_add_func ("/derivation/gap-and-surface-salt", test_gap_and_surface_salt);
  g_test_add_func ("/derivation/targets", test_targets);
  g_test_add_func ("/derivation/cost", test_cost);
  g_test_add_func ("/derivation/doubts", test_doubts);
  return g_test_run ();
}
