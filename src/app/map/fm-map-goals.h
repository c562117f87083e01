/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-goals.h - several responses at once: goals, and the blend that meets them best */
#pragma once

#include <gtk/gtk.h>

#include "app/map/fm-map-document.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_GOALS (fm_map_goals_get_type ())
G_DECLARE_FINAL_TYPE (FmMapGoals, fm_map_goals, FM, MAP_GOALS, GtkWidget)

/** @document: (nullable). Call again when what was measured changed. */
void fm_map_goals_show (FmMapGoals *self, FmMapDocument *document);

G_END_DECLS
