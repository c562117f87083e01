/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-plot.h - a map of three components as a triangle with curves of equal prediction
 *
 * Marks, patterns and words tell things apart, not colour. A click or the arrow keys set a point at
 * which the model is asked; Page Up and Page Down go from mark to mark. Signal "open-version"
 * (gint64): Enter on the mark of a version, or a second click.
 */
#pragma once

#include "app/charts/fm-chart.h"
#include "app/map/fm-map-picture.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_PLOT (fm_map_plot_get_type ())
G_DECLARE_FINAL_TYPE (FmMapPlot, fm_map_plot, FM, MAP_PLOT, FmChart)

/** @picture: (transfer full); @document: to write shares. */
void fm_map_plot_take (FmMapPlot *self, FmMapDocument *document, FmMapPicture *picture);
/** Shows none: what the picture was made of goes away. */
void fm_map_plot_drop (FmMapPlot *self);
/** @x: (out): the blend of the mark that is picked, else of the point that was asked. FALSE when
 * there is none, or it lies outside of the region. */
gboolean fm_map_plot_get_asked (FmMapPlot *self, double *x);
/** (transfer none) (nullable) */
const FmMapPicture *fm_map_plot_get_picture (FmMapPlot *self);

G_END_DECLS
