/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-label-panel.c - what a panel shows, refuses and says of its edges */
#include "core/label/fm-claim.h"
#include "core/label/fm-label-panel.h"

#include <string.h>

#include "blends.h"
#include "core/base/fm-error.h"

/* Meat of which everything that labels ask for is known but trans fat. */
static FmFormula *
new_meat (double fat_pct)
{
  FmFormula *formula = fm_formula_new ();
  FmIngredient *meat;

  add_line (formula, "Chuck", fat_pct, 1000.0);
  meat = fm_formula_line (formula, 0)->ingredient;
  for (int i = 0; i < FM_N_NUTRIENTS; i++)
    if (i != FM_NUTRIENT_FAT)
      meat->composition.per_100g[i] = 0.0;
  meat->composition.per_100g[FM_NUTRIENT_PROTEIN] = 17.0;
  meat->composition.per_100g[FM_NUTRIENT_ENERGY_KCAL] = NAN;
  meat->fat_u_g_per_100g = 0.5;
  return formula;
}

static FmLabelPanel *
panel_of (const FmFormula *formula, FmLabelSetId set, const FmLabelStated *stated, GError **error)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  const FmLabelInput input = { set, 114.0, NAN, FALSE };

  return fm_label_panel_new (formula, analysis, &input, stated, error);
}

static void
test_refused (void)
{
  g_autoptr (FmFormula) formula = new_meat (20.0);
  g_autoptr (GError) error = NULL;
  FmLabelStated stated;

  g_assert_null (panel_of (formula, FM_LABEL_US_RETAIL, NULL, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE);
  g_assert_nonnull (strstr (error->message, "Trans Fat: not known for Chuck"));
  g_assert_null (strstr (error->message, "Added Sugars"));
  g_clear_error (&error);
  fm_label_stated_init (&stated);
  stated.per_100g[FM_LABEL_ITEM_TRANS_FAT] = 1.0;
  g_autoptr (FmLabelPanel) panel = panel_of (formula, FM_LABEL_US_RETAIL, &stated, &error);
  g_assert_no_error (error);
  g_assert_true (fm_label_panel_line (panel, FM_LABEL_ITEM_TRANS_FAT)->is_stated);
  g_assert_false (fm_label_panel_line (panel, FM_LABEL_ITEM_TOTAL_FAT)->is_stated);
}

/* A figure that somebody stated never goes before one that is known. */
static void
test_known_goes_first (void)
{
  g_autoptr (FmFormula) formula = new_meat (20.0);
  FmLabelStated stated;

  fm_label_stated_init (&stated);
  stated.per_100g[FM_LABEL_ITEM_TOTAL_FAT] = 1.0;
  g_autoptr (FmLabelPanel) panel = panel_of (formula, FM_LABEL_US_MEAT, &stated, NULL);
  assert_near (fm_label_panel_line (panel, FM_LABEL_ITEM_TOTAL_FAT)->amount, 22.8, 1e-9);
  assert_near (fm_label_panel_line (panel, FM_LABEL_ITEM_CALORIES)->amount, 1.14 * 248.0, 1e-9);
  assert_near (fm_label_panel_line (panel, FM_LABEL_ITEM_CALORIES_FROM_FAT)->amount, 1.14 * 180.0,
               1e-9);
}

/* "Why 12 and not 11.6": the rule is FDA's, A Food Labeling Guide, Appendix H (2009): above 5 g of
 * fat to the nearest gram. Daily Value 78 g: 21 CFR 101.9(c)(9). */
static void
test_derivation (void)
{
  g_autoptr (FmFormula) formula = new_meat (11.6 / 1.14);
  FmLabelStated stated;

  fm_label_stated_init (&stated);
  stated.per_100g[FM_LABEL_ITEM_TRANS_FAT] = 1.0;
  g_autoptr (FmLabelPanel) panel = panel_of (formula, FM_LABEL_US_RETAIL, &stated, NULL);
  g_autofree char *text = fm_label_panel_derivation (panel);
  static const char *const parts[] = {
    "Total Fat: 12 g. Unrounded 11.600\u00a0g in 114.0\u00a0g, 10.175\u00a0g in 100 g",
    "to the nearest 1.0\u00a0g",
    "It shows the same between 11.500\u00a0g and 12.500\u00a0g.",
    "11.600 ÷ 78.0 × 100 = 14.872 % of the Daily Value, shown as 15",
    "Stated, not calculated.",
  };

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (strstr (text, parts[i]) == NULL)
      g_error ("“%s” is not in: %s", parts[i], text);
}

static void
test_empty (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (GError) error = NULL;

  g_assert_null (panel_of (formula, FM_LABEL_EU, NULL, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
}

/* 22.8 g stand as 23, from 22.5 to 23.5; an analysis may find 120 % of it. */
static void
test_edges (void)
{
  g_autoptr (FmFormula) formula = new_meat (20.0);
  g_autoptr (FmLabelPanel) panel = panel_of (formula, FM_LABEL_US_MEAT, NULL, NULL);
  const FmLabelLine *fat = fm_label_panel_line (panel, FM_LABEL_ITEM_TOTAL_FAT);
  g_autofree char *text = fm_label_edge_text (fat);

  g_assert_cmpstr (fat->figure.text, ==, "23");
  assert_near (fat->figure.edge_below, 22.5, 1e-9);
  assert_near (fat->figure.edge_above, 23.5, 1e-9);
  assert_near (fm_label_edge_distance (&fat->figure, fat->amount), 0.3, 1e-9);
  assert_near (fat->u, 0.57, 1e-9);
  assert_near (fat->span.highest, 27.6, 1e-9);
  g_assert_nonnull (strstr (text, "the uncertainty of the fat reaches over it"));
}

/* 50 and 52 kcal both stand as 50: the edge is not where the step changes. */
static void
test_edge_over_bands (void)
{
  const FmLabelFigure figure = fm_label_round (FM_ROUNDING_ENERGY, 49.0);
  const FmLabelFigure zero = fm_label_round (FM_ROUNDING_FAT, 0.2);
  const FmLabelFigure words = fm_label_round (FM_ROUNDING_CHOLESTEROL, 3.0);

  g_assert_cmpstr (figure.text, ==, "50");
  assert_near (figure.edge_below, 47.5, 1e-9);
  assert_near (figure.edge_above, 55.0, 1e-9);
  g_assert_true (isnan (zero.edge_below));
  assert_near (zero.edge_above, 0.5, 1e-9);
  g_assert_true (isnan (words.value));
  assert_near (words.edge_below, 2.0, 1e-9);
}

/* Guidance of the European Commission of December 2012, table 1. */
static void
test_tolerances (void)
{
  FmLabelSpan span = fm_label_tolerance_span (FM_TOLERANCE_EU_FAT, 5.0);

  assert_near (span.lowest, 3.5, 1e-9);
  assert_near (span.highest, 6.5, 1e-9);
  span = fm_label_tolerance_span (FM_TOLERANCE_EU_FAT, 20.0);
  assert_near (span.lowest, 16.0, 1e-9);
  assert_near (span.highest, 24.0, 1e-9);
  span = fm_label_tolerance_span (FM_TOLERANCE_EU_SALT, 1.0);
  assert_near (span.highest, 1.375, 1e-9);
  g_assert_true (isnan (fm_label_tolerance_span (FM_TOLERANCE_US_UPPER, 0.0).highest));
  span = fm_label_tolerance_span (FM_TOLERANCE_US_LOWER, 20.0);
  assert_near (span.lowest, 16.0, 1e-9);
  g_assert_true (isnan (span.highest));
}

/* Not known is neither met nor not met, but one criterion that fails decides. */
static void
test_claims (void)
{
  g_autoptr (FmFormula) formula = new_meat (9.0);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  FmClaimInput input = { FM_LABEL_US_MEAT, formula, analysis, NULL };
  FmIngredient *meat = fm_formula_line (formula, 0)->ingredient;

  g_assert_cmpint (fm_claim_state ("lean", &input), ==, FM_CLAIM_NOT_MET); /* 10.26 g in 114 g */
  g_assert_cmpint (fm_claim_state ("good source of protein", &input), ==, FM_CLAIM_NOT_KNOWN);
  meat->composition.per_100g[FM_NUTRIENT_CHOLESTEROL] = NAN;
  g_autoptr (FmAnalysis) unknown = fm_analysis_new (formula);
  input.analysis = unknown;
  g_assert_cmpint (fm_claim_state ("lean", &input), ==, FM_CLAIM_NOT_MET);
  meat->composition.per_100g[FM_NUTRIENT_FAT] = 5.0;
  g_autoptr (FmAnalysis) leaner = fm_analysis_new (formula);
  input.analysis = leaner;
  g_assert_cmpint (fm_claim_state ("lean", &input), ==, FM_CLAIM_NOT_KNOWN);
  g_autofree char *text = fm_claim_text ("lean", &input);
  g_assert_nonnull (strstr (text, "cholesterol in 100 g not known, limit: below 95 mg"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/label-panel/refused", test_refused);
  g_test_add_func ("/label-panel/known-goes-first", test_known_goes_first);
  g_test_add_func ("/label-panel/derivation", test_derivation);
  g_test_add_func ("/label-panel/empty", test_empty);
  g_test_add_func ("/label-panel/edges", test_edges);
  g_test_add_func ("/label-panel/edge-over-bands", test_edge_over_bands);
  g_test_add_func ("/label-panel/tolerances", test_tolerances);
  g_test_add_func ("/label-panel/claims", test_claims);
  return g_test_run ();
}
