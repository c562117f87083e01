/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-fit-error.c - how far off a fitted model is: left-out blends and replicates */
#include <gsl/gsl_blas.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_eigen.h>
#include <math.h>

#include "core/mixture/fm-mix-fit-private.h"

/* Below this a value is decided by its own blend alone. */
#define ALONE 1e-8
/* A value that takes no part in what is decided alone has at most this share of it. */
#define NO_PART 1e-5

double
fm_mix_f_upper (double f, guint df_model, guint df_error)
{
  if (isnan (f) || df_model == 0 || df_error == 0)
    return NAN;
  return isinf (f) ? 0.0 : gsl_cdf_fdist_Q (f, df_model, df_error);
}

/* I - H of the rows of one blend, H = Q Q' */
static gsl_matrix *
left_of_hat (const gsl_matrix *q, const GArray *rows)
{
  gsl_matrix *part = gsl_matrix_alloc (rows->len, q->size2);
  gsl_matrix *left = gsl_matrix_alloc (rows->len, rows->len);

  for (guint i = 0; i < rows->len; i++) {
    gsl_vector_const_view row = gsl_matrix_const_row (q, g_array_index (rows, guint, i));
    gsl_matrix_set_row (part, i, &row.vector);
  }
  gsl_matrix_set_identity (left);
  gsl_blas_dgemm (CblasNoTrans, CblasTrans, -1.0, part, part, 1.0, left);
  gsl_matrix_free (part);
  return left;
}

/* Errors of the rows when all of them are left out: (I - H)^-1 residual. Directions in which
 * I - H is zero are decided by these rows alone; a row that takes part in one gets NaN. */
static void
leave_rows (const gsl_matrix *q, const GArray *rows, const double *residual, double *left_error)
{
  const guint m = rows->len;
  gsl_matrix *left = left_of_hat (q, rows), *vectors = gsl_matrix_alloc (m, m);
  gsl_vector *values = gsl_vector_alloc (m);
  gsl_eigen_symmv_workspace *workspace = gsl_eigen_symmv_alloc (m);

  gsl_eigen_symmv (left, values, vectors, workspace);
  for (guint i = 0; i < m; i++)
    left_error[i] = 0.0;
  for (guint e = 0; e < m; e++) {
    const double value = gsl_vector_get (values, e);
    double along = 0.0;
    for (guint i = 0; i < m; i++)
      along += gsl_matrix_get (vectors, i, e) * residual[g_array_index (rows, guint, i)];
    for (guint i = 0; i < m; i++) {
      const double part = gsl_matrix_get (vectors, i, e);
      if (value > ALONE)
        left_error[i] += part * along / value;
      else if (fabs (part) > NO_PART)
        left_error[i] = NAN;
    }
  }
  gsl_eigen_symmv_free (workspace);
  gsl_vector_free (values);
  gsl_matrix_free (vectors);
  gsl_matrix_free (left);
}

static GPtrArray *
rows_of_blends (const FmMixLayout *layout)
{
  GPtrArray *blends = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  for (guint b = 0; b < layout->n_blends; b++)
    g_ptr_array_add (blends, g_array_new (FALSE, FALSE, sizeof (guint)));
  for (guint row = 0; row < layout->n; row++)
    g_array_append_val ((GArray *)blends->pdata[layout->blend[row]], row);
  return blends;
}

/* How far off each value is when its blend is left out, [n]; NaN where that cannot be said */
static double *
left_errors (const GPtrArray *blends, const gsl_matrix *q, const double *residual)
{
  double *error = g_new (double, q->size1);
  g_autofree double *of_blend = g_new (double, q->size1);

  for (guint b = 0; b < blends->len; b++) {
    const GArray *rows = blends->pdata[b];
    leave_rows (q, rows, residual, of_blend);
    for (guint i = 0; i < rows->len; i++)
      error[g_array_index (rows, guint, i)] = of_blend[i];
  }
  return error;
}

/* Mean of @error over the rows of a blend for which @known is a number; NaN when there are none */
static double
mean_of_known (const GArray *rows, const double *error, const double *known)
{
  double sum = 0.0;
  guint n = 0;

  for (guint i = 0; i < rows->len; i++) {
    const guint row = g_array_index (rows, guint, i);
    if (isnan (known[row]))
      continue;
    sum += error[row];
    n++;
  }
  return n > 0 ? sum / n : NAN;
}

/* Root mean square over the blends of the mean error of each */
static double
rmse_of_blends (const GPtrArray *blends, const double *error, const double *known)
{
  double ss = 0.0;

  for (guint b = 0; b < blends->len; b++) {
    const double mean = mean_of_known (blends->pdata[b], error, known);
    ss += mean * mean;
  }
  return sqrt (ss / blends->len);
}

/* The errors of the plain mean of the other blends, beside the same blocks */
static double *
left_errors_of_mean (const FmMixLayout *layout, const GPtrArray *blends)
{
  gsl_matrix *columns = fm_mix_layout_mean (layout);
  gsl_matrix *basis = gsl_matrix_calloc (columns->size1, columns->size2);
  g_autofree double *residual = g_memdup2 (layout->data->y, layout->n * sizeof (double));
  double *error;

  /* columns beyond the rank stay zero and take no part */
  fm_mix_project (columns, residual, basis);
  error = left_errors (blends, basis, residual);
  gsl_matrix_free (columns);
  gsl_matrix_free (basis);
  return error;
}

static void
note_error_of_values (FmMixFit *fit, const FmMixLayout *layout, const double *error)
{
  double press = 0.0;
  guint n_predicted = 0;

  for (guint row = 0; row < layout->n; row++) {
    if (isnan (error[row]))
      continue;
    press += error[row] * error[row];
    n_predicted++;
  }
  fit->loo_rmse = sqrt (press / n_predicted);
  if (fit->ss_total > 0.0)
    fit->loo_r2 = 1.0 - (press / n_predicted) / (fit->ss_total / layout->n);
}

void
fm_mix_fit_leave_out (FmMixFit *fit,
                      const FmMixLayout *layout,
                      const gsl_matrix *q,
                      const double *residual)
{
  g_autoptr (GPtrArray) blends = rows_of_blends (layout);
  g_autofree double *error = left_errors (blends, q, residual);
  g_autofree double *of_mean = NULL;

  fit->loo_rmse = fit->loo_r2 = fit->loo_blend_rmse = fit->loo_mean_rmse = NAN;
  for (guint b = 0; b < blends->len; b++)
    if (isnan (mean_of_known (blends->pdata[b], error, error)))
      return;
  note_error_of_values (fit, layout, error);
  of_mean = left_errors_of_mean (layout, blends);
  fit->loo_blend_rmse = rmse_of_blends (blends, error, error);
  fit->loo_mean_rmse = rmse_of_blends (blends, of_mean, error);
}

static void
centre_in_blends (const FmMixLayout *layout, double *values, guint stride)
{
  g_autofree double *sum = g_new0 (double, layout->n_blends);
  g_autofree guint *count = g_new0 (guint, layout->n_blends);

  for (guint row = 0; row < layout->n; row++) {
    sum[layout->blend[row]] += values[row * stride];
    count[layout->blend[row]]++;
  }
  for (guint row = 0; row < layout->n; row++)
    values[row * stride] -= sum[layout->blend[row]] / count[layout->blend[row]];
}

/* What one mean for each blend plus the blocks leave over (Frisch and Waugh: centring both sides
 * within the blends takes the means out) */
static double
pure_ss (const FmMixLayout *layout, guint *n_parameters)
{
  g_autofree double *y = g_memdup2 (layout->data->y, layout->n * sizeof (double));
  guint rank = 0;
  double ss = 0.0;

  centre_in_blends (layout, y, 1);
  if (layout->n_blocks > 0) {
    gsl_matrix *blocks = gsl_matrix_alloc (layout->n, layout->n_blocks);
    for (guint b = 0; b < layout->n_blocks; b++) {
      for (guint row = 0; row < layout->n; row++)
        gsl_matrix_set (blocks, row, b, gsl_matrix_get (layout->blocks, row, b));
      centre_in_blends (layout, gsl_matrix_ptr (blocks, 0, b), (guint)blocks->tda);
    }
    ss = fm_mix_residual_ss (blocks, y, &rank);
    gsl_matrix_free (blocks);
  } else {
    for (guint row = 0; row < layout->n; row++)
      ss += y[row] * y[row];
  }
  *n_parameters = layout->n_blends + rank;
  return ss;
}

void
fm_mix_fit_lack (FmMixFit *fit, const FmMixLayout *layout)
{
  guint n_parameters;

  fit->ss_pure = pure_ss (layout, &n_parameters);
  fit->df_pure = MIN (layout->n - n_parameters, fit->df_error);
  fit->df_lack = fit->df_error - fit->df_pure;
  fit->f_lack = fit->p_lack = NAN;
  if (fit->df_pure == 0) {
    fit->ss_pure = 0.0;
    fit->ss_lack = fit->ss_error;
    return;
  }
  fit->ss_lack = fit->df_lack > 0 ? MAX (fit->ss_error - fit->ss_pure, 0.0) : 0.0;
  /* values that repeat exactly tell nothing about their own spread */
  if (fit->df_lack == 0 || fit->ss_pure <= 1e-20 * fit->ss_error)
    return;
  fit->f_lack = (fit->ss_lack / fit->df_lack) / (fit->ss_pure / fit->df_pure);
  fit->p_lack = fm_mix_f_upper (fit->f_lack, fit->df_lack, fit->df_pure);
}
