/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-exchange.c - Fedorov's exchange over mixture candidates
 *
 * Fedorov (Theory of Optimal Experiments, 1972), one trial at a time as Cook and Nachtsheim (1980,
 * Technometrics 22) do: swapping trial i for candidate j multiplies det(X'X) by
 * (1 + d_j) (1 - d_i) + d_ij^2, where d_ij = x_i' (X'X)^-1 x_j and d_i = d_ii.
 */
#include "core/mixture/fm-mix-private.h"

#include <gsl/gsl_linalg.h>
#include <math.h>
#include <string.h>

/* A swap has to gain at least this much, or rounding could swap for ever. */
#define LEAST_GAIN 1e-8
#define MAX_PASSES 100
/* How much of a row must be new for it to widen the first choice; lowered until that is full. */
static const double new_part[] = { 1e-1, 1e-2, 1e-4, 1e-8, 1e-16 };

static double
dot (const double *a, const double *b, guint n)
{
  double s0 = 0.0, s1 = 0.0, s2 = 0.0, s3 = 0.0;
  guint i = 0;
  for (; i + 4 <= n; i += 4) {
    s0 += a[i] * b[i];
    s1 += a[i + 1] * b[i + 1];
    s2 += a[i + 2] * b[i + 2];
    s3 += a[i + 3] * b[i + 3];
  }
  for (; i < n; i++)
    s0 += a[i] * b[i];
  return (s0 + s1) + (s2 + s3);
}

const double *
fm_mix_problem_row (const FmMixProblem *self, guint index)
{
  return self->z + (gsize)index * self->p;
}

static void
multiply (const FmMixSearch *self, const double *vector, double *product)
{
  const guint p = self->problem->p;
  for (guint i = 0; i < p; i++)
    product[i] = dot (self->inverse + (gsize)i * p, vector, p);
}

/* Adds what is new in @row to an orthonormal @basis of *@n rows; FALSE when less than @least of
 * it (in squares) is. */
static gboolean
widen (double *basis, guint *n, const double *row, guint p, double least)
{
  double *rest = basis + (gsize)*n * p;
  const double whole = dot (row, row, p);
  if (*n >= p || !(whole > 0.0))
    return FALSE;
  memcpy (rest, row, p * sizeof *rest);
  for (guint twice = 0; twice < 2; twice++)
    for (guint b = 0; b < *n; b++) {
      const double along = dot (rest, basis + (gsize)b * p, p);
      for (guint i = 0; i < p; i++)
        rest[i] -= along * basis[(gsize)b * p + i];
    }
  const double left = dot (rest, rest, p);
  if (left <= least * whole)
    return FALSE;
  for (guint i = 0; i < p; i++)
    rest[i] /= sqrt (left);
  (*n)++;
  return TRUE;
}

static guint
widen_by_kept (const FmMixProblem *self, double *basis)
{
  guint n = 0;
  for (guint i = self->n_all; i < self->n_rows; i++)
    widen (basis, &n, fm_mix_problem_row (self, i), self->p, new_part[G_N_ELEMENTS (new_part) - 1]);
  return n;
}

/* Rows that add something new first, so that the choice carries the model, then any. */
void
fm_mix_search_start (FmMixSearch *self, FmRandom *random)
{
  const FmMixProblem *problem = self->problem;
  g_autofree double *basis = g_new (double, (gsize)(problem->p + 1) * problem->p);
  g_autofree guint *order = g_memdup2 (problem->allowed, problem->n_allowed * sizeof (guint));
  guint n_basis = widen_by_kept (problem, basis), n_chosen = 0;

  fm_random_shuffle (random, order, problem->n_allowed);
  for (guint level = 0; level < G_N_ELEMENTS (new_part); level++)
    for (guint k = 0; k < problem->n_allowed && n_chosen < problem->n_trials; k++)
      if (widen (basis, &n_basis, fm_mix_problem_row (problem, order[k]), problem->p,
                 new_part[level]))
        self->index[n_chosen++] = order[k];
  while (n_chosen < problem->n_trials)
    self->index[n_chosen++] = order[fm_random_below (random, problem->n_allowed)];
}

/* (Z'Z)^-1 = R^-1 R^-T from the upper triangle of @qr; FALSE when it is singular. */
static gboolean
invert (FmMixSearch *self, const gsl_matrix *qr)
{
  const guint p = self->problem->p;
  g_autofree double *back = g_new0 (double, (gsize)p *p); /* R^-1, upper */

  self->log_det = 0.0;
  for (guint j = 0; j < p; j++) {
    const double diagonal = gsl_matrix_get (qr, j, j);
    if (!(fabs (diagonal) > FM_MIX_DEPENDENT))
      return FALSE;
    self->log_det += 2.0 * log (fabs (diagonal));
    back[(gsize)j * p + j] = 1.0 / diagonal;
    for (guint i = j; i-- > 0;) {
      double sum = 0.0;
      for (guint k = i + 1; k <= j; k++)
        sum += gsl_matrix_get (qr, i, k) * back[(gsize)k * p + j];
      back[(gsize)i * p + j] = -sum / gsl_matrix_get (qr, i, i);
    }
  }
  for (guint i = 0; i < p; i++)
    for (guint j = 0; j <= i; j++)
      self->inverse[(gsize)i * p + j] = self->inverse[(gsize)j * p + i] =
          dot (back + (gsize)i * p + i, back + (gsize)j * p + i, p - i);
  return TRUE;
}

/* Computes everything afresh from the choice, which also takes out rounding. */
static gboolean
refresh (FmMixSearch *self)
{
  const FmMixProblem *problem = self->problem;
  const guint p = problem->p, n_kept = problem->n_rows - problem->n_all;
  gsl_matrix *rows = gsl_matrix_alloc (problem->n_trials + n_kept, p);
  gsl_vector *tau = gsl_vector_alloc (p);
  g_autofree double *product = g_new (double, p);

  for (guint i = 0; i < problem->n_trials + n_kept; i++)
    memcpy (gsl_matrix_ptr (rows, i, 0),
            fm_mix_problem_row (problem, i < problem->n_trials
                                             ? self->index[i]
                                             : problem->n_all + i - problem->n_trials),
            p * sizeof *product);
  gsl_linalg_QR_decomp (rows, tau);
  const gboolean regular = invert (self, rows);
  for (guint j = 0; regular && j < problem->n_all; j++) {
    multiply (self, fm_mix_problem_row (problem, j), product);
    self->d[j] = dot (product, fm_mix_problem_row (problem, j), p);
  }
  gsl_vector_free (tau);
  gsl_matrix_free (rows);
  return regular;
}

/* Rank-one update of the inverse and all variances: @sign +1 adds the row, -1 takes it away. */
static void
update (FmMixSearch *self, guint row, double sign)
{
  const FmMixProblem *problem = self->problem;
  const guint p = problem->p;
  g_autofree double *v = g_new (double, p);
  multiply (self, fm_mix_problem_row (problem, row), v);
  const double factor = sign / (1.0 + sign * dot (v, fm_mix_problem_row (problem, row), p));

  for (guint i = 0; i < p; i++)
    for (guint j = 0; j < p; j++)
      self->inverse[(gsize)i * p + j] -= factor * v[i] * v[j];
  for (guint k = 0; k < problem->n_all; k++) {
    const double along = dot (v, fm_mix_problem_row (problem, k), p);
    self->d[k] -= factor * along * along;
  }
}

/* Swaps trial @slot for the best candidate, if one is better. By Cauchy and Schwarz a swap
 * multiplies the determinant by no more than 1 + d_j - d_i, which spares most candidates. */
static gboolean
improve (FmMixSearch *self, guint slot)
{
  const FmMixProblem *problem = self->problem;
  const guint out = self->index[slot];
  const double d_out = self->d[out];
  double best = 1.0 + LEAST_GAIN;
  guint best_row = out;
  g_autofree double *u = g_new (double, problem->p);

  multiply (self, fm_mix_problem_row (problem, out), u);
  for (guint k = 0; k < problem->n_allowed; k++) {
    const guint j = problem->allowed[k];
    if (1.0 + self->d[j] - d_out <= best)
      continue;
    const double between = dot (u, fm_mix_problem_row (problem, j), problem->p);
    const double gain = (1.0 + self->d[j]) * (1.0 - d_out) + between * between;
    if (gain > best) {
      best = gain;
      best_row = j;
    }
  }
  if (best_row == out)
    return FALSE;
  update (self, best_row, 1.0);
  update (self, out, -1.0);
  self->index[slot] = best_row;
  return TRUE;
}

gboolean
fm_mix_search_climb (FmMixSearch *self)
{
  gboolean improved = TRUE;
  self->log_det = -INFINITY;
  for (guint pass = 0; improved && pass < MAX_PASSES; pass++) {
    if (!refresh (self)) {
      self->log_det = -INFINITY;
      return TRUE;
    }
    improved = FALSE;
    for (guint slot = 0; slot < self->problem->n_trials; slot++) {
      if (fm_stop_asked (self->problem->stop))
        return FALSE;
      improved = improve (self, slot) || improved;
    }
  }
  return !improved || refresh (self);
}

FmMixSearch *
fm_mix_search_new (const FmMixProblem *problem)
{
  FmMixSearch *self = g_new0 (FmMixSearch, 1);
  self->problem = problem;
  self->index = g_new0 (guint, problem->n_trials);
  self->inverse = g_new0 (double, (gsize)problem->p * problem->p);
  self->d = g_new0 (double, problem->n_all);
  self->log_det = -INFINITY;
  return self;
}

void
fm_mix_search_free (FmMixSearch *self)
{
  g_free (self->index);
  g_free (self->inverse);
  g_free (self->d);
  g_free (self);
}

guint
fm_mix_problem_rank_of_kept (const FmMixProblem *self)
{
  g_autofree double *basis = g_new (double, (gsize)(self->p + 1) * self->p);
  return widen_by_kept (self, basis);
}
