/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-extreme.c - how far a value can go */
#include "fm-targets-private.h"

#include <math.h>

/* Steps of the search for the extreme of a ratio; it converges in a handful. */
#define MAX_RATIO_STEPS 30

/* Finds the shares that make sum (coefficient x share) least. */
typedef gboolean (*Minimise) (FmTargetsModel *self, const double *coefficients, double *share);

static gboolean
minimise_by_program (FmTargetsModel *self, const double *coefficients, double *share)
{
  for (guint i = 0; i < self->n; i++)
    fm_solver_set_cost (self->solver, i, coefficients[i]);
  if (fm_solver_run (self->solver) != FM_SOLVE_OPTIMAL)
    return FALSE;
  fm_targets_model_shares (self, share);
  return TRUE;
}

static int
compare_coefficients (gconstpointer a, gconstpointer b, gpointer coefficients)
{
  double first = ((const double *)coefficients)[*(const guint *)a];
  double second = ((const double *)coefficients)[*(const guint *)b];
  return (first > second) - (first < second);
}

/* With share limits alone no program is needed: fill up from the smallest coefficient on. */
static gboolean
minimise_by_filling (FmTargetsModel *self, const double *coefficients, double *share)
{
  g_autofree guint *order = g_new (guint, self->n);
  double left = 1.0;
  for (guint i = 0; i < self->n; i++) {
    order[i] = i;
    share[i] = self->min[i];
    left -= self->min[i];
  }
  g_qsort_with_data (order, (int)self->n, sizeof *order, compare_coefficients,
                     (gpointer)coefficients);
  for (guint k = 0; k < self->n && left > 0.0; k++) {
    guint i = order[k];
    double more = MIN (left, self->max[i] - self->min[i]);
    share[i] += more;
    left -= more;
  }
  return TRUE;
}

/* Dinkelbach (Management Science 13:492, 1967): the extreme of a ratio c x / p x is where the
 * extreme of c x - ratio x p x is 0. A target that is no ratio ends after one step. */
static double
find_extreme (FmTargetsModel *self, guint row, gboolean greatest, Minimise minimise)
{
  g_autofree double *share = g_new0 (double, self->n);
  g_autofree double *coefficients = g_new0 (double, self->n);
  double ratio = 0.0;
  for (int step = 0; step < MAX_RATIO_STEPS; step++) {
    FmTargetLimit at = { row, FALSE, ratio };
    fm_targets_model_homogeneous (self, &at, coefficients);
    for (guint i = 0; greatest && i < self->n; i++)
      coefficients[i] = -coefficients[i];
    if (!minimise (self, coefficients, share))
      return NAN;
    double found = fm_targets_model_value (self, row, share);
    if (!fm_targets_model_is_ratio (self, row) || isnan (found) ||
        fabs (found - ratio) <= 1e-12 * fabs (found))
      return found;
    ratio = found;
  }
  return ratio;
}

double
fm_targets_model_extreme (FmTargetsModel *self, guint row, gboolean greatest)
{
  fm_targets_model_aim_at_nothing (self);
  return find_extreme (self, row, greatest, minimise_by_program);
}

double
fm_targets_model_reach (FmTargetsModel *self, guint row, gboolean greatest)
{
  return find_extreme (self, row, greatest, minimise_by_filling);
}

double
fm_targets_model_reach_of (FmTargetsModel *self, const double *value, gboolean greatest)
{
  g_autofree double *share = g_new0 (double, self->n);
  g_autofree double *coefficients = g_new (double, self->n);
  double sum = 0.0;
  for (guint i = 0; i < self->n; i++)
    coefficients[i] = greatest ? -value[i] : value[i];
  minimise_by_filling (self, coefficients, share);
  for (guint i = 0; i < self->n; i++)
    sum += value[i] * share[i];
  return sum;
}
