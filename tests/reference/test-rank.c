/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-rank.c - rank tests against published and independently computed cases
 *
 * Marks: read = seen in the named document; memory = known, not seen; computed = with another
 * program.
 */
#include "core/statistics/fm-rank.h"
#include "test-stat-csv.h"

/* Quantiles of GSL, normal and t, are good to some seven digits. */
#define QUANTILE 1e-7

static void
check_tail (char **field, guint n_fields, gpointer data)
{
  const guint k = stat_csv_count (field[0]), n = stat_csv_count (field[1]);
  const double s = stat_csv_number (field[2]) * n * k * (k + 1) / 12;
  /* the table prints the statistic to six digits; sums of squares step by at least 1 / 2 */
  const double p = fm_rank_friedman_upper (k, n, round (2 * s) / 2);

  g_assert_cmpfloat_with_epsilon (p * stat_csv_number (field[5]), stat_csv_number (field[4]), 0.01);
}

/* friedman_exact_tail.csv: computed in whole numbers, 499 points agree with SuppDists. */
static void
test_friedman_tail (void)
{
  stat_csv_read ("friedman_exact_tail.csv", check_tail, NULL);
}

static void
check_critical (char **field, guint n_fields, gpointer data)
{
  const guint k = stat_csv_count (field[0]), n = stat_csv_count (field[1]);
  const double published[] = { stat_csv_number (field[11]), stat_csv_number (field[12]) };
  const double alpha[] = { 0.05, 0.01 };

  g_assert_cmpfloat_with_epsilon (fm_rank_smallest_p (k, n) / stat_csv_number (field[10]), 1,
                                  5e-4); /* printed to four digits */
  for (guint i = 0; i < 2; i++) {
    const double s = published[i] * n * k * (k + 1) / 12;
    if (isnan (published[i]))
      continue;
    /* half a unit of the last printed digit */
    g_assert_cmpfloat (fm_rank_friedman_upper (k, n, s - 0.05 * n * k * (k + 1) / 12), <=,
                       alpha[i] + 1e-9);
  }
}

/* friedman_exact_critical.csv: "Critical values for the Friedman Test", read. */
static void
test_friedman_critical (void)
{
  stat_csv_read ("friedman_exact_critical.csv", check_critical, NULL);
}

static void
check_page (char **field, guint n_fields, gpointer data)
{
  const guint k = stat_csv_count (field[0]), n = stat_csv_count (field[1]);
  const double alpha[] = { 0.05, 0.01, 0.001 };

  for (guint i = 0; i < 3; i++) {
    const double l = stat_csv_number (field[2 + 2 * i]);
    if (isnan (l))
      continue;
    g_assert_cmpfloat_with_epsilon (fm_rank_page_upper (k, n, l),
                                    stat_csv_number (field[3 + 2 * i]),
                                    0.5000001e-6); /* printed to six places */
    g_assert_cmpfloat (fm_rank_page_upper (k, n, l - 1), >, alpha[i]);
  }
}

/* page_exact_critical.csv: computed; Page (1963), memory, the same in all 14 rows. */
static void
test_page_critical (void)
{
  stat_csv_read ("page_exact_critical.csv", check_page, NULL);
}

typedef struct {
  const char *name;
  FmRankTable *table;
} Case;

static void
add_value (char **field, guint n_fields, gpointer data)
{
  Case *wanted = data;
  if (g_strcmp0 (field[0], wanted->name) == 0)
    fm_rank_table_set (wanted->table, stat_csv_count (field[1]) - 1, stat_csv_count (field[2]) - 1,
                       stat_csv_number (field[3]));
}

static FmRankTable *
read_case (const char *name, guint n, guint k)
{
  Case wanted = { name, fm_rank_table_new (n, k) };
  stat_csv_read ("rank_data.csv", add_value, &wanted);
  return wanted.table;
}

static void
check_sums (const FmRankResult *result, const double *sums)
{
  for (guint s = 0; s < result->n_samples; s++)
    g_assert_cmpfloat (result->rank_sum[s], ==, sums[s]);
}

/* Hollander and Wolfe (1973) p. 140: statistic 11.143, read. Exact p by all row orders and mean
 * Spearman: computed with SciPy. */
static void
test_first_base (void)
{
  const double sums[] = { 53, 47, 32 };
  g_autoptr (FmRankTable) table = read_case ("hw_first_base", 22, 3);
  g_autoptr (FmRankResult) result = fm_rank_test (table, 1, NULL);

  check_sums (result, sums);
  g_assert_cmpint (result->method, ==, FM_RANK_EXACT);
  g_assert_cmpfloat_with_epsilon (result->statistic, 11.142857142857142, 1e-12);
  g_assert_cmpfloat_with_epsilon (result->p, 0.0031498272816088088, 1e-12);
  g_assert_cmpfloat_with_epsilon (result->kendall_w, 0.2532467532467532, 1e-12);
  g_assert_cmpfloat_with_epsilon (result->mean_spearman, 0.2303584974939482, 1e-12);
  g_assert_cmpfloat_with_epsilon (result->lsd, 13.000930281709516, QUANTILE * 13);
  g_assert_cmpuint (result->leader, ==, 2);
  g_assert_cmpfloat_with_epsilon (fm_rank_lsd_conover (table, 0.05), 11.56787645233422,
                                  QUANTILE * 13);
}

/* Conover (1999), grass: statistic 8.1, LSD 11.48, read (agricolae vignette). */
static void
test_grass (void)
{
  const double sums[] = { 38, 23.5, 24.5, 34 };
  g_autoptr (FmRankTable) table = read_case ("conover_grass", 12, 4);
  g_autoptr (FmRankResult) result = fm_rank_test (table, 1, NULL);

  check_sums (result, sums);
  g_assert_true (result->has_ties);
  g_assert_cmpfloat_with_epsilon (result->statistic, 8.097345132743364, 1e-12);
  g_assert_cmpfloat_with_epsilon (result->mean_spearman, 0.15973349559698577, 1e-12);
  g_assert_cmpfloat_with_epsilon (fm_rank_lsd_conover (table, 0.05), 11.48167759470489,
                                  QUANTILE * 13);
  g_assert_cmpfloat_with_epsilon (fm_rank_lsd (4, 12, 0.05), 12.395900649000184, QUANTILE * 13);
  /* computed by counting all row orders in whole numbers, in Python; drawn orders may stray by five
   * of their standard errors */
  g_assert_cmpfloat_with_epsilon (result->p, 1462902265204992.0 / 36520347436056576.0,
                                  5 * result->p_error + 1e-12);
}

/* Three judges, eight essays, read (teaching text): W and mean Spearman computed, no ties. */
static void
test_essays (void)
{
  const double sums[] = { 23, 17, 15, 4, 8, 6, 13, 22 };
  g_autoptr (FmRankTable) table = read_case ("essays", 3, 8);
  g_autoptr (FmRankResult) result = fm_rank_test (table, 1, NULL);

  check_sums (result, sums);
  g_assert_cmpfloat_with_epsilon (result->statistic, 19.666666666666668, 1e-12);
  g_assert_cmpfloat_with_epsilon (result->kendall_w, 0.9365079365079365, 1e-12);
  g_assert_cmpfloat_with_epsilon (result->mean_spearman, 0.9047619047619048, 1e-12);
  g_assert_cmpfloat (result->p, <, 0.001);
}

/* The seminar of SciPy's documentation: L 133.5, p .00181912, read. That p is of L >= 133 without
 * regard to ties: the whole part is looked up. */
static void
test_page_seminar (void)
{
  const guint place[] = { 1, 2, 3 };
  FmPageResult result;
  g_autoptr (FmRankTable) table = read_case ("scipy_page_seminar", 10, 3);

  g_assert_true (fm_rank_page (table, place, 1, &result, NULL));
  g_assert_cmpfloat (result.l, ==, 133.5);
  g_assert_cmpfloat_with_epsilon (fm_rank_page_upper (3, 10, 133), 0.0018191161948127822, 1e-12);
  /* with the tasters' own ties fewer orders are possible; the same size all the same */
  g_assert_cmpfloat (result.p, <, 0.003);
}

/* Conover's ice cream layout (7 flavours, 7 people, 3 each; read): T1 of Durbin's test as computed
 * by 12 (t-1) / (r t (k-1) (k+1)) sum R^2 - 3 r (t-1) (k+1) / (k-1), on ranks made here. */
static void
test_durbin (void)
{
  const guint block[7][3] = { { 0, 1, 3 }, { 1, 2, 4 }, { 2, 3, 5 }, { 3, 4, 6 },
                              { 4, 5, 0 }, { 5, 6, 1 }, { 6, 0, 2 } };
  g_autoptr (FmRankTable) table = fm_rank_table_new (7, 7);
  double squares = 0;

  for (guint t = 0; t < 7; t++)
    for (guint i = 0; i < 3; i++)
      fm_rank_table_set (table, t, block[t][i], block[t][i]);
  g_autoptr (FmRankResult) result = fm_rank_test (table, 1, NULL);
  for (guint s = 0; s < 7; s++)
    squares += result->rank_sum[s] * result->rank_sum[s];
  g_assert_cmpint (result->design, ==, FM_RANK_INCOMPLETE);
  g_assert_cmpint (result->method, ==, FM_RANK_EXACT);
  g_assert_cmpfloat_with_epsilon (result->statistic,
                                  12.0 * 6 / (3 * 7 * 2 * 4) * squares - 3.0 * 3 * 6 * 4 / 2, 1e-9);
  /* the variance of a difference of two sums of a balanced incomplete design, (k+1) lambda t / 6
   * (follows from the null variance), with every pair once on a sheet */
  g_assert_cmpfloat_with_epsilon (result->lsd, 1.959963984540054 * sqrt (4.0 * 1 * 7 / 6),
                                  QUANTILE * 4);
  /* 7! strict orders of all samples give this spread, of 6^7 */
  g_assert_cmpfloat_with_epsilon (result->p, 5040.0 / 279936, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reference/rank/friedman-exact-tail-computed", test_friedman_tail);
  g_test_add_func ("/reference/rank/friedman-critical-table", test_friedman_critical);
  g_test_add_func ("/reference/rank/page-1963", test_page_critical);
  g_test_add_func ("/reference/rank/hollander-wolfe-1973-first-base", test_first_base);
  g_test_add_func ("/reference/rank/conover-1999-grass", test_grass);
  g_test_add_func ("/reference/rank/essays", test_essays);
  g_test_add_func ("/reference/rank/scipy-page-seminar", test_page_seminar);
  g_test_add_func ("/reference/rank/conover-ice-cream-layout", test_durbin);
  return g_test_run ();
}
