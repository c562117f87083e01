/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-nutrition-text.c - a gap in the data is always said */
#include <math.h>

#include "core/formula/fm-nutrition-text.h"

static void
test_known (void)
{
  g_auto (FmNutritionText) text = { 0 };
  FmAmount amount = { 2.0, 100.0 };

  fm_nutrition_text_init (&text, FM_NUTRIENT_IRON, &amount, 180.0, NULL);
  g_assert_cmpstr (text.amount, ==, "3.60\u00a0mg");
  g_assert_cmpstr (text.daily_value, ==, "20\u00a0%");
  g_assert_null (text.gap);
  g_assert_cmpstr (text.spoken, ==, "Iron: 3.60\u00a0mg, 20\u00a0% of the Daily Value");
}

static void
test_partly_known (void)
{
  const char *missing[] = { "Back fat", "Own spice mix", NULL };
  g_auto (FmNutritionText) text = { 0 };
  FmAmount amount = { 2.0, 83.2 };

  fm_nutrition_text_init (&text, FM_NUTRIENT_IRON, &amount, 100.0, missing);
  g_assert_cmpstr (text.amount, ==, "at least 2.00\u00a0mg");
  g_assert_cmpstr (text.daily_value, ==, "≥ 11\u00a0%");
  g_assert_cmpstr (text.gap, ==,
                   "83 % of the mass covered; without a value: Back fat; Own spice mix");
  g_assert_nonnull (strstr (text.spoken, "Own spice mix"));
}

static void
test_almost_all_is_not_all (void)
{
  const char *missing[] = { "Salt", NULL };
  g_auto (FmNutritionText) text = { 0 };
  FmAmount amount = { 2.0, 99.9 };

  fm_nutrition_text_init (&text, FM_NUTRIENT_IRON, &amount, 100.0, missing);
  g_assert_true (g_str_has_prefix (text.gap, "99.9 %"));
}

static void
test_common_gap (void)
{
  char salt[] = "salt";
  char trim[] = "trim";
  char also_trim[] = "trim";
  FmNutritionText texts[] = { { .gap = salt }, { 0 }, { .gap = trim }, { .gap = also_trim } };
  FmNutritionText apart[] = { { .gap = salt }, { 0 }, { 0 } };

  g_assert_cmpstr (fm_nutrition_common_gap (texts, G_N_ELEMENTS (texts)), ==, "trim");
  g_assert_null (fm_nutrition_common_gap (apart, G_N_ELEMENTS (apart)));
  g_assert_null (fm_nutrition_common_gap (NULL, 0));
}

static void
test_unknown_is_no_zero (void)
{
  const char *missing[] = { "Back fat", NULL };
  g_auto (FmNutritionText) text = { 0 };
  FmAmount amount = { 0.0, 0.0 };

  fm_nutrition_text_init (&text, FM_NUTRIENT_SODIUM, &amount, 100.0, missing);
  g_assert_cmpstr (text.amount, ==, "not known");
  g_assert_cmpstr (text.daily_value, ==, "—");
  g_assert_cmpstr (text.gap, ==, "Without a value: Back fat");
  g_assert_null (strstr (text.spoken, "0"));
}

static void
test_unknown_portion (void)
{
  g_auto (FmNutritionText) text = { 0 };
  FmAmount amount = { 5.0, 100.0 };

  fm_nutrition_text_init (&text, FM_NUTRIENT_SODIUM, &amount, NAN, NULL);
  g_assert_cmpstr (text.amount, ==, "not known");
}

static void
test_no_daily_value (void)
{
  g_auto (FmNutritionText) text = { 0 };
  FmAmount amount = { 60.0, 100.0 };

  fm_nutrition_text_init (&text, FM_NUTRIENT_WATER, &amount, 100.0, NULL);
  g_assert_cmpstr (text.daily_value, ==, "");
  g_assert_null (strstr (text.spoken, "Daily"));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/nutrition-text/known", test_known);
  g_test_add_func ("/nutrition-text/partly-known", test_partly_known);
  g_test_add_func ("/nutrition-text/almost-all-is-not-all", test_almost_all_is_not_all);
  g_test_add_func ("/nutrition-text/common-gap", test_common_gap);
  g_test_add_func ("/nutrition-text/unknown-is-no-zero", test_unknown_is_no_zero);
  g_test_add_func ("/nutrition-text/unknown-portion", test_unknown_portion);
  g_test_add_func ("/nutrition-text/no-daily-value", test_no_daily_value);
  return g_test_run ();
}
