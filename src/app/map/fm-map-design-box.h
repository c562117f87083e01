/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-design-box.h - chooses how the trials of a map are drawn up, and draws them up */
#pragma once

#include <gtk/gtk.h>

#include "app/map/fm-map-document.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_DESIGN_BOX (fm_map_design_box_get_type ())
G_DECLARE_FINAL_TYPE (FmMapDesignBox, fm_map_design_box, FM, MAP_DESIGN_BOX, GtkWidget)

/** @document: (nullable) */
void fm_map_design_box_set_document (FmMapDesignBox *self, FmMapDocument *document);

G_END_DECLS
