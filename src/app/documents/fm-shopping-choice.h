/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-shopping-choice.h - the batches of a shopping list */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_SHOPPING_CHOICE (fm_shopping_choice_get_type ())
G_DECLARE_FINAL_TYPE (FmShoppingChoice, fm_shopping_choice, FM, SHOPPING_CHOICE, GtkWidget)

/** Opens a shopping list that begins with what is shown, over the window of @parent. */
void fm_shopping_choice_present (GtkWidget *parent, FmSession *session);

G_END_DECLS
