/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-design.h - draws up the trials of a map */
#pragma once

#include "core/mixture/fm-map.h"

G_BEGIN_DECLS

/* More trials than this are not drawn up: nobody makes so many. Common practice, no source. */
#define FM_MAP_MAX_TRIALS 150

/**
 * fm_map_design_points:
 * @self: components, design, degree, order, number of trials and seed are read; points that are
 *   versions already count as made by the D-optimal choice
 * @region: bounds and limits
 *
 * FmMapPoint of the design, none a version. Lattice and centroid use the lower bounds only: their
 * points may lie outside @region. May take seconds when D-optimal. Errors: those of fm-mix.h, or
 * more than FM_MAP_MAX_TRIALS.
 */
GArray *fm_map_design_points (const FmMap *self,
                              const FmMixRegion *region,
                              const FmStop *stop,
                              GError **error);
/**
 * The trials of @design after those of @made that are versions, which keep their numbers; a point
 * of @design where such a version lies is left out. Returns: (transfer full).
 */
GArray *fm_map_design_join (const GArray *made, const GArray *design, guint q);
/** Points of @points (FmMapPoint) that lie outside @region. */
guint fm_map_design_n_outside (const GArray *points, const FmMixRegion *region);
/** TRUE when @points can tell all terms of the model apart. */
gboolean fm_map_design_carries (const GArray *points, FmMixOrder order, guint q);

G_END_DECLS
