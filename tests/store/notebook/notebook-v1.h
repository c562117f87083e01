/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* notebook-v1.h - what data/notebook-v1.forcemeat holds, in the words of the API
 *
 * The file was written once, by the last code before schema version 2 (commit e73cf6f), with
 * notebook_v1_fill() below, and is never written again. Everything in it is invented.
 */
#pragma once

#include "store/fm-experiments.h"
#include "store/fm-prices.h"
#include "store/fm-versions.h"

#define NOTEBOOK_V1_BLEND "Invented blend"
#define NOTEBOOK_V1_CURRENCY "crowns"
#define NOTEBOOK_V1_CAPTION "A grey square"
#define NOTEBOOK_V1_DAY 1750000000
#define NOTEBOOK_V1_N_VERSIONS 3
#define NOTEBOOK_V1_N_EXPERIMENTS 2

static inline FmIngredient *
notebook_v1_ingredient (const char *id, const char *name, double fat_pct, double price_per_kg)
{
  FmIngredient *ingredient = fm_ingredient_new (name, FM_INGREDIENT_CUT);

  g_free (ingredient->id);
  ingredient->id = g_strdup (id);
  ingredient->provenance = FM_PROVENANCE_ANALYSIS;
  ingredient->composition.per_100g[FM_NUTRIENT_FAT] = fat_pct;
  ingredient->composition.per_100g[FM_NUTRIENT_PROTEIN] = 18.0 - fat_pct / 8.0;
  ingredient->fat_u_g_per_100g = 0.75;
  ingredient->price_per_kg = price_per_kg;
  return ingredient;
}

/* The formula of version @number, 1 to 3; 4 is the draft. */
static inline FmFormula *
notebook_v1_formula (int number)
{
  FmFormula *formula = fm_formula_new ();
  g_autoptr (FmIngredient) lean = notebook_v1_ingredient ("v1-lean", "Shoulder", 9.5, 8.4);
  g_autoptr (FmIngredient) fat = notebook_v1_ingredient ("v1-fat", "Back fat", 81.25, 3.1);

  fm_formula_add (formula, lean, 850.0 - 10.0 * number);
  fm_formula_add (formula, fat, 150.0 + 10.0 * number);
  g_free (fm_formula_line (formula, 0)->id);
  fm_formula_line (formula, 0)->id = g_strdup ("v1-line-1");
  g_free (fm_formula_line (formula, 1)->id);
  fm_formula_line (formula, 1)->id = g_strdup ("v1-line-2");
  fm_formula_line (formula, 1)->max_share_pct = 30.0;
  formula->brief->patty_mass_g = 150.0;
  formula->brief->n_patties = 4;
  formula->brief->notes = g_strdup ("Wholly invented");
  formula->brief->bands[FM_TARGET_FAT_PCT] = (FmBand){ 18.0, 22.0 };
  return formula;
}

/* Experiment 1 has every value, experiment 2 none; the id is left 0. */
static inline FmExperiment *
notebook_v1_experiment (int number, gint64 version_id)
{
  static const FmPattyMass patties[] = { { 150.5, 112.25 }, { 149.75, NAN }, { NAN, NAN } };
  static const FmCoreReading readings[] = { { 0, 4.5 }, { 120, 38 }, { 300, 71.25 } };
  FmExperiment *experiment = fm_experiment_new ();

  experiment->version_id = version_id;
  experiment->made_at = NOTEBOOK_V1_DAY + number;
  if (number != 1)
    return experiment;
  experiment->title = g_strdup ("Räucherzimmer, erster Versuch");
  experiment->notes = g_strdup ("Invented: crisp \"crust\", 100 % made up\nsecond line");
  experiment->rating = 7;
  experiment->meat_temp_c = -1.25;
  experiment->plate_mm = 4.5;
  experiment->grind_passes = 2;
  experiment->patty_tolerance_pct = 2.5;
  experiment->patty_target_g = 150;
  experiment->salt_pct = 0.9;
  experiment->salt_minutes_before = 12.5;
  experiment->method = FM_COOK_PATTY_BROILED;
  experiment->surface = g_strdup ("Iron pan");
  experiment->surface_temp_c = 231.5;
  experiment->minutes_side_1 = 4;
  experiment->minutes_side_2 = 3.5;
  experiment->rest_minutes = 3;
  fm_experiment_add_weighing (experiment, "v1-line-1", "Shoulder", 504, 505.5);
  fm_experiment_add_weighing (experiment, NULL, "Ice", NAN, 20);
  g_array_append_vals (experiment->patties, patties, G_N_ELEMENTS (patties));
  g_array_append_vals (experiment->core_readings, readings, G_N_ELEMENTS (readings));
  return experiment;
}

/* How the file was filled; @picture: data/notebook-v1.png. */
static inline void
notebook_v1_fill (FmNotebook *notebook, GBytes *picture)
{
  gint64 blend_id = fm_blends_add (notebook, NOTEBOOK_V1_BLEND, NULL);
  gint64 version_id = 0;

  for (int number = 1; number <= NOTEBOOK_V1_N_VERSIONS; number++) {
    g_autoptr (FmFormula) formula = notebook_v1_formula (number);
    g_autofree char *reason = g_strdup_printf ("Reason %d", number);

    version_id = fm_versions_save (notebook, blend_id, formula, reason, NULL);
    g_assert_cmpint (version_id, ==, number);
  }
  g_autoptr (FmFormula) draft = notebook_v1_formula (4);
  g_assert_true (fm_draft_save (notebook, blend_id, draft, NULL));
  for (int number = 1; number <= NOTEBOOK_V1_N_EXPERIMENTS; number++) {
    g_autoptr (FmExperiment) experiment = notebook_v1_experiment (number, version_id);
    g_assert_true (fm_experiments_save (notebook, experiment, NULL));
    g_assert_cmpint (experiment->id, ==, number);
  }
  g_assert_cmpint (fm_photos_add (notebook, 1, picture, NOTEBOOK_V1_CAPTION, NULL, NULL), ==, 1);
  g_autoptr (FmIngredient) own = notebook_v1_ingredient ("v1-own", "House trim", 28.5, 5.2);
  g_assert_true (fm_ingredients_save (notebook, own, NULL));
  g_assert_true (fm_prices_record (notebook, own, NOTEBOOK_V1_DAY, NULL));
  g_assert_true (fm_notebook_set_setting (notebook, "currency", NOTEBOOK_V1_CURRENCY, NULL));
}
