/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-text.h - a fitted mixture model in plain sentences
 *
 * A refusal is the message of the error that fm_mix_fit() gave. All strings are translated, without
 * markup, (transfer full).
 */
#pragma once

#include "core/mixture/fm-mix-fit.h"

G_BEGIN_DECLS

/** What was measured, as it is written. */
typedef struct {
  const char *name; /* "liking", "cook loss": fits into a sentence */
  const char *unit; /* nullable: "%", "g" */
  int decimals;
  const char *confirm; /* nullable: asks to confirm a prediction; NULL = in a blind tasting */
  const char *once;    /* nullable: what one new value is, "one new score"; NULL = measurement */
  double low_end;      /* the response cannot be less; both ends 0 = it has none */
  double high_end;     /* nor more; may be INFINITY */
} FmMixResponse;

/** "7.1", "24.3 %" (transfer full) */
char *fm_mix_value_text (const FmMixResponse *response, double value);
/** What the model says at @x; no interval goes beyond the ends of the response. */
void fm_mix_predict_within (const FmMixFit *fit,
                            const double *x,
                            const FmMixResponse *response,
                            FmMixPrediction *prediction);
/** "quadratic model", for the middle of a sentence (transfer full) */
char *fm_mix_model_name (FmMixOrder order);

/** "55 % chuck, 30 % brisket, 15 % short rib", largest share first; shares that would read 0 are
 * left out. */
char *fm_mix_shares_text (guint q, const double *x, const char *const *names);
/** What repeats say about the model. */
char *fm_mix_lack_sentence (const FmMixFit *fit);

/** The sentences below mark the prediction as one and ask for a blind confirmation. Intervals end
 * where the response ends. */
char *fm_mix_best_sentence (const FmMixFit *fit,
                            const FmMixSpot *spot,
                            const char *const *names,
                            const FmMixResponse *response);
/** @fits and @responses side by side; spot->value is the joined desirability. */
char *fm_mix_joined_sentence (guint n,
                              const FmMixFit *const *fits,
                              const FmMixResponse *responses,
                              const FmMixSpot *spot,
                              const char *const *names);
/** Largest expected improvement: spot->value, in units of the response. */
char *fm_mix_next_sentence (const FmMixFit *fit,
                            const FmMixSpot *spot,
                            const char *const *names,
                            const FmMixResponse *response);
/** For a model that predicts: where it knows least. */
char *fm_mix_unknown_sentence (const FmMixFit *fit,
                               const FmMixSpot *spot,
                               const char *const *names,
                               const FmMixResponse *response);
/** For a model that does not: the blend that would teach it most, without a prediction. */
char *
fm_mix_cook_next_sentence (const FmMixFit *fit, const FmMixSpot *spot, const char *const *names);
/** %NULL, or that @a and @b are one blend for a kitchen scale. */
char *fm_mix_one_blend_sentence (guint q, const double *a, const double *b);

/** Methods and their sources. */
char *fm_mix_fit_method (const FmMixFit *fit);
char *fm_mix_joined_method (void);
char *fm_mix_next_method (void);

G_END_DECLS
