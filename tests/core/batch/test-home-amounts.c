/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-home-amounts.c - amounts for a kitchen scale that leave the targets as they were */
#include "core/batch/fm-home-amounts.h"

#include "blends.h"
#include "core/formula/fm-analysis.h"

static FmFormula *
new_blend (void)
{
  FmFormula *formula = three_line_blend (); /* 32 % fat */

  add_line (formula, "Pepper", 0.0, 3.0);
  formula->brief->patty_mass_g = 113.0;
  return formula;
}

static double
fat_pct (const FmFormula *formula)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);

  return analysis->fat_pct;
}

/* Without targets the coarsest step holds, and a pinch stays one. */
static void
test_coarse (void)
{
  g_autoptr (FmFormula) formula = new_blend ();
  g_autoptr (FmHomeAmounts) amounts = fm_home_amounts_new (formula, 4, FALSE, NULL);

  g_assert_true (amounts->holds);
  g_assert_cmpfloat (amounts->step_g, ==, 25.0);
  g_assert_cmpfloat (mass_of (amounts->formula, 0), ==, 225.0); /* 225.3 */
  g_assert_cmpfloat (mass_of (amounts->formula, 1), ==, 125.0); /* 135.2 */
  g_assert_cmpfloat (mass_of (amounts->formula, 3), >, 0.0);
}

/* A narrow band asks for finer steps. */
static void
test_targets_hold (void)
{
  for (double half_width = 0.02; half_width < 3.0; half_width *= 2.0) {
    g_autoptr (FmFormula) formula = new_blend ();
    const double fat = fat_pct (formula);

    formula->brief->bands[FM_TARGET_FAT_PCT] = (FmBand){ fat - half_width, fat + half_width };
    g_autoptr (FmHomeAmounts) amounts = fm_home_amounts_new (formula, 4, FALSE, NULL);
    if (amounts->holds)
      assert_near (fat_pct (amounts->formula), fat, half_width);
  }
}

static void
test_cannot_hold (void)
{
  g_autoptr (FmFormula) formula = new_blend ();
  const double fat = fat_pct (formula);

  formula->brief->bands[FM_TARGET_FAT_PCT] = (FmBand){ fat - 1e-9, fat + 1e-9 };
  g_autoptr (FmHomeAmounts) amounts = fm_home_amounts_new (formula, 4, TRUE, NULL);
  g_assert_false (amounts->holds);
}

static void
assert_text (double mass_g, gboolean ounces, const char *expected)
{
  g_autofree char *text = fm_home_amount_text (mass_g, ounces);

  g_assert_cmpstr (text, ==, expected);
}

static void
test_text (void)
{
  assert_text (225.0, FALSE, "225 g");
  assert_text (0.5, FALSE, "0.5 g");
  assert_text (28.349523125, TRUE, "1 oz");
  assert_text (602.4273664, TRUE, "21 1/4 oz");
  assert_text (14.1747615625, TRUE, "1/2 oz");
  assert_text (1.0, TRUE, "1.0\u00a0g");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/home-amounts/coarse", test_coarse);
  g_test_add_func ("/home-amounts/targets-hold", test_targets_hold);
  g_test_add_func ("/home-amounts/cannot-hold", test_cannot_hold);
  g_test_add_func ("/home-amounts/text", test_text);
  return g_test_run ();
}
