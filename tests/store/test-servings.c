/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-servings.c - servings of a version: kept, numbered, never changed, handed over */
#include "store-fixture.h"

#include <string.h>

#include "store/exchange/fm-exchange.h"
#include "store/fm-servings.h"
#include "store/notebook/fm-db.h"

static FmDish *
new_dish (const FmFormula *patty)
{
  FmDish *dish = fm_dish_new (patty->brief);
  g_autoptr (FmIngredient) bun = fm_ingredient_new ("Bun (invented)", FM_INGREDIENT_OTHER);

  bun->allergens_known = TRUE;
  bun->allergens = FM_ALLERGEN_BIT (FM_ALLERGEN_WHEAT);
  fm_dish_add_ingredient (dish, FM_DISH_BUN, bun, 61.5);
  fm_dish_add_formula (dish, FM_DISH_SAUCE, "Sauce, version 1", new_formula (30.0, 20.25), 20.0);
  dish->cook_yield_pct = 74.5;
  return dish;
}

static gint64
add_version (FmNotebook *notebook, gint64 blend_id)
{
  g_autoptr (FmFormula) formula = new_formula (400.0, 100.0);

  return fm_versions_save (notebook, blend_id, formula, "start", NULL);
}

static void
test_round_trip (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  const gint64 blend_id = fm_blends_add (notebook, "Patty", NULL);
  const gint64 version_id = add_version (notebook, blend_id);
  g_autoptr (FmFormula) patty = fm_versions_load (notebook, version_id, NULL);
  g_autoptr (FmDish) dish = new_dish (patty);
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_servings_save_draft (notebook, version_id, dish, &error));
  g_assert_cmpint (fm_servings_save (notebook, version_id, "Plain", "first", dish, &error), ==, 1);
  g_assert_cmpint (fm_servings_save (notebook, version_id, "Again", "second", dish, &error), ==, 2);
  g_autoptr (GPtrArray) infos = fm_servings_list (notebook, blend_id, NULL);
  g_assert_cmpuint (infos->len, ==, 2); /* the draft became the first one */
  const FmServingInfo *last = g_ptr_array_index (infos, 0);
  g_assert_cmpstr (last->name, ==, "Again");
  g_autoptr (FmDish) read = fm_servings_load (notebook, last->id, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (read->parts->len, ==, 2);
  g_assert_cmpfloat (read->cook_yield_pct, ==, 74.5);
  const FmDishPart *bun = fm_dish_part (read, 0), *sauce = fm_dish_part (read, 1);
  g_assert_cmpfloat (bun->mass_g, ==, 61.5);
  g_assert_true (fm_ingredient_equal (bun->ingredient, fm_dish_part (dish, 0)->ingredient));
  g_assert_cmpstr (sauce->name, ==, "Sauce, version 1");
  g_assert_true (fm_formula_equal (sauce->formula, fm_dish_part (dish, 1)->formula));
}

static void
test_refused (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  const gint64 version_id = add_version (notebook, fm_blends_add (notebook, "Patty", NULL));
  g_autoptr (FmFormula) patty = fm_versions_load (notebook, version_id, NULL);
  g_autoptr (FmDish) dish = new_dish (patty);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (fm_servings_save (notebook, version_id, " ", "why", dish, &error), ==, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED);
  g_clear_error (&error);
  g_assert_cmpint (fm_servings_save (notebook, 99, "Plain", "why", dish, &error), ==, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_assert_cmpint (fm_servings_save (notebook, version_id, "Plain", "why", dish, NULL), ==, 1);
  FmDb *db = fm_notebook_begin (notebook, NULL);
  g_assert_false (
      fm_notebook_end (notebook, fm_db_exec (db, "UPDATE servings SET name = 'x'", NULL), NULL));
}

static void export(FmNotebook *notebook, gint64 blend_id, const char *path, char **text)
{
  const FmExchangePart part = { .blend_id = blend_id };
  g_autoptr (GError) error = NULL;

  fm_exchange_export (notebook, &part, path, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, text, NULL, NULL));
}

/* Exported with its blend and without the other one; imported and exported again the same. */
static void
test_exchange (Fixture *self, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (self->path);
  g_autofree char *json = g_build_filename (self->folder, "a.json", NULL);
  g_autofree char *again = g_build_filename (self->folder, "b.json", NULL);
  g_autofree char *other_path = g_build_filename (self->folder, "b.forcemeat", NULL);
  g_autofree char *first = NULL, *second = NULL, *part = NULL;
  const gint64 blend_id = fm_blends_add (notebook, "Patty", NULL);
  const gint64 other_id = fm_blends_add (notebook, "Other", NULL);
  const gint64 version_id = add_version (notebook, blend_id);
  g_autoptr (FmFormula) patty = fm_versions_load (notebook, version_id, NULL);
  g_autoptr (FmDish) dish = new_dish (patty);

  g_assert_cmpint (fm_servings_save (notebook, version_id, "Plain", "why", dish, NULL), ==, 1);
  export(notebook, 0, json, &first);
  g_autoptr (FmNotebook) made = fm_exchange_import (json, other_path, NULL, NULL);
  g_assert_nonnull (made);
  export(made, 0, again, &second);
  g_assert_cmpstr (first, ==, second);
  export(notebook, blend_id, json, &part);
  g_assert_nonnull (strstr (part, "61.5"));
  g_clear_pointer (&part, g_free);
  export(notebook, other_id, json, &part);
  g_assert_null (strstr (part, "61.5"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  FIXTURE_TEST ("/servings/round-trip", test_round_trip);
  FIXTURE_TEST ("/servings/refused", test_refused);
  FIXTURE_TEST ("/servings/exchange", test_exchange);
  return g_test_run ();
}
