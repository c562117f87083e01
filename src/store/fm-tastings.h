/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tastings.h - tastings in the notebook, and what they found */
#pragma once

#include "core/tasting/fm-tasting-caution.h"
#include "core/tasting/fm-tasting-outcome.h"
#include "core/tasting/fm-tasting-pool.h"
#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/** A row of the list; says nothing about who is who. */
typedef struct {
  gint64 id;
  char *title;
  gint64 held_at;
  FmTastingState state;
  guint tasks;
  guint n_samples;
  guint n_experiments; /* of these; 0 = no blend is tasted */
  guint n_tasters;
  guint n_in;     /* sheets not waited for */
  char *headline; /* (nullable) of an opened tasting, as kept by fm_tastings_save_outcome() */
} FmTastingInfo;

/** One taster's liking of one version in an opened tasting, for maps. */
typedef struct {
  gint64 tasting_id;
  char *taster;
  gint64 experiment_id;
  gint64 version_id;
  double liking; /* 1 .. 9 */
} FmTastingScore;

void fm_tasting_info_free (FmTastingInfo *info);
void fm_tasting_score_free (FmTastingScore *score);

/* Lists are (transfer full) with a free func set. */
/** @blend_id: only those with a sample of that blend; 0 = all. Newest first. */
GPtrArray *fm_tastings_list (FmNotebook *self, gint64 blend_id, GError **error);
/**
 * @blend_id: those of a blend, and those with no experiment, which are of no blend; 0 = all
 * @only_id: 0, or the only one that is listed
 *
 * Newest first.
 */
GPtrArray *
fm_tastings_list_near (FmNotebook *self, gint64 blend_id, gint64 only_id, GError **error);
FmTasting *fm_tastings_load (FmNotebook *self, gint64 id, GError **error);
/**
 * Inserts (id 0; sets the id) or updates; one transaction. Refuses (FROZEN) to change cups, samples
 * or seed of a stored tasting that is not planned any more, to seal again what was opened, and a
 * sample whose experiment does not exist.
 */
gboolean fm_tastings_save (FmNotebook *self, FmTasting *tasting, GError **error);
/** All of @tastings (element-type FmTasting), or none. */
gboolean fm_tastings_save_all (FmNotebook *self, const GPtrArray *tastings, GError **error);
gboolean fm_tastings_remove (FmNotebook *self, gint64 id, GError **error);
/** Keeps the results of an opened tasting beside it: replaces earlier ones. @outcomes:
 * FmTastingOutcome by sample (fm_tasting_outcomes_new()). Refuses while it is sealed. */
gboolean fm_tastings_save_outcome (
    FmNotebook *self, gint64 id, const char *headline, const GPtrArray *outcomes, GError **error);
/** Outcomes of opened tastings: of a blend's versions, or of one version or experiment (the
 * others 0). Newest first. */
GPtrArray *fm_tastings_outcomes (
    FmNotebook *self, gint64 blend_id, gint64 version_id, gint64 experiment_id, GError **error);
/** What is on record of a tasting's samples, as the notebook is now: FmTastingCaution, one a sample
 * in their order. */
GPtrArray *fm_tastings_cautions (FmNotebook *self, const FmTasting *tasting, GError **error);
/** TRUE when exactly these results are kept of the tasting already. */
gboolean fm_tastings_has_outcome (FmNotebook *self,
                                  gint64 id,
                                  const char *headline,
                                  const GPtrArray *outcomes);
/** Names of tasters, each once; those of the latest tasting first. */
GPtrArray *fm_tastings_tasters (FmNotebook *self, GError **error);
/**
 * All opened tastings with a sample of a blend, as one pool; versions are called by their numbers,
 * those of other blends by their blend as well.
 * @left_out: (nullable) (element-type gint64): ids of tastings that are not to be in it
 */
FmTastingPool *
fm_tastings_pool (FmNotebook *self, gint64 blend_id, const GArray *left_out, GError **error);
/** All liking scores of a blend's versions in opened tastings. */
GPtrArray *fm_tastings_scores (FmNotebook *self, gint64 blend_id, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmTastingInfo, fm_tasting_info_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmTastingScore, fm_tasting_score_free)

G_END_DECLS
