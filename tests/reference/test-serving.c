/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-serving.c - serving orders against published designs */
#include "core/statistics/fm-serving.h"
#include "test-stat-csv.h"

static void
check_row (char **field, guint n_fields, gpointer data)
{
  const guint k = stat_csv_count (field[0]), row = stat_csv_count (field[1]) - 1;
  g_autoptr (FmServingRows) square = fm_serving_williams (k, NULL);

  for (guint i = 0; i < k; i++)
    g_assert_cmpuint (fm_serving_rows_get (square, row, i) + 1, ==, stat_csv_count (field[2 + i]));
}

/* Williams (1949) as in crossdes 1.1-2: read. */
static void
test_williams (void)
{
  stat_csv_read ("williams_squares.csv", check_row, NULL);
}

static void
check_blocks (char **field, guint n_fields, gpointer data)
{
  const guint t = stat_csv_count (field[1]), k = stat_csv_count (field[2]);
  const guint b = stat_csv_count (field[3]), r = stat_csv_count (field[4]);
  const guint lambda = stat_csv_count (field[5]);
  g_autoptr (FmServingRows) blocks = fm_serving_bib (t, k, NULL);
  g_autoptr (FmServingPlan) plan = fm_serving_plan_new (t, b, k, 7, NULL);

  /* the published ones are whole rounds of the smallest */
  g_assert_cmpuint (b % blocks->n_rows, ==, 0);
  if (g_str_has_prefix (field[0], "minimal") || g_str_has_prefix (field[0], "icecream"))
    g_assert_cmpuint (b, ==, blocks->n_rows);
  g_assert_true (plan->is_balanced);
  g_assert_cmpuint (plan->served_min, ==, r);
  g_assert_cmpuint (plan->served_max, ==, r);
  g_assert_cmpuint (plan->together_min, ==, lambda);
  g_assert_cmpuint (plan->together_max, ==, lambda);
}

/* bib_parameters.csv: taste, appletaste, ice cream, cereal read; minimal memory. */
static void
test_blocks (void)
{
  stat_csv_read ("bib_parameters.csv", check_blocks, NULL);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reference/serving/williams-1949", test_williams);
  g_test_add_func ("/reference/serving/balanced-incomplete-blocks", test_blocks);
  return g_test_run ();
}
