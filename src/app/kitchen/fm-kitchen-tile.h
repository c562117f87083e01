/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-tile.h - one portion, to be read from two metres: where it stands and its timer
 *
 * Signal: "chosen": the cook means this portion from now on.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/kitchen/fm-kitchen-state.h"

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_TILE (fm_kitchen_tile_get_type ())
G_DECLARE_FINAL_TYPE (FmKitchenTile, fm_kitchen_tile, FM, KITCHEN_TILE, GtkWidget)

GtkWidget *fm_kitchen_tile_new (void);
/** -1 = none: the tile is empty. */
int fm_kitchen_tile_get_portion (FmKitchenTile *self);
/** @estimate: (nullable): sentence of the estimate of its centre */
void fm_kitchen_tile_show (FmKitchenTile *self,
                           const FmKitchenState *state,
                           const FmKitchenPlan *plan,
                           int portion,
                           gboolean is_chosen,
                           const FmKitchenMoment *now,
                           const char *estimate);

G_END_DECLS
