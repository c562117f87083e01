/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-map-data.c - what is known of the blends that lie on a map */
#include <math.h>

#include "log-fixture.h"
#include "store/fm-map-data.h"

#define PRICE_PER_KG 8.0

static gint64
add_mix (Fixture *fixture, FmFormula *formula, double lean_g, double fat_g)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_formula_set_mass (formula, 0, lean_g, &error));
  g_assert_true (fm_formula_set_mass (formula, 1, fat_g, &error));
  gint64 id = fm_versions_save (fixture->notebook, fixture->blend_id, formula, "A trial", &error);
  g_assert_no_error (error);
  return id;
}

static FmFormula *
new_formula (void)
{
  FmFormula *formula = fm_formula_new ();
  g_autoptr (FmIngredient) lean = fm_ingredient_new ("Lean", FM_INGREDIENT_TRIM);
  g_autoptr (FmIngredient) fat = fm_ingredient_new ("Fat", FM_INGREDIENT_FAT);

  lean->price_per_kg = fat->price_per_kg = PRICE_PER_KG;
  fm_formula_add (formula, lean, 800);
  fm_formula_add (formula, fat, 200);
  return formula;
}

static void
add_component (FmMap *map, const char *name, const char *identity)
{
  FmMixComponent *component = fm_mix_component_new (name);
  const double whole = 1;

  g_ptr_array_add (component->members, g_strdup (identity));
  g_array_append_val (component->ratio, whole);
  g_ptr_array_add (map->components, component);
}

static FmMap *
new_map (Fixture *fixture, const FmFormula *formula, gint64 base_id)
{
  FmMap *map = fm_map_new ();

  map->blend_id = fixture->blend_id;
  map->base_version_id = base_id;
  add_component (map, "Lean", fm_ingredient_identity (fm_formula_line (formula, 0)->ingredient));
  add_component (map, "Fat", fm_ingredient_identity (fm_formula_line (formula, 1)->ingredient));
  return map;
}

/* The fixture's own version has another ingredient, which leaves it off the map. */
static void
test_collect (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmFormula) formula = new_formula ();
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (GError) error = NULL;
  const gint64 base_id = add_mix (fixture, formula, 800, 200);
  const gint64 fatter_id = add_mix (fixture, formula, 600, 400);
  g_autoptr (FmMap) map = new_map (fixture, formula, base_id);

  experiment->version_id = fatter_id;
  experiment->rating = 7;
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, NULL));
  g_autoptr (FmMapData) found = fm_map_data_load (fixture->notebook, map, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (found->q, ==, 2);
  g_assert_cmpuint (found->places->len, ==, 3);
  const FmMapPlace *place = fm_map_data_place (found, fatter_id);
  g_assert_true (place->is_placed);
  g_assert_cmpfloat_with_epsilon (place->x[1], 0.4, 1e-9);
  g_assert_cmpuint (place->n_experiments, ==, 1);
  place = fm_map_data_place (found, fixture->version_id);
  g_assert_false (place->is_placed);
  g_assert_nonnull (place->unplaced);
  g_assert_cmpuint (found->series[FM_MAP_RATING].data->x->n, ==, 1);
  g_assert_cmpfloat (found->series[FM_MAP_RATING].data->y[0], ==, 7);
  g_assert_cmpuint (found->series[FM_MAP_COST].data->x->n, ==, 2);
  g_assert_cmpfloat_with_epsilon (found->series[FM_MAP_COST].data->y[0], PRICE_PER_KG, 1e-9);
  g_assert_cmpuint (found->series[FM_MAP_PEAK_CORE].data->x->n, ==, 0);
  g_assert_null (fm_map_data_place (found, 99));
}

static void
test_gone (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmFormula) formula = new_formula ();
  g_autoptr (FmMap) map = new_map (fixture, formula, 99);
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_map_data_load (fixture->notebook, map, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/map-data/collect", Fixture, NULL, fixture_set_up, test_collect, fixture_tear_down);
  g_test_add ("/map-data/gone", Fixture, NULL, fixture_set_up, test_gone, fixture_tear_down);
  return g_test_run ();
}
