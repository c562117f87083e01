/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-fit-private.h - what the files of the mixture fit share */
#pragma once

#include <gsl/gsl_matrix.h>

#include "core/mixture/fm-mix-fit.h"

G_BEGIN_DECLS

/* Shares that differ by less are the same blend. */
#define FM_MIX_SAME_BLEND 1e-6

/**
 * The columns that least squares work on: model terms, then block columns.
 *
 * The terms are those of z_i = (x_i - lower_i) / (1 - sum lower), with the lowest share measured of
 * each component: narrow bounds then do not make the columns nearly alike. The models span the same
 * functions in x and in z, so nothing but rounding changes.
 */
typedef struct {
  const FmMixData *data;
  FmMixOrder order;
  guint q;
  guint n;
  guint n_terms;
  guint n_blocks; /* block columns kept */
  guint n_blends;
  guint *blend; /* [n]: which blend a row is, 0 .. n_blends - 1 */
  double lower[FM_MIX_MAX_COMPONENTS];
  double scale;       /* 1 / (1 - sum lower) */
  gsl_matrix *blocks; /* [n x n_blocks], NULL when there are none */
} FmMixLayout;

void fm_mix_layout_init (FmMixLayout *self, const FmMixData *data, FmMixOrder order);
void fm_mix_layout_clear (FmMixLayout *self);
/** [n x (n_terms + n_blocks)] (transfer full) */
gsl_matrix *fm_mix_layout_design (const FmMixLayout *self);
/** Terms in z as sums of terms in x: coefficients in x = result * coefficients in z. */
gsl_matrix *fm_mix_layout_to_shares (const FmMixLayout *self);

/** [n x (1 + n_blocks)]: a constant and the blocks, without any blend. (transfer full) */
gsl_matrix *fm_mix_layout_mean (const FmMixLayout *self);

/** Takes what lies along @columns out of @y and puts an orthonormal basis of them into the first
 * columns of @basis, which has room for all. Returns how many tell something. */
guint fm_mix_project (const gsl_matrix *columns, double *y, gsl_matrix *basis);
/** Sum of squares of @y that the columns of @columns leave; @rank: columns that tell something. */
double fm_mix_residual_ss (const gsl_matrix *columns, const double *y, guint *rank);

/** Fills loo_rmse, loo_r2, loo_blend_rmse and loo_mean_rmse. @q: orthonormal basis of the design;
 * @residual: [n] */
void fm_mix_fit_leave_out (FmMixFit *fit,
                           const FmMixLayout *layout,
                           const gsl_matrix *q,
                           const double *residual);
/** Fills df_pure .. p_lack. */
void fm_mix_fit_lack (FmMixFit *fit, const FmMixLayout *layout);
/** P(F >= @f); NaN stays NaN, infinity gives 0. */
double fm_mix_f_upper (double f, guint df_model, guint df_error);

double fm_mix_fit_mean (const FmMixFit *self, const double *x);
double fm_mix_fit_se (const FmMixFit *self, const double *x);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FmMixLayout, fm_mix_layout_clear)

G_END_DECLS
