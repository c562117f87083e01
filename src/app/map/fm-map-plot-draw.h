/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-plot-draw.h - draws a map's picture */
#pragma once

#include "app/charts/fm-chart-canvas.h"
#include "app/map/fm-map-picture.h"

G_BEGIN_DECLS

/** Needs no window. Row i of the chart's table is picture->placed[i]. */
void fm_map_plot_draw (const FmMapPicture *picture, FmChartCanvas *canvas);
/** What the triangle and the names of its corners need at this width, in pixels. */
int fm_map_plot_height (int width);
/** Pixels of a place in the plane, on a canvas of this size. */
void fm_map_plot_place (double width, double height, FmMixPlanePoint at, double *x, double *y);

G_END_DECLS
