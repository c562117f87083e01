/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-order.h - the order of samples that is expected, written down before anyone tastes */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-tasting-document.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_ORDER (fm_tasting_order_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingOrder, fm_tasting_order, FM, TASTING_ORDER, GtkWidget)

/** @document: (nullable) of a tasting that is still planned */
void fm_tasting_order_set_document (FmTastingOrder *self, FmTastingDocument *document);
/** Shows the tasting as it is now: call when it changed elsewhere. */
void fm_tasting_order_refresh (FmTastingOrder *self);

G_END_DECLS
