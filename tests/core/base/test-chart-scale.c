/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-chart-scale.c - axes are truthful and round */
#include <math.h>

#include "core/base/fm-chart-scale.h"

static void
test_round_steps (void)
{
  static const struct {
    double values[3];
    double min, max, step;
    int decimals;
  } cases[] = {
    { { 18.0, 22.5, 20.0 }, 0.0, 30.0, 10.0, 0 },
    { { 0.3, 0.1, 0.2 }, 0.0, 0.3, 0.1, 1 },
    { { -1.2, 2.1, 0.0 }, -2.0, 4.0, 2.0, 0 },
    { { -4.0, -2.0, NAN }, -4.0, 0.0, 2.0, 0 },
    { { NAN, NAN, NAN }, 0.0, 1.0, 0.5, 1 },
    { { 0.0, 0.0, 0.0 }, 0.0, 1.0, 0.5, 1 },
    { { 250.0, 0.0, INFINITY }, 0.0, 300.0, 100.0, 0 },
    { { 0.004, 0.002, 0.0 }, 0.0, 0.004, 0.002, 3 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    FmChartScale scale;

    fm_chart_scale_init (&scale, cases[i].values, 3, 4);
    g_test_message ("case %u: %g to %g by %g", i, scale.min, scale.max, scale.step);
    g_assert_cmpfloat_with_epsilon (scale.min, cases[i].min, 1e-9);
    g_assert_cmpfloat_with_epsilon (scale.max, cases[i].max, 1e-9);
    g_assert_cmpfloat_with_epsilon (scale.step, cases[i].step, 1e-9);
    g_assert_cmpint (scale.decimals, ==, cases[i].decimals);
    g_assert_cmpfloat_with_epsilon (fm_chart_scale_tick (&scale, scale.n_ticks - 1), scale.max,
                                    1e-9);
  }
}

static void
test_any_range_fits (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (28);

  for (guint i = 0; i < 2000; i++) {
    double span = pow (10.0, g_rand_double_range (random, -8.0, 9.0));
    double values[] = { g_rand_double_range (random, -span, span), g_rand_double (random) * span };
    guint max_ticks = (guint)g_rand_int_range (random, 3, 9);
    FmChartScale scale;

    fm_chart_scale_init (&scale, values, 2, max_ticks);
    g_assert_cmpuint (scale.n_ticks, <=, max_ticks);
    for (guint v = 0; v < 2; v++) {
      g_assert_cmpfloat (scale.min, <=, values[v] + 1e-6 * span);
      g_assert_cmpfloat (scale.max, >=, values[v] - 1e-6 * span);
    }
    g_assert_cmpfloat (scale.min, <=, 0.0);
    g_assert_cmpfloat (scale.max, >=, 0.0);
  }
}

/* Rank sums of 6 tasters and 5 samples lie between 6 and 30: a step for each whole place. */
static void
test_ends (void)
{
  FmChartScale scale;

  fm_chart_scale_init_ends (&scale, 6.0, 30.0, 4, 6);
  g_assert_cmpuint (scale.n_ticks, ==, 5);
  g_assert_cmpfloat (scale.step, ==, 6.0);
  g_assert_cmpint (scale.decimals, ==, 0);
  g_assert_cmpfloat (fm_chart_scale_tick (&scale, 4), ==, 30.0);
  g_assert_cmpfloat (fm_chart_scale_place (&scale, 18.0, 0.0, 100.0), ==, 50.0);
  fm_chart_scale_init_ends (&scale, 1.0, 9.0, 8, 6);
  g_assert_cmpuint (scale.n_ticks, ==, 5);
  /* Eight samples: seven steps can only be divided by seven. */
  fm_chart_scale_init_ends (&scale, 3.0, 24.0, 7, 6);
  g_assert_cmpuint (scale.n_ticks, ==, 2);
  g_assert_cmpfloat (scale.max, ==, 24.0);
}

static void
test_places (void)
{
  const double values[] = { 10.0 };
  FmChartScale scale;
  double x;
  double width;

  fm_chart_scale_init (&scale, values, 1, 3);
  g_assert_cmpfloat_with_epsilon (fm_chart_scale_place (&scale, 5.0, 100.0, 20.0), 60.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (fm_chart_scale_place (&scale, 50.0, 100.0, 20.0), 20.0, 1e-9);
  fm_chart_bar_slot (1, 4, 80.0, &x, &width);
  g_assert_cmpfloat_with_epsilon (x, 22.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (width, 15.0, 1e-9);
}

static void
test_in_words (void)
{
  const char *labels[] = { "A", "B", "C" };
  const double values[] = { 20.0, NAN, 18.5 };
  g_autofree char *text = fm_chart_describe (labels, values, 3, 1, "%");

  g_assert_cmpstr (text, ==, "A: 20.0\u00a0%; B: not known; C: 18.5\u00a0%. Lowest C, highest A.");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chart-scale/round-steps", test_round_steps);
  g_test_add_func ("/chart-scale/any-range-fits", test_any_range_fits);
  g_test_add_func ("/chart-scale/ends", test_ends);
  g_test_add_func ("/chart-scale/places", test_places);
  g_test_add_func ("/chart-scale/in-words", test_in_words);
  return g_test_run ();
}
