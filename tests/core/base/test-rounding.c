/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-rounding.c - what is shown adds up to the total that is shown */
#include "core/base/fm-rounding.h"

#include <math.h>
#include <string.h>

#define SEED 20260511
#define N_RANDOM 2000
#define MAX_N 12

/* Three thirds of 100 are shown as 33.4, 33.3 and 33.3: alone each would be 33.3. */
static void
test_thirds (void)
{
  const double third[] = { 100.0 / 3.0, 100.0 / 3.0, 100.0 / 3.0 };
  double shown[3];
  fm_round_to_sum (3, third, 1, shown);
  g_assert_cmpfloat_with_epsilon (shown[0], 33.4, 1e-12);
  g_assert_cmpfloat_with_epsilon (shown[1], 33.3, 1e-12);
  g_assert_cmpfloat_with_epsilon (shown[2], 33.3, 1e-12);
}

static void
test_unknown_counts_nowhere (void)
{
  const double value[] = { 1.26, NAN, 1.26 };
  double shown[3];
  fm_round_to_sum (3, value, 1, shown);
  g_assert_true (isnan (shown[1]));
  g_assert_cmpfloat_with_epsilon (shown[0] + shown[2], 2.5, 1e-12);
  fm_round_to_sum (0, NULL, 1, NULL);
}

/* Whatever the lines weigh, they add up, and none is shown a whole step from where it is. */
static void
test_random_lists_add_up (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  for (int run = 0; run < N_RANDOM; run++) {
    double value[MAX_N];
    double shown[MAX_N];
    double sum = 0.0;
    double shown_sum = 0.0;
    guint n = (guint)g_rand_int_range (rand, 1, MAX_N + 1);
    int decimals = g_rand_int_range (rand, 0, 4);
    double step = pow (10.0, -decimals);
    for (guint i = 0; i < n; i++) {
      value[i] = g_rand_double_range (rand, 0.0, 3000.0);
      sum += value[i];
    }
    double in_place[MAX_N];
    memcpy (in_place, value, sizeof value);
    fm_round_to_sum (n, value, decimals, shown);
    fm_round_to_sum (n, in_place, decimals, in_place);
    g_assert_cmpmem (in_place, n * sizeof *shown, shown, n * sizeof *shown);
    for (guint i = 0; i < n; i++) {
      shown_sum += shown[i];
      g_assert_cmpfloat (fabs (shown[i] - value[i]), <, step);
      g_assert_cmpfloat_with_epsilon (shown[i] / step, round (shown[i] / step), 1e-6);
    }
    g_assert_cmpfloat_with_epsilon (shown_sum, sum, 0.5 * step + 1e-6);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rounding/thirds", test_thirds);
  g_test_add_func ("/rounding/unknown-counts-nowhere", test_unknown_counts_nowhere);
  g_test_add_func ("/rounding/random-lists-add-up", test_random_lists_add_up);
  return g_test_run ();
}
