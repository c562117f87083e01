/* test-cooking.c - what the cooking model promises, whatever the table says */
#include <math.h>

#include "core/cooking/fm-cooking-table.h"
#include "core/base/fm-error.h"

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

  g_assert_null (fm_cooked_new (&raw, FM_COOK_LOAF_BAKED, NAN, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE);
  g_assert_true (isnan (fm_cook_yield_pct (FM_COOK_LOAF_BAKED, NAN)));
}

static void
test_bad_masses_are_refused (void)
{
  const double bad[] = { 0.0, -5.0, INFINITY, 151.0, 20.0 };
  FmAnalysis raw;

  analysis_of_level (&raw, 5);
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (GError) error = NULL;

    g_assert_null (fm_cooked_new (&raw, FM_COOK_PATTY_BROILED, bad[i], &error));
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
      cooked = fm_cooked_new (&raw, m, NAN, NULL);
      g_assert_false (cooked->yield_measured);
      g_assert_false (cooked->extrapolated);
      g_assert_cmpfloat_with_epsilon (cooked->amounts[FM_NUTRIENT_FAT].known_g_per_100g,
                                      fm_cook_levels[level].cooked[m][FM_NUTRIENT_FAT], 1e-9);
      g_assert_cmpfloat_with_epsilon (cooked->amounts[FM_NUTRIENT_WATER].known_g_per_100g,
                                      fm_cook_levels[level].cooked[m][FM_NUTRIENT_WATER], 1e-9);
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
  predicted = fm_cooked_new (&raw, FM_COOK_PATTY_PAN_BROILED, NAN, NULL);
  measured = fm_cooked_new (&raw, FM_COOK_PATTY_PAN_BROILED, predicted->yield_pct - 6.0, NULL);
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
  cooked = fm_cooked_new (&raw, FM_COOK_PATTY_BROILED, NAN, NULL);

  g_assert_cmpfloat (cooked->amounts[FM_NUTRIENT_IRON].covered_pct, ==, 80.0);
  g_assert_cmpfloat (cooked->amounts[FM_NUTRIENT_IRON].known_g_per_100g, >, 1.5);
  /* Beef has no fibre, so its rows cannot tell what becomes of it. */
  g_assert_cmpfloat (cooked->amounts[FM_NUTRIENT_FIBRE].covered_pct, ==, 0.0);
  g_assert_cmpfloat (cooked->amounts[FM_NUTRIENT_SUGARS].covered_pct, ==, 40.0);
}

static void
test_outside_the_table (void)
{
  const double fats[] = { 0.0, 2.0, 34.0, 60.0, 100.0 };

  for (guint i = 0; i < G_N_ELEMENTS (fats); i++) {
    g_autoptr (FmCooked) cooked = NULL;
    FmAnalysis raw;

    analysis_of_level (&raw, fats[i] < 3.0 ? 0 : FM_N_COOK_LEVELS - 1);
    raw.fat_pct = fats[i];
    raw.amounts[FM_NUTRIENT_FAT].known_g_per_100g = fats[i];
    cooked = fm_cooked_new (&raw, FM_COOK_PATTY_BROILED, NAN, NULL);
    g_assert_true (cooked->extrapolated);
    g_assert_nonnull (strstr (cooked->basis, "outside the table"));
    for (guint n = 0; n < FM_N_NUTRIENTS; n++)
      g_assert_cmpfloat (cooked->amounts[n].known_g_per_100g, >=, 0.0);
  }
}

static void
test_slips_are_named (void)
{
  g_autoptr (FmCooked) cooked = NULL;
  guint n_slips = 0;
  FmAnalysis raw;

  analysis_of_level (&raw, 0);
  cooked = fm_cooked_new (&raw, FM_COOK_PATTY_BROILED, NAN, NULL);
  for (guint i = 0; i < fm_n_cook_weights; i++) {
    g_autofree char *ndb = g_strdup_printf ("%d", fm_cook_weights[i].cooked_ndb);

    if (fm_cook_weight_is_plausible (&fm_cook_weights[i]))
      continue;
    n_slips++;
    g_assert_nonnull (strstr (cooked->basis, ndb));
  }
  g_assert_cmpuint (n_slips, ==, 2);
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
  g_test_add_func ("/cooking/slips-are-named", test_slips_are_named);
  return g_test_run ();
}
