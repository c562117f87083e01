/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-components.h - what a map changes, how far, and what keeps it in bounds */
#pragma once

#include <gtk/gtk.h>

#include "app/map/fm-map-document.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_COMPONENTS (fm_map_components_get_type ())
G_DECLARE_FINAL_TYPE (FmMapComponents, fm_map_components, FM, MAP_COMPONENTS, GtkWidget)

/** @document: (nullable) */
void fm_map_components_set_document (FmMapComponents *self, FmMapDocument *document);
/** FmVersionInfo by number: those that the base can be. */
void fm_map_components_set_versions (FmMapComponents *self, GPtrArray *versions);

G_END_DECLS
