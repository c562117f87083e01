/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-cooking.c - what the cooking model promises, whatever the table says */
#include <math.h>
#include <string.h>

#include "core/cooking/fm-cooking-table.h"
#include "core/base/fm-error.h"

static const FmSpeciesSet beef =
    FM_SPECIES_BIT (FM_SPECIES_BEEF) | FM_SPECIES_BIT (FM_SPECIES_NONE);

static void
analysis_of_level (FmAnalysis *analysis, guint level)
{
  *analysis = (FmAnalysis){ .total_g = 1000.0, .fat_pct = fm_cook_levels[level].raw_fat_pct };
  for (guint i = 0; i < FM_N_NUTRIENTS; i++) {
    double value = fm_cook_levels[level].raw[i];

    analysis->amounts[i].known_g_per_100g = isnan (value) ? 0.0 : value;
    analysis->amounts[i].covered_pct = isnan (value) ? 0.0 : 100.0;
  }
}

static void
test_unknown_fat_is_refused (void)
{
  FmAnalysis raw = { .fat_pct = NAN };
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_cooked_new (&raw, beef, FM_COOK_LOAF_BAKED, NAN, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE);
  g_assert_true (isnan (fm_cook_yield_pct (FM_COOK_LOAF_BAKED, &(FmCookFood){ beef, NAN })));
}

static void
test_bad_masses_are_refused (void)
{
  const double bad[] = { 0.0, -5.0, INFINITY, 151.0, 20.0 };
  FmAnalysis raw;

  analysis_of_level (&raw, 5);
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (GError) error = NULL;

    g_assert_null (fm_cooked_new (&raw, beef, FM_COOK_PATTY_BROILED, bad[i], &error));
    g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  }
}

static void
test_table_rows_come_back (void)
{
  for (guint level = 0; level < FM_N_COOK_LEVELS; level++)
    for (guint m = 0; m < FM_N_COOK_METHODS; m++) {
      g_autoptr (FmCooked) cooked = NULL;
      FmAnalysis raw;

      analysis_of_level (&raw, level);
      cooked = fm_cooked_new (&raw, beef, m, NAN, NULL);
      g_assert_false (cooked->yield_measured);
      g_assert_false (cooked->extrapolated);
      /* Fat of lean crumbles would be 129 % of the raw fat: not known, and with it the water. */
      if (level == 0 && m == FM_COOK_CRUMBLES_PAN_BROWNED) {
        g_assert_true (isnan (cooked->amounts[FM_NUTRIENT_FAT].known_g_per_100g));
        g_assert_cmpfloat (cooked->amounts[FM_NUTRIENT_FAT].covered_pct, ==, 0.0);
        g_assert_true (isnan (cooked->amounts[FM_NUTRIENT_WATER].known_g_per_100g));
        g_assert_true (isnan (cooked->amounts[FM_NUTRIENT_ENERGY_KCAL].known_g_per_100g));
        continue;
      }
      g_assert_cmpfloat_with_epsilon (cooked->amounts[FM_NUTRIENT_FAT].known_g_per_100g,
                                      fm_cook_levels[level].cooked[m][FM_NUTRIENT_FAT], 1e-9);
      /* The dataset's own rows add up to 100 g within 2 g. */
      g_assert_cmpfloat_with_epsilon (cooked->amounts[FM_NUTRIENT_WATER].known_g_per_100g,
                                      fm_cook_levels[level].cooked[m][FM_NUTRIENT_WATER], 2.0);
      /* Energy is printed to 1 kcal in both rows, so the raw one counts for up to 0.5 / 0.61. */
      g_assert_cmpfloat_with_epsilon (cooked->amounts[FM_NUTRIENT_ENERGY_KCAL].known_g_per_100g,
                                      fm_cook_levels[level].cooked[m][FM_NUTRIENT_ENERGY_KCAL],
                                      1.6);
    }
}

static void
test_measured_mass_moves_water_only (void)
{
  g_autoptr (FmCooked) predicted = NULL;
  g_autoptr (FmCooked) measured = NULL;
  FmAnalysis raw;
  double kept_predicted_g;
  double kept_measured_g;

  analysis_of_level (&raw, 5);
  predicted = fm_cooked_new (&raw, beef, FM_COOK_PATTY_PAN_BROILED, NAN, NULL);
  measured =
      fm_cooked_new (&raw, beef, FM_COOK_PATTY_PAN_BROILED, predicted->yield_pct - 6.0, NULL);
  g_assert_true (measured->yield_measured);
  for (guint i = FM_NUTRIENT_WATER; i <= FM_NUTRIENT_FAT; i++) {
    kept_predicted_g = predicted->amounts[i].known_g_per_100g * predicted->yield_pct / 100.0;
    kept_measured_g = measured->amounts[i].known_g_per_100g * measured->yield_pct / 100.0;
    g_assert_cmpfloat_with_epsilon (kept_measured_g,
                                    kept_predicted_g - (i == FM_NUTRIENT_WATER ? 6.0 : 0.0), 1e-9);
  }
  g_assert_nonnull (strstr (measured->basis, "measured"));
}

static void
test_unknown_stays_unknown (void)
{
  g_autoptr (FmCooked) cooked = NULL;
  FmAnalysis raw;

  analysis_of_level (&raw, 5);
  raw.amounts[FM_NUTRIENT_IRON] = (FmAmount){ 1.5, 80.0 };
  raw.amounts[FM_NUTRIENT_FIBRE] = (FmAmount){ 2.0, 100.0 };
  raw.amounts[FM_NUTRIENT_SUGARS] = (FmAmount){ 0.0, 40.0 };
  cooked = fm_cooked_new (&raw, beef, FM_COOK_PATTY_BROILED, NAN, NULL);

  g_assert_cmpfloat (cooked->amounts[FM_NUTRIENT_IRON].covered_pct, ==, 80.0);
  g_assert_cmpfloat (cooked->amounts[FM_NUTRIENT_IRON].known_g_per_100g, >, 1.5);
  /* Beef has no fibre, so its rows cannot tell what becomes of it. */
  g_assert_cmpfloat (cooked->amounts[FM_NUTRIENT_FIBRE].covered_pct, ==, 0.0);
  g_assert_cmpfloat (cooked->amounts[FM_NUTRIENT_SUGARS].covered_pct, ==, 40.0);
}

/* Below the table its lowest level is held; above 30 % nothing is known, yield included. */
static void
test_outside_the_table (void)
{
  const double fats[] = { 0.0, 2.0, 30.04, 30.2, 34.0, 39.6, 60.0, 100.0 };

  for (guint i = 0; i < G_N_ELEMENTS (fats); i++) {
    g_autoptr (FmCooked) cooked = NULL;
    g_autoptr (GError) error = NULL;
    const FmCookFood food = { beef, fats[i] };
    FmAnalysis raw;

    analysis_of_level (&raw, fats[i] < 3.0 ? 0 : FM_N_COOK_LEVELS - 1);
    raw.fat_pct = fats[i];
    raw.amounts[FM_NUTRIENT_FAT].known_g_per_100g = fats[i];
    cooked = fm_cooked_new (&raw, beef, FM_COOK_PATTY_PAN_BROILED, NAN, &error);
    if (fats[i] > 30.1) {
      g_assert_null (cooked);
      g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE);
      g_assert_nonnull (strstr (error->message, "30 %"));
      g_assert_true (isnan (fm_cook_yield_pct (FM_COOK_PATTY_PAN_BROILED, &food)));
      continue;
    }
    g_assert_no_error (error);
    g_assert_true (cooked->extrapolated == (fats[i] < 3.0));
    for (guint n = 0; n < FM_N_NUTRIENTS; n++)
      g_assert_false (cooked->amounts[n].known_g_per_100g < 0.0);
  }
}

/* Vitamin K of 97/3 beef would be multiplied by ten, folate by 1.3: the pairs cannot tell. */
static void
test_nothing_is_multiplied (void)
{
  for (double fat_pct = 0.0; fat_pct <= 30.0; fat_pct += 0.25)
    for (int m = 0; m < FM_N_COOK_METHODS; m++)
      for (int n = 0; n < FM_N_NUTRIENTS; n++) {
        double kept_pct =
            fm_cook_retention_pct ((FmCookMethod)m, (FmNutrient)n, fat_pct, FM_N_COOK_LEVELS);
        g_assert_false (kept_pct > fm_cook_retention_limit_pct () + 1e-6);
      }
  g_assert_cmpfloat (fm_cook_retention_limit_pct (), <=, FM_COOK_PROTEIN_KEPT_MAX_PCT);
  g_assert_true (isnan (
      fm_cook_retention_pct (FM_COOK_PATTY_BROILED, FM_NUTRIENT_VITAMIN_K, 3.0, FM_N_COOK_LEVELS)));
  g_assert_true (isnan (fm_cook_retention_pct (FM_COOK_CRUMBLES_PAN_BROWNED, FM_NUTRIENT_FAT, 3.0,
                                               FM_N_COOK_LEVELS)));
}

/* A pair speaks for its own animal, method and fat, and for nothing else. */
static void
test_other_animals (void)
{
  const FmCookFood turkey = { FM_SPECIES_BIT (FM_SPECIES_TURKEY), 8.0 };
  const FmCookFood fat_turkey = { FM_SPECIES_BIT (FM_SPECIES_TURKEY), 15.0 };
  const FmCookFood chicken = { FM_SPECIES_BIT (FM_SPECIES_CHICKEN), 8.0 };
  const FmCookFood mixture = { FM_SPECIES_BIT (FM_SPECIES_TURKEY) | beef, 8.0 };
  const FmCookFood unstated = { FM_SPECIES_BIT (FM_SPECIES_UNKNOWN) | beef, 8.0 };
  const FmCookFood *none[] = { &fat_turkey, &chicken, &mixture, &unstated };
  g_autofree char *why = fm_cook_unknown_text (FM_COOK_LOAF_BAKED, &turkey);
  g_autofree char *state = fm_cook_unknown_text (FM_COOK_PATTY_BROILED, &unstated);

  g_assert_cmpfloat (fm_cook_yield_pct (FM_COOK_PATTY_BROILED, &turkey), >, 0.0);
  g_assert_null (fm_cook_unknown_text (FM_COOK_PATTY_BROILED, &turkey));
  g_assert_true (isnan (fm_cook_yield_pct (FM_COOK_LOAF_BAKED, &turkey)));
  g_assert_nonnull (strstr (why, "Turkey"));
  g_assert_nonnull (strstr (state, "kind of animal"));
  for (guint i = 0; i < G_N_ELEMENTS (none); i++)
    g_assert_true (isnan (fm_cook_yield_pct (FM_COOK_PATTY_BROILED, none[i])));
}

static void
test_slips_are_named (void)
{
  g_autoptr (FmCooked) cooked = NULL;
  guint n_slips = 0;
  FmAnalysis raw;

  analysis_of_level (&raw, 0);
  cooked = fm_cooked_new (&raw, beef, FM_COOK_PATTY_BROILED, NAN, NULL);
  for (guint i = 0; i < fm_n_cook_weights; i++) {
    g_autofree char *ndb = g_strdup_printf ("%d", fm_cook_weights[i].cooked_ndb);

    if (fm_cook_weight_is_plausible (&fm_cook_weights[i]))
      continue;
    n_slips++;
    g_assert_nonnull (strstr (cooked->basis, ndb));
  }
  g_assert_cmpuint (n_slips, ==, 2);
}

/* Of a cooked blend likewise: 100 g keep no more of anything than they had, beyond that limit. */
static void
test_nothing_is_multiplied_in_a_blend (void)
{
  for (guint level = 0; level < FM_N_COOK_LEVELS; level++)
    for (int m = 0; m < FM_N_COOK_METHODS; m++) {
      FmAnalysis raw;

      analysis_of_level (&raw, level);
      g_autoptr (FmCooked) cooked = fm_cooked_new (&raw, beef, (FmCookMethod)m, NAN, NULL);
      for (int n = FM_NUTRIENT_THIAMIN; n < FM_N_NUTRIENTS; n++) {
        const double had = raw.amounts[n].known_g_per_100g;
        const double kept = cooked->amounts[n].known_g_per_100g * cooked->yield_pct / 100.0;

        g_assert_false (kept > had * fm_cook_retention_limit_pct () / 100.0 + 1e-6);
      }
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cooking/unknown-fat-is-refused", test_unknown_fat_is_refused);
  g_test_add_func ("/cooking/bad-masses-are-refused", test_bad_masses_are_refused);
  g_test_add_func ("/cooking/table-rows-come-back", test_table_rows_come_back);
  g_test_add_func ("/cooking/measured-mass-moves-water-only", test_measured_mass_moves_water_only);
  g_test_add_func ("/cooking/unknown-stays-unknown", test_unknown_stays_unknown);
  g_test_add_func ("/cooking/outside-the-table", test_outside_the_table);
  g_test_add_func ("/cooking/nothing-is-multiplied", test_nothing_is_multiplied);
  g_test_add_func ("/cooking/nothing-is-multiplied-in-a-blend",
                   test_nothing_is_multiplied_in_a_blend);
  g_test_add_func ("/cooking/other-animals", test_other_animals);
  g_test_add_func ("/cooking/slips-are-named", test_slips_are_named);
  return g_test_run ();
}
