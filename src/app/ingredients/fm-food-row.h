/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-row.h - one line under the food search: a food, the way to more of them, or to an own
 * entry
 *
 * The cursor stays in the search, which moves the highlight; rows are no stop of the Tab key.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/composition/fm-ingredient.h"
#include "store/fm-food-store.h"

G_BEGIN_DECLS

typedef enum {
  FM_FOOD_ROW_OWN,   /* an entry of the developer's own */
  FM_FOOD_ROW_FOOD,  /* a food of the dataset */
  FM_FOOD_ROW_READY, /* unfolds what is ready-made */
  FM_FOOD_ROW_WRITE, /* writes an own entry for the text */
} FmFoodRowKind;

#define FM_TYPE_FOOD_ROW (fm_food_row_get_type ())
G_DECLARE_FINAL_TYPE (FmFoodRow, fm_food_row, FM, FOOD_ROW, GtkListBoxRow)

/** @removable: has a button for the action "food.remove" of @index */
GtkWidget *fm_food_row_new_own (const FmIngredient *own, guint index, gboolean removable);
GtkWidget *fm_food_row_new_food (const FmFoodHit *hit, guint index);
GtkWidget *fm_food_row_new_ready (guint n_foods);
GtkWidget *fm_food_row_new_write (const char *text);
FmFoodRowKind fm_food_row_get_kind (FmFoodRow *self);
/** Which of the own entries or of the foods the row shows. */
guint fm_food_row_get_index (FmFoodRow *self);
/** What the row says, in one line. */
const char *fm_food_row_get_title (FmFoodRow *self);

G_END_DECLS
