/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-fit-job.h - fits a map's responses and looks for the blends worth a trial, in a thread */
#pragma once

#include "app/map/fm-map-document.h"
#include "core/mixture/fm-mix-standing.h"

G_BEGIN_DECLS

/** Which model is wanted; the orders of FmMixOrder, or the one that predicts best. */
typedef enum {
  FM_MAP_MODEL_BEST = -1,
  FM_MAP_MODEL_LINEAR = FM_MIX_LINEAR,
  FM_MAP_MODEL_QUADRATIC = FM_MIX_QUADRATIC,
  FM_MAP_MODEL_SPECIAL_CUBIC = FM_MIX_SPECIAL_CUBIC,
} FmMapModel;

/** What was asked and what came of it. */
typedef struct {
  FmMapResponse response;
  FmMapModel model;
  gboolean more_is_better;
  FmMixRegion region;
  FmMixData *data;
  GArray *version_id;   /* gint64, by row of the data */
  FmMixFit *fit;        /* NULL: see refusal */
  char *refusal;        /* (nullable): why there is no model, and what would help */
  char *search_problem; /* (nullable): why no blend was looked for */
  double reference[FM_MIX_MAX_COMPONENTS]; /* mean of the region's corners */
  FmMixVerdict verdict;
  gboolean has_unknown; /* @unknown was looked for: the blend of largest uncertainty */
  gboolean predicts;    /* the model may be believed, so best and next were looked for too */
  FmMixSpot best;
  FmMixSpot next; /* largest expected improvement */
  FmMixSpot unknown;
} FmMapFit;

/**
 * @document: with a region, and data read for it
 *
 * A refusal to fit is no error but part of the result. Errors: cancelled.
 */
void fm_map_fit_async (FmMapDocument *document,
                       FmMapResponse response,
                       FmMapModel model,
                       gboolean more_is_better,
                       GCancellable *cancellable,
                       GAsyncReadyCallback callback,
                       gpointer user_data);
FmMapFit *fm_map_fit_finish (GAsyncResult *result, GError **error);
void fm_map_fit_free (FmMapFit *self);

/** TRUE when the document has a region and data of as many components. */
gboolean fm_map_fit_is_ready (FmMapDocument *document);
/** A copy that a thread may keep. Returns: (transfer full). */
FmMixData *fm_map_fit_copy_data (const FmMixData *data, const char *const *names);
/** "liking", "cook loss" ...: the response within a sentence. */
const char *fm_map_fit_word (FmMapResponse response);
/** How a response is written in sentences; @unit keeps the text. */
FmMixResponse fm_map_fit_wording (FmMapResponse response, char **unit);
/** The best model of a response that predicts; NULL when there is none, with a sentence that says
 * why as @error. */
FmMixFit *fm_map_fit_judged (const FmMixData *data,
                             const FmMixRegion *region,
                             FmMapResponse response,
                             const FmStop *stop,
                             GError **error);
/** What is usually wanted of a response: much of liking, little of loss and cost. */
gboolean fm_map_fit_wants_more (FmMapResponse response);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMapFit, fm_map_fit_free)

G_END_DECLS
