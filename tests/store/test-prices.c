/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-prices.c - the history of prices, and allergens on their way through the file */
#include "store/fm-formula-json.h"
#include "store/fm-prices.h"
#include "store-fixture.h"

static void
test_latest_first (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (fixture->path);
  g_autoptr (FmIngredient) chuck = fm_ingredient_new ("Chuck", FM_INGREDIENT_CUT);
  g_autoptr (GError) error = NULL;
  const double prices[] = { 9.5, 9.5, 11.25 };

  for (guint i = 0; i < G_N_ELEMENTS (prices); i++) {
    chuck->price_per_kg = prices[i];
    g_assert_true (fm_prices_record (notebook, chuck, 1000 + i, &error));
    g_assert_no_error (error);
  }
  g_autoptr (GArray) list = fm_prices_list (notebook, chuck->id, 10, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list->len, ==, 2);
  g_assert_cmpfloat (g_array_index (list, FmPrice, 0).price_per_kg, ==, 11.25);
  g_assert_cmpint (g_array_index (list, FmPrice, 0).recorded_at, ==, 1002);
  g_assert_cmpfloat (g_array_index (list, FmPrice, 1).price_per_kg, ==, 9.5);
  g_assert_cmpint (g_array_index (list, FmPrice, 1).recorded_at, ==, 1000);
}

static void
test_unknown_price_is_no_row (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (fixture->path);
  g_autoptr (FmIngredient) chuck = fm_ingredient_new ("Chuck", FM_INGREDIENT_CUT);
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_prices_record (notebook, chuck, 1000, &error));
  g_autoptr (GArray) list = fm_prices_list (notebook, chuck->id, 10, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (list->len, ==, 0);
  chuck->price_per_kg = -1.0;
  g_assert_false (fm_prices_record (notebook, chuck, 1000, &error));
  g_assert_nonnull (error);
}

/* A version keeps the price that it was made with, whatever the history says later. */
static void
test_version_keeps_its_price (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (fixture->path);
  g_autoptr (FmIngredient) before = fm_ingredient_new ("Chuck", FM_INGREDIENT_CUT);
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (GError) error = NULL;
  gint64 blend_id = fm_blends_add (notebook, "House", &error);

  before->price_per_kg = 9.0;
  fm_formula_add (formula, before, 500.0);
  gint64 version_id = fm_versions_save (notebook, blend_id, formula, "first", &error);
  g_assert_no_error (error);
  g_autoptr (FmIngredient) after = fm_ingredient_copy (before);
  after->price_per_kg = 12.0;
  g_assert_true (fm_prices_record (notebook, after, 1000, &error));
  g_autoptr (FmFormula) saved = fm_versions_load (notebook, version_id, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (fm_formula_line (saved, 0)->ingredient->price_per_kg, ==, 9.0);
}

static FmIngredient *
round_trip (const FmIngredient *ingredient)
{
  g_autofree char *json = fm_ingredient_to_json (ingredient);
  g_autoptr (GError) error = NULL;
  FmIngredient *back = fm_ingredient_from_json (json, &error);

  g_assert_no_error (error);
  g_assert_true (fm_ingredient_equal (ingredient, back));
  return back;
}

static void
test_allergens_round_trip (void)
{
  g_autoptr (FmIngredient) crumbs = fm_ingredient_new ("Crumbs", FM_INGREDIENT_OTHER);
  g_autoptr (FmIngredient) not_stated = round_trip (crumbs);

  g_assert_false (not_stated->allergens_known);
  crumbs->allergens_known = TRUE;
  g_autoptr (FmIngredient) none = round_trip (crumbs);
  g_assert_true (none->allergens_known);
  g_assert_cmpuint (none->allergens, ==, 0);
  g_assert_false (fm_ingredient_equal (none, not_stated));
  crumbs->allergens = FM_ALLERGEN_BIT (FM_N_ALLERGENS) - 1;
  g_autoptr (FmIngredient) all = round_trip (crumbs);
  g_assert_cmpuint (all->allergens, ==, crumbs->allergens);
}

/* To drop a word that is not understood would hide an allergen. */
static void
test_strange_allergen_is_damage (void)
{
  g_autoptr (FmIngredient) crumbs = fm_ingredient_new ("Crumbs", FM_INGREDIENT_OTHER);
  g_autoptr (GError) error = NULL;

  crumbs->allergens_known = TRUE;
  crumbs->allergens = FM_ALLERGEN_BIT (FM_ALLERGEN_MILK);
  g_autofree char *json = fm_ingredient_to_json (crumbs);
  memcpy (strstr (json, "\"milk\"") + 1, "mulk", 4);
  g_assert_null (fm_ingredient_from_json (json, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  FIXTURE_TEST ("/prices/latest-first", test_latest_first);
  FIXTURE_TEST ("/prices/unknown-price-is-no-row", test_unknown_price_is_no_row);
  FIXTURE_TEST ("/prices/version-keeps-its-price", test_version_keeps_its_price);
  g_test_add_func ("/allergens/round-trip", test_allergens_round_trip);
  g_test_add_func ("/allergens/strange-word-is-damage", test_strange_allergen_is_damage);
  return g_test_run ();
}
