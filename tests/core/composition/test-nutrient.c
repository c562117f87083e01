/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-nutrient.c - the list of nutrients and compositions with unknowns */
#include "core/composition/fm-food.h"

#include <math.h>
#include <string.h>

static void
test_list (void)
{
  static const char *const units[] = { "g", "mg", "mcg", "kcal", "IU", NULL };

  g_assert_cmpint (FM_N_NUTRIENTS, ==, 46);
  for (int i = 0; i < FM_N_NUTRIENTS; i++) {
    const FmNutrientInfo *info = fm_nutrient_info ((FmNutrient)i);

    g_assert_cmpint (fm_nutrient_from_key (info->key), ==, i);
    g_assert_true (g_strv_contains (units, info->unit));
    g_assert_cmpstr (fm_nutrient_name ((FmNutrient)i), !=, "");
    g_assert_true (info->group < FM_N_NUTRIENT_GROUPS);
    g_assert_true (isnan (info->daily_value) || info->daily_value > 0.0);
  }
  g_assert_cmpint (fm_nutrient_from_key ("lead"), ==, FM_NUTRIENT_NONE);
  g_assert_cmpint (fm_nutrient_from_key (NULL), ==, FM_NUTRIENT_NONE);
}

/* FDA 2016 set, 21 CFR 101.9(c)(8)(iv) and (c)(9). */
static void
test_daily_values_fda_2016 (void)
{
  static const struct {
    FmNutrient nutrient;
    double daily_value;
  } cases[] = {
    { FM_NUTRIENT_FAT, 78.0 },         { FM_NUTRIENT_SATURATED_FAT, 20.0 },
    { FM_NUTRIENT_SODIUM, 2300.0 },    { FM_NUTRIENT_IRON, 18.0 },
    { FM_NUTRIENT_POTASSIUM, 4700.0 }, { FM_NUTRIENT_VITAMIN_B12, 2.4 },
    { FM_NUTRIENT_FOLATE_DFE, 400.0 }, { FM_NUTRIENT_VITAMIN_A_RAE, 900.0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    const FmNutrientInfo *info = fm_nutrient_info (cases[i].nutrient);

    g_assert_cmpfloat (info->daily_value, ==, cases[i].daily_value);
  }
  g_assert_true (isnan (fm_nutrient_info (FM_NUTRIENT_SUGARS)->daily_value));
  /* Of protein only a percentage corrected for quality may be given, (c)(7). */
  g_assert_true (isnan (fm_nutrient_info (FM_NUTRIENT_PROTEIN)->daily_value));
}

static void
test_unknown_is_not_zero (void)
{
  FmComposition a;
  FmComposition b;

  fm_composition_init_unknown (&a);
  g_assert_cmpuint (fm_composition_n_known (&a), ==, 0);
  fm_composition_copy (&b, &a);
  g_assert_true (fm_composition_equal (&a, &b));
  b.per_100g[FM_NUTRIENT_FAT] = 0.0;
  g_assert_false (fm_composition_equal (&a, &b));
  g_assert_true (fm_composition_is_known (&b, FM_NUTRIENT_FAT));
  g_assert_false (fm_composition_is_known (&a, FM_NUTRIENT_FAT));
}

static void
test_food (void)
{
  g_autoptr (FmFood) food = fm_food_new ("00000", "Salt", "SALT,TABLE");
  g_autoptr (FmFood) same = fm_food_ref (food);

  g_assert_true (same == food);
  g_assert_true (isnan (food->refuse_pct));
  g_assert_true (isnan (food->household_weights[1].mass_g));
  g_assert_null (food->household_weights[0].description);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/nutrient/list", test_list);
  g_test_add_func ("/nutrient/daily-values-fda-2016", test_daily_values_fda_2016);
  g_test_add_func ("/nutrient/unknown-is-not-zero", test_unknown_is_not_zero);
  g_test_add_func ("/nutrient/food", test_food);
  return g_test_run ();
}
