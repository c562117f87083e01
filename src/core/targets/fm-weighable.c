/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-weighable.c - masses that a scale can weigh, with the targets still met */
#include "core/targets/fm-weighable.h"

#include "core/targets/fm-solve.h"

#include <math.h>
#include <string.h>

/* Relative to a step: a mass this close to a whole step is on it. */
#define ON_STEP 1e-6
/* Moves of one step between two masses; far more than a repair takes. */
#define MAX_MOVES 500
/* Nodes of the whole-number program: some tenths of a second for any number of masses. */
#define MAX_NODES 2000
#define NODES_X_MASSES 60000

typedef struct {
  const FmWeighable *given;
  double *least; /* n, masses on the scale */
  double *most;
  double *value; /* n_rows, of the present masses */
  double *mass_g;
} Search;

/* What a blend is worth: limits first, then the objective. Smaller is better. */
typedef struct {
  double violation;
  double objective;
} Worth;

static gboolean
is_fixed (const FmWeighable *given, guint i)
{
  return given->fixed && given->fixed[i];
}

static double
steps_up (double mass_g, double step_g)
{
  return ceil (mass_g / step_g - ON_STEP) * step_g;
}

static double
steps_down (double mass_g, double step_g)
{
  return floor (mass_g / step_g + ON_STEP) * step_g;
}

static void
search_init (Search *self, const FmWeighable *given, double *mass_g)
{
  *self = (Search){ .given = given, .mass_g = mass_g };
  self->least = g_new (double, given->n);
  self->most = g_new (double, given->n);
  self->value = g_new0 (double, given->n_rows);
  for (guint i = 0; i < given->n; i++) {
    gboolean fixed = is_fixed (given, i);
    self->least[i] = fixed ? given->ideal_g[i] : steps_up (given->min_g[i], given->step_g);
    self->most[i] = fixed ? given->ideal_g[i] : steps_down (given->max_g[i], given->step_g);
  }
}

static void
search_clear (Search *self)
{
  g_free (self->least);
  g_free (self->most);
  g_free (self->value);
}

static double
free_total_g (const FmWeighable *given)
{
  double total_g = 0.0;
  for (guint i = 0; i < given->n; i++)
    total_g += is_fixed (given, i) ? 0.0 : given->ideal_g[i];
  return round (total_g / given->step_g) * given->step_g;
}

static gboolean
may_move (const Search *self, guint i, double by_g)
{
  double mass_g = self->mass_g[i] + by_g;
  double slack_g = ON_STEP * self->given->step_g;
  return !is_fixed (self->given, i) && mass_g >= self->least[i] - slack_g &&
         mass_g <= self->most[i] + slack_g;
}

/* Rounds down, then gives the steps that are left to the largest remainders. */
static gboolean
round_by_remainder (Search *self)
{
  const FmWeighable *given = self->given;
  double left_g = free_total_g (given);
  for (guint i = 0; i < given->n; i++) {
    double down_g = steps_down (given->ideal_g[i], given->step_g);
    if (self->least[i] > self->most[i] + ON_STEP * given->step_g)
      return FALSE;
    self->mass_g[i] = CLAMP (down_g, self->least[i], self->most[i]);
    left_g -= is_fixed (given, i) ? 0.0 : self->mass_g[i];
  }
  while (fabs (left_g) > 0.5 * given->step_g) {
    double by_g = copysign (given->step_g, left_g);
    int best = -1;
    double best_remainder = -G_MAXDOUBLE;
    for (guint i = 0; i < given->n; i++) {
      double remainder = (given->ideal_g[i] - self->mass_g[i]) * (by_g > 0.0 ? 1.0 : -1.0);
      if (may_move (self, i, by_g) && remainder > best_remainder) {
        best = (int)i;
        best_remainder = remainder;
      }
    }
    if (best < 0)
      return FALSE;
    self->mass_g[best] += by_g;
    left_g -= by_g;
  }
  return TRUE;
}

static double
row_violation (const FmWeighable *given, guint row, double value)
{
  double below = given->row_min[row] - value;
  double above = value - given->row_max[row];
  return MAX (0.0, fmax (isnan (below) ? 0.0 : below, isnan (above) ? 0.0 : above));
}

static double
mass_objective (const FmWeighable *given, guint i, double mass_g)
{
  return given->cost ? given->cost[i] * mass_g : fabs (mass_g - given->ideal_g[i]);
}

static void
evaluate_rows (Search *self)
{
  const FmWeighable *given = self->given;
  for (guint r = 0; r < given->n_rows; r++) {
    self->value[r] = 0.0;
    for (guint i = 0; i < given->n; i++)
      self->value[r] += given->rows[r * given->n + i] * self->mass_g[i];
  }
}

/* Rows count in units of their own largest coefficient, so that mg do not outweigh %. */
static double
row_weight (const FmWeighable *given, guint row)
{
  double largest = 0.0;
  for (guint i = 0; i < given->n; i++)
    largest = MAX (largest, fabs (given->rows[row * given->n + i]));
  return largest > 0.0 ? 1.0 / (largest * given->step_g) : 0.0;
}

static double
violation_after (const Search *self, const double *weight, guint from, guint to, double by_g)
{
  const FmWeighable *given = self->given;
  double sum = 0.0;
  for (guint r = 0; r < given->n_rows; r++) {
    const double *row = &given->rows[r * given->n];
    double value = self->value[r] + (row[to] - row[from]) * by_g;
    sum += weight[r] * row_violation (given, r, value);
  }
  return sum;
}

static gboolean
is_better (Worth a, Worth b)
{
  if (fabs (a.violation - b.violation) > 1e-12)
    return a.violation < b.violation;
  return a.objective < b.objective - 1e-9;
}

static double
objective_change (const Search *self, guint from, guint to, double by_g)
{
  const FmWeighable *given = self->given;
  const double *m = self->mass_g;
  return mass_objective (given, from, m[from] - by_g) - mass_objective (given, from, m[from]) +
         mass_objective (given, to, m[to] + by_g) - mass_objective (given, to, m[to]);
}

/* One best move of a step from one mass to another; FALSE when none makes it better. */
static gboolean
improve (Search *self, const double *weight)
{
  const FmWeighable *given = self->given;
  double step_g = given->step_g;
  Worth best = { violation_after (self, weight, 0, 0, 0.0), 0.0 };
  guint best_from = 0;
  guint best_to = 0;
  for (guint from = 0; from < given->n; from++) {
    if (!may_move (self, from, -step_g))
      continue;
    for (guint to = 0; to < given->n; to++) {
      if (to == from || !may_move (self, to, step_g))
        continue;
      Worth worth = { violation_after (self, weight, from, to, step_g),
                      objective_change (self, from, to, step_g) };
      if (!is_better (worth, best))
        continue;
      best = worth;
      best_from = from;
      best_to = to;
    }
  }
  if (best_from == best_to)
    return FALSE;
  self->mass_g[best_from] -= step_g;
  self->mass_g[best_to] += step_g;
  return TRUE;
}

static gboolean
repair (Search *self)
{
  const FmWeighable *given = self->given;
  g_autofree double *weight = g_new (double, given->n_rows);
  for (guint r = 0; r < given->n_rows; r++)
    weight[r] = row_weight (given, r);
  evaluate_rows (self);
  for (int move = 0; move < MAX_MOVES && improve (self, weight); move++)
    evaluate_rows (self);
  for (guint r = 0; r < given->n_rows; r++)
    if (row_violation (given, r, self->value[r]) > 0.0)
      return FALSE;
  return TRUE;
}

/* Columns: whole steps, then the distance from the ideal in grams. */
static FmSolver *
whole_program (const Search *self)
{
  const FmWeighable *given = self->given;
  guint n = given->n;
  guint first_near = 1 + given->n_rows;
  FmSolver *solver = fm_solver_new (first_near + 2 * n, 2 * n);
  g_autofree double *row = g_new0 (double, 2 * n);
  double fixed_g = 0.0;
  for (guint i = 0; i < n; i++) {
    gboolean fixed = is_fixed (given, i);
    double unit_g = fixed ? 1.0 : given->step_g;
    row[i] = fixed ? 0.0 : given->step_g;
    fixed_g += fixed ? given->ideal_g[i] : 0.0;
    fm_solver_set_column (solver, i, round (self->least[i] / unit_g * 1e6) / 1e6,
                          round (self->most[i] / unit_g * 1e6) / 1e6);
    fm_solver_set_cost (solver, i, given->cost ? given->cost[i] * unit_g : 0.0);
    fm_solver_set_cost (solver, n + i, given->cost ? 0.0 : 1.0);
    if (!fixed)
      fm_solver_set_whole (solver, i);
  }
  fm_solver_set_row (solver, 0, row);
  fm_solver_set_row_limits (solver, 0, free_total_g (given), free_total_g (given));
  for (guint r = 0; r < given->n_rows; r++) {
    for (guint i = 0; i < n; i++)
      row[i] = given->rows[r * n + i] * (is_fixed (given, i) ? 1.0 : given->step_g);
    fm_solver_set_row (solver, 1 + r, row);
    fm_solver_set_row_limits (solver, 1 + r, given->row_min[r], given->row_max[r]);
  }
  for (guint i = 0; !given->cost && i < 2 * n; i++) {
    double sign = i % 2 ? 1.0 : -1.0;
    g_autofree double *near = g_new0 (double, 2 * n);
    near[i / 2] = sign * (is_fixed (given, i / 2) ? 1.0 : given->step_g);
    near[n + i / 2] = 1.0;
    fm_solver_set_row (solver, first_near + i, near);
    fm_solver_set_row_limits (solver, first_near + i, sign * given->ideal_g[i / 2], NAN);
  }
  return solver;
}

static double
total_objective (const FmWeighable *given, const double *mass_g)
{
  double sum = 0.0;
  for (guint i = 0; i < given->n; i++)
    sum += is_fixed (given, i) ? 0.0 : mass_objective (given, i, mass_g[i]);
  return sum;
}

/* Moves of single steps end at a blend that no one move makes better: the program looks further. */
static FmWeighableStatus
ask_whole_program (Search *self, gboolean found)
{
  const FmWeighable *given = self->given;
  g_autoptr (FmSolver) solver = whole_program (self);
  g_autofree double *before_g = g_memdup2 (self->mass_g, given->n * sizeof *before_g);
  int max_nodes = MIN (MAX_NODES, NODES_X_MASSES / (int)given->n);
  FmSolveStatus status = fm_solver_run_whole (solver, max_nodes);
  if (status != FM_SOLVE_OPTIMAL && found)
    return FM_WEIGHABLE_OK;
  if (status == FM_SOLVE_INFEASIBLE)
    return FM_WEIGHABLE_IMPOSSIBLE;
  if (status != FM_SOLVE_OPTIMAL)
    return FM_WEIGHABLE_NOT_FOUND;
  for (guint i = 0; i < given->n; i++)
    if (!is_fixed (given, i))
      self->mass_g[i] = round (fm_solver_column (solver, i)) * given->step_g;
  /* The library's tolerance is wider than ours, so its answer is looked at again. */
  gboolean holds = repair (self);
  if (found &&
      (!holds || total_objective (given, before_g) <= total_objective (given, self->mass_g)))
    memcpy (self->mass_g, before_g, given->n * sizeof *before_g);
  return found || holds ? FM_WEIGHABLE_OK : FM_WEIGHABLE_NOT_FOUND;
}

FmWeighableStatus
fm_weighable_round (const FmWeighable *self, double *mass_g)
{
  Search search;
  search_init (&search, self, mass_g);
  FmWeighableStatus status = FM_WEIGHABLE_IMPOSSIBLE;
  if (round_by_remainder (&search))
    status = ask_whole_program (&search, repair (&search));
  search_clear (&search);
  return status;
}
