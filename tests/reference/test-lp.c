/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-lp.c - linear programs against published cases, glpsol and SciPy
 *
 * Stigler: The Cost of Subsistence, J. Farm Economics 27 (1945), data read in GLPK's stigler.mod;
 *   optimum 39.69 dollars of 1939 a year read (365.25 days), per day computed.
 * Pet food: PuLP case study (the documentation of a Python modelling library), six ingredients;
 *   data read, optimum 0.52 from memory, computed again.
 * Sausage: Keen, Linear Programming with Python, part 4 (2016); data read, optimum from memory,
 *   computed again; only cost and ingredient totals are unique.
 * ASC: textbook exercise of a 1000 lb mixture; read, answer computed.
 */
#include "core/targets/fm-solve.h"

#include "ask-solver.h"

#include <stdlib.h>

#define assert_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon ((a), (b), (tolerance))
#define SEED 20260417
#define N_RANDOM 20

static void
add_row (FmSolver *solver, guint row, const double *coefficients, double min, double max)
{
  fm_solver_set_row (solver, row, coefficients);
  fm_solver_set_row_limits (solver, row, min, max);
}

static GPtrArray *
read_table (const char *name)
{
  g_autofree char *path = g_build_filename (SRCDIR, "tests/reference/data", name, NULL);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  GPtrArray *table = g_ptr_array_new_with_free_func ((GDestroyNotify)g_strfreev);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i]; i++)
    if (lines[i][0] && lines[i][0] != '#')
      g_ptr_array_add (table, g_strsplit (lines[i], ",", -1));
  g_ptr_array_remove_index (table, 0);
  return table;
}

static void
test_stigler (void)
{
  g_autoptr (GPtrArray) foods = read_table ("stigler_1939.csv");
  g_autoptr (GPtrArray) minima = read_table ("stigler_allowance.csv");
  g_assert_cmpuint (foods->len, ==, 77);
  g_assert_cmpuint (minima->len, ==, 9);
  g_autoptr (FmSolver) solver = fm_solver_new (minima->len, foods->len);
  g_autofree double *row = g_new0 (double, foods->len);
  for (guint r = 0; r < minima->len; r++) {
    for (guint j = 0; j < foods->len; j++) {
      GStrv food = g_ptr_array_index (foods, j);
      row[j] = g_ascii_strtod (food[g_strv_length (food) - 9 + r], NULL);
      fm_solver_set_cost (solver, j, 1.0);
    }
    GStrv minimum = g_ptr_array_index (minima, r);
    add_row (solver, r, row, g_ascii_strtod (minimum[1], NULL), NAN);
  }
  g_assert_cmpint (fm_solver_run (solver), ==, FM_SOLVE_OPTIMAL);
  assert_near (fm_solver_objective (solver), 0.1086622782, 1e-10);
  assert_near (fm_solver_objective (solver) * 365.25, 39.69, 0.005);
  /* At the optimum the duals price the minima exactly. */
  double priced = 0.0;
  for (guint r = 0; r < minima->len; r++)
    priced += fm_solver_dual (solver, r) *
              g_ascii_strtod (((GStrv)g_ptr_array_index (minima, r))[1], NULL);
  assert_near (priced, fm_solver_objective (solver), 1e-10);
}

static void
test_pet_food (void)
{
  const double cost[] = { 0.013, 0.008, 0.010, 0.002, 0.005, 0.001 };
  const double rows[][6] = {
    { 0.1, 0.2, 0.15, 0, 0.04, 0 },
    { 0.08, 0.1, 0.11, 0.01, 0.01, 0 },
    { 0.001, 0.005, 0.003, 0.1, 0.15, 0 },
    { 0.002, 0.005, 0.007, 0.002, 0.008, 0 },
    { 1, 1, 1, 1, 1, 1 },
  };
  const double min[] = { 8, 6, NAN, NAN, 100 };
  const double max[] = { NAN, NAN, 2, 0.4, 100 };
  g_autoptr (FmSolver) solver = fm_solver_new (5, 6);
  for (guint j = 0; j < 6; j++)
    fm_solver_set_cost (solver, j, cost[j]);
  for (guint r = 0; r < 5; r++)
    add_row (solver, r, rows[r], min[r], max[r]);
  g_assert_cmpint (fm_solver_run (solver), ==, FM_SOLVE_OPTIMAL);
  assert_near (fm_solver_objective (solver), 0.52, 1e-9);
  assert_near (fm_solver_column (solver, 1), 60.0, 1e-6);
  assert_near (fm_solver_column (solver, 5), 40.0, 1e-6);
}

static void
test_sausage (void)
{
  const double cost[] = { 4.32, 2.46, 1.86, 4.32, 2.46, 1.86 };
  const double rows[][6] = {
    { -0.6, 0.4, 0.4, 0, 0, 0 },
    { 0, 0, 0, -0.4, 0.6, 0.6 },
    { -0.25, -0.25, 0.75, 0, 0, 0 },
    { 0, 0, 0, -0.25, -0.25, 0.75 },
    { 1, 0, 0, 1, 0, 0 },
    { 0, 1, 0, 0, 1, 0 },
    { 0, 0, 1, 0, 0, 1 },
    { -1, 0, 0, -1, 0, 0 },
    { 1, 1, 1, 0, 0, 0 },
    { 0, 0, 0, 1, 1, 1 },
  };
  const double min[] = { NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, 17.5, 25 };
  const double max[] = { 0, 0, 0, 0, 30, 20, 17, -23, 17.5, 25 };
  g_autoptr (FmSolver) solver = fm_solver_new (10, 6);
  for (guint j = 0; j < 6; j++)
    fm_solver_set_cost (solver, j, cost[j]);
  for (guint r = 0; r < 10; r++)
    add_row (solver, r, rows[r], min[r], max[r]);
  g_assert_cmpint (fm_solver_run (solver), ==, FM_SOLVE_OPTIMAL);
  assert_near (fm_solver_objective (solver), 140.955, 1e-9);
  const double totals[] = { 23.0, 8.875, 10.625 };
  for (guint j = 0; j < 3; j++)
    assert_near (fm_solver_column (solver, j) + fm_solver_column (solver, j + 3), totals[j], 1e-6);
}

static void
test_asc (void)
{
  const double cost[] = { 2.5, 1.2, 1.8 };
  const double ones[] = { 1, 1, 1 };
  g_autoptr (FmSolver) solver = fm_solver_new (1, 3);
  for (guint j = 0; j < 3; j++)
    fm_solver_set_cost (solver, j, cost[j]);
  fm_solver_set_column (solver, 0, 600, NAN);
  fm_solver_set_column (solver, 1, 0, 200);
  fm_solver_set_column (solver, 2, 10, 50);
  add_row (solver, 0, ones, 1000, 1000);
  g_assert_cmpint (fm_solver_run (solver), ==, FM_SOLVE_OPTIMAL);
  assert_near (fm_solver_objective (solver), 2205.0, 1e-9);
}

static void
test_status (void)
{
  const double one[] = { 1 };
  g_autoptr (FmSolver) solver = fm_solver_new (1, 1);
  fm_solver_set_cost (solver, 0, -1.0);
  add_row (solver, 0, one, 0, NAN);
  g_assert_cmpint (fm_solver_run (solver), ==, FM_SOLVE_UNBOUNDED);
  fm_solver_set_row_limits (solver, 0, NAN, -1);
  g_assert_cmpint (fm_solver_run (solver), ==, FM_SOLVE_INFEASIBLE);
  fm_solver_set_cost (solver, 0, INFINITY);
  g_assert_cmpint (fm_solver_run (solver), ==, FM_SOLVE_FAILED);
}

static OutsideProgram *
random_program (GRand *rand)
{
  guint m = (guint)g_rand_int_range (rand, 1, 10);
  OutsideProgram *self = outside_program_new ((guint)g_rand_int_range (rand, 3, 20), m + 1);
  for (guint j = 0; j < self->n; j++)
    self->cost[j] = g_rand_double_range (rand, 1.0, 20.0);
  for (guint r = 0; r <= m; r++) {
    for (guint j = 0; j < self->n; j++)
      self->rows[r * self->n + j] = r == m ? 1.0 : g_rand_double_range (rand, 0.0, 50.0);
    self->min[r] = r == m ? 1.0 : g_rand_double_range (rand, 15.0, 30.0);
    self->max[r] = r == m ? 1.0 : NAN;
  }
  return self;
}

static double
solve (const OutsideProgram *program)
{
  g_autoptr (FmSolver) solver = fm_solver_new (program->m, program->n);
  for (guint j = 0; j < program->n; j++)
    fm_solver_set_cost (solver, j, program->cost[j]);
  for (guint r = 0; r < program->m; r++)
    add_row (solver, r, &program->rows[r * program->n], program->min[r], program->max[r]);
  return fm_solver_run (solver) == FM_SOLVE_OPTIMAL ? fm_solver_objective (solver) : NAN;
}

typedef double *(*Ask) (const GPtrArray *programs);

static void
check_random (Ask ask)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  g_autoptr (GPtrArray) programs = g_ptr_array_new_with_free_func (outside_program_free);
  for (int run = 0; run < N_RANDOM; run++)
    g_ptr_array_add (programs, random_program (rand));
  g_autofree double *theirs = ask (programs);
  for (guint i = 0; theirs && i < programs->len; i++) {
    double ours = solve (g_ptr_array_index (programs, i));
    g_assert_cmpint (isnan (ours), ==, isnan (theirs[i]));
    if (!isnan (ours))
      assert_near (ours, theirs[i], 1e-6);
  }
}

static void
test_glpsol (void)
{
  check_random (ask_glpsol);
}

static void
test_scipy (void)
{
  check_random (ask_scipy);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/lp/stigler-1945-read", test_stigler);
  g_test_add_func ("/lp/pet-food-memory", test_pet_food);
  g_test_add_func ("/lp/sausage-keen-2016-memory", test_sausage);
  g_test_add_func ("/lp/asc-1000lb-computed", test_asc);
  g_test_add_func ("/lp/status", test_status);
  g_test_add_func ("/lp/random-glpsol", test_glpsol);
  g_test_add_func ("/lp/random-scipy", test_scipy);
  return g_test_run ();
}
