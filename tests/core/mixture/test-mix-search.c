/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-mix-search.c - the best, the next and the least known blend against a fine grid */
#include <math.h>

#include "core/base/fm-error.h"
#include "core/mixture/fm-mix-fit.h"
#include "core/statistics/fm-stat.h"

#define N_SIDE 60
#define N_NARROW 300
/* Sums of a few terms below 100 in double precision keep this with room to spare. */
#define VALUE_SLACK 1e-9
/* The flattest of the hills falls by 9 times the square of the way from its top, so that a top is
 * told to the root of a ninth of what values keep. */
#define SHARE_SLACK sqrt (VALUE_SLACK / 9)
/* The search stops at steps of so much of the mixture; no hill is steeper than 2 x 27 there. */
#define LAST_STEP 1e-8
#define STEEPEST 54

static double
draw_normal (FmRandom *random)
{
  return sqrt (-2 * log (1.0 - fm_random_unit (random))) * cos (2 * G_PI * fm_random_unit (random));
}

/* @peak less the weighted squared distance from @best, on the blends of a lattice */
static FmMixData *
hill_data (const double *best, double peak, double noise, guint64 seed)
{
  g_autoptr (FmMixPoints) lattice = fm_mix_lattice (3, 4, NULL);
  FmMixData *data = fm_mix_data_new (3, 0);
  FmRandom random;

  fm_random_init (&random, seed);
  for (guint row = 0; row < lattice->n; row++) {
    const double *x = fm_mix_points_get (lattice, row);
    double y = peak + noise * draw_normal (&random);
    for (guint i = 0; i < 3; i++)
      y -= 9 * (i + 1) * pow (x[i] - best[i], 2);
    fm_mix_data_add (data, x, y, NULL);
  }
  return data;
}

static FmMixFit *
hill_fit (const double *best, double noise)
{
  g_autoptr (FmMixData) data = hill_data (best, 7, noise, 3);
  FmMixFit *fit = fm_mix_fit (data, FM_MIX_QUADRATIC, NULL);
  g_assert_nonnull (fit);
  return fit;
}

/* An odd region: bounds, and a band on a sum such as fat */
static void
banded_region (FmMixRegion *region)
{
  const FmMixLimit fat = { { 0.10, 0.20, 0.55 }, 0.20, 0.26 };

  fm_mix_region_init (region, 3);
  region->lower[0] = 0.1;
  region->upper[1] = 0.7;
  region->limit[region->n_limits++] = fat;
}

typedef double (*Value) (const FmMixFit *fit, const double *x);

static double
largest_on_grid (const FmMixFit *fit, const FmMixRegion *region, Value value)
{
  double largest = -INFINITY;
  for (guint i = 0; i <= N_SIDE; i++)
    for (guint j = 0; i + j <= N_SIDE; j++) {
      const double x[] = { (double)i / N_SIDE, (double)j / N_SIDE,
                           (double)(N_SIDE - i - j) / N_SIDE };
      if (fm_mix_region_contains (region, x, 1e-12))
        largest = MAX (largest, value (fit, x));
    }
  return largest;
}

static double
mean_at (const FmMixFit *fit, const double *x)
{
  FmMixPrediction prediction;
  fm_mix_predict (fit, x, &prediction);
  return prediction.mean;
}

static double
se_at (const FmMixFit *fit, const double *x)
{
  FmMixPrediction prediction;
  fm_mix_predict (fit, x, &prediction);
  return prediction.se_mean;
}

static void
test_best_inside (void)
{
  const double best[] = { 0.45, 0.35, 0.2 };
  const FmMixGoal goal = { FM_MIX_GOAL_HIGH, 1, 0, 9, 1 };
  g_autoptr (FmMixFit) fit = hill_fit (best, 0);
  FmMixRegion region;
  FmMixSpot spot;

  fm_mix_region_init (&region, 3);
  g_assert_true (fm_mix_find_best (fit, &region, &goal, &spot, NULL, NULL));
  for (guint i = 0; i < 3; i++)
    g_assert_cmpfloat_with_epsilon (spot.x[i], best[i], SHARE_SLACK);
  g_assert_cmpfloat_with_epsilon (spot.value, 7, VALUE_SLACK);
}

/* The best blend lies outside: along the bound x1 = 0.3 the slopes of the other two meet where
 * 2 (x2 - 0.35) = 3 (x3 - 0.2), x2 + x3 = 0.7: x2 = 0.44, x3 = 0.26 */
static void
test_best_on_bound (void)
{
  const double best[] = { 0.45, 0.35, 0.2 }, wanted[] = { 0.3, 0.44, 0.26 };
  const FmMixGoal goal = { FM_MIX_GOAL_HIGH, 1, 0, 9, 1 };
  g_autoptr (FmMixFit) fit = hill_fit (best, 0);
  FmMixRegion region;
  FmMixSpot spot;

  fm_mix_region_init (&region, 3);
  region.upper[0] = 0.3;
  g_assert_true (fm_mix_find_best (fit, &region, &goal, &spot, NULL, NULL));
  for (guint i = 0; i < 3; i++)
    g_assert_cmpfloat_with_epsilon (spot.x[i], wanted[i], SHARE_SLACK);
  g_assert_cmpfloat (spot.x[0] + spot.x[1] + spot.x[2], ==, 1);
}

/* Never below what a fine grid finds, for noisy hills in every place, with limits and without */
static void
test_beats_grid (void)
{
  const FmMixGoal high = { FM_MIX_GOAL_HIGH, 1, 0, 9, 1 }, low = { FM_MIX_GOAL_LOW, 1, 0, 9, 1 };
  FmRandom random;

  fm_random_init (&random, 12);
  for (guint run = 0; run < 40; run++) {
    const double best[] = { 2 * fm_random_unit (&random) - 0.5, fm_random_unit (&random),
                            fm_random_unit (&random) };
    g_autoptr (FmMixData) data = hill_data (best, 7, 2, run);
    g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_SPECIAL_CUBIC, NULL);
    FmMixRegion region;
    FmMixSpot spot;

    if (run % 2 == 0)
      banded_region (&region);
    else
      fm_mix_region_init (&region, 3);
    g_assert_true (fm_mix_find_best (fit, &region, &high, &spot, NULL, NULL));
    g_assert_true (fm_mix_region_contains (&region, spot.x, 1e-8));
    g_assert_cmpfloat (spot.value, >=, largest_on_grid (fit, &region, mean_at) - 1e-7);

    g_assert_true (fm_mix_find_best (fit, &region, &low, &spot, NULL, NULL));
    g_assert_cmpfloat_with_epsilon (spot.value, mean_at (fit, spot.x), 1e-9);

    g_assert_true (fm_mix_find_unknown (fit, &region, &spot, NULL, NULL));
    g_assert_true (fm_mix_region_contains (&region, spot.x, 1e-8));
    g_assert_cmpfloat (spot.value, >=, largest_on_grid (fit, &region, se_at) - 1e-7);
  }
}

/* Bounds a few points wide, off the middle of the mixture */
static void
narrow_region (FmMixRegion *region, guint q, FmRandom *random)
{
  double left = 1.0;

  fm_mix_region_init (region, q);
  for (guint i = 0; i < q; i++) {
    const double middle = i + 1 == q ? left : left * (0.2 + 0.6 * fm_random_unit (random)) / 1.5;
    const double width = 0.01 + 0.14 * fm_random_unit (random);
    region->lower[i] = MAX (middle - width, 0.0);
    region->upper[i] = MIN (middle + width, 1.0);
    left -= middle;
  }
}

/* A blend of the corners: @power draws towards the edges */
static void
draw_inside (const FmMixPoints *corners, double power, FmRandom *random, double *x)
{
  double sum = 0.0;

  for (guint i = 0; i < corners->q; i++)
    x[i] = 0.0;
  for (guint v = 0; v < corners->n; v++) {
    const double part = pow (-log (1.0 - fm_random_unit (random)), power);
    sum += part;
    for (guint i = 0; i < corners->q; i++)
      x[i] += part * fm_mix_points_get (corners, v)[i];
  }
  for (guint i = 0; i < corners->q; i++)
    x[i] /= sum;
}

static FmMixData *
random_data (const FmMixPoints *corners, FmRandom *random)
{
  FmMixData *data = fm_mix_data_new (corners->q, 0);
  double x[FM_MIX_MAX_COMPONENTS];

  for (guint row = 0; row < 40; row++) {
    draw_inside (corners, 2, random, x);
    fm_mix_data_add (data, x, draw_normal (random), NULL);
  }
  return data;
}

/* How far below the best of many blends @found lies, as a part of their range */
static double
shortfall (
    const FmMixFit *fit, const FmMixPoints *corners, Value value, double found, FmRandom *random)
{
  double x[FM_MIX_MAX_COMPONENTS], low = INFINITY, high = -INFINITY;

  for (guint i = 0; i < 2000; i++) {
    draw_inside (corners, 1 + 3 * fm_random_unit (random), random, x);
    low = MIN (low, value (fit, x));
    high = MAX (high, value (fit, x));
  }
  return (high - found) / (high - low);
}

/* Against a dense cloud of blends: narrow regions with many tops, as noise alone makes them */
static void
test_narrow_regions (void)
{
  const FmMixGoal high = { FM_MIX_GOAL_HIGH, 1, 0, 9, 1 };
  FmRandom random;

  fm_random_init (&random, 31);
  for (guint run = 0; run < N_NARROW; run++) {
    FmMixRegion region;
    FmMixSpot spot;

    narrow_region (&region, 3 + run % 3, &random);
    g_autoptr (FmMixPoints) corners = fm_mix_region_vertices (&region, NULL);
    if (corners == NULL)
      continue;
    g_autoptr (FmMixData) data = random_data (corners, &random);
    g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_SPECIAL_CUBIC, NULL);
    if (fit == NULL)
      continue;
    g_assert_true (fm_mix_find_best (fit, &region, &high, &spot, NULL, NULL));
    g_assert_cmpfloat (shortfall (fit, corners, mean_at, spot.value, &random), <=, 1e-6);
    g_assert_true (fm_mix_find_unknown (fit, &region, &spot, NULL, NULL));
    g_assert_cmpfloat (shortfall (fit, corners, se_at, spot.value, &random), <=, 1e-6);
  }
}

static void
test_near_target (void)
{
  const double best[] = { 0.45, 0.35, 0.2 };
  const FmMixGoal goal = { FM_MIX_GOAL_NEAR, 1, 4, 9, 1 };
  g_autoptr (FmMixFit) fit = hill_fit (best, 0.5);
  FmMixRegion region;
  FmMixSpot spot;

  banded_region (&region);
  g_assert_true (fm_mix_find_best (fit, &region, &goal, &spot, NULL, NULL));
  g_assert_cmpfloat_with_epsilon (spot.value, 4, STEEPEST * LAST_STEP);
}

/* Expected improvement by 200000 draws of what the model believes */
static void
check_improvement (const FmMixGoal *goal)
{
  const double best[] = { 0.45, 0.35, 0.2 };
  g_autoptr (FmMixData) data = hill_data (best, 7, 1.5, 8);
  g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_QUADRATIC, NULL);
  double so_far = INFINITY, sum = 0.0, squares = 0.0;
  const double sign = goal->kind == FM_MIX_GOAL_HIGH ? -1 : 1;
  FmMixRegion region;
  FmMixSpot spot;
  FmRandom random;

  fm_mix_region_init (&region, 3);
  g_assert_true (fm_mix_find_next (fit, data, &region, goal, &spot, NULL, NULL));
  const double mean = mean_at (fit, spot.x), se = se_at (fit, spot.x);
  for (guint row = 0; row < data->x->n; row++) {
    const double y = mean_at (fit, fm_mix_points_get (data->x, row));
    so_far = MIN (so_far, goal->kind == FM_MIX_GOAL_NEAR ? fabs (y - goal->target) : sign * y);
  }
  fm_random_init (&random, 77);
  for (guint i = 0; i < 200000; i++) {
    const double y = mean + se * draw_normal (&random);
    const double loss = goal->kind == FM_MIX_GOAL_NEAR ? fabs (y - goal->target) : sign * y;
    sum += MAX (so_far - loss, 0.0);
    squares += pow (MAX (so_far - loss, 0.0), 2);
  }
  const double drawn = sum / 200000;
  g_assert_cmpfloat (spot.value, >, 0);
  g_assert_cmpfloat_with_epsilon (spot.value, drawn,
                                  5 * sqrt ((squares / 200000 - drawn * drawn) / 200000) + 1e-9);
}

static void
test_improvement (void)
{
  const FmMixGoal goals[] = {
    { FM_MIX_GOAL_HIGH, 1, 0, 9, 1 },
    { FM_MIX_GOAL_LOW, 1, 0, 9, 1 },
    { FM_MIX_GOAL_NEAR, 1, 20, 30, 1 },
  };
  for (guint g = 0; g < G_N_ELEMENTS (goals); g++)
    check_improvement (&goals[g]);
}

/* Two hills: the joined best lies on the line between their tops, in the middle for equal weights
 * of equal hills, and desirability agrees with the predictions there */
static void
test_joined (void)
{
  const double tops[2][3] = { { 0.6, 0.2, 0.2 }, { 0.2, 0.6, 0.2 } };
  g_autoptr (FmMixFit) one = hill_fit (tops[0], 0);
  g_autoptr (FmMixFit) two = hill_fit (tops[1], 0);
  const FmMixFit *fits[] = { one, two };
  FmMixGoal goals[] = { { FM_MIX_GOAL_HIGH, 0, 0, 8, 1 }, { FM_MIX_GOAL_HIGH, 0, 0, 8, 1 } };
  FmMixRegion region;
  FmMixSpot spot;

  fm_mix_region_init (&region, 3);
  g_assert_true (fm_mix_find_joined (2, fits, goals, &region, &spot, NULL, NULL));
  const double values[] = { mean_at (one, spot.x), mean_at (two, spot.x) };
  g_assert_cmpfloat_with_epsilon (spot.value, fm_mix_desirability_joined (2, goals, values), 1e-9);
  g_assert_cmpfloat_with_epsilon (spot.x[0], 0.4, SHARE_SLACK);
  g_assert_cmpfloat_with_epsilon (spot.x[1], 0.4, SHARE_SLACK);
  g_assert_cmpfloat_with_epsilon (spot.x[2], 0.2, SHARE_SLACK);

  goals[0].low = goals[1].low = 6.9; /* both near their tops at once: no blend can */
  g_assert_true (fm_mix_find_joined (2, fits, goals, &region, &spot, NULL, NULL));
  g_assert_cmpfloat (spot.value, ==, 0);
}

/* Goals met in a small corner only are found although most of the region scores nothing */
static void
test_joined_small_corner (void)
{
  const double tops[2][3] = { { 0.60, 0.2, 0.2 }, { 0.55, 0.25, 0.2 } };
  g_autoptr (FmMixFit) one = hill_fit (tops[0], 0);
  g_autoptr (FmMixFit) two = hill_fit (tops[1], 0);
  const FmMixFit *fits[] = { one, two };
  const FmMixGoal goals[] = { { FM_MIX_GOAL_HIGH, 6.97, 0, 7, 1 },
                              { FM_MIX_GOAL_HIGH, 6.97, 0, 7, 1 } };
  FmMixRegion region;
  FmMixSpot spot;

  fm_mix_region_init (&region, 3);
  g_assert_true (fm_mix_find_joined (2, fits, goals, &region, &spot, NULL, NULL));
  g_assert_cmpfloat (spot.value, >, 0.4);
}

static gboolean
always (gpointer data)
{
  return TRUE;
}

static void
test_stop (void)
{
  const double best[] = { 0.45, 0.35, 0.2 };
  const FmMixGoal goal = { FM_MIX_GOAL_HIGH, 1, 0, 9, 1 };
  const FmStop stop = { always, NULL };
  g_autoptr (FmMixFit) fit = hill_fit (best, 0);
  g_autoptr (GError) error = NULL;
  FmMixRegion region;
  FmMixSpot spot;

  fm_mix_region_init (&region, 3);
  g_assert_false (fm_mix_find_best (fit, &region, &goal, &spot, &stop, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_STOPPED);
}

/* Trying what is suggested, round after round, comes close to a best blend nobody told */
static void
test_suggestions_approach (void)
{
  const double best[] = { 0.45, 0.35, 0.2 };
  const FmMixGoal goal = { FM_MIX_GOAL_HIGH, 1, 0, 9, 1 };
  g_autoptr (FmMixData) data = hill_data (best, 7, 0.3, 19);
  FmMixRegion region;
  FmMixSpot spot;
  FmRandom random;

  fm_mix_region_init (&region, 3);
  fm_random_init (&random, 40);
  for (guint round = 0; round < 8; round++) {
    g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_QUADRATIC, NULL);
    g_assert_true (fm_mix_find_next (fit, data, &region, &goal, &spot, NULL, NULL));
    double y = 7 + 0.3 * draw_normal (&random);
    for (guint i = 0; i < 3; i++)
      y -= 9 * (i + 1) * pow (spot.x[i] - best[i], 2);
    fm_mix_data_add (data, spot.x, y, NULL);
  }
  g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_QUADRATIC, NULL);
  g_assert_true (fm_mix_find_best (fit, &region, &goal, &spot, NULL, NULL));
  for (guint i = 0; i < 3; i++)
    g_assert_cmpfloat_with_epsilon (spot.x[i], best[i], 0.05);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mix-search/best-inside", test_best_inside);
  g_test_add_func ("/mix-search/best-on-bound", test_best_on_bound);
  g_test_add_func ("/mix-search/beats-grid", test_beats_grid);
  g_test_add_func ("/mix-search/narrow-regions", test_narrow_regions);
  g_test_add_func ("/mix-search/near-target", test_near_target);
  g_test_add_func ("/mix-search/improvement", test_improvement);
  g_test_add_func ("/mix-search/joined", test_joined);
  g_test_add_func ("/mix-search/joined-small-corner", test_joined_small_corner);
  g_test_add_func ("/mix-search/stop", test_stop);
  g_test_add_func ("/mix-search/suggestions-approach", test_suggestions_approach);
  return g_test_run ();
}
