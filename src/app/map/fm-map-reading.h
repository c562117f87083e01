/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-reading.h - what a map shows: fit, pictures, the best blend and the next one to try */
#pragma once

#include <gtk/gtk.h>

#include "app/map/fm-map-document.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_READING (fm_map_reading_get_type ())
G_DECLARE_FINAL_TYPE (FmMapReading, fm_map_reading, FM, MAP_READING, GtkWidget)

/** @document: (nullable) */
void fm_map_reading_set_document (FmMapReading *self, FmMapDocument *document);

G_END_DECLS
