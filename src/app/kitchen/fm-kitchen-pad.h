/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-pad.h - large keys for one number
 *
 * Signals: "entered" (double value): a good number, in the base unit of the measure;
 * "cancelled" ().
 */
#pragma once

#include <gtk/gtk.h>

#include "core/base/fm-measure.h"

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_PAD (fm_kitchen_pad_get_type ())
G_DECLARE_FINAL_TYPE (FmKitchenPad, fm_kitchen_pad, FM, KITCHEN_PAD, GtkWidget)

/** Asks for a number called @what between @min and @max of the base unit. @hint: (nullable) */
void fm_kitchen_pad_ask (FmKitchenPad *self,
                         const char *what,
                         const char *hint,
                         FmMeasure measure,
                         double min,
                         double max);

G_END_DECLS
