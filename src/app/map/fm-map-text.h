/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-text.h - a map in words */
#pragma once

#include "app/map/fm-map-document.h"
#include "core/mixture/fm-map-design.h"

G_BEGIN_DECLS

/** "Salt stays at 1.8 % of the blend." a line each. @blend: (nullable). Returns: (transfer full).
 */
char *
fm_map_text_fixed (const FmMixBlend *blend, const FmFormula *base, const GPtrArray *components);
/** FmMapLimit, a line each. Returns: (transfer full). */
char *fm_map_text_limits (const GPtrArray *limits);
/** Translated: "corner", "middle of a side" ... */
const char *fm_map_text_kind (FmMixPointKind kind);
/** Translated, with article: "the linear model" ... */
const char *fm_map_text_order (FmMixOrder order);
/** How many trials and which models they are enough for. Returns: (transfer full). */
char *fm_map_text_design (const GArray *points, guint q);
/** What an optimal choice needs. Returns: (transfer full). */
char *fm_map_text_optimal (const FmMap *map);
/** Warns of points outside; NULL when there are none. Returns: (transfer full). */
char *fm_map_text_outside (const GArray *points, const FmMixRegion *region);
/** "7 trials, 3 made into versions". Returns: (transfer full). */
char *fm_map_text_trials (guint n, guint n_made);
/** "Not made", "Version 7, tasted 2 times". Returns: (transfer full). */
char *fm_map_text_state (const FmMapPoint *point, const FmMapData *data);

G_END_DECLS
