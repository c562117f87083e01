/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-pearson.c - the Pearson square and its limits */
#include "core/base/fm-error.h"
#include "core/targets/fm-pearson.h"

#include <math.h>

#define assert_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon ((a), (b), (tolerance))

static void
test_square (void)
{
  FmPearson square;
  g_assert_true (fm_pearson_init (&square, 10.0, 25.0, 20.0, NULL));
  assert_near (square.a_parts, 5.0, 1e-12);
  assert_near (square.b_parts, 10.0, 1e-12);
  double a, b;
  fm_pearson_batch (&square, 900.0, &a, &b);
  assert_near (a, 300.0, 1e-9);
  assert_near (b, 600.0, 1e-9);
  assert_near (a * 0.10 + b * 0.25, 900.0 * 0.20, 1e-9);
  assert_near (fm_pearson_b_for_a (&square, 50.0), 100.0, 1e-9);
}

static void
test_at_a_corner (void)
{
  FmPearson square;
  g_assert_true (fm_pearson_init (&square, 10.0, 25.0, 25.0, NULL));
  assert_near (square.b_share_pct, 100.0, 1e-12);
  g_assert_true (isnan (fm_pearson_b_for_a (&square, 50.0)));
  g_assert_true (fm_pearson_init (&square, 20.0, 20.0, 20.0, NULL));
  assert_near (square.a_share_pct, 50.0, 1e-12);
}

static void
test_refused (void)
{
  const double bad[][3] = { { 10, 25, 30 }, { 10, 25, 5 }, { -5, 25, 10 }, { 10, 120, 50 } };
  FmPearson square;
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (GError) error = NULL;
    g_assert_false (fm_pearson_init (&square, bad[i][0], bad[i][1], bad[i][2], &error));
    g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  }
  g_autoptr (GError) error = NULL;
  g_assert_false (fm_pearson_init (&square, NAN, 25.0, 20.0, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pearson/square", test_square);
  g_test_add_func ("/pearson/at-a-corner", test_at_a_corner);
  g_test_add_func ("/pearson/refused", test_refused);
  return g_test_run ();
}
