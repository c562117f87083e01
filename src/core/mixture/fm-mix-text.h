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
} FmMixResponse;

/** "55 % chuck, 30 % brisket, 15 % short rib", largest share first; shares that would read 0 are
 * left out. */
char *fm_mix_shares_text (guint q, const double *x, const char *const *names);
/** How far off the model is for a blend it has not seen (leave-one-out), in units of the
 * response. */
char *fm_mix_fit_sentence (const FmMixFit *fit, const FmMixResponse *response);
/** What repeats say about the model. */
char *fm_mix_lack_sentence (const FmMixFit *fit);

/** The sentences below mark the prediction as one and ask for a blind confirmation. */
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
char *fm_mix_unknown_sentence (const FmMixFit *fit,
                               const FmMixSpot *spot,
                               const char *const *names,
                               const FmMixResponse *response);

/** Methods and their sources. */
char *fm_mix_fit_method (const FmMixFit *fit);
char *fm_mix_joined_method (void);
char *fm_mix_next_method (void);

G_END_DECLS
