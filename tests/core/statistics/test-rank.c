/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-rank.c - rank tests: what they promise and what they refuse */
#include "core/statistics/fm-rank.h"

#include <math.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-stat.h"

#define N_DRAWS 3000

/* Draws sheets of tasters who tell nothing apart; returns how often p comes below 0.05. */
static double
false_alarms (guint n, guint k, gboolean ties, gboolean incomplete)
{
  FmRandom random;
  guint hits = 0;
  g_autoptr (FmRankTable) table = fm_rank_table_new (n, k);

  fm_random_init (&random, 1000 * n + k);
  for (guint draw = 0; draw < N_DRAWS; draw++) {
    for (guint t = 0; t < n; t++)
      for (guint s = 0; s < k; s++) {
        const double value = ties ? fm_random_below (&random, 3) : fm_random_unit (&random);
        fm_rank_table_set (table, t, s, incomplete && (s + t) % k == 0 ? NAN : value);
      }
    g_autoptr (FmRankResult) result = fm_rank_test (table, 1, NULL);
    hits += result->p <= 0.05;
  }
  return (double)hits / N_DRAWS;
}

/* Panels of 2 to 8: p is at or below 0.05 no oftener than in 5 %. */
static void
test_no_difference (void)
{
  const double slack = 3 * sqrt (0.05 * 0.95 / N_DRAWS);
  for (guint n = 2; n <= 8; n++)
    for (guint ties = 0; ties < 2; ties++) {
      const double three = false_alarms (n, 3, ties, FALSE);
      g_test_message ("%u tasters, ties %u: %.4f", n, ties, three);
      g_assert_cmpfloat (three, <=, 0.05 + slack);
    }
  g_assert_cmpfloat (false_alarms (4, 4, TRUE, FALSE), <=, 0.05 + slack);
  g_assert_cmpfloat (false_alarms (4, 4, FALSE, TRUE), <=, 0.05 + slack);
}

/* Page's test on the same null, and exact p agrees with its permuted estimate. */
static void
test_page_no_difference (void)
{
  const guint place[] = { 2, 1, 3 };
  const double slack = 3 * sqrt (0.05 * 0.95 / N_DRAWS);
  g_autoptr (FmRankTable) table = fm_rank_table_new (5, 3);
  FmRandom random;
  guint hits = 0;

  fm_random_init (&random, 9);
  for (guint draw = 0; draw < N_DRAWS; draw++) {
    FmPageResult result;
    for (guint i = 0; i < 15; i++)
      fm_rank_table_set (table, i / 3, i % 3, fm_random_below (&random, 4));
    g_assert_true (fm_rank_page (table, place, 1, &result, NULL));
    hits += result.p <= 0.05;
  }
  g_assert_cmpfloat ((double)hits / N_DRAWS, <=, 0.05 + slack);
}

static void
test_permuted_where_too_many (void)
{
  g_autoptr (FmRankTable) table = fm_rank_table_new (6, 10);
  FmRandom random;
  fm_random_init (&random, 3);
  for (guint i = 0; i < 60; i++)
    fm_rank_table_set (table, i / 10, i % 10, fm_random_unit (&random));
  g_autoptr (FmRankResult) a = fm_rank_test (table, 5, NULL);
  g_autoptr (FmRankResult) b = fm_rank_test (table, 5, NULL);

  g_assert_cmpint (a->method, ==, FM_RANK_PERMUTED);
  g_assert_cmpfloat (a->p, ==, b->p);
  g_assert_cmpfloat (a->p_error, >, 0);
}

static void
test_all_tied (void)
{
  g_autoptr (FmRankTable) table = fm_rank_table_new (3, 3);
  for (guint i = 0; i < 9; i++)
    fm_rank_table_set (table, i / 3, i % 3, 2);
  g_autoptr (FmRankResult) result = fm_rank_test (table, 1, NULL);

  g_assert_cmpfloat (result->p, ==, 1);
  g_assert_true (isnan (result->statistic));
  g_assert_true (isnan (result->lsd));
  g_assert_cmpuint (result->n_leaders, ==, 3);
}

static void
test_dropouts (void)
{
  g_autoptr (FmRankTable) table = fm_rank_table_new (4, 3);
  for (guint t = 0; t < 2; t++)
    for (guint s = 0; s < 3; s++)
      fm_rank_table_set (table, t, s, s + 1);
  fm_rank_table_set (table, 2, 0, 1); /* tasted one and left; the last never came */
  g_autoptr (FmRankResult) result = fm_rank_test (table, 1, NULL);

  g_assert_cmpint (result->design, ==, FM_RANK_FRIEDMAN);
  g_assert_cmpuint (result->n_tasters, ==, 2);
  g_assert_cmpuint (result->n_left_out, ==, 2);
  g_assert_cmpfloat_with_epsilon (result->p, 1.0 / 6, 1e-12);
}

static void
test_refuses (void)
{
  const guint twice[] = { 1, 1, 3 };
  FmPageResult page;
  g_autoptr (FmRankTable) empty = fm_rank_table_new (3, 3);
  g_autoptr (FmRankTable) one = fm_rank_table_new (3, 1);
  g_autoptr (FmRankTable) wide = fm_rank_table_new (2, 40);
  g_autoptr (GError) e1 = NULL, e2 = NULL, e3 = NULL, e4 = NULL, e5 = NULL;

  g_assert_null (fm_rank_test (empty, 1, &e1));
  g_assert_error (e1, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
  g_assert_null (fm_rank_test (one, 1, &e2));
  g_assert_error (e2, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
  g_assert_null (fm_rank_test (wide, 1, &e3));
  g_assert_error (e3, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_assert_false (fm_rank_page (empty, NULL, 1, &page, &e4));
  g_assert_error (e4, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE);
  g_assert_false (fm_rank_page (empty, twice, 1, &page, &e5));
  g_assert_error (e5, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/rank/no-difference", test_no_difference);
  g_test_add_func ("/rank/page-no-difference", test_page_no_difference);
  g_test_add_func ("/rank/permuted-where-too-many", test_permuted_where_too_many);
  g_test_add_func ("/rank/all-tied", test_all_tied);
  g_test_add_func ("/rank/dropouts", test_dropouts);
  g_test_add_func ("/rank/refuses", test_refuses);
  return g_test_run ();
}
