/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-list.h - nutrients in the order of a label, those without a value folded away
 *
 * Signal: "activated" (guint nutrient): the user wants to know where a figure comes from.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/formula/fm-nutrition-text.h"

G_BEGIN_DECLS

#define FM_TYPE_NUTRITION_LIST (fm_nutrition_list_get_type ())
G_DECLARE_FINAL_TYPE (FmNutritionList, fm_nutrition_list, FM, NUTRITION_LIST, GtkWidget)

/** @texts, @amounts: FM_N_NUTRIENTS. */
void fm_nutrition_list_show (FmNutritionList *self,
                             const FmNutritionText *texts,
                             const FmAmount *amounts);
void fm_nutrition_list_show_daily_value (FmNutritionList *self, gboolean shown);

G_END_DECLS
