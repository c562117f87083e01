/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-price-choice.h - any version at today's prices, and the price list out and in */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_PRICE_CHOICE (fm_price_choice_get_type ())
G_DECLARE_FINAL_TYPE (FmPriceChoice, fm_price_choice, FM, PRICE_CHOICE, GtkWidget)

/** Opens the prices, beginning with what is shown, over the window of @parent. */
void fm_price_choice_present (GtkWidget *parent, FmSession *session);

G_END_DECLS
