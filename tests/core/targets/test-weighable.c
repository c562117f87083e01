/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-weighable.c - whole steps of a scale, against every blend that the scale can weigh */
#include "core/targets/fm-weighable.h"

#include <math.h>

#define SEED 20260424
#define N_RANDOM 400
#define N_MASSES 3
#define TOTAL_STEPS 40
#define N_THREADS 4

typedef struct {
  double ideal_g[N_MASSES];
  double min_g[N_MASSES];
  double max_g[N_MASSES];
  double rows[2 * N_MASSES];
  double row_min[2];
  double row_max[2];
  double cost[N_MASSES];
} Numbers;

static FmWeighable
weighable_of (const Numbers *numbers, gboolean by_cost)
{
  return (FmWeighable){
    .n = N_MASSES,
    .n_rows = 2,
    .ideal_g = numbers->ideal_g,
    .min_g = numbers->min_g,
    .max_g = numbers->max_g,
    .rows = numbers->rows,
    .row_min = numbers->row_min,
    .row_max = numbers->row_max,
    .cost = by_cost ? numbers->cost : NULL,
    .step_g = 5.0,
  };
}

/* A band of fat and one of something else around shares that meet both. */
static void
draw (Numbers *numbers, GRand *rand)
{
  double total_g = TOTAL_STEPS * 5.0;
  double part[N_MASSES];
  double sum = 0.0;
  for (int i = 0; i < N_MASSES; i++) {
    part[i] = g_rand_double_range (rand, 0.1, 1.0);
    sum += part[i];
    numbers->cost[i] = g_rand_double_range (rand, 2.0, 15.0);
    numbers->min_g[i] = 0.0;
    numbers->max_g[i] = total_g;
  }
  for (int i = 0; i < N_MASSES; i++)
    numbers->ideal_g[i] = part[i] / sum * total_g;
  for (int r = 0; r < 2; r++) {
    double value = 0.0;
    for (int i = 0; i < N_MASSES; i++) {
      double *coefficient = &numbers->rows[r * N_MASSES + i];
      *coefficient = g_rand_double_range (rand, 0.0, r ? 900.0 : 60.0);
      value += *coefficient * numbers->ideal_g[i];
    }
    numbers->row_min[r] = value * g_rand_double_range (rand, 0.97, 1.0);
    numbers->row_max[r] = value * g_rand_double_range (rand, 1.0, 1.03);
  }
}

static gboolean
meets (const FmWeighable *given, const double *mass_g)
{
  for (guint r = 0; r < given->n_rows; r++) {
    double value = 0.0;
    for (guint i = 0; i < given->n; i++)
      value += given->rows[r * given->n + i] * mass_g[i];
    if (value < given->row_min[r] - 1e-7 || value > given->row_max[r] + 1e-7)
      return FALSE;
  }
  return TRUE;
}

static double
objective (const FmWeighable *given, const double *mass_g)
{
  double sum = 0.0;
  for (guint i = 0; i < given->n; i++)
    sum += given->cost ? given->cost[i] * mass_g[i] : fabs (mass_g[i] - given->ideal_g[i]);
  return sum;
}

/* The best of all blends of three on the scale; infinite when none meets the limits. */
static double
best_of_all (const FmWeighable *given)
{
  double best = INFINITY;
  for (int a = 0; a <= TOTAL_STEPS; a++) {
    for (int b = 0; a + b <= TOTAL_STEPS; b++) {
      const double mass_g[N_MASSES] = { a * 5.0, b * 5.0, (TOTAL_STEPS - a - b) * 5.0 };
      if (meets (given, mass_g))
        best = MIN (best, objective (given, mass_g));
    }
  }
  return best;
}

/* What is found holds, what is called impossible is, and few answers are not the best there is. */
static void
against_all (gboolean by_cost, double *share_of_best, double *worst)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  int n_possible = 0;
  int n_best = 0;
  *worst = 0.0;
  for (int run = 0; run < N_RANDOM; run++) {
    Numbers numbers;
    double mass_g[N_MASSES];
    draw (&numbers, rand);
    FmWeighable given = weighable_of (&numbers, by_cost);
    double best = best_of_all (&given);
    FmWeighableStatus status = fm_weighable_round (&given, mass_g);
    g_assert_true (status == (isinf (best) ? FM_WEIGHABLE_IMPOSSIBLE : FM_WEIGHABLE_OK));
    if (isinf (best))
      continue;
    g_assert_true (meets (&given, mass_g));
    double missed = objective (&given, mass_g) - best;
    g_assert_cmpfloat (missed, >, -1e-6);
    n_possible++;
    n_best += missed < 1e-6;
    *worst = MAX (*worst, missed / best);
  }
  *share_of_best = (double)n_best / n_possible;
  g_test_message ("%d possible, %d of them the best, worst miss %.4f", n_possible, n_best, *worst);
}

static void
test_cost_against_all (void)
{
  double share_of_best = 0.0;
  double worst = 0.0;
  against_all (TRUE, &share_of_best, &worst);
  g_assert_cmpfloat (share_of_best, >, 0.9);
}

static void
test_nearest_against_all (void)
{
  double share_of_best = 0.0;
  double worst = 0.0;
  against_all (FALSE, &share_of_best, &worst);
  g_assert_cmpfloat (share_of_best, >, 0.9);
}

/* Two masses, one limit that does not bind: the cheaper one takes what it may. */
static void
test_cost_decides (void)
{
  const double ideal_g[] = { 502.5, 497.5 };
  const double min_g[] = { 0.0, 0.0 };
  const double max_g[] = { 1000.0, 510.0 };
  const double cost[] = { 9.0, 5.0 };
  FmWeighable given = { .n = 2, .ideal_g = ideal_g, .min_g = min_g, .max_g = max_g, .step_g = 5.0 };
  double mass_g[2];
  given.cost = cost;
  g_assert_cmpint (fm_weighable_round (&given, mass_g), ==, FM_WEIGHABLE_OK);
  g_assert_cmpfloat_with_epsilon (mass_g[1], 510.0, 1e-9);
  given.cost = NULL;
  g_assert_cmpint (fm_weighable_round (&given, mass_g), ==, FM_WEIGHABLE_OK);
  g_assert_cmpfloat (mass_g[1], <=, 500.0);
}

/* Many masses under many narrow limits: the search ends by its count, without having ended. */
#define N_HARD 30
#define N_HARD_ROWS 4

static gpointer
solve_hard_one (gpointer data)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (GPOINTER_TO_UINT (data));
  double rows[N_HARD_ROWS * N_HARD];
  double row_min[N_HARD_ROWS];
  double row_max[N_HARD_ROWS];
  double ideal_g[N_HARD];
  double min_g[N_HARD] = { 0 };
  double max_g[N_HARD];
  double *mass_g = g_new0 (double, N_HARD + 1);
  for (int i = 0; i < N_HARD; i++) {
    ideal_g[i] = g_rand_int_range (rand, 10, 50) + 0.5;
    max_g[i] = 60.0;
  }
  for (int r = 0; r < N_HARD_ROWS; r++) {
    double value = 0.0;
    for (int i = 0; i < N_HARD; i++) {
      rows[r * N_HARD + i] = g_rand_double_range (rand, 0.0, 100.0);
      value += rows[r * N_HARD + i] * ideal_g[i];
    }
    row_min[r] = value - 2e-3;
    row_max[r] = value + 2e-3;
  }
  FmWeighable given = { .n = N_HARD,
                        .n_rows = N_HARD_ROWS,
                        .ideal_g = ideal_g,
                        .min_g = min_g,
                        .max_g = max_g,
                        .rows = rows,
                        .row_min = row_min,
                        .row_max = row_max,
                        .step_g = 1.0 };
  mass_g[N_HARD] = fm_weighable_round (&given, mass_g);
  return mass_g;
}

/* A machine that is busy with the same four times over gives the answer of an idle one. */
static void
test_busy_machine (void)
{
  GThread *threads[N_THREADS];
  g_autofree double *alone = solve_hard_one (GUINT_TO_POINTER (1));
  for (int t = 0; t < N_THREADS; t++)
    threads[t] = g_thread_new ("busy", solve_hard_one, GUINT_TO_POINTER (1));
  for (int t = 0; t < N_THREADS; t++) {
    g_autofree double *busy = g_thread_join (threads[t]);
    g_assert_cmpmem (busy, (N_HARD + 1) * sizeof *busy, alone, (N_HARD + 1) * sizeof *alone);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/weighable/cost-against-all", test_cost_against_all);
  g_test_add_func ("/weighable/nearest-against-all", test_nearest_against_all);
  g_test_add_func ("/weighable/cost-decides", test_cost_decides);
  g_test_add_func ("/weighable/busy-machine", test_busy_machine);
  return g_test_run ();
}
