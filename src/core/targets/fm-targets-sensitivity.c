/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-sensitivity.c - what the cost does when a share or a limit moves */
#include "fm-targets-private.h"

#include <math.h>

/* One % point, the step of a share. */
#define POINT 0.01
/* The step of a limit: part of itself, but no more than this much of its unit. */
#define LIMIT_STEP 0.01
#define LIMIT_STEP_PART 1e-3

static const FmTargetLimit *
limit_at (const FmTargetsModel *self, guint index)
{
  return &g_array_index (self->limits, FmTargetLimit, index);
}

/* Cost of the blend that the aim leads to with things as they are now; NaN when there is none. */
static double
solved_cost (FmTargetsModel *self)
{
  g_autofree double *share = g_new (double, self->n);
  if (fm_solver_run (self->solver) != FM_SOLVE_OPTIMAL)
    return NAN;
  fm_targets_model_shares (self, share);
  return fm_targets_model_cost (self, share);
}

/* Dual of a limit, as the change of cost per unit of the target: for a ratio the row is
 * coef - limit x over <= 0, so a unit of the limit moves it by what the ratio is over. */
static void
fill_cost_per_unit_by_duals (FmTargetsModel *self, FmTargetsResult *result, const double *share)
{
  for (guint r = 0; r < self->n_rows; r++)
    result->cost_per_unit[r] = self->active[r] ? 0.0 : NAN;
  for (guint k = 0; k < self->limits->len; k++) {
    const FmTargetLimit *limit = limit_at (self, k);
    double per_unit = 1.0;
    if (fm_targets_model_is_ratio (self, limit->row)) {
      per_unit = 0.0;
      for (guint i = 0; i < self->n; i++)
        per_unit += self->over[limit->row * self->n + i] * share[i];
    }
    result->cost_per_unit[limit->row] += fm_solver_dual (self->solver, 1 + k) * per_unit;
  }
}

/* Moves both ends of the band of @row. */
static void
move_band (FmTargetsModel *self, guint row, double by)
{
  for (guint k = 0; k < self->limits->len; k++)
    if (limit_at (self, k)->row == row)
      fm_targets_model_move_limit (self, k, limit_at (self, k)->limit + by);
}

static double
limit_step (const FmTargetsModel *self, guint row)
{
  double step = LIMIT_STEP;
  for (guint k = 0; k < self->limits->len; k++)
    if (limit_at (self, k)->row == row && limit_at (self, k)->limit > 0.0)
      step = MIN (step, LIMIT_STEP_PART * limit_at (self, k)->limit);
  return step;
}

/* The duals of a nearest blend are distances, so its cost is found by a small step: upward, else,
 * where that is not possible, downward. */
static void
fill_cost_per_unit_by_steps (FmTargetsModel *self, FmTargetsResult *result, double cost)
{
  for (guint r = 0; r < self->n_rows; r++) {
    double step = limit_step (self, r);
    for (int sign = 1; self->active[r] && isnan (result->cost_per_unit[r]) && sign >= -1;
         sign -= 2) {
      move_band (self, r, sign * step);
      result->cost_per_unit[r] = (solved_cost (self) - cost) / (sign * step);
    }
    move_band (self, r, 0.0);
  }
}

/* Forces one more % point of each and solves again: exact, also for what is in the blend. */
static void
fill_cost_per_share (FmTargetsModel *self,
                     FmTargetsResult *result,
                     const double *share,
                     double cost)
{
  for (guint i = 0; i < self->n; i++) {
    double more = share[i] + POINT;
    if (!self->usable[i] || more > self->max[i])
      continue;
    fm_solver_set_column (self->solver, i, more, self->max[i]);
    result->can_take_more[i] = fm_solver_run (self->solver) == FM_SOLVE_OPTIMAL;
    if (result->can_take_more[i])
      result->cost_per_share_pct[i] = solved_cost (self) - cost;
    fm_solver_set_column (self->solver, i, self->min[i], self->max[i]);
  }
}

void
fm_targets_fill_sensitivities (FmTargetsModel *self, FmTargetsResult *result, const double *share)
{
  double cost = fm_targets_model_cost (self, share);
  if (!self->base)
    fill_cost_per_unit_by_duals (self, result, share);
  else if (!isnan (cost))
    fill_cost_per_unit_by_steps (self, result, cost);
  fill_cost_per_share (self, result, share, cost);
}
