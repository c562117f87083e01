/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-standing.h - whether a fitted map may speak of a best blend at all
 *
 * A model that predicts no better than the plain mean, misses something, or leaves the scale of its
 * response has no best blend and no contours; it can only say what to cook next so that it will.
 * Left-out blends: Allen (1974), Technometrics 16; lack of fit: Draper and Smith, Applied
 * Regression Analysis.
 */
#pragma once

#include "core/mixture/fm-mix-text.h"

G_BEGIN_DECLS

typedef enum {
  FM_MIX_PREDICTS,
  FM_MIX_ALL_ALIKE,       /* every value is the same */
  FM_MIX_QUALITY_UNKNOWN, /* without some blend the others could not carry the model */
  FM_MIX_BEATS_NO_MEAN,   /* the plain mean of the other blends is as near */
  FM_MIX_NOT_BEYOND_CHANCE,
  FM_MIX_LACKS_FIT,
  FM_MIX_LEAVES_SCALE,
} FmMixStanding;

typedef struct {
  FmMixStanding standing;
  double low; /* least and greatest expected value in the region; NaN when not looked for */
  double high;
} FmMixVerdict;

/**
 * fm_mix_judge:
 * @response: whose ends the model must not leave within @region
 *
 * A model is held to chance at 0.05 shared among the orders that were tried. Errors: the region has
 * no blend, stopped.
 */
gboolean fm_mix_judge (const FmMixFit *fit,
                       const FmMixRegion *region,
                       const FmMixResponse *response,
                       FmMixVerdict *verdict,
                       const FmStop *stop,
                       GError **error);

/** How well the map predicts, before anything that it predicts: first line of a map. Translated,
 * (transfer full). */
char *fm_mix_verdict_sentence (const FmMixVerdict *verdict,
                               const FmMixFit *fit,
                               const FmMixResponse *response);

G_END_DECLS
