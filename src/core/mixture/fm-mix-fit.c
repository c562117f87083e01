/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-fit.c - Scheffe models by least squares */
#include "core/mixture/fm-mix-fit.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_blas.h>
#include <gsl/gsl_linalg.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/mixture/fm-mix-fit-private.h"
#include "core/mixture/fm-mix-private.h"

/* A term that keeps less than this part of its length beside the terms before it cannot be told
 * from them. */
#define DEPENDENT 1e-8
#define ALPHA 0.05
/* A residual below this part of the values' size is rounding: the model fits exactly. */
#define ROUNDING 1e-13

FmMixData *
fm_mix_data_new (guint q, guint n_factors)
{
  FmMixData *self = g_new0 (FmMixData, 1);
  self->x = fm_mix_points_new (q);
  self->n_factors = n_factors;
  return self;
}

void
fm_mix_data_free (FmMixData *self)
{
  if (self == NULL)
    return;
  fm_mix_points_free (self->x);
  g_free (self->y);
  g_free (self->level);
  g_strfreev (self->names);
  g_free (self);
}

void
fm_mix_data_add (FmMixData *self, const double *x, double y, const guint *level)
{
  const guint row = self->x->n;

  g_return_if_fail (level != NULL || self->n_factors == 0);
  if (row == self->n_room) {
    self->n_room = MAX (16, 2 * self->n_room);
    self->y = g_renew (double, self->y, self->n_room);
    self->level = g_renew (guint, self->level, self->n_room * self->n_factors);
  }
  fm_mix_points_add (self->x, x);
  self->y[row] = y;
  for (guint f = 0; f < self->n_factors; f++)
    self->level[row * self->n_factors + f] = level[f];
}

void
fm_mix_data_set_names (FmMixData *self, const char *const *names)
{
  g_strfreev (self->names);
  self->names = g_strdupv ((char **)names);
}

static char *
order_text (FmMixOrder order)
{
  static const char *const texts[] = {
    N_ ("A linear model"),
    N_ ("A quadratic model"),
    N_ ("A special cubic model"),
  };
  return g_strdup (_ (texts[order]));
}

static gboolean
check_numbers (const FmMixData *data, GError **error)
{
  if (data->x->n == 0) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("Nothing has been measured yet. Make and measure some blends first."));
    return FALSE;
  }
  for (guint row = 0; row < data->x->n; row++) {
    gboolean known = isfinite (data->y[row]);
    for (guint i = 0; i < data->x->q; i++)
      known = known && isfinite (fm_mix_points_get (data->x, row)[i]);
    if (!known) {
      g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                   _ ("Trial %u has a value that is not known. Enter it or leave that trial out."),
                   row + 1);
      return FALSE;
    }
  }
  return TRUE;
}

/* Enough different blends for the terms, and @df_needed trials more than parameters */
static gboolean
check_count (const FmMixLayout *layout, guint df_needed, GError **error)
{
  g_autofree char *model = order_text (layout->order);
  const guint n_parameters = layout->n_terms + layout->n_blocks + df_needed;
  const guint trials = n_parameters > layout->n ? n_parameters - layout->n : 0;

  if (layout->n_blends < layout->n_terms) {
    const guint blends = MAX (layout->n_terms - layout->n_blends, trials);
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 /* TRANSLATORS: "A quadratic model", components, terms, blends, blends */
                 ngettext ("%s of %u components has %u terms; different blends measured: %u. "
                           "Make and measure at least %u more different blend.",
                           "%s of %u components has %u terms; different blends measured: %u. "
                           "Make and measure at least %u more different blends.",
                           blends),
                 model, layout->q, layout->n_terms, layout->n_blends, blends);
    return FALSE;
  }
  if (trials > 0) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 /* TRANSLATORS: "A quadratic model", trials; blends tasted again count as trials */
                 ngettext ("%s would pass through every value and could not say how far off it "
                           "is. Measure at least %u more trial: a different blend, or a known "
                           "one once more.",
                           "%s would pass through every value and could not say how far off it "
                           "is. Measure at least %u more trials: different blends, or known "
                           "ones once more.",
                           trials),
                 model, trials);
    return FALSE;
  }
  return TRUE;
}

static GStrv
component_names (const FmMixData *data)
{
  GStrv names = g_new0 (char *, data->x->q + 1);
  for (guint i = 0; i < data->x->q; i++)
    names[i] = fm_mix_component_name ((const char *const *)data->names, i);
  return names;
}

/* Names the terms of the QR decomposition that depend on those before */
static gboolean
check_terms (const FmMixLayout *layout,
             const gsl_matrix *design,
             const gsl_matrix *qr,
             GError **error)
{
  g_auto (GStrv) names = component_names (layout->data);
  g_auto (GStrv) terms = fm_mix_term_names (layout->order, layout->q, (const char *const *)names);
  g_autoptr (GString) lost = g_string_new (NULL);

  for (guint c = 0; c < design->size2; c++) {
    gsl_vector_const_view column = gsl_matrix_const_column (design, c);
    const double length = gsl_blas_dnrm2 (&column.vector);
    if (fabs (gsl_matrix_get (qr, c, c)) > DEPENDENT * length)
      continue;
    if (c >= layout->n_terms) {
      if (lost->len > 0)
        break;
      g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                           _ ("The differences between sessions or tasters cannot be told from "
                              "those between blends. Let some of the blends come back in another "
                              "session, or to other tasters."));
      return FALSE;
    }
    /* TRANSLATORS: between the names in a list */
    g_string_append_printf (lost, "%s%s", lost->len > 0 ? _ (", ") : "", terms[c]);
  }
  if (lost->len == 0)
    return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("The blends measured lie so that these terms cannot be told from the others: %s. "
                  "Add blends in which those shares differ, or use a simpler model."),
               lost->str);
  return FALSE;
}

static FmMixFit *
fit_new (const FmMixLayout *layout)
{
  FmMixFit *fit = g_new0 (FmMixFit, 1);
  fit->order = layout->order;
  fit->q = layout->q;
  fit->n = layout->n;
  fit->n_blends = layout->n_blends;
  fit->n_blocks = layout->n_blocks;
  fit->n_terms = layout->n_terms;
  fit->df_error = layout->n - layout->n_terms - layout->n_blocks;
  fit->coefficient = g_new0 (double, fit->n_terms);
  fit->std_error = g_new0 (double, fit->n_terms);
  fit->covariance = g_new0 (double, fit->n_terms * fit->n_terms);
  return fit;
}

/* Coefficients and their covariance in real shares, from those in @layout's own */
static void
report_in_shares (FmMixFit *fit,
                  const FmMixLayout *layout,
                  const gsl_vector *b,
                  const gsl_matrix *r_inverse)
{
  const size_t p = fit->n_terms;
  gsl_matrix *m = fm_mix_layout_to_shares (layout);
  gsl_matrix *root = gsl_matrix_alloc (p, r_inverse->size2);
  gsl_vector_const_view terms = gsl_vector_const_subvector (b, 0, p);
  gsl_matrix_const_view rows = gsl_matrix_const_submatrix (r_inverse, 0, 0, p, r_inverse->size2);
  gsl_vector_view coefficient = gsl_vector_view_array (fit->coefficient, p);
  gsl_matrix_view covariance = gsl_matrix_view_array (fit->covariance, p, p);

  gsl_blas_dgemv (CblasNoTrans, 1.0, m, &terms.vector, 0.0, &coefficient.vector);
  gsl_blas_dgemm (CblasNoTrans, CblasNoTrans, 1.0, m, &rows.matrix, 0.0, root);
  gsl_blas_dsyrk (CblasUpper, CblasNoTrans, fit->sigma * fit->sigma, root, 0.0, &covariance.matrix);
  for (size_t i = 0; i < p; i++) {
    for (size_t j = 0; j < i; j++)
      fit->covariance[i * p + j] = fit->covariance[j * p + i];
    fit->std_error[i] = sqrt (fit->covariance[i * p + i]);
  }
  gsl_matrix_free (m);
  gsl_matrix_free (root);
}

/* Sum of squares about the mean, after blocks */
static double
total_ss (const FmMixLayout *layout)
{
  gsl_matrix *columns = fm_mix_layout_mean (layout);
  guint rank;
  const double ss = fm_mix_residual_ss (columns, layout->data->y, &rank);
  gsl_vector_const_view y = gsl_vector_const_view_array (layout->data->y, layout->n);
  gsl_matrix_free (columns);
  return sqrt (ss) < ROUNDING * gsl_blas_dnrm2 (&y.vector) ? 0.0 : ss;
}

static void
judge_model (FmMixFit *fit, const FmMixLayout *layout)
{
  const guint df_model = fit->n_terms - 1, df_total = fit->df_error + df_model;

  fit->ss_total = total_ss (layout);
  if (fit->ss_total <= 0.0) {
    fit->r2 = fit->r2_adjusted = fit->f = fit->p = NAN;
    return;
  }
  fit->r2 = 1.0 - fit->ss_error / fit->ss_total;
  fit->r2_adjusted = 1.0 - (fit->ss_error / fit->df_error) / (fit->ss_total / df_total);
  fit->f = ((fit->ss_total - fit->ss_error) / df_model) / (fit->ss_error / fit->df_error);
  fit->p = fm_mix_f_upper (fit->f, df_model, fit->df_error);
}

/* @qr, @t: decomposition of @design */
static FmMixFit *
solve (const FmMixLayout *layout, const gsl_matrix *design, const gsl_matrix *qr, gsl_matrix *t)
{
  const size_t n = design->size1, k = design->size2;
  FmMixFit *fit = fit_new (layout);
  g_autofree double *residual = g_memdup2 (layout->data->y, n * sizeof (double));
  gsl_vector_const_view y = gsl_vector_const_view_array (layout->data->y, n);
  gsl_vector_view e = gsl_vector_view_array (residual, n);
  gsl_vector *solution = gsl_vector_alloc (n), *work = gsl_vector_alloc (k);
  gsl_matrix *r_inverse = gsl_matrix_calloc (k, k), *q = gsl_matrix_alloc (n, k);

  gsl_linalg_QR_lssolve_r (qr, t, &y.vector, solution, work);
  gsl_vector_view b = gsl_vector_subvector (solution, 0, k);
  gsl_blas_dgemv (CblasNoTrans, -1.0, design, &b.vector, 1.0, &e.vector);
  gsl_blas_ddot (&e.vector, &e.vector, &fit->ss_error);
  if (sqrt (fit->ss_error) < ROUNDING * gsl_blas_dnrm2 (&y.vector))
    fit->ss_error = 0.0;
  fit->sigma = sqrt (fit->ss_error / fit->df_error);

  for (size_t i = 0; i < k; i++)
    for (size_t j = i; j < k; j++)
      gsl_matrix_set (r_inverse, i, j, gsl_matrix_get (qr, i, j));
  gsl_linalg_tri_invert (CblasUpper, CblasNonUnit, r_inverse);
  gsl_matrix_memcpy (q, design);
  gsl_blas_dtrmm (CblasRight, CblasUpper, CblasNoTrans, CblasNonUnit, 1.0, r_inverse, q);

  report_in_shares (fit, layout, &b.vector, r_inverse);
  judge_model (fit, layout);
  fm_mix_fit_leave_out (fit, layout, q, residual);
  fm_mix_fit_lack (fit, layout);
  gsl_vector_free (solution);
  gsl_vector_free (work);
  gsl_matrix_free (r_inverse);
  gsl_matrix_free (q);
  return fit;
}

static FmMixFit *
fit_model (const FmMixData *data, FmMixOrder order, guint df_needed, GError **error)
{
  g_auto (FmMixLayout) layout = { 0 };
  FmMixFit *fit = NULL;

  if (!check_numbers (data, error))
    return NULL;
  fm_mix_layout_init (&layout, data, order);
  if (!check_count (&layout, df_needed, error))
    return NULL;
  gsl_matrix *design = fm_mix_layout_design (&layout);
  gsl_matrix *qr = gsl_matrix_alloc (design->size1, design->size2);
  gsl_matrix *t = gsl_matrix_alloc (design->size2, design->size2);
  gsl_matrix_memcpy (qr, design);
  gsl_linalg_QR_decomp_r (qr, t);
  if (check_terms (&layout, design, qr, error))
    fit = solve (&layout, design, qr, t);
  gsl_matrix_free (design);
  gsl_matrix_free (qr);
  gsl_matrix_free (t);
  return fit;
}

FmMixFit *
fm_mix_fit (const FmMixData *data, FmMixOrder order, GError **error)
{
  return fit_model (data, order, 1, error);
}

static gboolean
is_better (const FmMixFit *larger, const FmMixFit *smaller)
{
  if (isnan (larger->loo_rmse) || isnan (smaller->loo_rmse))
    return smaller->p_lack < ALPHA;
  return larger->loo_rmse < smaller->loo_rmse * (1 - 1e-9);
}

FmMixFit *
fm_mix_fit_best (const FmMixData *data, GError **error)
{
  FmMixFit *best = fit_model (data, FM_MIX_LINEAR, 2, error);

  for (FmMixOrder order = FM_MIX_QUADRATIC; best != NULL && order <= FM_MIX_SPECIAL_CUBIC;
       order++) {
    if (order == FM_MIX_SPECIAL_CUBIC && data->x->q < 3)
      break;
    g_autoptr (FmMixFit) larger = fit_model (data, order, 2, NULL);
    if (larger != NULL && is_better (larger, best)) {
      fm_mix_fit_free (best);
      best = g_steal_pointer (&larger);
    }
  }
  return best;
}

void
fm_mix_fit_free (FmMixFit *self)
{
  if (self == NULL)
    return;
  g_free (self->coefficient);
  g_free (self->std_error);
  g_free (self->covariance);
  g_free (self);
}
