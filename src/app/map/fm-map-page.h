/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-page.h - the maps of the shown blend, and one map as a page */
#pragma once

#include "app/log/fm-log-page.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_PAGE (fm_map_page_get_type ())
G_DECLARE_FINAL_TYPE (FmMapPage, fm_map_page, FM, MAP_PAGE, FmLogPage)

G_END_DECLS
