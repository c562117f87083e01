/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* bench-heat.c - the heat model against its own time step: cost and error as ratios */
#include <glib.h>
#include <math.h>

#include "core/heat/fm-heat.h"

#define N_RUNS 20

typedef struct {
  double off_centre_c;
  double run_us;
  double step_us;
} Outcome;

/* The grid that the program uses. */
static guint
usual_cells (void)
{
  g_auto (FmHeatSetup) setup;

  fm_heat_setup_init (&setup);
  return setup.n_cells;
}

static double
usual_step_s (void)
{
  g_auto (FmHeatSetup) setup;

  fm_heat_setup_init (&setup);
  return setup.step_s;
}

static void
patty (FmHeatSetup *setup, guint n_cells, double step_s)
{
  double turn_s = 240;

  fm_heat_setup_init (setup);
  fm_thermal_mix_from_fat (20, &setup->mix, NULL);
  setup->mass_g = 113;
  setup->thickness_mm = 12;
  setup->start_c = 5;
  setup->pan_c = 200;
  g_array_append_val (setup->turns_s, turn_s);
  setup->off_s = 480;
  setup->rest_s = 120;
  setup->n_cells = n_cells;
  setup->step_s = step_s;
}

/* The quickest of some runs: what the machine does besides only adds. */
static Outcome
run (guint n_cells, double step_s, int n_runs)
{
  g_auto (FmHeatSetup) setup;
  Outcome outcome = { NAN, INFINITY, NAN };

  patty (&setup, n_cells, step_s);
  for (int i = 0; i < n_runs; i++) {
    gint64 start = g_get_monotonic_time ();
    g_autoptr (FmHeatResult) result = fm_heat_predict (&setup, NULL);
    double us = (double)(g_get_monotonic_time () - start);

    outcome.off_centre_c = result->off_centre_c;
    outcome.run_us = fmin (outcome.run_us, us);
    outcome.step_us = outcome.run_us / (result->n - 1);
  }
  return outcome;
}

/* Cost and error of each step beside those of the usual one; the error is that of time alone,
 * against a step of 0.02 s on the same layers. */
static void
compare_steps (guint n_cells)
{
  const double steps_s[] = { 8, 4, 2, 1, 0.5, 0.25 };
  Outcome fine = run (n_cells, 0.02, 1);
  Outcome usual = run (n_cells, usual_step_s (), N_RUNS);
  double usual_error = fabs (usual.off_centre_c - fine.off_centre_c);

  for (guint i = 0; i < G_N_ELEMENTS (steps_s); i++) {
    Outcome outcome = run (n_cells, steps_s[i], N_RUNS);
    double error = fabs (outcome.off_centre_c - fine.off_centre_c);

    g_print ("heat, %u layers, step %.2f s: run %.2f x, one step %.2f x, error %.2f x (%.3f K) of "
             "the usual step\n",
             n_cells, steps_s[i], outcome.run_us / usual.run_us, outcome.step_us / usual.step_us,
             error / usual_error, error);
  }
}

static void
compare_layers (void)
{
  const guint cells[] = { 21, 41, 81, 161, 321 };
  Outcome fine = run (641, 0.25, 1);
  Outcome usual = run (usual_cells (), usual_step_s (), N_RUNS);

  for (guint i = 0; i < G_N_ELEMENTS (cells); i++) {
    Outcome outcome = run (cells[i], usual_step_s (), N_RUNS);
    g_print (
        "heat, %u layers, usual step: run %.2f x that of the usual layers, %.3f of a 16 ms frame, "
        "error %.3f K\n",
        cells[i], outcome.run_us / usual.run_us, outcome.run_us / 16000.0,
        fabs (outcome.off_centre_c - fine.off_centre_c));
  }
}

static void
compare_fit (void)
{
  g_auto (FmHeatSetup) setup;
  g_autoptr (GArray) readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  Outcome usual = run (usual_cells (), usual_step_s (), N_RUNS);
  FmHeatFit fit;
  gint64 start;

  patty (&setup, usual_cells (), usual_step_s ());
  setup.contact_w_m2k = 400;
  g_autoptr (FmHeatResult) made = fm_heat_predict (&setup, NULL);
  for (double time_s = 30; time_s <= 480; time_s += 30) {
    FmCoreReading reading = { time_s, fm_heat_centre_at (made, time_s) };
    g_array_append_val (readings, reading);
  }
  setup.contact_w_m2k = FM_HEAT_CONTACT_DEFAULT_W_M2K;
  start = g_get_monotonic_time ();
  fm_heat_fit_contact (&setup, readings, NULL, &fit, NULL);
  g_print ("heat, fit of the contact coefficient: %.0f x one prediction\n",
           (double)(g_get_monotonic_time () - start) / usual.run_us);
}

int
main (void)
{
  compare_steps (usual_cells ());
  compare_layers ();
  compare_fit ();
  return 0;
}
