/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-optimal.c - D-optimal choices of mixture trials
 *
 * Model rows of a narrow region are nearly collinear, so the search runs on rows Z = X R^-1 of
 * their QR decomposition, which changes every determinant by the same factor det(R)^2.
 */
#include "core/mixture/fm-mix-private.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_linalg.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"

/* Starts: as many as this much work allows, within bounds. */
#define WORK_LIMIT 3e8
#define LEAST_STARTS 4
#define MOST_STARTS 40
/* Shares that sum to 1 but for this are a blend. */
#define SUM_TOLERANCE 1e-6

/* Model rows of the candidates and the kept points, each column of length 1. */
static gsl_matrix *
model_rows (FmMixProblem *self,
            const FmMixPoints *candidates,
            const FmMixPoints *kept,
            FmMixOrder order)
{
  gsl_matrix *rows = gsl_matrix_alloc (MAX (self->n_rows, self->p), self->p);
  gsl_matrix_set_zero (rows);
  for (guint i = 0; i < self->n_rows; i++) {
    const double *x = i < self->n_all ? fm_mix_points_get (candidates, i)
                                      : fm_mix_points_get (kept, i - self->n_all);
    fm_mix_terms (order, candidates->q, x, gsl_matrix_ptr (rows, i, 0));
  }
  for (guint j = 0; j < self->p; j++) {
    double square = 0.0;
    for (guint i = 0; i < self->n_rows; i++)
      square += gsl_matrix_get (rows, i, j) * gsl_matrix_get (rows, i, j);
    for (guint i = 0; square > 0.0 && i < self->n_rows; i++)
      *gsl_matrix_ptr (rows, i, j) /= sqrt (square);
    self->log_scale += square > 0.0 ? log (square) : 0.0;
  }
  return rows;
}

/* z R = x by forward substitution, columns permuted */
static void
divide_by_r (const gsl_matrix *r, const gsl_permutation *order, const double *x, double *z)
{
  for (gsize j = 0; j < r->size2; j++) {
    double rest = x[gsl_permutation_get (order, j)];
    for (gsize i = 0; i < j; i++)
      rest -= z[i] * gsl_matrix_get (r, i, j);
    z[j] = rest / gsl_matrix_get (r, j, j);
  }
}

/* Fills z and the scale; returns how many terms can be told apart. */
static guint
decompose (FmMixProblem *self,
           const FmMixPoints *candidates,
           const FmMixPoints *kept,
           FmMixOrder order)
{
  gsl_matrix *rows = model_rows (self, candidates, kept, order);
  gsl_matrix *qr = gsl_matrix_alloc (rows->size1, rows->size2);
  gsl_vector *tau = gsl_vector_alloc (self->p), *norm = gsl_vector_alloc (self->p);
  gsl_permutation *permutation = gsl_permutation_alloc (self->p);
  int sign;
  guint rank = 0;

  gsl_matrix_memcpy (qr, rows);
  gsl_linalg_QRPT_decomp (qr, tau, permutation, &sign, norm);
  while (rank < self->p && fabs (gsl_matrix_get (qr, rank, rank)) > FM_MIX_DEPENDENT)
    rank++;
  /* rows of mean length 1 per term */
  const double length = sqrt (self->n_rows);
  self->z = g_new0 (double, (gsize)self->n_rows * self->p);
  for (guint j = 0; j < rank; j++)
    self->log_scale += 2.0 * log (fabs (gsl_matrix_get (qr, j, j)) / length);
  for (guint i = 0; rank == self->p && i < self->n_rows; i++) {
    double *z = self->z + (gsize)i * self->p;
    divide_by_r (qr, permutation, gsl_matrix_const_ptr (rows, i, 0), z);
    for (guint j = 0; j < self->p; j++)
      z[j] *= length;
  }
  gsl_permutation_free (permutation);
  gsl_vector_free (norm);
  gsl_vector_free (tau);
  gsl_matrix_free (qr);
  gsl_matrix_free (rows);
  return rank;
}

static int
compare_index (gconstpointer a, gconstpointer b)
{
  const guint first = *(const guint *)a, second = *(const guint *)b;
  return (first > second) - (first < second);
}

static gboolean
are_blends (const FmMixPoints *points, GError **error)
{
  for (guint row = 0; row < points->n; row++) {
    double sum = 0.0;
    for (guint i = 0; i < points->q; i++)
      sum += fabs (fm_mix_points_get (points, row)[i]);
    if (fabs (sum - 1.0) <= SUM_TOLERANCE)
      continue;
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The shares of blend %u do not add up to 100 %%. Correct them."), row + 1);
    return FALSE;
  }
  return TRUE;
}

static gboolean
check_input (const FmMixPoints *candidates, guint n_trials, const FmMixPoints *kept, GError **error)
{
  const guint q = candidates->q;
  if (q < 2 || q > FM_MIX_MAX_COMPONENTS || (kept != NULL && kept->q != q))
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("All blends must be of the same 2 to %d components."), FM_MIX_MAX_COMPONENTS);
  else if (candidates->n == 0)
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                 _ ("There are no blends to choose from."));
  else if (candidates->n > FM_MIX_MAX_POINTS || n_trials > FM_MIX_MAX_TRIALS)
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("At most %d trials are chosen from at most %d blends."), FM_MIX_MAX_TRIALS,
                 FM_MIX_MAX_POINTS);
  else
    return are_blends (candidates, error) && (kept == NULL || are_blends (kept, error));
  return FALSE;
}

static gboolean
is_among (const FmMixPoints *points, const double *x)
{
  for (guint row = 0; points != NULL && row < points->n; row++) {
    double most = 0.0;
    for (guint i = 0; i < points->q; i++)
      most = MAX (most, fabs (fm_mix_points_get (points, row)[i] - x[i]));
    if (most <= SUM_TOLERANCE)
      return TRUE;
  }
  return FALSE;
}

static gboolean
check_rank (const FmMixProblem *self, guint rank, GError **error)
{
  if (rank < self->p) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("This model has %u terms, but the blends to choose from can tell only %u of "
                    "them apart. Choose a simpler model, or offer more different blends."),
                 self->p, rank);
    return FALSE;
  }
  const guint needed = self->p - fm_mix_problem_rank_of_kept (self);
  const guint least = MAX (needed, 1);
  if (self->n_trials >= least)
    return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               g_dngettext (GETTEXT_PACKAGE,
                            "This model needs at least %u more trial. Ask for more trials, or "
                            "choose a simpler model.",
                            "This model needs at least %u more trials. Ask for more trials, or "
                            "choose a simpler model.",
                            least),
               least);
  return FALSE;
}

static gboolean
problem_init (FmMixProblem *self,
              const FmMixPoints *candidates,
              const FmMixPoints *kept,
              FmMixOrder order,
              GError **error)
{
  self->p = fm_mix_n_terms (order, candidates->q);
  self->n_all = candidates->n;
  self->n_rows = candidates->n + (kept != NULL ? kept->n : 0);
  self->allowed = g_new (guint, candidates->n);
  for (guint i = 0; i < candidates->n; i++)
    if (!is_among (kept, fm_mix_points_get (candidates, i)))
      self->allowed[self->n_allowed++] = i;
  if (self->n_allowed == 0) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                 _ ("All blends to choose from have been made already. Offer others."));
    return FALSE;
  }
  return check_rank (self, decompose (self, candidates, kept, order), error);
}

/* The best of several starts; NULL when stopped or when no start carries the model. */
static FmMixSearch *
search_best (const FmMixProblem *problem, guint64 seed, GError **error)
{
  const double work = (double)problem->n_trials * problem->n_allowed * problem->p;
  const guint n_starts = (guint)CLAMP (WORK_LIMIT / work, LEAST_STARTS, MOST_STARTS);
  g_autoptr (FmMixSearch) best = NULL;
  FmRandom random;

  fm_random_init (&random, seed);
  for (guint start = 0; start < n_starts; start++) {
    g_autoptr (FmMixSearch) search = fm_mix_search_new (problem);
    fm_mix_search_start (search, &random);
    if (!fm_mix_search_climb (search)) {
      g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_STOPPED,
                   _ ("The choice of trials was stopped."));
      return NULL;
    }
    if (best == NULL || search->log_det > best->log_det + 1e-9) {
      g_clear_pointer (&best, fm_mix_search_free);
      best = g_steal_pointer (&search);
    }
  }
  if (isfinite (best->log_det))
    return g_steal_pointer (&best);
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("No choice of these trials can carry the model. Ask for more trials, or choose a "
                  "simpler model."));
  return NULL;
}

static FmMixChoice *
choice_from (const FmMixSearch *search)
{
  const FmMixProblem *problem = search->problem;
  FmMixChoice *choice = g_new0 (FmMixChoice, 1);
  const guint n_made = problem->n_trials + problem->n_rows - problem->n_all;

  choice->n = problem->n_trials;
  choice->index = g_memdup2 (search->index, choice->n * sizeof *choice->index);
  qsort (choice->index, choice->n, sizeof *choice->index, compare_index);
  choice->log_det = search->log_det + problem->log_scale;
  choice->d_efficiency = 100.0 * exp (choice->log_det / problem->p) / n_made;
  for (guint i = 0; i < problem->n_all; i++) {
    choice->mean_variance += search->d[i] / problem->n_all;
    choice->max_variance = MAX (choice->max_variance, search->d[i]);
  }
  return choice;
}

FmMixChoice *
fm_mix_d_optimal (const FmMixPoints *candidates,
                  FmMixOrder order,
                  guint n_trials,
                  const FmMixPoints *kept,
                  guint64 seed,
                  const FmStop *stop,
                  GError **error)
{
  if (!check_input (candidates, n_trials, kept, error))
    return NULL;

  FmMixProblem problem = { .n_trials = n_trials, .stop = stop };
  FmMixChoice *choice = NULL;
  if (problem_init (&problem, candidates, kept, order, error)) {
    g_autoptr (FmMixSearch) best = search_best (&problem, seed, error);
    choice = best != NULL ? choice_from (best) : NULL;
  }
  g_free (problem.z);
  g_free (problem.allowed);
  return choice;
}

void
fm_mix_choice_free (FmMixChoice *self)
{
  g_free (self->index);
  g_free (self);
}
