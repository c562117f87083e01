/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-trial-row.h - one trial of a map in words, with the way to make it into a version
 *
 * Signal: "make" (): the user asked for the version.
 */
#pragma once

#include "app/map/fm-map-document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_MAP_TRIAL_ROW (fm_map_trial_row_get_type ())
G_DECLARE_FINAL_TYPE (FmMapTrialRow, fm_map_trial_row, FM, MAP_TRIAL_ROW, GtkListBoxRow)

GtkWidget *fm_map_trial_row_new (void);
/** Shows point @index of the map. */
void fm_map_trial_row_update (FmMapTrialRow *self, FmMapDocument *document, guint index);

G_END_DECLS
