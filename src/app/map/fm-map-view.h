/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-view.h - one map: what changes, the trials, and what they show */
#pragma once

#include "app/log/fm-stored-view.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_VIEW (fm_map_view_get_type ())
G_DECLARE_FINAL_TYPE (FmMapView, fm_map_view, FM, MAP_VIEW, FmStoredView)

/** The versions that a map can start from: FmVersionInfo. (transfer none) */
void fm_map_view_set_versions (FmMapView *self, GPtrArray *versions);

G_END_DECLS
