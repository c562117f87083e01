/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-stat-r.c - random data read here and by R, where R is installed */
#include <math.h>

#include "core/statistics/fm-anova.h"
#include "core/statistics/fm-rank.h"
#include "core/statistics/fm-stat-choice.h"
#include "core/statistics/fm-stat.h"
#include "ask-r.h"

static void
test_friedman_statistic (void)
{
  FmRandom random;
  fm_random_init (&random, 77);
  g_autoptr (FmRankTable) table = fm_rank_table_new (7, 5);
  for (guint i = 0; i < 35; i++)
    table->value[i] = fm_random_below (&random, 6);
  g_autofree char *values = as_r_vector (table->value, 35);
  g_autofree char *script = g_strdup_printf (
      "m<-matrix(%s,7,byrow=TRUE);cat(format(friedman.test(m)$statistic,digits=15,trim=TRUE))",
      values);
  g_autofree double *wanted = ask_r (script, 1);
  if (wanted == NULL)
    return;
  g_autoptr (FmRankResult) result = fm_rank_test (table, 1, NULL);
  g_assert_cmpfloat_with_epsilon (result->statistic, wanted[0], 1e-9);
}

static void
test_liking_with_gaps (void)
{
  FmRandom random;
  double score[24];
  fm_random_init (&random, 78);
  for (guint i = 0; i < 24; i++)
    score[i] = i % 5 == 2 ? NAN : 1 + fm_random_below (&random, 9);
  g_autofree char *values = as_r_vector (score, 24);
  g_autofree char *script = g_strdup_printf (
      "y<-%s;t<-gl(6,4);s<-gl(4,1,24);m<-lm(y~t+s);a<-anova(m);"
      "p<-predict(m,expand.grid(t=levels(t),s=levels(s)));"
      "cat(format(c(a$`Sum Sq`[2:3],a$`Pr(>F)`[2],colMeans(matrix(p,6))),digits=15,trim=TRUE))",
      values);
  g_autofree double *wanted = ask_r (script, 7);
  if (wanted == NULL)
    return;
  g_autoptr (FmAnovaResult) result = fm_anova_liking (6, 4, score, NULL);
  g_assert_cmpfloat_with_epsilon (result->ss_sample, wanted[0], 1e-8);
  g_assert_cmpfloat_with_epsilon (result->ss_error, wanted[1], 1e-8);
  g_assert_cmpfloat_with_epsilon (result->p_sample, wanted[2], 1e-9);
  for (guint s = 0; s < 4; s++)
    g_assert_cmpfloat_with_epsilon (result->adjusted_mean[s], wanted[3 + s], 1e-8);
}

static void
test_studentized_range (void)
{
  const double q[] = { 0.5, 2, 3.5, 6, 20 };
  const guint k[] = { 2, 3, 8, 12, 4 };
  const double df[] = { 2, 2, 6, 40, 3 };
  g_autofree double *wanted =
      ask_r ("cat(format(c(ptukey(c(.5,2,3.5,6,20),c(2,3,8,12,4),c(2,2,6,40,3),lower=FALSE),"
             "qtukey(.95,c(3,6),c(2,30))),digits=15,trim=TRUE))",
             7);
  if (wanted == NULL)
    return;
  /* SciPy 1.10.1, studentized_range.sf: R is 2e-5 off there */
  g_assert_cmpfloat_with_epsilon (fm_stat_studentized_range_upper (20, 4, 3), 0.0023405891481331764,
                                  1e-9);
  /* two means: q / sqrt 2 is Student's t, in closed form at 2 degrees of freedom; R is 6e-6 off */
  g_assert_cmpfloat_with_epsilon (fm_stat_studentized_range_upper (0.5, 2, 2),
                                  1 - sqrt (0.125) / sqrt (2.125), 1e-9);
  for (guint i = 0; i < 5; i++)
    g_assert_cmpfloat_with_epsilon (fm_stat_studentized_range_upper (q[i], k[i], df[i]), wanted[i],
                                    3e-5);
  g_assert_cmpfloat_with_epsilon (fm_stat_studentized_range_quantile (0.05, 3, 2), wanted[5], 1e-3);
  g_assert_cmpfloat_with_epsilon (fm_stat_studentized_range_quantile (0.05, 6, 30), wanted[6],
                                  1e-4);
}

static void
test_binomial_interval (void)
{
  FmChoiceResult result;
  g_autofree double *wanted = ask_r ("b<-binom.test(11,19,1/3);g<-binom.test(11,19,1/3,'greater');"
                                     "cat(format(c(g$p.value,b$conf.int),digits=15,trim=TRUE))",
                                     3);
  if (wanted == NULL)
    return;
  g_assert_true (fm_choice_test (FM_CHOICE_TRIANGLE, 19, 11, &result, NULL));
  g_assert_cmpfloat_with_epsilon (result.p, wanted[0], 1e-10);
  g_assert_cmpfloat_with_epsilon (result.share_low, wanted[1], 1e-9);
  g_assert_cmpfloat_with_epsilon (result.share_high, wanted[2], 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reference/stat-r/friedman-statistic", test_friedman_statistic);
  g_test_add_func ("/reference/stat-r/liking-with-gaps", test_liking_with_gaps);
  g_test_add_func ("/reference/stat-r/studentized-range", test_studentized_range);
  g_test_add_func ("/reference/stat-r/binomial-interval", test_binomial_interval);
  return g_test_run ();
}
