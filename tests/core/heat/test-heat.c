/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/heat/fm-heat.h"

#include <math.h>
#include <string.h>

#include "blends.h"
#include "core/base/fm-error.h"

/* 113 g of 20 % fat, 12 mm thick, from the refrigerator on a 200 °C pan, turned half way. */
static void
patty (FmHeatSetup *setup)
{
  double turn_s = 240;

  fm_heat_setup_init (setup);
  g_assert_true (fm_thermal_mix_from_fat (20, &setup->mix, NULL));
  setup->mass_g = 113;
  setup->thickness_mm = 12;
  setup->start_c = 5;
  setup->pan_c = 200;
  g_array_append_val (setup->turns_s, turn_s);
  setup->off_s = 480;
  setup->rest_s = 180;
}

static FmHeatResult *
predict (const FmHeatSetup *setup)
{
  g_autoptr (GError) error = NULL;
  FmHeatResult *result = fm_heat_predict (setup, &error);

  g_assert_no_error (error);
  return result;
}

/* What came in is in the patty or left with the steam, whatever the grid. */
static void
test_energy_balance (void)
{
  const guint cells[] = { 5, 11, 41, 121 };
  const double steps_s[] = { 20, 5, 1, 0.2 };

  for (guint i = 0; i < G_N_ELEMENTS (cells); i++)
    for (double pan_c = 60; pan_c <= 340; pan_c += 70) {
      g_auto (FmHeatSetup) setup;
      g_autoptr (FmHeatResult) result = NULL;

      patty (&setup);
      setup.pan_c = pan_c;
      setup.n_cells = cells[i];
      setup.step_s = steps_s[i];
      result = predict (&setup);
      g_assert_cmpfloat_with_epsilon (result->heat_in_j,
                                      result->heat_stored_j + result->heat_boiled_j,
                                      1e-9 * fabs (result->heat_in_j));
      g_assert_cmpfloat (result->evaporated_g, >=, 0);
      g_assert_cmpfloat (result->evaporated_g, <,
                         result->mass_g * setup.mix.fraction[FM_COMPONENT_WATER]);
      if (pan_c <= 100)
        g_assert_cmpfloat (result->evaporated_g, ==, 0);
    }
}

/* What steam takes with it, from water at 0 C: 2675.6 kJ/kg at 100 C (saturated steam, IAPWS-IF97,
 * from memory; the liquid part here is by Choi and Okos, a little off). */
static void
test_latent_heat (void)
{
  g_auto (FmHeatSetup) setup;
  g_autoptr (FmHeatResult) result = NULL;

  patty (&setup);
  result = predict (&setup);
  g_assert_cmpfloat (result->evaporated_g, >, 1);
  g_assert_cmpfloat_with_epsilon (result->heat_boiled_j / result->evaporated_g, 2675.6, 5);
}

static double
heat_after_rest (double rest_s, double *area_m2)
{
  g_auto (FmHeatSetup) setup;
  g_autoptr (FmHeatResult) result = NULL;

  patty (&setup);
  g_array_set_size (setup.turns_s, 0);
  setup.off_s = 1;
  setup.rest_s = rest_s;
  setup.step_s = 0.05;
  setup.contact_w_m2k = FM_HEAT_CONTACT_MIN_W_M2K;
  setup.pan_c = setup.air_c = 40;
  result = predict (&setup);
  *area_m2 = G_PI / 4 * pow (result->diameter_mm / 1000, 2);
  return result->heat_in_j;
}

/* A cold patty off a pan that is no warmer than the air takes 2 h A (air - patty) from the air
 * through both faces, as long as its surface stays near 5 C. */
static void
test_heat_to_air (void)
{
  double area_m2;
  const double taken_j = heat_after_rest (5, &area_m2) - heat_after_rest (1, &area_m2);
  const double wanted_j = 2 * FM_HEAT_AIR_DEFAULT_W_M2K * area_m2 * (40 - 5) * (5 - 1);

  g_test_message ("%.2f of %.2f J", taken_j, wanted_j);
  g_assert_cmpfloat_with_epsilon (taken_j, wanted_j, 0.06 * wanted_j);
}

/* No temperature leaves the range of what surrounds it. */
static void
test_bounds (void)
{
  g_auto (FmHeatSetup) setup;
  g_autoptr (FmHeatResult) result = NULL;

  patty (&setup);
  result = predict (&setup);
  for (guint i = 0; i < result->n; i++) {
    g_assert_cmpfloat (result->coldest_c[i], >=, setup.start_c - 1e-6);
    g_assert_cmpfloat (result->coldest_c[i], <=, result->centre_c[i]);
    g_assert_cmpfloat (result->centre_c[i], <=, setup.pan_c);
    g_assert_true (i == 0 || result->time_s[i] > result->time_s[i - 1]);
  }
  g_assert_cmpfloat_with_epsilon (result->time_s[result->n - 1], 660, 1e-9);
  g_assert_cmpfloat (result->peak_centre_c, >=, result->off_centre_c);
}

static double
time_to_60 (double pan_c, double thickness_mm, double start_c, double contact_w_m2k)
{
  g_auto (FmHeatSetup) setup;
  g_autoptr (FmHeatResult) result = NULL;

  patty (&setup);
  setup.mass_g = NAN;
  setup.diameter_mm = 105;
  setup.thickness_mm = thickness_mm;
  setup.pan_c = pan_c;
  setup.start_c = start_c;
  setup.contact_w_m2k = contact_w_m2k;
  setup.off_s = 1800;
  g_array_set_size (setup.turns_s, 0);
  for (double turn_s = 60; turn_s < 1800; turn_s += 60)
    g_array_append_val (setup.turns_s, turn_s);
  result = predict (&setup);
  double time_s = fm_heat_time_to (result, 60);
  g_assert_true (isfinite (time_s));
  g_assert_cmpfloat_with_epsilon (fm_heat_centre_at (result, time_s), 60, 1e-6);
  return time_s;
}

/* A hotter pan, a better contact and a warmer start are quicker; a thicker patty is slower. */
static void
test_monotone (void)
{
  for (double pan_c = 120; pan_c < 280; pan_c += 20)
    g_assert_cmpfloat (time_to_60 (pan_c + 20, 12, 5, 250), <, time_to_60 (pan_c, 12, 5, 250));
  for (double mm = 6; mm < 24; mm += 3)
    g_assert_cmpfloat (time_to_60 (180, mm + 3, 5, 250), >, time_to_60 (180, mm, 5, 250));
  for (double start_c = 1; start_c < 20; start_c += 5)
    g_assert_cmpfloat (time_to_60 (180, 12, start_c + 5, 250), <,
                       time_to_60 (180, 12, start_c, 250));
  for (double contact = 50; contact < 1000; contact *= 2)
    g_assert_cmpfloat (time_to_60 (180, 12, 5, contact * 2), <, time_to_60 (180, 12, 5, contact));
}

static double
centre_off (guint n_cells, double step_s)
{
  g_auto (FmHeatSetup) setup;
  g_autoptr (FmHeatResult) result = NULL;

  patty (&setup);
  setup.n_cells = n_cells;
  setup.step_s = step_s;
  result = predict (&setup);
  return result->off_centre_c;
}

/* The finest grid is the yardstick; the default one stays within what is claimed. */
static void
test_refinement (void)
{
  double fine = centre_off (321, 0.1);
  double coarse_error = fabs (centre_off (11, 4) - fine);
  double default_error = fabs (centre_off (161, 0.5) - fine);
  double finer_error = fabs (centre_off (161, 0.25) - fine);

  g_test_message ("centre %.3f °C; error %.3f coarse, %.3f default, %.3f finer", fine, coarse_error,
                  default_error, finer_error);
  g_assert_cmpfloat (default_error, <, 0.4);
  g_assert_cmpfloat (finer_error, <, 0.1);
  g_assert_cmpfloat (default_error, <, coarse_error);
}

static double
peak_of (double thickness_mm, double pan_c, double minutes, guint finer)
{
  g_auto (FmHeatSetup) setup;
  g_autoptr (FmHeatResult) result = NULL;

  patty (&setup);
  setup.mass_g = NAN;
  setup.thickness_mm = thickness_mm;
  setup.diameter_mm = 110;
  setup.mass_g = 1.05 * G_PI / 4 * 11 * 11 * thickness_mm / 10;
  setup.pan_c = pan_c;
  setup.off_s = minutes * 60;
  g_array_index (setup.turns_s, double, 0) = minutes * 30;
  setup.n_cells = finer * (setup.n_cells - 1) + 1;
  setup.step_s /= finer;
  result = predict (&setup);
  return result->peak_centre_c;
}

/* The figure of fm_heat_predict(): a grid twice as fine moves the highest centre by less. */
static void
test_twice_as_fine (void)
{
  const struct {
    double thickness_mm, minutes;
  } cook[] = { { 10, 4 }, { 15, 7 }, { 20, 11 }, { 25, 16 } };
  double worst = 0;

  for (guint i = 0; i < G_N_ELEMENTS (cook); i++)
    for (double pan_c = 160; pan_c <= 240; pan_c += 40) {
      double usual = peak_of (cook[i].thickness_mm, pan_c, cook[i].minutes, 1);
      double fine = peak_of (cook[i].thickness_mm, pan_c, cook[i].minutes, 2);

      g_test_message ("%g mm, %g °C: %.2f, %.2f", cook[i].thickness_mm, pan_c, usual, fine);
      worst = fmax (worst, fabs (usual - fine));
    }
  g_assert_cmpfloat (worst, <, 0.4);
}

/* Any one of mass, diameter and thickness follows from the others. */
static void
test_size (void)
{
  g_auto (FmHeatSetup) setup;
  g_autoptr (FmHeatResult) by_mass = NULL;
  g_autoptr (FmHeatResult) by_size = NULL;
  g_autoptr (FmHeatResult) thickness = NULL;
  g_autoptr (GError) error = NULL;

  patty (&setup);
  by_mass = predict (&setup);
  setup.mass_g = NAN;
  setup.diameter_mm = by_mass->diameter_mm;
  by_size = predict (&setup);
  g_assert_cmpfloat_with_epsilon (by_size->mass_g, 113, 1e-9);
  setup.mass_g = 113;
  setup.thickness_mm = NAN;
  thickness = predict (&setup);
  g_assert_cmpfloat_with_epsilon (thickness->thickness_mm, 12, 1e-9);

  setup.thickness_mm = 30;
  g_assert_null (fm_heat_predict (&setup, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

/* Readings made by the model with another coefficient lead back to it. */
static void
test_fit (void)
{
  const double truths[] = { 60, 180, 700 };

  for (guint t = 0; t < G_N_ELEMENTS (truths); t++) {
    g_auto (FmHeatSetup) setup;
    g_autoptr (FmHeatResult) made = NULL;
    g_autoptr (GArray) readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
    g_autoptr (GError) error = NULL;
    FmHeatFit fit;

    patty (&setup);
    setup.contact_w_m2k = truths[t];
    made = predict (&setup);
    for (double time_s = 30; time_s <= 660; time_s += 45) {
      FmCoreReading reading = { time_s, fm_heat_centre_at (made, time_s) };
      g_array_append_val (readings, reading);
    }
    setup.contact_w_m2k = FM_HEAT_CONTACT_DEFAULT_W_M2K;
    g_assert_true (fm_heat_fit_contact (&setup, readings, NULL, &fit, &error));
    g_assert_no_error (error);
    g_test_message ("true %g, found %.1f, rms %.3f from %.3f", truths[t], fit.contact_w_m2k,
                    fit.rms_c, fit.rms_before_c);
    g_assert_cmpfloat (fabs (fit.contact_w_m2k / truths[t] - 1), <, 0.02);
    g_assert_cmpfloat (fit.rms_c, <, fit.rms_before_c);
    g_assert_false (fit.at_bound);
  }
}

static gboolean
count_down (gpointer data)
{
  int *left = data;

  return (*left)-- <= 0;
}

/* However far the search has come, asking to stop ends it and gives no fit. */
static void
test_fit_stopped (void)
{
  for (int steps = 0; steps < 20; steps += 6) {
    g_auto (FmHeatSetup) setup;
    g_autoptr (GArray) readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
    g_autoptr (GError) error = NULL;
    int left = steps;
    const FmStop stop = { count_down, &left };
    FmHeatFit fit = { .contact_w_m2k = -1 };

    patty (&setup);
    for (int i = 1; i < 5; i++) {
      FmCoreReading reading = { i * 100, 5 + 12 * i };
      g_array_append_val (readings, reading);
    }
    g_assert_false (fm_heat_fit_contact (&setup, readings, &stop, &fit, &error));
    g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_STOPPED);
    g_assert_cmpfloat (fit.contact_w_m2k, ==, -1);
    g_assert_cmpint (left, ==, -1);
  }
}

static void
test_fit_bad (void)
{
  g_auto (FmHeatSetup) setup;
  g_autoptr (GArray) readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  g_autoptr (GError) error = NULL;
  FmHeatFit fit;

  patty (&setup);
  g_assert_false (fm_heat_fit_contact (&setup, NULL, NULL, &fit, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
  g_clear_error (&error);
  for (int i = 0; i < 4; i++) {
    FmCoreReading cold = { i * 100, 5 };
    g_array_append_val (readings, cold);
  }
  g_assert_true (fm_heat_fit_contact (&setup, readings, NULL, &fit, &error));
  g_assert_true (fit.at_bound);
  g_assert_cmpfloat (fit.contact_w_m2k, ==, FM_HEAT_CONTACT_MIN_W_M2K);
  for (guint i = 0; i < readings->len; i++)
    g_array_index (readings, FmCoreReading, i).temp_c = 99.0;
  g_assert_true (fm_heat_fit_contact (&setup, readings, NULL, &fit, &error));
  g_assert_true (fit.at_bound);
  g_assert_cmpfloat (fit.contact_w_m2k, ==, FM_HEAT_CONTACT_MAX_W_M2K);
}

static void
assert_refused (FmHeatSetup *setup, int code)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_heat_predict (setup, &error));
  g_assert_error (error, FM_CORE_ERROR, code);
  g_test_message ("%s", error->message);
}

static void
test_bad_input (void)
{
  g_auto (FmHeatSetup) setup;

  fm_heat_setup_init (&setup);
  assert_refused (&setup, FM_CORE_ERROR_UNKNOWN_VALUE);
  fm_heat_setup_clear (&setup);
  patty (&setup);
  setup.pan_c = NAN;
  assert_refused (&setup, FM_CORE_ERROR_UNKNOWN_VALUE);
  setup.pan_c = INFINITY;
  assert_refused (&setup, FM_CORE_ERROR_OUT_OF_RANGE);
  setup.pan_c = 200;
  setup.start_c = -18;
  assert_refused (&setup, FM_CORE_ERROR_OUT_OF_RANGE);
  setup.start_c = 5;
  setup.mass_g = 0;
  assert_refused (&setup, FM_CORE_ERROR_OUT_OF_RANGE);
  setup.mass_g = NAN;
  assert_refused (&setup, FM_CORE_ERROR_UNKNOWN_VALUE);
  setup.mass_g = 113;
  g_array_index (setup.turns_s, double, 0) = 480;
  assert_refused (&setup, FM_CORE_ERROR_OUT_OF_RANGE);
  g_array_index (setup.turns_s, double, 0) = NAN;
  assert_refused (&setup, FM_CORE_ERROR_OUT_OF_RANGE);
}

static void
test_from_experiment (void)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_auto (FmHeatSetup) setup;

  patty (&setup);
  fm_heat_setup_from_experiment (&setup, experiment);
  g_assert_cmpfloat (setup.pan_c, ==, 200);
  g_assert_cmpfloat (setup.off_s, ==, 480);
  experiment->surface_temp_c = 230;
  experiment->minutes_side_1 = 3;
  experiment->minutes_side_2 = 2;
  experiment->rest_minutes = 4;
  experiment->patty_diameter_mm = 115;
  experiment->patty_thickness_mm = 17;
  fm_heat_setup_from_experiment (&setup, experiment);
  g_assert_cmpfloat (setup.diameter_mm, ==, 115);
  g_assert_cmpfloat (setup.thickness_mm, ==, 17);
  g_assert_cmpfloat (setup.pan_c, ==, 230);
  g_assert_cmpuint (setup.turns_s->len, ==, 1);
  g_assert_cmpfloat (g_array_index (setup.turns_s, double, 0), ==, 180);
  g_assert_cmpfloat (setup.off_s, ==, 300);
  g_assert_cmpfloat (setup.rest_s, ==, 240);
}

static void
test_texts (void)
{
  g_auto (FmHeatSetup) setup;
  g_auto (GStrv) assumptions = NULL;

  patty (&setup);
  assumptions = fm_heat_assumptions (&setup);
  g_assert_cmpuint (g_strv_length (assumptions), >=, 6);
  g_assert_nonnull (strstr (fm_heat_label (), "thermometer"));
  for (guint i = 0; assumptions[i] != NULL; i++)
    g_assert_null (strstr (assumptions[i], "safe"));
}

static void
test_mix (void)
{
  FmThermalMix mix;
  g_autoptr (GError) error = NULL;

  for (double fat_pct = 0; fat_pct <= 100; fat_pct += 10) {
    double sum = 0;
    g_assert_true (fm_thermal_mix_from_fat (fat_pct, &mix, NULL));
    for (int i = 0; i < FM_N_COMPONENTS; i++)
      sum += mix.fraction[i];
    g_assert_cmpfloat_with_epsilon (sum, 1.0, 1e-12);
  }
  g_assert_false (fm_thermal_mix_from_fat (NAN, &mix, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

/* What nobody measured is taken from what is left; without water there is no estimate. */
static void
test_mix_from_analysis (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) beef = ingredient_with_fat ("Beef", 20);
  g_autoptr (GError) error = NULL;
  FmThermalMix mix;

  beef->composition.per_100g[FM_NUTRIENT_PROTEIN] = 17;
  fm_formula_add (formula, beef, 500);
  g_autoptr (FmAnalysis) without_water = fm_analysis_new (formula);
  g_assert_false (fm_thermal_mix_from_analysis (without_water, &mix, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE);

  g_autoptr (FmFormula) known = fm_formula_new ();
  beef->composition.per_100g[FM_NUTRIENT_WATER] = 62;
  fm_formula_add (known, beef, 500);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (known);
  g_assert_true (fm_thermal_mix_from_analysis (analysis, &mix, NULL));
  g_assert_cmpfloat_with_epsilon (mix.fraction[FM_COMPONENT_FAT], 0.20, 1e-9);
  g_assert_cmpfloat_with_epsilon (mix.fraction[FM_COMPONENT_ASH], 0.01, 1e-9);
  g_assert_cmpfloat_with_epsilon (mix.fraction[FM_COMPONENT_CARBOHYDRATE], 0.0, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/heat/energy-balance", test_energy_balance);
  g_test_add_func ("/heat/latent-heat", test_latent_heat);
  g_test_add_func ("/heat/heat-to-air", test_heat_to_air);
  g_test_add_func ("/heat/bounds", test_bounds);
  g_test_add_func ("/heat/monotone", test_monotone);
  g_test_add_func ("/heat/refinement", test_refinement);
  g_test_add_func ("/heat/twice-as-fine", test_twice_as_fine);
  g_test_add_func ("/heat/size", test_size);
  g_test_add_func ("/heat/fit", test_fit);
  g_test_add_func ("/heat/fit-stopped", test_fit_stopped);
  g_test_add_func ("/heat/fit-bad", test_fit_bad);
  g_test_add_func ("/heat/bad-input", test_bad_input);
  g_test_add_func ("/heat/from-experiment", test_from_experiment);
  g_test_add_func ("/heat/texts", test_texts);
  g_test_add_func ("/heat/mix", test_mix);
  g_test_add_func ("/heat/mix-from-analysis", test_mix_from_analysis);
  return g_test_run ();
}
