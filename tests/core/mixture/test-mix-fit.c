/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-mix-fit.c - mixture models: what they learn, refuse, and where they send the cook */
#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/mixture/fm-mix-derivation.h"
#include "core/statistics/fm-stat.h"

/* A random blend inside @region, by throwing away what falls outside */
static void
draw_blend (FmRandom *random, const FmMixRegion *region, double *x)
{
  do {
    double sum = 0.0;
    for (guint i = 0; i < region->q; i++)
      sum += x[i] = -log (1.0 - fm_random_unit (random));
    for (guint i = 0; i < region->q; i++)
      x[i] /= sum;
  } while (!fm_mix_region_contains (region, x, 0.0));
}

static double
draw_normal (FmRandom *random)
{
  return sqrt (-2 * log (1.0 - fm_random_unit (random))) * cos (2 * G_PI * fm_random_unit (random));
}

/* 7 less the squared distance from 0.5, 0.3, 0.2: the best blend is known */
static double
hill (const double *x)
{
  return 7 - 9 * (pow (x[0] - 0.5, 2) + pow (x[1] - 0.3, 2) + pow (x[2] - 0.2, 2));
}

static FmMixData *
hill_data (double noise, guint n)
{
  FmMixData *data = fm_mix_data_new (3, 0);
  FmMixRegion region;
  FmRandom random;

  fm_mix_region_init (&region, 3);
  fm_random_init (&random, 5);
  for (guint i = 0; i < n; i++) {
    double x[3];
    draw_blend (&random, &region, x);
    fm_mix_data_add (data, x, hill (x) + noise * draw_normal (&random), NULL);
  }
  return data;
}

static FmMixFit *
fit_or_fail (const FmMixData *data, FmMixOrder order)
{
  g_autoptr (GError) error = NULL;
  FmMixFit *fit = fm_mix_fit (data, order, &error);
  g_assert_no_error (error);
  return fit;
}

static void
assert_refusal (const FmMixData *data, FmMixOrder order, int code, const char *part)
{
  g_autoptr (GError) error = NULL;
  g_assert_null (fm_mix_fit (data, order, &error));
  g_assert_error (error, FM_CORE_ERROR, code);
  if (strstr (error->message, part) == NULL)
    g_error ("'%s' lacks '%s'", error->message, part);
}

static void
test_too_few (void)
{
  const double pure[3][3] = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
  const double middle[] = { 0.5, 0.5, 0 };
  g_autoptr (FmMixData) data = fm_mix_data_new (3, 0);
  g_autoptr (GError) error = NULL;

  assert_refusal (data, FM_MIX_LINEAR, FM_CORE_ERROR_EMPTY, "Nothing has been measured");
  for (guint i = 0; i < 2; i++)
    fm_mix_data_add (data, pure[i], i, NULL);
  assert_refusal (data, FM_MIX_LINEAR, FM_CORE_ERROR_OUT_OF_RANGE, "at least 2 more different");
  assert_refusal (data, FM_MIX_QUADRATIC, FM_CORE_ERROR_OUT_OF_RANGE, "at least 5 more different");
  fm_mix_data_add (data, pure[2], 2, NULL);
  assert_refusal (data, FM_MIX_LINEAR, FM_CORE_ERROR_OUT_OF_RANGE, "at least 1 more trial");
  fm_mix_data_add (data, middle, 2, NULL);
  g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_LINEAR);
  g_assert_cmpuint (fit->df_error, ==, 1);
  g_assert_null (fm_mix_fit_best (data, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

/* What a refusal asks for is enough when it is done */
static void
test_refusal_is_enough (void)
{
  FmMixRegion region;
  FmRandom random;
  double x[4];

  fm_mix_region_init (&region, 4);
  fm_random_init (&random, 21);
  for (guint n = 1; n < 11; n++) {
    g_autoptr (FmMixData) data = fm_mix_data_new (4, 0);
    g_autoptr (GError) error = NULL;
    for (guint i = 0; i < n; i++) {
      draw_blend (&random, &region, x);
      fm_mix_data_add (data, x, i, NULL);
    }
    g_assert_null (fm_mix_fit (data, FM_MIX_QUADRATIC, &error));
    const char *count = strstr (error->message, "at least ");
    g_assert_nonnull (count);
    for (guint64 more = g_ascii_strtoull (count + 9, NULL, 10); more > 0; more--) {
      draw_blend (&random, &region, x);
      fm_mix_data_add (data, x, 1, NULL);
    }
    g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_QUADRATIC);
    g_assert_cmpuint (fit->df_error, ==, 1);
  }
}

static void
test_bad_values (void)
{
  const double x[] = { 0.4, 0.6 };
  g_autoptr (FmMixData) data = fm_mix_data_new (2, 0);
  fm_mix_data_add (data, x, 1, NULL);
  fm_mix_data_add (data, x, NAN, NULL);
  assert_refusal (data, FM_MIX_LINEAR, FM_CORE_ERROR_UNKNOWN_VALUE, "Trial 2");
}

static void
test_terms_alike (void)
{
  const char *names[] = { "chuck", "brisket", "salt", NULL };
  g_autoptr (FmMixData) data = fm_mix_data_new (3, 0);

  fm_mix_data_set_names (data, names);
  for (guint i = 0; i < 8; i++) {
    const double x[] = { 0.1 * i, 0.98 - 0.1 * i, 0.02 };
    fm_mix_data_add (data, x, i, NULL);
  }
  assert_refusal (data, FM_MIX_LINEAR, FM_CORE_ERROR_OUT_OF_RANGE, "salt");
}

/* Each session had blends of its own: nothing can be learned, and it says so */
static void
test_blocks_mixed_up (void)
{
  g_autoptr (FmMixData) data = fm_mix_data_new (2, 1);
  for (guint i = 0; i < 8; i++) {
    const guint level = i / 4;
    const double x[] = { 0.25 + 0.5 * level, 0.75 - 0.5 * level };
    fm_mix_data_add (data, x, i, &level);
  }
  assert_refusal (data, FM_MIX_LINEAR, FM_CORE_ERROR_OUT_OF_RANGE, "come back");
}

/* A taster who scores everything higher moves nothing but the level, by the mean of the shifts of
 * all values */
static void
test_blocks_shift (void)
{
  const double shift[] = { 1.5, -0.5, 0, 2 };
  g_autoptr (FmMixData) plain = fm_mix_data_new (3, 1), moved = fm_mix_data_new (3, 1);
  double moved_by = 0.0;
  FmMixRegion region;
  FmRandom random;

  fm_mix_region_init (&region, 3);
  fm_random_init (&random, 9);
  for (guint blend = 0; blend < 8; blend++) {
    double x[3];
    draw_blend (&random, &region, x);
    for (guint taster = 0; taster < 4; taster++) {
      const double y = hill (x) + draw_normal (&random);
      if ((blend + taster) % 5 == 0) /* a missing sheet: not balanced */
        continue;
      fm_mix_data_add (plain, x, y, &taster);
      fm_mix_data_add (moved, x, y + shift[taster], &taster);
      moved_by += shift[taster];
    }
  }
  g_autoptr (FmMixFit) a = fit_or_fail (plain, FM_MIX_QUADRATIC);
  g_autoptr (FmMixFit) b = fit_or_fail (moved, FM_MIX_QUADRATIC);
  moved_by /= plain->x->n;
  for (guint i = 0; i < 6; i++)
    g_assert_cmpfloat_with_epsilon (b->coefficient[i] - a->coefficient[i], i < 3 ? moved_by : 0,
                                    1e-9);
  g_assert_cmpfloat_with_epsilon (a->ss_error, b->ss_error, 1e-9);
  g_assert_cmpfloat_with_epsilon (a->ss_total, b->ss_total, 1e-9);
  g_assert_cmpfloat_with_epsilon (a->loo_rmse, b->loo_rmse, 1e-9);
  g_assert_cmpfloat_with_epsilon (a->ss_pure, b->ss_pure, 1e-9);
  g_assert_cmpuint (a->n_blocks, ==, 3);
}

/* One stray score of another session counts as one score, not as a session */
static void
test_stray_score (void)
{
  g_autoptr (FmMixData) data = fm_mix_data_new (2, 1);
  const double likings[] = { 8, 7, 8 };
  const guint session = 0, other = 1;
  const double stray[] = { 0.5, 0.5 };
  FmMixPrediction prediction;

  for (guint blend = 0; blend < 5; blend++)
    for (guint i = 0; i < 3; i++) {
      const double x[] = { 0.25 * blend, 1 - 0.25 * blend };
      fm_mix_data_add (data, x, likings[(blend + i) % 3], &session);
    }
  fm_mix_data_add (data, stray, 3, &other);
  g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_LINEAR);
  fm_mix_predict (fit, stray, &prediction);
  g_assert_cmpfloat_with_epsilon (prediction.mean, (15 * 23.0 / 3 + 3) / 16, 1e-9);
}

/* Tasters who came to one session only: the sessions' column says nothing new and goes */
static void
test_blocks_nested (void)
{
  g_autoptr (FmMixData) both = fm_mix_data_new (2, 2), tasters = fm_mix_data_new (2, 1);
  FmRandom random;

  fm_random_init (&random, 4);
  for (guint taster = 0; taster < 5; taster++)
    for (guint blend = 0; blend < 4; blend++) {
      const guint level[] = { taster < 3 ? 0 : 7, taster };
      const double x[] = { 0.2 * blend, 1 - 0.2 * blend };
      const double y = draw_normal (&random);
      fm_mix_data_add (both, x, y, level);
      fm_mix_data_add (tasters, x, y, &level[1]);
    }
  g_autoptr (FmMixFit) a = fit_or_fail (both, FM_MIX_QUADRATIC);
  g_autoptr (FmMixFit) b = fit_or_fail (tasters, FM_MIX_QUADRATIC);
  g_assert_cmpuint (a->n_blocks, ==, 4);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpfloat_with_epsilon (a->coefficient[i], b->coefficient[i], 1e-10);
  g_assert_cmpuint (a->df_error, ==, b->df_error);
}

/* Bounds 2 points wide: the columns are nearly alike, the coefficients come out all the same */
static void
test_narrow_bounds (void)
{
  const double wanted[] = { 3, -2, 5, 40, -30, 20, 300 };
  g_autoptr (FmMixData) data = fm_mix_data_new (3, 0);
  FmMixRegion region;
  FmRandom random;

  fm_mix_region_init (&region, 3);
  fm_random_init (&random, 14);
  for (guint i = 0; i < 30; i++) {
    double row[7], y = 0;
    const double a = 0.02 * fm_random_unit (&random), b = 0.02 * fm_random_unit (&random);
    const double x[] = { 0.60 + a, 0.25 + b, 0.15 - a - b };
    fm_mix_terms (FM_MIX_SPECIAL_CUBIC, 3, x, row);
    for (guint t = 0; t < 7; t++)
      y += wanted[t] * row[t];
    fm_mix_data_add (data, x, y, NULL);
  }
  g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_SPECIAL_CUBIC);
  for (guint t = 0; t < 7; t++)
    g_assert_cmpfloat_with_epsilon (fit->coefficient[t], wanted[t], 1e-4);
}

/* Leave-one-out by the hat matrix is what refitting without each blend gives */
static void
test_leave_out (void)
{
  g_autoptr (FmMixData) data = hill_data (0.3, 12);
  double press = 0.0;

  for (guint i = 0; i < 12; i += 3) /* replicates leave together */
    fm_mix_data_add (data, fm_mix_points_get (data->x, i), data->y[i] + 0.1 * i, NULL);
  g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_QUADRATIC);
  for (guint out = 0; out < data->x->n; out++) {
    const double *x = fm_mix_points_get (data->x, out);
    g_autoptr (FmMixData) rest = fm_mix_data_new (3, 0);
    FmMixPrediction prediction;
    for (guint row = 0; row < data->x->n; row++)
      if (fabs (fm_mix_points_get (data->x, row)[0] - x[0]) > 1e-9)
        fm_mix_data_add (rest, fm_mix_points_get (data->x, row), data->y[row], NULL);
    g_autoptr (FmMixFit) without = fit_or_fail (rest, FM_MIX_QUADRATIC);
    fm_mix_predict (without, x, &prediction);
    press += pow (prediction.mean - data->y[out], 2);
  }
  g_assert_cmpfloat_with_epsilon (fit->loo_rmse, sqrt (press / data->x->n), 1e-9);
  g_assert_cmpfloat_with_epsilon (fit->loo_r2, 1 - press / fit->ss_total, 1e-9);
}

/* A taster who had one blend only does not make the error unknown */
static void
test_leave_out_single_taster (void)
{
  g_autoptr (FmMixData) data = fm_mix_data_new (2, 1);
  FmRandom random;
  const guint lone = 3;
  const double first[] = { 0.2, 0.8 };

  fm_random_init (&random, 8);
  for (guint taster = 0; taster < 3; taster++)
    for (guint blend = 0; blend < 5; blend++) {
      const double x[] = { 0.2 * blend, 1 - 0.2 * blend };
      fm_mix_data_add (data, x, draw_normal (&random), &taster);
    }
  g_autoptr (FmMixFit) without = fit_or_fail (data, FM_MIX_LINEAR);
  fm_mix_data_add (data, first, 9, &lone);
  g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_LINEAR);
  g_assert_cmpfloat_with_epsilon (fit->loo_rmse, without->loo_rmse, 1e-9);
  g_assert_cmpuint (fit->df_error, ==, without->df_error);
}

static void
test_all_alike (void)
{
  g_autoptr (FmMixData) data = fm_mix_data_new (2, 0);
  for (guint blend = 0; blend < 5; blend++) {
    const double x[] = { 0.2 * blend, 1 - 0.2 * blend };
    fm_mix_data_add (data, x, 0, NULL);
  }
  g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_LINEAR);
  g_assert_true (isnan (fit->r2) && isnan (fit->p) && isnan (fit->loo_r2));
  g_assert_cmpfloat (fit->sigma, ==, 0);
}

static void
test_best_order (void)
{
  g_autoptr (FmMixData) curved = hill_data (0.05, 20), straight = fm_mix_data_new (3, 0);
  FmRandom random;

  fm_random_init (&random, 31);
  for (guint row = 0; row < 20; row++) {
    const double *x = fm_mix_points_get (curved->x, row);
    fm_mix_data_add (straight, x, 2 * x[0] + x[1] + 0.3 * draw_normal (&random), NULL);
  }
  g_autoptr (FmMixFit) a = fm_mix_fit_best (curved, NULL);
  g_autoptr (FmMixFit) b = fm_mix_fit_best (straight, NULL);
  g_assert_cmpint (a->order, >=, FM_MIX_QUADRATIC);
  g_assert_cmpint (b->order, ==, FM_MIX_LINEAR);
}

static void
test_desirability (void)
{
  const FmMixGoal goals[] = {
    { FM_MIX_GOAL_HIGH, 5, 0, 9, 3 },
    { FM_MIX_GOAL_LOW, 10, 0, 20, 1 },
    { FM_MIX_GOAL_NEAR, 15, 20, 22, 1 },
  };
  const double some[] = { 7, 15, 21 }, none[] = { 7, 25, 20 }, unknown[] = { 7, NAN, 20 };

  g_assert_cmpfloat (fm_mix_desirability (&goals[0], 4), ==, 0);
  g_assert_cmpfloat (fm_mix_desirability (&goals[0], 10), ==, 1);
  g_assert_cmpfloat (fm_mix_desirability (&goals[1], 12), ==, 0.8);
  g_assert_cmpfloat (fm_mix_desirability (&goals[2], 16), ==, 0.2);
  g_assert_cmpfloat (fm_mix_desirability (&goals[2], 20), ==, 1);
  g_assert_cmpfloat (fm_mix_desirability (&goals[2], 23), ==, 0);
  g_assert_cmpfloat_with_epsilon (fm_mix_desirability_joined (3, goals, some), 0.5, 1e-12);
  g_assert_cmpfloat (fm_mix_desirability_joined (3, goals, none), ==, 0);
  g_assert_true (isnan (fm_mix_desirability_joined (3, goals, unknown)));
}

static void
test_trace (void)
{
  const double centre[] = { 0.5, 0.3, 0.2 };
  FmMixRegion region;
  g_autoptr (GError) error = NULL;

  fm_mix_region_init (&region, 3);
  region.lower[1] = 0.15;
  region.upper[0] = 0.65;
  g_autoptr (FmMixPoints) points = fm_mix_trace (&region, centre, 0, 11, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (points->n, ==, 11);
  g_assert_cmpfloat_with_epsilon (fm_mix_points_get (points, 0)[0], 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (fm_mix_points_get (points, 10)[0], 0.65, 1e-12);
  for (guint i = 0; i < points->n; i++) {
    const double *x = fm_mix_points_get (points, i);
    g_assert_cmpfloat_with_epsilon (x[1] / x[2], 1.5, 1e-9);
    g_assert_true (fm_mix_region_contains (&region, x, 1e-9));
  }
  region.lower[0] = region.upper[0] = 0.5;
  g_assert_null (fm_mix_trace (&region, centre, 0, 11, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

/* 95 % of 95 % intervals of the mean hold the true mean: within four standard errors of that */
static void
coverage (guint n_runs, guint64 seed)
{
  FmMixRegion region;
  FmRandom random;
  guint n_held = 0;

  fm_mix_region_init (&region, 3);
  fm_random_init (&random, seed);
  for (guint run = 0; run < n_runs; run++) {
    g_autoptr (FmMixData) data = fm_mix_data_new (3, 1);
    const double shift[] = { 1, -2, 1 }; /* mean 0 */
    FmMixPrediction prediction;
    double x[3];
    for (guint blend = 0; blend < 8; blend++) {
      draw_blend (&random, &region, x);
      for (guint taster = blend % 2; taster < 3; taster++)
        fm_mix_data_add (data, x, hill (x) + shift[taster] + draw_normal (&random), &taster);
    }
    g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_QUADRATIC);
    draw_blend (&random, &region, x);
    fm_mix_predict (fit, x, &prediction);
    n_held += prediction.low <= hill (x) && hill (x) <= prediction.high;
  }
  g_assert_cmpfloat_with_epsilon ((double)n_held / n_runs, 0.95, 4 * sqrt (0.95 * 0.05 / n_runs));
}

/* The hill is a quadratic: of A alone 7 - 9 (0.25 + 0.09 + 0.04) = 3.58, at the top 7. */
static void
test_derivation (void)
{
  const char *const names[] = { "A", "B", "C" };
  const FmMixResponse liking = { .name = "liking", .decimals = 1, .low_end = 1, .high_end = 9 };
  const double top[] = { 0.5, 0.3, 0.2 };
  g_autoptr (FmMixData) data = hill_data (0.0, 30);
  g_autoptr (FmMixFit) fit = fit_or_fail (data, FM_MIX_QUADRATIC);
  g_autofree char *text = fm_mix_derivation (fit, data, top, names, &liking);
  g_autofree char *at_first =
      fm_mix_derivation (fit, data, fm_mix_points_get (data->x, 0), names, &liking);
  static const char *const parts[] = {
    "Expected liking of 50\u00a0% A, 30\u00a0% B, 20\u00a0% C: a sum",
    "No liking was measured of this very blend.",
    "fitted to 30 values of 30 different blends",
    "A: 3.5800 (standard error 0.0000) × 0.5000 = 1.7900",
    "A × B: ",
    "Their sum: 7.0000",
    "with 24 degrees of freedom: 7.0000 to 7.0000",
    "end at 1.0 and 9.0, as liking does",
  };

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (strstr (text, parts[i]) == NULL)
      g_error ("“%s” is not in: %s", parts[i], text);
  g_assert_nonnull (strstr (at_first, "Measured liking of this very blend, 1 value: "));
  g_assert_null (strstr (at_first, "No liking was measured"));
}

static void
test_coverage (void)
{
  coverage (6000, 61);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mix-fit/too-few", test_too_few);
  g_test_add_func ("/mix-fit/refusal-is-enough", test_refusal_is_enough);
  g_test_add_func ("/mix-fit/bad-values", test_bad_values);
  g_test_add_func ("/mix-fit/terms-alike", test_terms_alike);
  g_test_add_func ("/mix-fit/blocks-mixed-up", test_blocks_mixed_up);
  g_test_add_func ("/mix-fit/blocks-shift", test_blocks_shift);
  g_test_add_func ("/mix-fit/stray-score", test_stray_score);
  g_test_add_func ("/mix-fit/blocks-nested", test_blocks_nested);
  g_test_add_func ("/mix-fit/narrow-bounds", test_narrow_bounds);
  g_test_add_func ("/mix-fit/leave-out", test_leave_out);
  g_test_add_func ("/mix-fit/leave-out-single-taster", test_leave_out_single_taster);
  g_test_add_func ("/mix-fit/all-alike", test_all_alike);
  g_test_add_func ("/mix-fit/best-order", test_best_order);
  g_test_add_func ("/mix-fit/desirability", test_desirability);
  g_test_add_func ("/mix-fit/trace", test_trace);
  g_test_add_func ("/mix-fit/derivation", test_derivation);
  g_test_add_func ("/mix-fit/coverage", test_coverage);
  return g_test_run ();
}
