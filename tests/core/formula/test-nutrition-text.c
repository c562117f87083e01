/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-nutrition-text.c - a gap in the data is always said */
#include <math.h>

#include "core/formula/fm-nutrition-order.h"
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

static void
test_gaps_are_said_once (void)
{
  FmNutritionText texts[FM_N_NUTRIENTS] = { 0 };
  g_autofree char *none = fm_nutrition_gaps (texts);
  char trim[] = "92 % covered";
  char salt[] = "60 % covered";

  g_assert_cmpstr (none, ==, "");
  texts[FM_NUTRIENT_WATER].gap = trim;
  texts[FM_NUTRIENT_PROTEIN].gap = trim;
  texts[FM_NUTRIENT_ZINC].gap = salt;
  g_autofree char *said = fm_nutrition_gaps (texts);
  g_assert_cmpstr (said, ==, "Gaps, unless more is said: 92 % covered\nZinc: 60 % covered");
}

static void
test_each_nutrient_has_one_place (void)
{
  guint places[FM_N_NUTRIENTS] = { 0 };

  for (guint group = 0; group < FM_N_NUTRITION_GROUPS; group++) {
    guint n = 0;
    const FmNutrient *nutrients = fm_nutrition_group_nutrients ((FmNutritionGroup)group, &n);

    for (guint i = 0; i < n; i++)
      places[nutrients[i]]++;
  }
  for (guint i = 0; i < FM_N_NUTRIENTS; i++)
    g_assert_cmpuint (places[i], ==, 1);
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
  g_test_add_func ("/nutrition-text/gaps-are-said-once", test_gaps_are_said_once);
  g_test_add_func ("/nutrition-text/each-nutrient-has-one-place", test_each_nutrient_has_one_place);
  return g_test_run ();
}
