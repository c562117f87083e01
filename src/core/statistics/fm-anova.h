/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-anova.h - liking scores: samples compared within tasters
 *
 * score = taster + sample + error, both fixed, by least squares; with gaps or incomplete blocks
 * the samples are adjusted for the tasters (intra-block analysis: Cochran and Cox, Experimental
 * Designs, ch. 11). Pairs by Tukey (Kramer's form where the design is uneven).
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct {
  guint a; /* sample indices, a < b */
  guint b;
  double difference; /* adjusted mean of b minus that of a */
  double low;        /* 95 % Tukey interval, joint for all pairs */
  double high;
  double p; /* Tukey-adjusted */
} FmAnovaPair;

typedef struct {
  guint n_scores;
  guint n_tasters;  /* with two scores or more */
  guint n_left_out; /* tasters with one score or none */
  guint n_samples;
  gboolean is_balanced;  /* every taster scored every sample */
  double *mean;          /* [n_samples] raw; NaN when nobody scored it */
  double *adjusted_mean; /* [n_samples] as if all tasters had scored it */
  double *low;           /* [n_samples] 95 % t interval of the adjusted mean */
  double *high;
  double ss_sample; /* adjusted for tasters */
  double ss_taster; /* adjusted for samples */
  double ss_error;
  guint df_sample;
  guint df_taster;
  guint df_error;
  double ms_error;
  double f_sample; /* NaN when there is no error variance */
  double p_sample;
  double f_taster;
  double p_taster;
  double lsd;        /* Fisher, 5 %, balanced only and only when p_sample <= 0.05, else NaN */
  double hsd;        /* Tukey, 5 %, balanced only, else NaN */
  guint leader;      /* highest adjusted mean */
  FmAnovaPair *pair; /* [n_pairs] */
  guint n_pairs;
} FmAnovaResult;

/**
 * fm_anova_liking:
 * @score: (array): n_tasters x n_samples by rows; NaN = no score
 *
 * Returns: (transfer full): %NULL with @error when fewer than two samples or tasters have scores,
 *   no degrees of freedom are left for error, or the samples are not linked by tasters who scored
 *   both groups
 */
FmAnovaResult *
fm_anova_liking (guint n_tasters, guint n_samples, const double *score, GError **error);
void fm_anova_result_free (FmAnovaResult *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmAnovaResult, fm_anova_result_free)

G_END_DECLS
