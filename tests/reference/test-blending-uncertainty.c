/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-blending-uncertainty.c - the law of propagation against published and checked cases */
#include "core/formula/fm-analysis.h"
#include "core/base/fm-uncertainty.h"

#include "../core/blends.h"

/* JCGM 100:2008 (GUM), example of 5.2.2: ten resistors of 1000 ohm in series, each calibrated
 * against the same standard, u = 0.1 ohm each, r = 1: u of the sum is 1 ohm, and 0.32 ohm would
 * be wrong. Case from memory, arithmetic computed.
 */
static void
test_resistors (void)
{
  double one[10], u_ohm[10], correlation[100];
  for (int i = 0; i < 10; i++) {
    one[i] = 1.0;
    u_ohm[i] = 0.1;
  }
  for (int i = 0; i < 100; i++)
    correlation[i] = 1.0;
  assert_near (fm_uncertainty_linear (10, one, u_ohm, correlation), 1.0, 1e-12);
  assert_near (fm_uncertainty_linear (10, one, u_ohm, NULL), 0.316227766016838, 1e-12);
}

/* JCGM 101:2008, 9.2, additive model of four inputs: u = 1 each gives 2.0, one of u = 10 gives
 * 10.1489. Memory, agrees with computation.
 */
static void
test_additive_model (void)
{
  const double one[] = { 1.0, 1.0, 1.0, 1.0 };
  const double equal[] = { 1.0, 1.0, 1.0, 1.0 };
  const double one_large[] = { 1.0, 1.0, 1.0, 10.0 };
  assert_near (fm_uncertainty_linear (4, one, equal, NULL), 2.0, 1e-12);
  assert_near (fm_uncertainty_linear (4, one, one_large, NULL), 10.14889156509222, 1e-12);
}

/* Synthetic blend of three cuts; propagation computed independently, a Monte Carlo run agrees
 * (0.012501 against 0.012506).
 */
static const double blend_mass_g[] = { 500.0, 300.0, 200.0 };
static const double blend_u_mass_g[] = { 1.0, 1.0, 1.0 };
static const double blend_fat[] = { 0.2, 0.12, 0.28 };
static const double blend_u_fat[] = { 0.02, 0.015, 0.03 };

static void
test_blend (void)
{
  const double none[] = { 0.0, 0.0, 0.0 };
  const double full[] = { 1, 1, 1, 1, 1, 1, 1, 1, 1 };
  assert_near (
      fm_uncertainty_mixture (3, blend_mass_g, blend_fat, blend_u_fat, blend_u_mass_g, NULL),
      0.012500519669197756, 1e-15);
  assert_near (fm_uncertainty_mixture (3, blend_mass_g, blend_fat, blend_u_fat, NULL, NULL), 0.0125,
               1e-15);
  assert_near (fm_uncertainty_mixture (3, blend_mass_g, blend_fat, none, blend_u_mass_g, NULL),
               0.00011398245479020008, 1e-15);
  assert_near (
      fm_uncertainty_mixture (3, blend_mass_g, blend_fat, blend_u_fat, blend_u_mass_g, full),
      0.02050031687559975, 1e-15);
}

/* The same blend as a formula: what the analysis states is the part from the compositions. */
static void
test_blend_as_formula (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  for (guint i = 0; i < 3; i++) {
    add_line (formula, "Cut", blend_fat[i] * 100.0, blend_mass_g[i]);
    fm_formula_line (formula, i)->ingredient->fat_u_g_per_100g = blend_u_fat[i] * 100.0;
  }
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  assert_near (analysis->fat_pct, 19.2, 1e-12);
  assert_near (analysis->fat_u_pct, 1.25, 1e-12);
}

static void
test_unstated_and_weightless (void)
{
  const double u_unstated[] = { 0.02, NAN, NAN };
  const double weightless[] = { 0.0, 0.0, 0.0 };
  const double first_only_g[] = { 500.0, 0.0, 0.0 };
  g_assert_true (
      isnan (fm_uncertainty_mixture (3, blend_mass_g, blend_fat, u_unstated, NULL, NULL)));
  assert_near (fm_uncertainty_mixture (3, first_only_g, blend_fat, u_unstated, NULL, NULL), 0.02,
               1e-15);
  g_assert_true (
      isnan (fm_uncertainty_mixture (3, weightless, blend_fat, blend_u_fat, NULL, NULL)));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/uncertainty/JCGM-100-2008-5.2.2-resistors-memory", test_resistors);
  g_test_add_func ("/uncertainty/JCGM-101-2008-9.2-additive-memory", test_additive_model);
  g_test_add_func ("/uncertainty/synthetic-blend-computed", test_blend);
  g_test_add_func ("/uncertainty/synthetic-blend-as-formula", test_blend_as_formula);
  g_test_add_func ("/uncertainty/unstated-and-weightless", test_unstated_and_weightless);
  return g_test_run ();
}
