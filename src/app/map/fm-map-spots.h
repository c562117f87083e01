/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-spots.h - the predicted best blend and the next ones to try, each with its reason */
#pragma once

#include <gtk/gtk.h>

#include "app/map/fm-map-fit-job.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_SPOTS (fm_map_spots_get_type ())
G_DECLARE_FINAL_TYPE (FmMapSpots, fm_map_spots, FM, MAP_SPOTS, GtkWidget)

/** @fit: (nullable): nothing is shown without one; only read. @document: where versions are made.
 */
void fm_map_spots_show (FmMapSpots *self, FmMapDocument *document, const FmMapFit *fit);

G_END_DECLS
