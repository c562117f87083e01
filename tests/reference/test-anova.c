/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-anova.c - liking scores against textbook analyses of variance
 *
 * Box, Hunter and Hunter (1978) penicillin: data, SS, F, p read (Faraway's R examples); LSD, HSD
 * and adjusted p computed with R 4.2.2. Lawson, ch. 7, taste: data read (daewr), results computed
 * with R. Rounding first base (Hollander and Wolfe 1973, p. 140): data as in R's friedman.test(),
 * from memory, held by its published 11.143; results computed with R 4.2.2. agricolae vignette,
 * sweet potato: MSE and df read; HSD computed.
 */
#include <math.h>

#include "core/statistics/fm-anova.h"
#include "core/statistics/fm-panel.h"
#include "core/statistics/fm-stat.h"

#define assert_near(value, wanted, epsilon) g_assert_cmpfloat_with_epsilon (value, wanted, epsilon)

static void
test_penicillin (void)
{
  const double score[] = { 89, 88, 97, 94, 84, 77, 92, 79, 81, 87,
                           87, 85, 87, 92, 89, 84, 79, 81, 80, 88 };
  const double means[] = { 84, 85, 89, 86 };
  const double tukey_p[] = { 0.9826684,   0.310509377, 0.883755075,
                             0.490519432, 0.9826684,   0.700227149 };
  g_autoptr (FmAnovaResult) result = fm_anova_liking (5, 4, score, NULL);

  g_assert_true (result->is_balanced);
  assert_near (result->ss_taster, 264, 1e-9);
  assert_near (result->ss_sample, 70, 1e-9);
  assert_near (result->ss_error, 226, 1e-9);
  g_assert_cmpuint (result->df_error, ==, 12);
  assert_near (result->f_taster, 3.50442478, 1e-8);
  assert_near (result->p_taster, 0.0407461731836, 1e-12);
  assert_near (result->f_sample, 1.23893805, 1e-8);
  assert_near (result->p_sample, 0.338658116187, 1e-11);
  assert_near (result->hsd, 8.1487187, 1e-6);
  g_assert_true (isnan (result->lsd)); /* not significant: no LSD is offered */
  for (guint s = 0; s < 4; s++) {
    assert_near (result->adjusted_mean[s], means[s], 1e-9);
    /* half of Fisher's 5.98016981 times sqrt 2 */
    assert_near (result->high[s] - result->low[s], 5.98016981 * G_SQRT2, 1e-6);
  }
  g_assert_cmpuint (result->n_pairs, ==, 6);
  for (guint i = 0; i < 6; i++)
    assert_near (result->pair[i].p, tukey_p[i], 1e-6);
}

static void
test_taste_blocks (void)
{
  const struct {
    guint taster, recipe;
    double score;
  } cells[] = { { 1, 0, 5 }, { 2, 0, 7 }, { 3, 0, 5 }, { 4, 1, 6 },  { 5, 1, 6 },  { 6, 2, 8 },
                { 7, 0, 6 }, { 8, 0, 5 }, { 9, 0, 4 }, { 10, 1, 7 }, { 11, 1, 6 }, { 12, 2, 7 },
                { 1, 1, 5 }, { 2, 2, 6 }, { 3, 3, 4 }, { 4, 2, 7 },  { 5, 3, 4 },  { 6, 3, 6 },
                { 7, 1, 7 }, { 8, 2, 8 }, { 9, 3, 5 }, { 10, 2, 7 }, { 11, 3, 5 }, { 12, 3, 4 } };
  const double raw[] = { 5.33333333, 6.16666667, 7.16666667, 4.66666667 };
  const double adjusted[] = { 5.45833333, 6.20833333, 6.83333333, 4.83333333 };
  /* Kramer's form: the contrast of lm() and ptukey(), qtukey() of 4 samples and 9 degrees */
  const double difference[] = { 0.75, 1.375, -0.625, 0.625, -1.375, -2 };
  const double tukey_p[] = { 0.6341982324, 0.1881679369, 0.7472433033,
                             0.7472433033, 0.1881679369, 0.04209664692 };
  double score[48];

  for (guint i = 0; i < 48; i++)
    score[i] = NAN;
  for (guint i = 0; i < G_N_ELEMENTS (cells); i++)
    score[(cells[i].taster - 1) * 4 + cells[i].recipe] = cells[i].score;
  g_autoptr (FmAnovaResult) result = fm_anova_liking (12, 4, score, NULL);

  g_assert_false (result->is_balanced);
  assert_near (result->ss_sample, 9.125, 1e-9);
  assert_near (result->ss_taster, 7.45833333, 1e-8);
  assert_near (result->ms_error, 0.763888889, 1e-9);
  g_assert_cmpuint (result->df_sample, ==, 3);
  g_assert_cmpuint (result->df_error, ==, 9);
  assert_near (result->f_sample, 3.98181818, 1e-8);
  assert_near (result->p_sample, 0.046492, 1e-6);
  for (guint s = 0; s < 4; s++) {
    assert_near (result->mean[s], raw[s], 1e-8);
    assert_near (result->adjusted_mean[s], adjusted[s], 1e-8);
  }
  g_assert_cmpuint (result->leader, ==, 2);
  g_assert_cmpuint (result->n_pairs, ==, 6);
  for (guint i = 0; i < 6; i++) {
    assert_near (result->pair[i].difference, difference[i], 1e-8);
    assert_near (result->pair[i].p, tukey_p[i], 1e-6);
    assert_near (result->pair[i].high - result->pair[i].difference, 1.9293232615, 1e-6);
  }
}

/* Three ways of rounding first base, 22 runners: a difference that shows, so that an LSD is given.
 */
static void
test_rounding_first_base (void)
{
  const double seconds[] = {
    5.40, 5.50, 5.55, 5.85, 5.70, 5.75, 5.20, 5.60, 5.50, 5.55, 5.50, 5.40, 5.90, 5.85,
    5.70, 5.45, 5.55, 5.60, 5.40, 5.40, 5.35, 5.45, 5.50, 5.35, 5.25, 5.15, 5.00, 5.85,
    5.80, 5.70, 5.25, 5.20, 5.10, 5.65, 5.55, 5.45, 5.60, 5.35, 5.45, 5.05, 5.00, 4.95,
    5.50, 5.50, 5.40, 5.45, 5.55, 5.50, 5.55, 5.55, 5.35, 5.45, 5.50, 5.55, 5.50, 5.45,
    5.25, 5.65, 5.60, 5.40, 5.70, 5.65, 5.55, 6.30, 6.30, 6.25,
  };
  g_autoptr (FmAnovaResult) result = fm_anova_liking (22, 3, seconds, NULL);

  assert_near (result->f_sample, 6.28831, 1e-5);
  assert_near (result->p_sample, 0.0040841, 1e-7);
  assert_near (result->ms_error, 0.00745129870, 1e-10);
  assert_near (result->lsd, 0.0525240721152, 1e-9);
  assert_near (result->hsd, 0.0632317834894, 1e-6);
}

static void
test_sweet_potato_range (void)
{
  const double q = fm_stat_studentized_range_quantile (0.05, 4, 8);

  assert_near (q, 4.52881, 1e-5);
  assert_near (q * sqrt (22.4891667 / 3), 12.39967, 1e-5);
}

/* Synthetic sheets, the arithmetic computed apart; no published table with raw data was found. */
static void
test_jar_penalty (void)
{
  const guint jar[] = { 1, 2, 2, 3, 3, 3, 3, 3, 4, 4, 5, 3 };
  const double liking[] = { 4, 5, 6, 8, 7, 8, 9, 7, 6, 5, 3, 7 };
  FmJarResult result;

  g_assert_true (fm_panel_jar (12, jar, liking, &result, NULL));
  g_assert_cmpuint (result.n_low, ==, 3);
  g_assert_cmpuint (result.count[2], ==, 6);
  g_assert_cmpuint (result.n_high, ==, 3);
  assert_near (result.mean_just_right, 7.666666666666667, 1e-12);
  assert_near (result.drop_low, 2.666666666666667, 1e-12);
  assert_near (result.drop_high, 3.0, 1e-12);
  assert_near (result.weighted_low, 0.6666666666666667, 1e-12);
  assert_near (result.weighted_high, 0.75, 1e-12);
  assert_near (result.overall_penalty, 2.833333333333334, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reference/anova/box-hunter-hunter-1978-penicillin", test_penicillin);
  g_test_add_func ("/reference/anova/lawson-taste-blocks", test_taste_blocks);
  g_test_add_func ("/reference/anova/hollander-wolfe-1973-rounding-first-base",
                   test_rounding_first_base);
  g_test_add_func ("/reference/anova/agricolae-sweet-potato", test_sweet_potato_range);
  g_test_add_func ("/reference/anova/jar-penalty-synthetic", test_jar_penalty);
  return g_test_run ();
}
