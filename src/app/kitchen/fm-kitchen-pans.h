/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-pans.h - a tile for each position of the pan, and for what rests beside it
 *
 * Signal: "chosen" (int portion): the cook means this portion from now on.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/kitchen/fm-kitchen-state.h"

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_PANS (fm_kitchen_pans_get_type ())
G_DECLARE_FINAL_TYPE (FmKitchenPans, fm_kitchen_pans, FM, KITCHEN_PANS, GtkWidget)

/** @chosen: -1 = none */
void fm_kitchen_pans_show (FmKitchenPans *self,
                           const FmKitchenState *state,
                           const FmKitchenPlan *plan,
                           int chosen,
                           const FmKitchenMoment *now);
/** What is estimated of @portion, shown with its tile; NULL = nothing. */
void fm_kitchen_pans_set_estimate (FmKitchenPans *self, int portion, const char *text);

G_END_DECLS
