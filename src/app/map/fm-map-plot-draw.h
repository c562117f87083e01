/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-plot-draw.h - draws a map's picture */
#pragma once

#include "app/charts/fm-chart-canvas.h"
#include "app/map/fm-map-frame.h"

G_BEGIN_DECLS

/** Needs no window. Row i of the chart's table is picture->placed[i]. */
void fm_map_plot_draw (const FmMapPicture *picture, FmChartCanvas *canvas);
/** A cross at a place of the plane. */
void
fm_map_plot_draw_point (const FmMapPicture *picture, FmMixPlanePoint at, FmChartCanvas *canvas);

G_END_DECLS
