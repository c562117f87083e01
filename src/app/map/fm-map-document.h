/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-document.h - one map being edited, with all that follows from it
 *
 * Widgets change the map in place and call fm_map_document_touch(). What follows (the mixture, its
 * region with the limits of the brief) is worked out at once; a copy is saved shortly after; what
 * was measured is read again in a thread when it can have changed.
 *
 * Signals, besides those of a stored document:
 *   "data-changed" ()        fm_map_document_get_data() changed
 */
#pragma once

#include "app/map/fm-map-limits.h"
#include "app/map/fm-map-response.h"
#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_DOCUMENT (fm_map_document_get_type ())
G_DECLARE_FINAL_TYPE (FmMapDocument, fm_map_document, FM, MAP_DOCUMENT, FmStoredDocument)

/** As of fm_documents_open(). @map and @base: (transfer full). */
FmMapDocument *fm_map_document_open (FmSession *session, FmMap *map, FmFormula *base);

FmSession *fm_map_document_get_session (FmMapDocument *self);
/** To read and to change; call touch after a change. (transfer none) */
FmMap *fm_map_document_get_map (FmMapDocument *self);
const FmFormula *fm_map_document_get_base (FmMapDocument *self);
/** Moves the map to another base version, which is read first, in a thread. */
void fm_map_document_choose_base (FmMapDocument *self, gint64 version_id);

/** The mixture; its region holds the bounds and the usable limits of the brief. NULL while the
 * components cannot be mixed: see fm_map_document_get_problem(). */
const FmMixBlend *fm_map_document_get_blend (FmMapDocument *self);
/** TRUE when blends lie between the bounds and within the limits, so that there is a map. */
gboolean fm_map_document_has_region (FmMapDocument *self);
/** A sentence about what keeps this from being a map; NULL when nothing does. */
const char *fm_map_document_get_problem (FmMapDocument *self);
/** FmMapLimit: the bands of the base's brief. (transfer none) */
GPtrArray *fm_map_document_get_limits (FmMapDocument *self);
/** The names of the components, as many as there are, NULL after the last. (transfer none) */
const char *const *fm_map_document_get_names (FmMapDocument *self);
/** The same, cut to what tells them apart ("Beef, chuck, blade roast") where they are told apart by
 * that. */
const char *const *fm_map_document_get_short_names (FmMapDocument *self);
/** Predicted by arithmetic from the ingredients; NaN when unknown. @cost_per_kg of edible mass. */
void fm_map_document_predict (FmMapDocument *self,
                              const double *x,
                              double *fat_pct,
                              double *cost_per_kg);

/** What was measured; NULL until it is read or while the components cannot be mixed. */
const FmMapData *fm_map_document_get_data (FmMapDocument *self);
/** Reads what was measured again, in a thread. */
void fm_map_document_reload_data (FmMapDocument *self);

gboolean fm_map_document_is_editable (FmMapDocument *self);
void fm_map_document_touch (FmMapDocument *self);
/** TRUE while points are being saved as versions. */
gboolean fm_map_document_is_making (FmMapDocument *self);
/** By fm-map-make.c only. */
void fm_map_document_set_making (FmMapDocument *self, gboolean making);
/** "Map “Fat and chew”, trial 3: Chuck 50 %, Brisket 50 %". Returns: (transfer full). */
char *fm_map_document_point_reason (FmMapDocument *self, guint index);
/** "Chuck 50.0 %, Brisket 50.0 %" for shares of the mixture. Returns: (transfer full). */
char *fm_map_document_shares_text (FmMapDocument *self, const double *x);

/**
 * Saves points of the map that are no version yet as versions, with their place as reason; the
 * draft stays as it is. Says what was saved, or why not, through the session. @indices: points.
 */
void fm_map_document_make_versions (FmMapDocument *self, const guint *indices, guint n);
/** Adds a blend picked elsewhere on the map as a point and saves it as a version. */
void fm_map_document_make_blend (FmMapDocument *self, const double *x, const char *reason);

G_END_DECLS
