/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-row.h - one nutrient in the nutrition panel */
#pragma once

#include <gtk/gtk.h>

#include "core/formula/fm-nutrition-text.h"

G_BEGIN_DECLS

#define FM_TYPE_NUTRITION_ROW (fm_nutrition_row_get_type ())
G_DECLARE_FINAL_TYPE (FmNutritionRow, fm_nutrition_row, FM, NUTRITION_ROW, GtkListBoxRow)

/** @is_part: set in, as a part of the row above. */
GtkWidget *fm_nutrition_row_new (FmNutrient nutrient, gboolean is_part);
/** Shows @text, "—" unless @is_known; labels whose text stays the same are left alone. */
void
fm_nutrition_row_set_text (FmNutritionRow *self, const FmNutritionText *text, gboolean is_known);
void fm_nutrition_row_show_daily_value (FmNutritionRow *self, gboolean shown);

G_END_DECLS
