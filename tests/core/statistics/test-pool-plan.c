/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-pool-plan.c - how many more sheets are asked for */
#include "core/statistics/fm-pool-plan.h"

#include "core/base/fm-error.h"

#define SEED 1

/* As many pairs for either side. */
static FmPool *
even_pairs (guint n_each)
{
  static const guint item[] = { 0, 1 };
  static const double first[] = { 1, 2 };
  static const double second[] = { 2, 1 };
  FmPool *pool = fm_pool_new (2);

  for (guint i = 0; i < n_each; i++) {
    fm_pool_add (pool, 0, 2 * i, 2, item, first);
    fm_pool_add (pool, 0, 2 * i + 1, 2, item, second);
  }
  return pool;
}

static FmPoolPlan
plan_of (const FmPool *pool, double preferred)
{
  g_autoptr (GError) error = NULL;
  FmPoolPlan plan;

  g_assert_true (fm_pool_plan (pool, FM_POOL_PRIOR_SD, 0, 1, preferred, SEED, NULL, &plan, &error));
  g_assert_no_error (error);
  return plan;
}

/* Two-sided paired preference at 5 % and a chance of 80 %: the exact binomial test needs 49 (from
 * 54 on for good) sheets at 70 : 30 and 30 (35) at 75 : 25 (computed with SciPy, no print). Two
 * pairs that cancel out go before; a simulated share is off by 3 in 100, which is some six sheets
 * here. */
static void
test_pairs_need_as_many_as_the_binomial_test (void)
{
  g_autoptr (FmPool) pool = even_pairs (1);
  const FmPoolPlan at_70 = plan_of (pool, 0.7);
  const FmPoolPlan at_75 = plan_of (pool, 0.75);

  g_test_message ("%u and %u sheets", at_70.n_sheets, at_75.n_sheets);
  g_assert_cmpuint (at_70.n_sheets, >=, 49 - 8);
  g_assert_cmpuint (at_70.n_sheets, <=, 54 + 8);
  g_assert_cmpuint (at_75.n_sheets, >=, 30 - 6);
  g_assert_cmpuint (at_75.n_sheets, <=, 35 + 6);
  g_assert_cmpuint (at_70.n_on_sheet, ==, 2);
  g_assert_cmpfloat (at_70.found, >=, FM_POOL_PLAN_CHANCE);
}

/* Sheets that say nothing must be outweighed; the same seed says the same. */
static void
test_known_sheets_count (void)
{
  g_autoptr (FmPool) few = even_pairs (1);
  g_autoptr (FmPool) many = even_pairs (30);
  const FmPoolPlan after_few = plan_of (few, 0.75);
  const FmPoolPlan after_many = plan_of (many, 0.75);

  g_assert_cmpuint (after_many.n_sheets, >, after_few.n_sheets);
  g_assert_cmpuint (plan_of (few, 0.75).n_sheets, ==, after_few.n_sheets);
}

static void
test_too_small_a_difference (void)
{
  g_autoptr (FmPool) pool = even_pairs (1);
  const FmPoolPlan plan = plan_of (pool, 0.51);

  g_assert_cmpuint (plan.n_sheets, ==, FM_POOL_PLAN_MAX_SHEETS + 1);
  g_assert_cmpfloat (plan.found, <, FM_POOL_PLAN_CHANCE);
}

/* All sheets put 0 before 1: nothing more is needed for that, but much to show the reverse. */
static void
test_already_apart (void)
{
  static const guint item[] = { 0, 1 };
  static const double place[] = { 1, 2 };
  g_autoptr (FmPool) pool = fm_pool_new (2);
  g_autoptr (GError) error = NULL;
  FmPoolPlan back;

  for (guint i = 0; i < 12; i++)
    fm_pool_add (pool, 0, i, 2, item, place);
  g_assert_cmpuint (plan_of (pool, 0.7).n_sheets, ==, 0);
  g_assert_true (fm_pool_plan (pool, FM_POOL_PRIOR_SD, 1, 0, 0.7, SEED, NULL, &back, &error));
  g_assert_cmpuint (back.n_sheets, >, 49);
}

/* The two stand on each new sheet, with as many others as the longest sheet so far. */
static void
test_others_on_the_sheet (void)
{
  static const guint item[] = { 0, 1, 2, 3 };
  static const double place[] = { 1, 2, 3, 4 };
  static const double turned[] = { 4, 3, 2, 1 };
  g_autoptr (FmPool) pool = fm_pool_new (5);

  fm_pool_add (pool, 0, 0, 4, item, place);
  fm_pool_add (pool, 0, 1, 4, item, turned);
  const FmPoolPlan plan = plan_of (pool, 0.8);
  g_assert_cmpuint (plan.n_on_sheet, ==, 4);
  g_assert_cmpuint (plan.n_sheets, >, 5);
}

static gboolean
always (gpointer data)
{
  return TRUE;
}

static void
test_refused_and_stopped (void)
{
  const FmStop stop = { always, NULL };
  g_autoptr (FmPool) pool = even_pairs (1);
  g_autoptr (FmPool) empty = fm_pool_new (2);
  g_autoptr (GError) error = NULL;
  FmPoolPlan plan;

  g_assert_false (fm_pool_plan (pool, FM_POOL_PRIOR_SD, 0, 1, 0.7, SEED, &stop, &plan, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_STOPPED);
  g_clear_error (&error);
  g_assert_false (fm_pool_plan (pool, FM_POOL_PRIOR_SD, 0, 1, 0.5, SEED, NULL, &plan, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_clear_error (&error);
  g_assert_false (fm_pool_plan (pool, FM_POOL_PRIOR_SD, 1, 1, 0.7, SEED, NULL, &plan, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_clear_error (&error);
  g_assert_false (fm_pool_plan (empty, FM_POOL_PRIOR_SD, 0, 1, 0.7, SEED, NULL, &plan, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pool-plan/pairs-need-as-many-as-the-binomial-test",
                   test_pairs_need_as_many_as_the_binomial_test);
  g_test_add_func ("/pool-plan/known-sheets-count", test_known_sheets_count);
  g_test_add_func ("/pool-plan/too-small-a-difference", test_too_small_a_difference);
  g_test_add_func ("/pool-plan/already-apart", test_already_apart);
  g_test_add_func ("/pool-plan/others-on-the-sheet", test_others_on_the_sheet);
  g_test_add_func ("/pool-plan/refused-and-stopped", test_refused_and_stopped);
  return g_test_run ();
}
