/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-list.h - the maps of the shown blend: list and what is said when it is empty */
#pragma once

#include "app/log/fm-log-list.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_LIST (fm_map_list_get_type ())
G_DECLARE_FINAL_TYPE (FmMapList, fm_map_list, FM, MAP_LIST, FmLogList)

G_END_DECLS
