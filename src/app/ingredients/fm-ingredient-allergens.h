/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-allergens.h - what somebody stated about the allergens of an ingredient
 *
 * Not stated is a state of its own: it is never shown or read as "none".
 */
#pragma once

#include <adwaita.h>

#include "core/composition/fm-ingredient.h"

G_BEGIN_DECLS

#define FM_TYPE_INGREDIENT_ALLERGENS (fm_ingredient_allergens_get_type ())
G_DECLARE_FINAL_TYPE (
    FmIngredientAllergens, fm_ingredient_allergens, FM, INGREDIENT_ALLERGENS, AdwBin)

void fm_ingredient_allergens_show (FmIngredientAllergens *self, const FmIngredient *from);
void fm_ingredient_allergens_read (FmIngredientAllergens *self, FmIngredient *to);

G_END_DECLS
