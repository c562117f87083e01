/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-anova.c */
#include "core/statistics/fm-anova.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_linalg.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-stat-private.h"
#include "core/statistics/fm-stat.h"

#define ALPHA 0.05

/* The scores that count, and the equations of the samples after the tasters are taken out:
 * C effect = Q with C = diag(r) - sum over tasters of n n' / k (Cochran and Cox, ch. 11) */
typedef struct {
  guint n_tasters;
  guint n_samples;
  const double *score;
  guint *n_of_taster;
  guint *n_of_sample;
  double *taster_total;
  double *sample_total;
  guint n_scores;
  guint n_used;        /* tasters */
  guint n_present;     /* samples */
  double *effect;      /* [n_samples], sums to zero over the samples present */
  gsl_matrix *inverse; /* generalised, of C */
} Layout;

static void
layout_clear (Layout *self)
{
  g_free (self->n_of_taster);
  g_free (self->n_of_sample);
  g_free (self->taster_total);
  g_free (self->sample_total);
  g_free (self->effect);
  g_clear_pointer (&self->inverse, gsl_matrix_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Layout, layout_clear)

/* NaN for a missing score and for all scores of a taster who gave fewer than two */
static double
score_at (const Layout *self, guint taster, guint sample)
{
  return self->n_of_taster[taster] < 2 ? NAN : self->score[taster * self->n_samples + sample];
}

static void
layout_init (Layout *self, guint n_tasters, guint n_samples, const double *score)
{
  *self = (Layout){ .n_tasters = n_tasters, .n_samples = n_samples, .score = score };
  self->n_of_taster = g_new0 (guint, MAX (n_tasters, 1));
  self->n_of_sample = g_new0 (guint, n_samples);
  self->taster_total = g_new0 (double, MAX (n_tasters, 1));
  self->sample_total = g_new0 (double, n_samples);
  self->effect = g_new0 (double, n_samples);
  for (guint t = 0; t < n_tasters; t++)
    for (guint s = 0; s < n_samples; s++)
      self->n_of_taster[t] += !isnan (score[t * n_samples + s]);

  for (guint t = 0; t < n_tasters; t++)
    for (guint s = 0; s < n_samples; s++) {
      const double given = score_at (self, t, s);
      if (isnan (given))
        continue;
      self->taster_total[t] += given;
      self->sample_total[s] += given;
      self->n_of_sample[s]++;
      self->n_scores++;
    }
  for (guint t = 0; t < n_tasters; t++)
    self->n_used += self->n_of_taster[t] >= 2;
  for (guint s = 0; s < n_samples; s++)
    self->n_present += self->n_of_sample[s] > 0;
}

static gsl_matrix *
sample_equations (const Layout *self)
{
  gsl_matrix *c = gsl_matrix_calloc (self->n_samples, self->n_samples);
  for (guint t = 0; t < self->n_tasters; t++)
    for (guint a = 0; a < self->n_samples; a++)
      for (guint b = 0; b < self->n_samples; b++)
        if (!isnan (score_at (self, t, a)) && !isnan (score_at (self, t, b)))
          *gsl_matrix_ptr (c, a, b) += (a == b) - 1.0 / self->n_of_taster[t];
  return c;
}

/* FALSE when some samples share no taster with the rest */
static gboolean
layout_solve (Layout *self)
{
  gsl_matrix *c = sample_equations (self);
  self->inverse = gsl_matrix_calloc (self->n_samples, self->n_samples);
  const guint rank = fm_stat_invert (c, self->inverse);
  gsl_matrix_free (c);

  for (guint b = 0; b < self->n_samples; b++) {
    double q = self->sample_total[b];
    for (guint t = 0; t < self->n_tasters; t++)
      if (!isnan (score_at (self, t, b)))
        q -= self->taster_total[t] / self->n_of_taster[t];
    for (guint a = 0; a < self->n_samples; a++)
      self->effect[a] += gsl_matrix_get (self->inverse, a, b) * q;
  }
  return rank + 1 == self->n_present;
}

/* Mean of the tasters' own levels once the samples they had are allowed for */
static double
mean_taster_level (const Layout *self)
{
  double sum = 0;
  for (guint t = 0; t < self->n_tasters; t++) {
    if (self->n_of_taster[t] < 2)
      continue;
    double level = self->taster_total[t];
    for (guint s = 0; s < self->n_samples; s++)
      if (!isnan (score_at (self, t, s)))
        level -= self->effect[s];
    sum += level / self->n_of_taster[t];
  }
  return sum / self->n_used;
}

/* Variance of an adjusted mean in units of the error variance: taster totals and sample effects
 * are uncorrelated, so it is that of the level plus a quadratic form of the effects */
static double
mean_variance (const Layout *self, guint sample)
{
  g_autofree double *weight = g_new0 (double, self->n_samples);
  double variance = 0;

  weight[sample] = 1;
  for (guint t = 0; t < self->n_tasters; t++) {
    if (self->n_of_taster[t] < 2)
      continue;
    variance += 1.0 / self->n_of_taster[t] / self->n_used / self->n_used;
    for (guint s = 0; s < self->n_samples; s++)
      if (!isnan (score_at (self, t, s)))
        weight[s] -= 1.0 / self->n_of_taster[t] / self->n_used;
  }
  for (guint a = 0; a < self->n_samples; a++)
    for (guint b = 0; b < self->n_samples; b++)
      variance += weight[a] * weight[b] * gsl_matrix_get (self->inverse, a, b);
  return variance;
}

static double
pair_variance (const Layout *self, guint a, guint b)
{
  return gsl_matrix_get (self->inverse, a, a) + gsl_matrix_get (self->inverse, b, b) -
         2 * gsl_matrix_get (self->inverse, a, b);
}

static double
grand_mean (const Layout *self)
{
  double sum = 0;
  for (guint s = 0; s < self->n_samples; s++)
    sum += self->sample_total[s];
  return sum / self->n_scores;
}

static void
fill_squares (FmAnovaResult *result, const Layout *layout)
{
  const double grand = grand_mean (layout);
  double within_tasters = 0, total = 0, samples_alone = 0;

  for (guint t = 0; t < layout->n_tasters; t++)
    for (guint s = 0; s < layout->n_samples; s++) {
      const double given = score_at (layout, t, s);
      if (isnan (given))
        continue;
      const double level = layout->taster_total[t] / layout->n_of_taster[t];
      within_tasters += (given - level) * (given - level);
      total += (given - grand) * (given - grand);
      result->ss_sample += layout->effect[s] * (given - level);
    }
  for (guint s = 0; s < layout->n_samples; s++)
    if (layout->n_of_sample[s] > 0) {
      const double away = layout->sample_total[s] / layout->n_of_sample[s] - grand;
      samples_alone += layout->n_of_sample[s] * away * away;
    }
  result->ss_error = MAX (within_tasters - result->ss_sample, 0);
  /* scores that fit exactly leave only rounding behind */
  if (result->ss_error < 1e-12 * total)
    result->ss_error = 0;
  result->ss_taster = MAX (total - samples_alone - result->ss_error, 0);
}

static void
fill_tests (FmAnovaResult *result)
{
  result->ms_error = result->ss_error / result->df_error;
  result->f_sample = result->p_sample = result->f_taster = result->p_taster = NAN;
  if (result->ms_error <= 0)
    return;
  result->f_sample = result->ss_sample / result->df_sample / result->ms_error;
  result->p_sample = gsl_cdf_fdist_Q (result->f_sample, result->df_sample, result->df_error);
  result->f_taster = result->ss_taster / result->df_taster / result->ms_error;
  result->p_taster = gsl_cdf_fdist_Q (result->f_taster, result->df_taster, result->df_error);
}

static void
fill_means (FmAnovaResult *result, const Layout *layout)
{
  const guint t = layout->n_samples;
  const double level = mean_taster_level (layout);
  const double reach = gsl_cdf_tdist_Qinv (ALPHA / 2, result->df_error);

  result->mean = g_new (double, t);
  result->adjusted_mean = g_new (double, t);
  result->low = g_new (double, t);
  result->high = g_new (double, t);
  result->leader = G_MAXUINT;
  for (guint s = 0; s < t; s++) {
    const gboolean present = layout->n_of_sample[s] > 0;
    const double half = reach * sqrt (result->ms_error * mean_variance (layout, s));
    result->mean[s] = present ? layout->sample_total[s] / layout->n_of_sample[s] : NAN;
    result->adjusted_mean[s] = present ? level + layout->effect[s] : NAN;
    result->low[s] = result->adjusted_mean[s] - half;
    result->high[s] = result->adjusted_mean[s] + half;
    if (present && (result->leader == G_MAXUINT ||
                    result->adjusted_mean[s] > result->adjusted_mean[result->leader]))
      result->leader = s;
  }
}

static void
fill_pairs (FmAnovaResult *result, const Layout *layout)
{
  const guint k = layout->n_present;
  const double q = fm_stat_studentized_range_quantile (ALPHA, k, result->df_error);

  result->pair = g_new0 (FmAnovaPair, k * (k - 1) / 2);
  for (guint a = 0; a < layout->n_samples; a++)
    for (guint b = a + 1; b < layout->n_samples; b++) {
      if (layout->n_of_sample[a] == 0 || layout->n_of_sample[b] == 0)
        continue;
      FmAnovaPair *pair = &result->pair[result->n_pairs++];
      const double se = sqrt (result->ms_error * pair_variance (layout, a, b) / 2);
      pair->a = a;
      pair->b = b;
      pair->difference = layout->effect[b] - layout->effect[a];
      pair->low = pair->difference - q * se;
      pair->high = pair->difference + q * se;
      pair->p = se > 0 ? fm_stat_studentized_range_upper (fabs (pair->difference) / se, k,
                                                          result->df_error)
                       : NAN;
    }
  result->hsd = result->lsd = NAN;
  if (!result->is_balanced)
    return;
  const double se_mean = sqrt (result->ms_error / layout->n_used);
  result->hsd = q * se_mean;
  if (result->p_sample <= ALPHA)
    result->lsd = gsl_cdf_tdist_Qinv (ALPHA / 2, result->df_error) * G_SQRT2 * se_mean;
}

static gboolean
check_layout (Layout *layout, GError **error)
{
  if (layout->n_used < 2 || layout->n_present < 2) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("Liking can be read once two tasters have scored two samples or "
                            "more. Enter more sheets."));
    return FALSE;
  }
  if (!layout_solve (layout)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                         _ ("Some samples were never scored by a taster who also scored the "
                            "others, so they cannot be compared. Enter the missing sheets."));
    return FALSE;
  }
  if (layout->n_scores + 1 <= layout->n_used + layout->n_present) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("There are too few scores to tell samples from chance. Enter more "
                            "sheets."));
    return FALSE;
  }
  return TRUE;
}

FmAnovaResult *
fm_anova_liking (guint n_tasters, guint n_samples, const double *score, GError **error)
{
  g_auto (Layout) layout = { 0 };
  for (gsize i = 0; i < (gsize)n_tasters * n_samples; i++)
    if (isinf (score[i]) || fabs (score[i]) > 1e9) {
      g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                           _ ("A liking score is far too large. Correct the sheet."));
      return NULL;
    }
  layout_init (&layout, n_tasters, n_samples, score);
  if (!check_layout (&layout, error))
    return NULL;

  FmAnovaResult *result = g_new0 (FmAnovaResult, 1);
  result->n_scores = layout.n_scores;
  result->n_tasters = layout.n_used;
  result->n_left_out = n_tasters - layout.n_used;
  result->n_samples = n_samples;
  result->is_balanced = layout.n_scores == layout.n_used * n_samples;
  result->df_sample = layout.n_present - 1;
  result->df_taster = layout.n_used - 1;
  result->df_error = layout.n_scores - layout.n_used - result->df_sample;
  fill_squares (result, &layout);
  fill_tests (result);
  fill_means (result, &layout);
  fill_pairs (result, &layout);
  return result;
}

void
fm_anova_result_free (FmAnovaResult *self)
{
  if (self == NULL)
    return;
  g_free (self->mean);
  g_free (self->adjusted_mean);
  g_free (self->low);
  g_free (self->high);
  g_free (self->pair);
  g_free (self);
}
