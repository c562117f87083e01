/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-list.h - the foods found, one of them highlighted
 *
 * The cursor stays in the search above; the list is no stop of the Tab key.
 *
 * Signals:
 *   "highlighted" (char *title)         another row is
 *   "own-taken" (gpointer FmIngredient) an own entry was taken, as the next ones by Enter or a
 * click "food-taken" (gpointer FmFoodHit) "write-taken" ()                    the row that writes
 * an own entry
 */
#pragma once

#include <gtk/gtk.h>

#include "app/ingredients/fm-food-find.h"

G_BEGIN_DECLS

#define FM_TYPE_FOOD_LIST (fm_food_list_get_type ())
G_DECLARE_FINAL_TYPE (FmFoodList, fm_food_list, FM, FOOD_LIST, GtkWidget)

/** Shows @found from the top. @found: (transfer none) (nullable): nothing; until the next call */
void fm_food_list_show (FmFoodList *self, const FmFoodFound *found);
/** Moves the highlight by @rows. FALSE when nothing is highlighted. */
gboolean fm_food_list_move (FmFoodList *self, int rows);
/** Which of the own entries is highlighted; -1 = none. */
int fm_food_list_get_own (FmFoodList *self);
/** Takes what is highlighted. */
void fm_food_list_take (FmFoodList *self);

G_END_DECLS
