/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-page.h - maps of the shown blend: what changes, the trials, and what they show */
#pragma once

#include "app/widgets/fm-page.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_PAGE (fm_map_page_get_type ())
G_DECLARE_FINAL_TYPE (FmMapPage, fm_map_page, FM, MAP_PAGE, FmPage)

G_END_DECLS
