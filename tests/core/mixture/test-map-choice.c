/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-map-choice.c - which ingredients of a formula a map changes */
#include "core/mixture/fm-map-choice.h"

#include <math.h>

static void
add_line (FmFormula *formula, const char *name, double mass_g)
{
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new (name, FM_INGREDIENT_CUT);

  fm_formula_add (formula, ingredient, mass_g);
}

static FmMapIngredient *
at (GPtrArray *ingredients, guint i)
{
  return g_ptr_array_index (ingredients, i);
}

static void
test_roles (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmMap) map = fm_map_new ();
  g_autoptr (GPtrArray) ingredients = NULL;
  g_autoptr (GPtrArray) again = NULL;
  const FmMixComponent *pair;

  add_line (formula, "Chuck", 500);
  add_line (formula, "Rib", 200);
  add_line (formula, "Suet", 200);
  add_line (formula, "Salt", 100);
  ingredients = fm_map_ingredients_new (formula, map->components);
  g_assert_cmpuint (ingredients->len, ==, 4);
  g_assert_cmpuint (at (ingredients, 0)->role, ==, FM_MAP_FIXED);
  at (ingredients, 0)->role = FM_MAP_ALONE;
  at (ingredients, 1)->role = FM_MAP_GROUP + 1;
  at (ingredients, 2)->role = FM_MAP_GROUP + 1;
  fm_map_ingredients_apply (ingredients, map);
  g_assert_cmpuint (map->components->len, ==, 2);
  pair = g_ptr_array_index (map->components, 1);
  g_assert_cmpstr (pair->name, ==, "Rib + Suet");
  g_assert_cmpuint (pair->members->len, ==, 2);
  /* Shares of the mixture: 500 and 400 of 900. */
  g_assert_cmpfloat (map->lower[0], ==, 0.40);
  g_assert_cmpfloat (map->upper[0], ==, 0.71);
  g_assert_cmpfloat (map->lower[1], ==, 0.29);
  g_assert_cmpfloat (map->upper[1], ==, 0.60);

  again = fm_map_ingredients_new (formula, map->components);
  g_assert_cmpuint (at (again, 0)->role, ==, FM_MAP_ALONE);
  g_assert_cmpuint (at (again, 1)->role, ==, FM_MAP_GROUP);
  g_assert_cmpuint (at (again, 2)->role, ==, FM_MAP_GROUP);
  g_assert_cmpuint (at (again, 3)->role, ==, FM_MAP_FIXED);
}

/* The same stuff on two lines is chosen once. */
static void
test_one_stuff_on_two_lines (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmMap) map = fm_map_new ();
  g_autoptr (FmIngredient) chuck = fm_ingredient_new ("Chuck", FM_INGREDIENT_CUT);
  g_autoptr (GPtrArray) ingredients = NULL;

  fm_formula_add (formula, chuck, 300);
  add_line (formula, "Suet", 500);
  fm_formula_add (formula, chuck, 200);
  ingredients = fm_map_ingredients_new (formula, map->components);
  g_assert_cmpuint (ingredients->len, ==, 2);
  g_assert_cmpfloat (fabs (at (ingredients, 0)->share_pct - 50.0), <, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/map-choice/roles", test_roles);
  g_test_add_func ("/map-choice/one-stuff-on-two-lines", test_one_stuff_on_two_lines);
  return g_test_run ();
}
