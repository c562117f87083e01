/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-view.h - one tasting as a page: its plan, its sheets or its reading, by its state */
#pragma once

#include "app/log/fm-stored-view.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_VIEW (fm_tasting_view_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingView, fm_tasting_view, FM, TASTING_VIEW, FmStoredView)

G_END_DECLS
