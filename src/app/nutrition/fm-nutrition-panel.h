/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-panel.h - nutrients of what the centre shows, raw and cooked */
#pragma once

#include "app/widgets/fm-page.h"

G_BEGIN_DECLS

#define FM_TYPE_NUTRITION_PANEL (fm_nutrition_panel_get_type ())
G_DECLARE_FINAL_TYPE (FmNutritionPanel, fm_nutrition_panel, FM, NUTRITION_PANEL, FmPage)

G_END_DECLS
