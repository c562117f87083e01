/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-mix-standing.c - a map speaks of a best blend only when it predicts */
#include <math.h>
#include <string.h>

#include "core/mixture/fm-mix-standing.h"
#include "core/statistics/fm-stat.h"

#define N_PANELS 400
#define N_TASTERS 5

static const FmMixResponse liking = {
  .name = "liking", .decimals = 1, .once = "one new score", .low_end = 1, .high_end = 9
};

static double
draw_normal (FmRandom *random)
{
  return sqrt (-2 * log (1.0 - fm_random_unit (random))) * cos (2 * G_PI * fm_random_unit (random));
}

/* Blends of three, each scored by every taster: @height times a hill, plus noise */
static FmMixData *
panel (double height, double noise, guint64 seed)
{
  g_autoptr (FmMixPoints) lattice = fm_mix_lattice (3, 3, NULL);
  FmMixData *data = fm_mix_data_new (3, 1);
  FmRandom random;

  fm_random_init (&random, seed);
  for (guint row = 0; row < lattice->n; row++) {
    const double *x = fm_mix_points_get (lattice, row);
    const double hill = 6 * x[0] * x[1] + 3 * x[1] * x[2] - x[2];
    for (guint taster = 0; taster < N_TASTERS; taster++)
      fm_mix_data_add (data, x, 5 + height * hill + noise * draw_normal (&random), &taster);
  }
  return data;
}

static FmMixVerdict
judge (const FmMixFit *fit, const FmMixResponse *response)
{
  g_autoptr (GError) error = NULL;
  FmMixRegion region;
  FmMixVerdict verdict;

  fm_mix_region_init (&region, fit->q);
  fm_mix_judge (fit, &region, response, &verdict, NULL, &error);
  g_assert_no_error (error);
  return verdict;
}

static void
assert_says (const FmMixFit *fit, FmMixStanding standing, const char *part)
{
  const FmMixVerdict verdict = judge (fit, &liking);
  g_autofree char *sentence = fm_mix_verdict_sentence (&verdict, fit, &liking);

  g_assert_cmpint (verdict.standing, ==, standing);
  if (strstr (sentence, part) == NULL)
    g_error ("'%s' lacks '%s'", sentence, part);
}

static void
test_predicts (void)
{
  g_autoptr (FmMixData) data = panel (1, 0.5, 1);
  g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_QUADRATIC, NULL);
  g_autofree char *off =
      g_strdup_printf ("is off by %.1f, typically; the plain mean of the other blends would be off "
                       "by %.1f",
                       fit->loo_blend_rmse, fit->loo_mean_rmse);

  assert_says (fit, FM_MIX_PREDICTS, off);
}

/* A panel that hardly strays still leaves an error: it is not told as none. */
static void
test_small_error (void)
{
  g_autoptr (FmMixData) data = panel (1, 0.001, 1);
  g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_QUADRATIC, NULL);

  assert_says (fit, FM_MIX_PREDICTS, "is off by less than 0.1, typically");
}

/* Blends that are all alike: the best of the models must not be believed oftener than stated. */
static void
test_chance_is_not_believed (void)
{
  guint n_believed = 0;

  for (guint i = 0; i < N_PANELS; i++) {
    g_autoptr (FmMixData) data = panel (0, 1, 100 + i);
    g_autoptr (FmMixFit) fit = fm_mix_fit_best (data, NULL);
    n_believed += judge (fit, &liking).standing == FM_MIX_PREDICTS;
  }
  g_test_message ("believed %u of %d", n_believed, N_PANELS);
  g_assert_cmpfloat (n_believed, <=, 0.05 * N_PANELS + 3 * sqrt (0.05 * 0.95 * N_PANELS));
}

static void
test_no_effect (void)
{
  g_autoptr (FmMixData) data = panel (0, 1, 3);
  g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_QUADRATIC, NULL);

  g_assert_cmpfloat (fit->loo_blend_rmse, >, fit->loo_mean_rmse);
  assert_says (fit, FM_MIX_BEATS_NO_MEAN, "This map does not predict yet");
}

static void
test_misses_something (void)
{
  g_autoptr (FmMixData) data = panel (2, 0.3, 4);
  g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_LINEAR, NULL);

  assert_says (fit, FM_MIX_LACKS_FIT, "misses something");
}

/* Measured in the middle only, a slope runs off the ends of the scale. */
static void
test_leaves_scale (void)
{
  g_autoptr (FmMixData) data = fm_mix_data_new (2, 0);
  FmRandom random;

  fm_random_init (&random, 5);
  for (guint i = 0; i < 12; i++) {
    const double x[] = { 0.4 + 0.1 * (i % 3), 0.6 - 0.1 * (i % 3) };
    fm_mix_data_add (data, x, 5 + 20 * (x[0] - 0.5) + 0.2 * draw_normal (&random), NULL);
  }
  g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_LINEAR, NULL);
  FmMixResponse endless = liking;

  endless.low_end = endless.high_end = 0;
  assert_says (fit, FM_MIX_LEAVES_SCALE, "and the scale goes from 1.0 to 9.0");
  g_assert_cmpint (judge (fit, &endless).standing, ==, FM_MIX_PREDICTS);
}

static void
test_quality_unknown (void)
{
  g_autoptr (FmMixData) data = fm_mix_data_new (2, 0), alike = fm_mix_data_new (2, 0);

  for (guint i = 0; i < 6; i++) {
    const double x[] = { 0.5 * (i % 3), 1 - 0.5 * (i % 3) };
    fm_mix_data_add (data, x, 5 + i, NULL);
    fm_mix_data_add (alike, x, 5, NULL);
  }
  g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_QUADRATIC, NULL);
  g_autoptr (FmMixFit) flat = fm_mix_fit (alike, FM_MIX_LINEAR, NULL);

  assert_says (fit, FM_MIX_QUALITY_UNKNOWN, "cannot be told");
  assert_says (flat, FM_MIX_ALL_ALIKE, "nothing to map");
}

/* Neither an expected mean nor a new score lies beyond the ends of the scale. */
static void
test_intervals_end_with_the_scale (void)
{
  const char *names[] = { "chuck", "brisket", "short rib", NULL };
  const FmMixSpot spot = { { 0.5, 0.5, 0 }, 0 };
  g_autoptr (FmMixData) data = panel (2.6, 1, 6);
  g_autoptr (FmMixFit) fit = fm_mix_fit (data, FM_MIX_QUADRATIC, NULL);
  g_autofree char *best = fm_mix_best_sentence (fit, &spot, names, &liking);
  FmMixPrediction prediction;

  fm_mix_predict (fit, spot.x, &prediction);
  g_assert_cmpfloat (prediction.new_high, >, 9);
  g_assert_nonnull (strstr (best, "one new score"));
  g_assert_nonnull (strstr (best, " to 9.0)"));
}

static void
test_one_blend (void)
{
  const double a[] = { 0.500, 0.300, 0.200 }, b[] = { 0.506, 0.298, 0.196 };
  const double c[] = { 0.52, 0.28, 0.20 };
  g_autofree char *same = fm_mix_one_blend_sentence (3, a, b);

  g_assert_nonnull (same);
  g_assert_null (fm_mix_one_blend_sentence (3, a, c));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mix-standing/predicts", test_predicts);
  g_test_add_func ("/mix-standing/small-error", test_small_error);
  g_test_add_func ("/mix-standing/chance-is-not-believed", test_chance_is_not_believed);
  g_test_add_func ("/mix-standing/no-effect", test_no_effect);
  g_test_add_func ("/mix-standing/misses-something", test_misses_something);
  g_test_add_func ("/mix-standing/leaves-scale", test_leaves_scale);
  g_test_add_func ("/mix-standing/quality-unknown", test_quality_unknown);
  g_test_add_func ("/mix-standing/intervals-end-with-the-scale", test_intervals_end_with_the_scale);
  g_test_add_func ("/mix-standing/one-blend", test_one_blend);
  return g_test_run ();
}
