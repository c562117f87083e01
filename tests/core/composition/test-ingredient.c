/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-ingredient.c - ingredients as stocked */
#include "core/base/fm-error.h"
#include "core/composition/fm-ingredient.h"

#include "blends.h"

#include <string.h>

static FmIngredientKind
kind_of (const char *ndb_no, const char *name)
{
  g_autoptr (FmFood) food = fm_food_new (ndb_no, name, name);
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new_from_food (food);
  return ingredient->kind;
}

static void
test_kind_from_name (void)
{
  g_assert_cmpint (kind_of ("02047", "Salt, table"), ==, FM_INGREDIENT_SALT);
  g_assert_cmpint (kind_of ("23572", "Beef, ground, 80/20, raw"), ==, FM_INGREDIENT_CUT);
  g_assert_cmpint (kind_of ("1", "Beef, chuck, separable lean and fat, trimmed to 1/8\" fat, raw"),
                   ==, FM_INGREDIENT_CUT);
  g_assert_cmpint (kind_of ("2", "Beef, retail cuts, separable fat, raw"), ==, FM_INGREDIENT_FAT);
  g_assert_cmpint (kind_of ("3", "Pork, fresh, backfat, raw"), ==, FM_INGREDIENT_FAT);
  g_assert_cmpint (kind_of ("4", "Beef, variety meats and by-products, suet, raw"), ==,
                   FM_INGREDIENT_FAT);
  g_assert_cmpint (kind_of ("5", "Fat, beef tallow"), ==, FM_INGREDIENT_FAT);
  g_assert_cmpint (kind_of ("10006", "Pork, fresh, fat, raw"), ==, FM_INGREDIENT_FAT);
  g_assert_cmpint (kind_of ("13019", "Beef, retail cuts, fat, raw"), ==, FM_INGREDIENT_FAT);
  g_assert_cmpint (kind_of ("17433", "Veal, seam fat only, raw"), ==, FM_INGREDIENT_FAT);
  g_assert_cmpint (kind_of ("10130", "Canadian bacon, unprepared"), ==, FM_INGREDIENT_CURED);
  g_assert_cmpint (kind_of ("6", "Pork, cured, bacon, unprepared"), ==, FM_INGREDIENT_CURED);
  g_assert_cmpint (kind_of ("7", "Bacon, meatless"), ==, FM_INGREDIENT_OTHER);
  g_assert_cmpint (kind_of ("02030", "Pepper, black"), ==, FM_INGREDIENT_SPICE);
  g_assert_cmpint (kind_of ("14411", "Beverages, water, tap, drinking"), ==, FM_INGREDIENT_WATER);
  g_assert_cmpint (kind_of ("18079", "Bread crumbs, dry, grated, plain"), ==, FM_INGREDIENT_BINDER);
  g_assert_cmpint (kind_of ("20027", "Cornstarch"), ==, FM_INGREDIENT_BINDER);
  g_assert_cmpint (kind_of ("09326", "Watermelon, raw"), ==, FM_INGREDIENT_OTHER);
  g_assert_cmpint (kind_of ("8", "Onions, raw"), ==, FM_INGREDIENT_OTHER);
  g_assert_cmpint (kind_of ("9", "Soup, beef broth"), ==, FM_INGREDIENT_OTHER);
}

static void
test_from_food (void)
{
  g_autoptr (FmFood) food = fm_food_new ("13345", "Beef, rib, raw", "BEEF,RIB,RAW");
  food->composition.per_100g[FM_NUTRIENT_FAT] = 25.0;
  food->refuse_pct = 20.0;
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new_from_food (food);
  g_assert_cmpint (ingredient->provenance, ==, FM_PROVENANCE_DATASET);
  g_assert_cmpstr (ingredient->source_ref, ==, "13345");
  g_assert_cmpstr (ingredient->original_name, ==, "BEEF,RIB,RAW");
  g_assert_cmpfloat (ingredient->ep_yield_pct, ==, 80.0);
  g_assert_cmpfloat (fm_ingredient_fat_g_per_100g (ingredient), ==, 25.0);
  g_assert_true (isnan (ingredient->price_per_kg));
  g_assert_true (isnan (ingredient->composition.per_100g[FM_NUTRIENT_SODIUM]));
  g_assert_true (fm_ingredient_check (ingredient, NULL));
}

static void
test_same_row_picked_twice (void)
{
  g_autoptr (FmFood) food = fm_food_new ("13345", "Beef, rib, raw", "BEEF,RIB,RAW");
  g_autoptr (FmIngredient) a = fm_ingredient_new_from_food (food);
  g_autoptr (FmIngredient) b = fm_ingredient_new_from_food (food);
  g_assert_cmpstr (a->id, !=, b->id);
  g_assert_cmpstr (fm_ingredient_identity (a), ==, fm_ingredient_identity (b));
  g_assert_false (fm_ingredient_equal (a, b));
}

static void
test_copy_is_deep (void)
{
  g_autoptr (FmIngredient) a = ingredient_with_fat ("Chuck", 18.0);
  g_autoptr (FmIngredient) b = fm_ingredient_copy (a);
  g_assert_true (fm_ingredient_equal (a, b));
  g_assert_true (a->name != b->name);
  b->composition.per_100g[FM_NUTRIENT_FAT] = 19.0;
  g_assert_false (fm_ingredient_equal (a, b));
}

static void
test_declared_fat_fills_in (void)
{
  g_autoptr (FmIngredient) trim = fm_ingredient_new ("80s trim", FM_INGREDIENT_TRIM);
  g_assert_true (isnan (fm_ingredient_fat_g_per_100g (trim)));
  trim->declared_fat_pct = 20.0;
  g_assert_cmpfloat (fm_ingredient_fat_g_per_100g (trim), ==, 20.0);
  trim->composition.per_100g[FM_NUTRIENT_FAT] = 23.0;
  g_assert_cmpfloat (fm_ingredient_fat_g_per_100g (trim), ==, 23.0);
}

static void
assert_check_fails (FmIngredient *ingredient, FmCoreError code)
{
  g_autoptr (GError) error = NULL;
  g_assert_false (fm_ingredient_check (ingredient, &error));
  g_assert_error (error, FM_CORE_ERROR, (int)code);
}

static void
test_check (void)
{
  g_autoptr (FmIngredient) good = ingredient_with_fat ("Chuck", 18.0);
  g_assert_true (fm_ingredient_check (good, NULL));

  const double bad[] = { -0.1, INFINITY, 100.1, 1e300 };
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (FmIngredient) wrong = ingredient_with_fat ("Chuck", bad[i]);
    assert_check_fails (wrong, FM_CORE_ERROR_OUT_OF_RANGE);
    g_autoptr (FmIngredient) declared = ingredient_with_fat ("Chuck", 18.0);
    declared->declared_fat_pct = bad[i];
    assert_check_fails (declared, FM_CORE_ERROR_OUT_OF_RANGE);
    g_autoptr (FmIngredient) yield = ingredient_with_fat ("Chuck", 18.0);
    yield->ep_yield_pct = bad[i];
    assert_check_fails (yield, FM_CORE_ERROR_OUT_OF_RANGE);
  }
  good->ep_yield_pct = 0.0;
  assert_check_fails (good, FM_CORE_ERROR_OUT_OF_RANGE);
  g_autoptr (FmIngredient) nameless = ingredient_with_fat ("  ", 18.0);
  assert_check_fails (nameless, FM_CORE_ERROR_EMPTY);
}

static void
test_check_sum (void)
{
  g_autoptr (FmIngredient) ingredient = ingredient_with_fat ("Chuck", 20.0);
  ingredient->composition.per_100g[FM_NUTRIENT_WATER] = 62.0;
  ingredient->composition.per_100g[FM_NUTRIENT_PROTEIN] = 19.4;
  g_assert_true (fm_ingredient_check (ingredient, NULL));
  ingredient->composition.per_100g[FM_NUTRIENT_PROTEIN] = 19.6;
  assert_check_fails (ingredient, FM_CORE_ERROR_OUT_OF_RANGE);
}

static void
test_collagen (void)
{
  g_autoptr (FmIngredient) shank = ingredient_with_fat ("Shank", 8.0);
  g_assert_true (isnan (fm_ingredient_collagen_g_per_100g (shank)));
  shank->collagen_g_per_100g = 4.0;
  g_assert_true (fm_ingredient_check (shank, NULL));
  g_autoptr (FmIngredient) copy = fm_ingredient_copy (shank);
  g_assert_true (fm_ingredient_equal (shank, copy));
  copy->collagen_g_per_100g = NAN;
  g_assert_false (fm_ingredient_equal (shank, copy));

  shank->composition.per_100g[FM_NUTRIENT_PROTEIN] = 20.0;
  g_assert_true (fm_ingredient_check (shank, NULL));
  shank->collagen_g_per_100g = 20.5;
  assert_check_fails (shank, FM_CORE_ERROR_OUT_OF_RANGE);
  shank->collagen_g_per_100g = -1.0;
  assert_check_fails (shank, FM_CORE_ERROR_OUT_OF_RANGE);
  /* What has no protein has no collagen. */
  copy->composition.per_100g[FM_NUTRIENT_PROTEIN] = 0.0;
  g_assert_cmpfloat (fm_ingredient_collagen_g_per_100g (copy), ==, 0.0);
}

/* NDB 05048, raw chicken back with skin, adds up to more than 101.5 g as published. */
static void
test_dataset_rows_stay_usable (void)
{
  g_autoptr (FmFood) food = fm_food_new ("05048", "Chicken, back, raw", "CHICKEN,BACK,RAW");
  food->composition.per_100g[FM_NUTRIENT_WATER] = 70.0;
  food->composition.per_100g[FM_NUTRIENT_FAT] = 31.6;
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new_from_food (food);
  g_assert_true (fm_ingredient_check (ingredient, NULL));
  ingredient->provenance = FM_PROVENANCE_ANALYSIS;
  assert_check_fails (ingredient, FM_CORE_ERROR_OUT_OF_RANGE);
}

static void
test_percent_sign_in_messages (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmIngredient) ingredient = ingredient_with_fat ("100%n beef", 18.0);
  ingredient->ep_yield_pct = 200.0;
  g_assert_false (fm_ingredient_check (ingredient, &error));
  g_assert_nonnull (strstr (error->message, "100%n beef"));
  g_assert_nonnull (strstr (error->message, "at most 100 % of"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ingredient/kind-from-name", test_kind_from_name);
  g_test_add_func ("/ingredient/collagen", test_collagen);
  g_test_add_func ("/ingredient/from-food", test_from_food);
  g_test_add_func ("/ingredient/same-row-picked-twice", test_same_row_picked_twice);
  g_test_add_func ("/ingredient/copy-is-deep", test_copy_is_deep);
  g_test_add_func ("/ingredient/declared-fat-fills-in", test_declared_fat_fills_in);
  g_test_add_func ("/ingredient/check", test_check);
  g_test_add_func ("/ingredient/check-sum", test_check_sum);
  g_test_add_func ("/ingredient/dataset-rows-stay-usable", test_dataset_rows_stay_usable);
  g_test_add_func ("/ingredient/percent-sign-in-messages", test_percent_sign_in_messages);
  return g_test_run ();
}
