/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-pad.h - large keys for one number that is to be noted
 *
 * Signals:
 *   "entered" (int FmKitchenKind, int portion, double value, char *words)  a good number, in the
 *     base unit of the measure; portion -1: it is about none; words (nullable): name the weighing
 *   "cancelled" (int FmKitchenKind)
 */
#pragma once

#include <gtk/gtk.h>

#include "core/experiment/fm-experiment.h"
#include "core/kitchen/fm-kitchen-event.h"

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_PAD (fm_kitchen_pad_get_type ())
G_DECLARE_FINAL_TYPE (FmKitchenPad, fm_kitchen_pad, FM, KITCHEN_PAD, GtkWidget)

/** Asks for what @kind notes of @portion: its core, its raw or its cooked mass. */
void fm_kitchen_pad_ask_portion (FmKitchenPad *self, FmKitchenKind kind, int portion);
/** Asks what the scale says of @weighing. */
void fm_kitchen_pad_ask_weighing (FmKitchenPad *self, const FmWeighing *weighing);

G_END_DECLS
