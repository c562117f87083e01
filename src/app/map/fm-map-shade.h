/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-shade.h - a map's predicted values as shades, and hatches where it is unsure of them
 *
 * The shades are the ramp of fm-colour-ramp.h: lightness alone tells high from low. The contours
 * say the values.
 */
#pragma once

#include "app/charts/fm-chart-canvas.h"
#include "app/map/fm-map-frame.h"

G_BEGIN_DECLS

/** Inside of the region only; nothing where the map does not predict. */
void
fm_map_shade_draw (const FmMapPicture *picture, const FmMapFrame *frame, FmChartCanvas *canvas);
/** Lines one way where it is less sure, both ways where it is least sure. */
void
fm_map_shade_hatch (const FmMapPicture *picture, const FmMapFrame *frame, FmChartCanvas *canvas);
/** The ramp with the values at its ends, where the region leaves room for it. */
void fm_map_shade_key (const FmMapPicture *picture, const FmMapFrame *frame, FmChartCanvas *canvas);
/** A path along the region's edge. */
void
fm_map_shade_region (const FmMapPicture *picture, const FmMapFrame *frame, FmChartCanvas *canvas);

G_END_DECLS
