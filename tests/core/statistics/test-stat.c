/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-stat.c - chance, intervals and their promises */
#include "core/statistics/fm-stat.h"

#include <math.h>
#include <string.h>

#include "core/statistics/fm-anova.h"
#include "core/base/fm-error.h"
#include "core/statistics/fm-panel-text.h"
#include "core/statistics/fm-stat-choice.h"

#define N_COVERAGE 2500

static void
test_seed_repeats (void)
{
  FmRandom a, b;
  fm_random_init (&a, 42);
  fm_random_init (&b, 42);
  for (guint i = 0; i < 100; i++)
    g_assert_cmpuint (fm_random_next (&a), ==, fm_random_next (&b));
  for (guint i = 0; i < 1000; i++) {
    g_assert_cmpuint (fm_random_below (&a, 7), <, 7);
    const double unit = fm_random_unit (&a);
    g_assert_true (unit >= 0 && unit < 1);
  }
}

static void
test_midranks (void)
{
  const double values[] = { 3, 1, 3, 2 };
  const double wanted[] = { 3.5, 1, 3.5, 2 };
  double ranks[4];
  fm_stat_midranks (values, 4, ranks);
  for (guint i = 0; i < 4; i++)
    g_assert_cmpfloat (ranks[i], ==, wanted[i]);
  g_assert_cmpfloat_with_epsilon (fm_stat_spearman (values, wanted, 4), 1, 1e-12);
}

/* The exact interval covers at least 95 % whatever the true share: summed, not drawn. */
static void
test_clopper_pearson_covers (void)
{
  for (guint n = 2; n <= 30; n += 4)
    for (double p = 0.02; p < 1; p += 0.03) {
      double covered = 0;
      for (guint x = 0; x <= n; x++) {
        double low, high;
        fm_stat_clopper_pearson (x, n, 0.95, &low, &high);
        if (p >= low && p <= high)
          covered += fm_stat_binomial_upper (x, n, p) - fm_stat_binomial_upper (x + 1, n, p);
      }
      g_assert_cmpfloat (covered, >=, 0.95 - 1e-9);
    }
}

static double
draw_normal (FmRandom *random)
{
  const double radius = sqrt (-2 * log (1 - fm_random_unit (random)));
  return radius * cos (2 * G_PI * fm_random_unit (random));
}

/* Scores of 5 tasters on 4 samples with gaps; true effects known. Counts how often the interval of
 * one mean, and all Tukey intervals together, hold the truth. */
static void
draw_coverage (gboolean gaps, double *mean_covered, double *pairs_covered, double *false_alarms)
{
  const double truth[] = { 5, 6, 6.5, 4 };
  guint n_mean = 0, n_pairs = 0, n_alarms = 0;
  FmRandom random;

  fm_random_init (&random, 20240517);
  for (guint run = 0; run < N_COVERAGE; run++) {
    double score[20], noise[20], level[5], levels = 0;
    for (guint t = 0; t < 5; t++)
      levels += (level[t] = 2 * draw_normal (&random)) / 5;
    for (guint i = 0; i < 20; i++) {
      noise[i] = draw_normal (&random);
      score[i] = truth[i % 4] + level[i / 4] + noise[i];
      if (gaps && i % 7 == 3)
        score[i] = noise[i] = NAN;
    }
    g_autoptr (FmAnovaResult) result = fm_anova_liking (5, 4, score, NULL);
    g_autoptr (FmAnovaResult) nothing = fm_anova_liking (5, 4, noise, NULL);
    gboolean all = TRUE;
    n_mean += truth[1] + levels >= result->low[1] && truth[1] + levels <= result->high[1];
    for (guint i = 0; i < result->n_pairs; i++) {
      const FmAnovaPair *pair = &result->pair[i];
      const double difference = truth[pair->b] - truth[pair->a];
      all = all && difference >= pair->low && difference <= pair->high;
    }
    n_pairs += all;
    n_alarms += nothing->p_sample <= 0.05;
  }
  *mean_covered = (double)n_mean / N_COVERAGE;
  *pairs_covered = (double)n_pairs / N_COVERAGE;
  *false_alarms = (double)n_alarms / N_COVERAGE;
}

static void
test_liking_intervals_cover (void)
{
  /* three standard errors of a share of 0.95 */
  const double slack = 3 * sqrt (0.95 * 0.05 / N_COVERAGE);
  for (guint gaps = 0; gaps < 2; gaps++) {
    double mean, pairs, alarms;
    draw_coverage (gaps, &mean, &pairs, &alarms);
    g_test_message ("gaps %u: mean %.4f, all pairs %.4f, false alarms %.4f", gaps, mean, pairs,
                    alarms);
    g_assert_cmpfloat_with_epsilon (mean, 0.95, slack);
    g_assert_cmpfloat (pairs, >=, 0.95 - slack);
    g_assert_cmpfloat (alarms, <=, 0.05 + slack);
  }
}

static void
test_liking_refuses (void)
{
  const double apart[] = { 5, 6, NAN, NAN, NAN, NAN, 5, 7 };
  const double huge[] = { 5, 1e300, 4, 6 };
  const double alone[] = { 5, 6, NAN, NAN };
  const struct {
    guint n_samples;
    const double *score;
    int code;
  } cases[] = { { 4, apart, FM_CORE_ERROR_UNKNOWN_VALUE },
                { 2, huge, FM_CORE_ERROR_OUT_OF_RANGE },
                { 2, alone, FM_CORE_ERROR_EMPTY } };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (GError) error = NULL;
    g_assert_null (fm_anova_liking (2, cases[i].n_samples, cases[i].score, &error));
    g_assert_error (error, FM_CORE_ERROR, cases[i].code);
  }
}

static void
test_choice_refuses (void)
{
  FmChoiceResult result;
  g_autoptr (GError) none = NULL, many = NULL;
  g_assert_false (fm_choice_test (FM_CHOICE_TRIANGLE, 0, 0, &result, &none));
  g_assert_error (none, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
  g_assert_false (fm_choice_test (FM_CHOICE_TRIANGLE, 3, 4, &result, &many));
  g_assert_error (many, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

static void
test_sentences (void)
{
  const char *const names[] = { "731", "208", "415", "962" };
  const double split[3][4] = { { 1, 2, 3, 4 }, { 2, 1, 4, 3 }, { 1, 4, 2, 3 } };
  g_autoptr (FmRankTable) table = fm_rank_table_new (3, 4);
  for (guint t = 0; t < 3; t++)
    for (guint s = 0; s < 4; s++)
      fm_rank_table_set (table, t, s, split[t][s]);
  g_autoptr (FmRankResult) open = fm_rank_test (table, 1, NULL);
  g_autofree char *undecided = fm_panel_rank_sentence (open, names);
  g_assert_true (g_str_has_prefix (undecided, "Three tasters cannot separate these four; 731 led"));

  for (guint t = 0; t < 3; t++)
    for (guint s = 0; s < 4; s++)
      fm_rank_table_set (table, t, s, s + 1);
  g_autoptr (FmRankResult) agreed = fm_rank_test (table, 1, NULL);
  g_autofree char *decided = fm_panel_rank_sentence (agreed, names);
  g_assert_cmpstr (
      decided, ==,
      "Three tasters see a difference between these four that chance gives in 2 of "
      "1,000 sessions; 731 came first, clearly ahead of 962 (by 8 in rank sum or more, "
      "a distance that holds over all pairs).");

  FmChoiceResult choice;
  g_assert_true (fm_choice_test (FM_CHOICE_TRIANGLE, 8, 4, &choice, NULL));
  g_autofree char *not_shown = fm_panel_choice_sentence (&choice, NULL, NULL);
  g_assert_nonnull (strstr (not_shown, "6 were needed"));
  g_assert_nonnull (strstr (not_shown, "does not mean"));

  FmPanelOutlook outlook;
  fm_panel_outlook (3, 4, &outlook);
  g_assert_cmpuint (outlook.tasters_for_05, ==, 2);
  g_assert_cmpuint (outlook.preference_critical, ==, 0);
  g_autofree char *text = fm_panel_outlook_text (&outlook);
  g_assert_nonnull (strstr (text, "exactly the same order from all is 1 chance in 576"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/stat/seed-repeats", test_seed_repeats);
  g_test_add_func ("/stat/midranks", test_midranks);
  g_test_add_func ("/stat/clopper-pearson-covers", test_clopper_pearson_covers);
  g_test_add_func ("/stat/liking-intervals-cover", test_liking_intervals_cover);
  g_test_add_func ("/stat/liking-refuses", test_liking_refuses);
  g_test_add_func ("/stat/choice-refuses", test_choice_refuses);
  g_test_add_func ("/stat/sentences", test_sentences);
  return g_test_run ();
}
