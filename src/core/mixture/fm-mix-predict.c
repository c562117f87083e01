/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-predict.c - what a fitted model expects of a blend */
#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core/mixture/fm-mix-fit-private.h"

/* 12 components in a special cubic model */
#define MAX_TERMS 298

double
fm_mix_fit_mean (const FmMixFit *self, const double *x)
{
  double row[MAX_TERMS], mean = 0.0;

  fm_mix_terms (self->order, self->q, x, row);
  for (guint i = 0; i < self->n_terms; i++)
    mean += row[i] * self->coefficient[i];
  return mean;
}

double
fm_mix_fit_se (const FmMixFit *self, const double *x)
{
  const guint p = self->n_terms;
  double row[MAX_TERMS], variance = 0.0;

  fm_mix_terms (self->order, self->q, x, row);
  for (guint i = 0; i < p; i++) {
    const double *line = self->covariance + (gsize)i * p;
    double half = 0.5 * row[i] * line[i];
    for (guint j = i + 1; j < p; j++)
      half += line[j] * row[j];
    variance += 2.0 * row[i] * half;
  }
  return sqrt (MAX (variance, 0.0));
}

void
fm_mix_predict (const FmMixFit *self, const double *x, FmMixPrediction *prediction)
{
  const double t = gsl_cdf_tdist_Pinv (0.975, self->df_error);
  const double mean = fm_mix_fit_mean (self, x), se = fm_mix_fit_se (self, x);
  const double se_new = hypot (se, self->sigma);

  prediction->mean = mean;
  prediction->se_mean = se;
  prediction->low = mean - t * se;
  prediction->high = mean + t * se;
  prediction->new_low = mean - t * se_new;
  prediction->new_high = mean + t * se_new;
}
