/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-trials.h - the trials of a map: how they are chosen, and each with its state */
#pragma once

#include <gtk/gtk.h>

#include "app/map/fm-map-document.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_TRIALS (fm_map_trials_get_type ())
G_DECLARE_FINAL_TYPE (FmMapTrials, fm_map_trials, FM, MAP_TRIALS, GtkWidget)

/** @document: (nullable) */
void fm_map_trials_set_document (FmMapTrials *self, FmMapDocument *document);

G_END_DECLS
