/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-outcome.h - what an opened tasting found of each sample, small enough to be kept
 *
 * It becomes part of the story of the version that was tasted: tree, compare page, log, maps.
 */
#pragma once

#include "core/tasting/fm-tasting-reading.h"

G_BEGIN_DECLS

typedef struct {
  gint64 tasting_id;
  char *tasting_title;
  gint64 held_at;
  gint64 experiment_id; /* 0 = from outside */
  gint64 version_id;
  guint code;
  guint n_samples;       /* in that tasting */
  guint n_tasters;       /* who ranked or scored this sample */
  double rank_sum;       /* NaN = not asked */
  guint place;           /* see fm_rank_place(); 0 = not asked, or the sheets cannot say */
  gboolean is_separated; /* the overall test was significant at 5 % */
  double liking_mean;    /* adjusted for tasters; NaN = not asked */
  double liking_low;
  double liking_high;
  char *sentence; /* short: "first of four, 3 tasters" in the words of that reading */
} FmTastingOutcome;

/** One for each sample of the plan, in its order; (transfer full) with a free func. %NULL with an
 * error (LOCKED) while the tasting is not opened: results by sample would tell who is who. */
GPtrArray *
fm_tasting_outcomes_new (const FmTasting *tasting, const FmTastingReading *reading, GError **error);
void fm_tasting_outcome_free (FmTastingOutcome *outcome);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmTastingOutcome, fm_tasting_outcome_free)

G_END_DECLS
