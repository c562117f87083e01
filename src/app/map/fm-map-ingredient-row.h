/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-ingredient-row.h - whether a map changes one ingredient, alone or in a group
 *
 * Signal: "role-changed" (): the user chose another role.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/mixture/fm-map-choice.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_INGREDIENT_ROW (fm_map_ingredient_row_get_type ())
G_DECLARE_FINAL_TYPE (
    FmMapIngredientRow, fm_map_ingredient_row, FM, MAP_INGREDIENT_ROW, GtkListBoxRow)

GtkWidget *fm_map_ingredient_row_new (const FmMapIngredient *ingredient);
/** FmMapRole, see fm-map-choice.h. */
guint fm_map_ingredient_row_get_role (FmMapIngredientRow *self);
void fm_map_ingredient_row_set_editable (FmMapIngredientRow *self, gboolean editable);

G_END_DECLS
