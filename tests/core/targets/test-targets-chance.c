/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-targets-chance.c - how sure the fat of a blend is, and when that cannot be said */
#include "core/base/fm-error.h"
#include "core/composition/fm-fat-spread.h"
#include "core/targets/fm-targets-chance.h"

#include "blends.h"

static void
test_chance (void)
{
  /* Standard normal distribution: 0.975 lies below 1.959964 (from memory, any table). */
  assert_near (fm_normal_below (0.0, 1.0, 1.959964), 0.975, 1e-7);
  g_assert_cmpfloat (fm_normal_below (20.0, 0.0, 20.0), ==, 0.5);
  g_assert_true (isnan (fm_normal_below (20.0, NAN, 20.0)));

  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) lean = ingredient_with_fat ("Lean", 18.0);
  lean->fat_u_g_per_100g = 1.0;
  fm_formula_add (formula, lean, 500.0);
  fm_formula_add (formula, lean, 500.0);
  g_auto (FmFatChance) chance = { 0 };
  g_assert_true (fm_fat_chance_init (&chance, formula, 20.0, 0.0, NULL));
  /* Two lines of one ingredient share its error: 1, not 1 / sqrt (2). */
  assert_near (chance.u_pct, 1.0, 1e-12);
  assert_near (chance.below, 0.977249868, 1e-8);
}

static void
test_chance_of_scale (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  add_line (formula, "Lean", 10.0, 500.0);
  add_line (formula, "Fat", 30.0, 500.0);
  g_auto (FmFatChance) unstated = { 0 };
  g_assert_true (fm_fat_chance_init (&unstated, formula, 21.0, 0.0, NULL));
  g_assert_true (isnan (unstated.below));
  g_auto (FmFatChance) weighed = { 0 };
  g_assert_true (fm_fat_chance_init (&weighed, formula, 21.0, 12.0, NULL));
  /* Both deviate 10 points from the mean: u = 10 / 1000 x 12 / sqrt (12) x sqrt (2). */
  assert_near (weighed.u_weighing_pct, 0.01 * 12.0 / sqrt (12.0) * sqrt (2.0), 1e-12);
  g_assert_true (isnan (weighed.u_pct));
  g_assert_true (isnan (weighed.below));
  g_assert_cmpuint (g_strv_length (weighed.without_u), ==, 2);

  add_line (formula, "Mystery", NAN, 1.0);
  g_auto (FmFatChance) failed = { 0 };
  g_autoptr (GError) error = NULL;
  g_assert_false (fm_fat_chance_init (&failed, formula, 21.0, 0.0, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE);
}

/* A row of the dataset with this number, of which only the fat is known. */
static void
add_row (FmFormula *formula, const char *ndb_no, const char *name, double fat, double mass_g)
{
  g_autoptr (FmIngredient) row = ingredient_with_fat (name, fat);

  row->provenance = FM_PROVENANCE_DATASET;
  row->source_ref = g_strdup (ndb_no);
  fm_formula_add (formula, row, mass_g);
}

#define assert_says(text, part) g_assert_nonnull (strstr (text, part))
#define assert_silent(text, part) g_assert_null (strstr (text, part))

/* One ingredient without a spread leaves no more than the part of the scale, and says so. */
static void
test_one_unstated (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  add_line (formula, "Lean", 18.0, 500.0);
  add_line (formula, "Plate", 30.0, 500.0);
  fm_formula_line (formula, 0)->ingredient->fat_u_g_per_100g = 1.0;
  formula->brief->bands[FM_TARGET_FAT_PCT] = (FmBand){ 20.0, 25.0 };

  g_autofree char *weighed = fm_fat_chance_text (formula, 1.0, 22.0);
  assert_says (weighed, "from weighing alone, 95 % interval");
  assert_says (weighed, "no spread of the fat is stated for: Plate.");
  assert_silent (weighed, "robability");
  g_autofree char *exact = fm_fat_chance_text (formula, 0.0, NAN);
  assert_silent (exact, "interval");

  fm_formula_line (formula, 1)->ingredient->fat_u_g_per_100g = 1.0;
  g_autofree char *stated = fm_fat_chance_text (formula, 1.0, 22.0);
  assert_says (stated, "Probability that fat is within 20.0 to 25.0");
  assert_silent (stated, "weighing alone");
}

/* Salt holds no fat, so it needs no spread; oil does. */
static void
test_salt_is_exact (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) salt = fm_ingredient_new ("Salt", FM_INGREDIENT_SALT);
  salt->composition.per_100g[FM_NUTRIENT_FAT] = 0.0;
  add_line (formula, "Lean", 18.0, 980.0);
  fm_formula_line (formula, 0)->ingredient->fat_u_g_per_100g = 1.0;
  fm_formula_add (formula, salt, 20.0);
  g_auto (FmFatChance) chance = { 0 };
  g_assert_true (fm_fat_chance_init (&chance, formula, NAN, 0.0, NULL));
  assert_near (chance.u_pct, 0.98, 1e-12);
  g_assert_cmpuint (g_strv_length (chance.without_u), ==, 0);
}

static void
test_published_spread (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  add_row (formula, "10005", "Pork belly", 53.01, 500.0);
  add_row (formula, "23572", "Ground beef", 20.0, 500.0);
  g_autofree char *offered = fm_fat_chance_text (formula, 1.0, NAN);
  assert_says (offered, "A spread between samples is published for: Pork belly, 3.93");
  assert_silent (offered, "Taken from what is published");

  FmIngredient *belly = fm_formula_line (formula, 0)->ingredient;
  belly->fat_u_g_per_100g = fm_fat_spread_sd_g (fm_fat_spread_of (belly));
  fm_formula_remove (formula, 1);
  g_autofree char *taken = fm_fat_chance_text (formula, 1.0, NAN);
  assert_says (taken, "Taken from what is published, not from your own meat: Pork belly, 3.93");
  assert_says (taken, "95 % interval 45.");
}

/* The mean of every row of the table is the one of the dataset that the program carries. */
static void
test_spreads_are_of_the_dataset (void)
{
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (SRCDIR "/data/sr28/foods.tsv", &text, NULL, NULL));
  g_auto (GStrv) rows = g_strsplit (text, "\n", -1);
  guint n = 0;
  const FmFatSpread *spreads = fm_fat_spreads (&n);
  for (guint i = 0; i < n; i++) {
    gboolean found = FALSE;
    for (guint r = 0; rows[r] && !found; r++) {
      g_auto (GStrv) cells = g_strsplit (rows[r], "\t", 7);
      found = g_strcmp0 (cells[0], spreads[i].ndb_no) == 0;
      if (found)
        assert_near (g_ascii_strtod (cells[5], NULL), spreads[i].mean_g_per_100g, 1e-9);
    }
    g_assert_true (found);
    g_assert_cmpuint (spreads[i].n_samples, >=, 2);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chance/shared-source", test_chance);
  g_test_add_func ("/chance/scale", test_chance_of_scale);
  g_test_add_func ("/chance/one-unstated", test_one_unstated);
  g_test_add_func ("/chance/salt-is-exact", test_salt_is_exact);
  g_test_add_func ("/chance/published-spread", test_published_spread);
  g_test_add_func ("/chance/spreads-are-of-the-dataset", test_spreads_are_of_the_dataset);
  return g_test_run ();
}
