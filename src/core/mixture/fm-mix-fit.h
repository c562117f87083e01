/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-fit.h - Scheffe models fitted to what was measured, and what they can say
 *
 * Sources: Scheffe (1958, 1963); Cornell, Experiments with Mixtures (2002); least squares by GSL
 * (QR / SVD); leave-one-out by the hat matrix (PRESS: Allen 1974, Technometrics 16); lack of fit
 * against replicates (Draper and Smith, Applied Regression Analysis); expected improvement: Jones,
 * Schonlau and Welch (1998, J. Global Optimization 13); desirability: Derringer and Suich (1980,
 * J. Quality Technology 12).
 */
#pragma once

#include "core/mixture/fm-mix.h"

G_BEGIN_DECLS

/** Observations: several rows of the same blend are replicates. */
typedef struct {
  FmMixPoints *x;  /* one row per observation */
  double *y;       /* [x->n], finite */
  guint n_factors; /* blocks: e.g. 2 for session and taster; 0 = none */
  guint *level;    /* [x->n x n_factors] by rows, 0 based */
  char **names;    /* of the components, for messages; NULL = numbers */
  guint n_room;    /* rows that y and level have room for */
} FmMixData;

/**
 * A Scheffe model: no constant, since the shares sum to 1; the coefficient of a component is what
 * is expected of it alone.
 *
 * Block factors (session, taster) are fixed effects whose columns sum to zero over the values, so
 * that the coefficients and all predictions are those at the mean of the values: a session counts
 * by how many values it gave. Levels that cannot be told apart from levels of another factor
 * (tasters who came to one session only) lose the columns that say nothing new; the factor with
 * more levels keeps its own.
 */
typedef struct {
  FmMixOrder order;
  guint q;
  guint n;        /* observations */
  guint n_blends; /* different blends among them; shares alike to 1e-6 are the same blend */
  guint n_blocks; /* parameters spent on block factors */
  guint n_terms;
  double *coefficient; /* [n_terms], at the mean of the blocks */
  double *std_error;   /* [n_terms] */
  double *covariance;  /* [n_terms x n_terms] */
  guint df_error;      /* n - terms - block parameters */
  double ss_error;
  double ss_total; /* about the mean, after blocks */
  double sigma;    /* root mean square of the error */
  double r2;       /* 1 - ss_error / ss_total, NOT against zero */
  double r2_adjusted;
  double f; /* of the model against equal blends; df n_terms - 1 */
  double p;
  /* leave-one-blend-out prediction error: replicates leave together. NaN when the rest cannot
   * predict some blend, which then decides a term alone. A value whose taster or session had this
   * blend only is not counted. */
  double loo_rmse;
  double loo_r2; /* 1 - mean square of that error / (ss_total / n); can be below 0 */
  /* The same for the mean of a blend's values, which is what a map is to tell: of this model, and
   * of the plain mean of the other blends beside the same blocks. NaN as above. */
  double loo_blend_rmse;
  double loo_mean_rmse;
  /* Pure error: same blend, same blocks; with block factors what the model of one mean for each
   * blend plus blocks leaves over. */
  guint df_pure; /* 0 = nothing was replicated */
  guint df_lack;
  double ss_pure;
  double ss_lack;
  double f_lack; /* NaN when not testable */
  double p_lack;
} FmMixFit;

FmMixData *fm_mix_data_new (guint q, guint n_factors);
void fm_mix_data_free (FmMixData *self);
/** @level: [n_factors], nullable when there are none. */
void fm_mix_data_add (FmMixData *self, const double *x, double y, const guint *level);
/** Names for messages; [q], nullable. */
void fm_mix_data_set_names (FmMixData *self, const char *const *names);

/**
 * fm_mix_fit:
 *
 * Errors (a sentence that says what is missing and how many more trials would do): fewer
 * different blends than terms, fewer than one degree of freedom for error, blends that lie so that
 * terms cannot be told apart (names them), blends that cannot be told from sessions or tasters
 * because none came back in another one, a value that is not finite.
 */
FmMixFit *fm_mix_fit (const FmMixData *data, FmMixOrder order, GError **error);
/** The model whose leave-one-out error is lowest among those that the data carry with at least two
 * degrees of freedom for error; of two alike the smaller. A model whose leave-one-out error is not
 * known is only taken when the smaller one shows lack of fit (p < 0.05). NULL with @error when not
 * even the linear one can be fitted. */
FmMixFit *fm_mix_fit_best (const FmMixData *data, GError **error);
void fm_mix_fit_free (FmMixFit *self);

typedef struct {
  double mean;
  double se_mean; /* of the expected value at that blend */
  double low;     /* 95 % t interval of the expected value */
  double high;
  double new_low; /* 95 % interval of one new observation */
  double new_high;
} FmMixPrediction;

/** What the model says at @x, at the mean of the blocks. */
void fm_mix_predict (const FmMixFit *self, const double *x, FmMixPrediction *prediction);

typedef enum {
  FM_MIX_GOAL_HIGH, /* more is better: 0 at low, 1 at high */
  FM_MIX_GOAL_LOW,  /* less is better: 1 at low, 0 at high */
  FM_MIX_GOAL_NEAR, /* 0 at low and high, 1 at target */
} FmMixGoalKind;

/** One response of several, Derringer and Suich. */
typedef struct {
  FmMixGoalKind kind;
  double low;
  double target; /* FM_MIX_GOAL_NEAR only */
  double high;
  double weight; /* importance, > 0; exponent of the overall mean */
} FmMixGoal;

/** 0 .. 1; NaN for a value that is not known. */
double fm_mix_desirability (const FmMixGoal *goal, double value);
/** Weighted geometric mean of @n desirabilities; 0 as soon as one is 0. */
double fm_mix_desirability_joined (guint n, const FmMixGoal *goals, const double *values);

typedef struct {
  double x[FM_MIX_MAX_COMPONENTS];
  double value; /* what was looked for: predicted mean, joined desirability, improvement, se */
} FmMixSpot;

/**
 * Highest (or, with FM_MIX_GOAL_LOW, lowest) predicted mean in the region; FM_MIX_GOAL_NEAR:
 * closest to the goal's target. Vertices and centroids as starts, then a search along the sides;
 * the result lies in the region.
 */
gboolean fm_mix_find_best (const FmMixFit *fit,
                           const FmMixRegion *region,
                           const FmMixGoal *goal,
                           FmMixSpot *spot,
                           const FmStop *stop,
                           GError **error);
/** @fits and @goals side by side; value = joined desirability. */
gboolean fm_mix_find_joined (guint n,
                             const FmMixFit *const *fits,
                             const FmMixGoal *goals,
                             const FmMixRegion *region,
                             FmMixSpot *spot,
                             const FmStop *stop,
                             GError **error);
/** Largest expected improvement over the best predicted mean among the tasted blends (those in
 * @data); value = expected improvement in units of y. */
gboolean fm_mix_find_next (const FmMixFit *fit,
                           const FmMixData *data,
                           const FmMixRegion *region,
                           const FmMixGoal *goal,
                           FmMixSpot *spot,
                           const FmStop *stop,
                           GError **error);
/** Where the model knows least: value = se of the mean. */
gboolean fm_mix_find_unknown (const FmMixFit *fit,
                              const FmMixRegion *region,
                              FmMixSpot *spot,
                              const FmStop *stop,
                              GError **error);

/** Trace (Cox direction): from @reference towards pure component @i, others keeping their
 * proportions, within the region. @n points; rows of the result. Errors: less than two points. */
FmMixPoints *fm_mix_trace (
    const FmMixRegion *region, const double *reference, guint component, guint n, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMixData, fm_mix_data_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMixFit, fm_mix_fit_free)

G_END_DECLS
