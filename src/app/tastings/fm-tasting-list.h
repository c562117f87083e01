/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-list.h - the notebook's tastings: scope, list and what is said when it is empty */
#pragma once

#include "app/log/fm-log-list.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_LIST (fm_tasting_list_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingList, fm_tasting_list, FM, TASTING_LIST, FmLogList)

G_END_DECLS
