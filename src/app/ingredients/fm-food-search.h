/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-search.h - an entry that finds foods of the dataset and the developer's own entries
 *
 * It searches as one types, off the main thread; the latest text wins. The cursor stays in the
 * entry: the arrows move the highlight, Enter takes what is highlighted.
 *
 * Signals:
 *   "chosen" (gpointer FmIngredient)  the user took a hit; valid during the emission
 *   "own-entry" (char *text)          the user wants to write an entry of their own
 *   "pasted" (char *text) → gboolean  text of several lines was pasted; TRUE: it was taken
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_FOOD_SEARCH (fm_food_search_get_type ())
G_DECLARE_FINAL_TYPE (FmFoodSearch, fm_food_search, FM, FOOD_SEARCH, GtkWidget)

void fm_food_search_set_session (FmFoodSearch *self, FmSession *session);
/** Looks for @text as if it had been typed. */
void fm_food_search_look_for (FmFoodSearch *self, const char *text);

G_END_DECLS
