/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-slices.h - a fitted map as a picture: a triangle of three components with the others
 * held, or a curve for two; with its legend and the same as a table
 */
#pragma once

#include <gtk/gtk.h>

#include "app/map/fm-map-fit-job.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_SLICES (fm_map_slices_get_type ())
G_DECLARE_FINAL_TYPE (FmMapSlices, fm_map_slices, FM, MAP_SLICES, GtkWidget)

/** @fit: (nullable): nothing is shown without a model; must live until the next call. */
void fm_map_slices_show (FmMapSlices *self, FmMapDocument *document, const FmMapFit *fit);

G_END_DECLS
