/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-cook-loss.c - measured cook loss of alike experiments, by fat level */
#include <math.h>

#include "core/cooking/fm-cooking.h"
#include "log-fixture.h"
#include "store/fm-cook-loss.h"

static gint64
add_version (Fixture *fixture, double fat_pct, FmSpecies species)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) trim = fm_ingredient_new ("Trim", FM_INGREDIENT_TRIM);

  trim->provenance = FM_PROVENANCE_DECLARED;
  trim->declared_fat_pct = fat_pct;
  trim->species = species;
  fm_formula_add (formula, trim, 1000);
  return fm_versions_save (fixture->notebook, fixture->blend_id, formula, "For a test", NULL);
}

static void
cook (Fixture *fixture, gint64 version_id, FmCookMethod method, double raw_g, double cooked_g)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  const FmPattyMass patty = { raw_g, cooked_g };

  experiment->version_id = version_id;
  experiment->method = method;
  g_array_append_val (experiment->patties, patty);
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, NULL));
}

/* Two levels of fat; another method, another animal and a patty not weighed are left out. */
static void
test_levels (Fixture *fixture, gconstpointer data)
{
  const FmCookMethod method = FM_COOK_PATTY_BROILED;
  const gint64 lean = add_version (fixture, 10, FM_SPECIES_BEEF);
  const gint64 fat = add_version (fixture, 25, FM_SPECIES_BEEF);
  const gint64 pork = add_version (fixture, 25, FM_SPECIES_PORK);
  const FmCookFood food = { FM_SPECIES_BIT (FM_SPECIES_BEEF), 10 };
  g_autoptr (GError) error = NULL;

  cook (fixture, fat, method, 100, 70);
  cook (fixture, lean, method, 100, 80);
  cook (fixture, lean, method, 100, 76);
  cook (fixture, lean, FM_COOK_PATTY_PAN_BROILED, 100, 50);
  cook (fixture, pork, method, 100, 50);
  cook (fixture, lean, method, 100, NAN);
  g_autoptr (GArray) losses = fm_cook_losses_of (fixture->notebook, method, lean, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (losses->len, ==, 2);
  const FmCookLoss *first = &g_array_index (losses, FmCookLoss, 0);
  g_assert_cmpuint (first->n, ==, 2);
  g_assert_cmpfloat_with_epsilon (first->fat_pct, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (first->measured_pct, 22, 1e-9);
  g_assert_cmpfloat_with_epsilon (first->min_pct, 20, 1e-9);
  g_assert_cmpfloat_with_epsilon (first->max_pct, 24, 1e-9);
  g_assert_cmpfloat_with_epsilon (first->predicted_pct, 100 - fm_cook_yield_pct (method, &food),
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (g_array_index (losses, FmCookLoss, 1).measured_pct, 30, 1e-9);
}

static void
test_ends (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_cook_losses_of (fixture->notebook, FM_COOK_PATTY_BROILED, 99, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_cancellable_cancel (cancellable);
  g_assert_null (fm_cook_losses_of (fixture->notebook, FM_COOK_PATTY_BROILED, fixture->version_id,
                                    cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/cook-loss/levels", Fixture, NULL, fixture_set_up, test_levels, fixture_tear_down);
  g_test_add ("/cook-loss/ends", Fixture, NULL, fixture_set_up, test_ends, fixture_tear_down);
  return g_test_run ();
}
