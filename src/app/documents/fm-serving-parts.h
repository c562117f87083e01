/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-serving-parts.h - what comes with the patty: rows to edit, and where new ones come from
 *
 * Signals:
 *   "changed"  the dish was edited
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"
#include "core/dish/fm-dish.h"

G_BEGIN_DECLS

#define FM_TYPE_SERVING_PARTS (fm_serving_parts_get_type ())
G_DECLARE_FINAL_TYPE (FmServingParts, fm_serving_parts, FM, SERVING_PARTS, GtkWidget)

/** @names: FmFormulaName (transfer full): formulas that can come along. */
void fm_serving_parts_begin (FmServingParts *self, FmSession *session, GPtrArray *names);
/** @dish: (nullable) is edited in place and outlives its being shown. */
void fm_serving_parts_set_dish (FmServingParts *self, FmDish *dish);
/** A number that is refused, NULL when all are good. (transfer none) */
const char *fm_serving_parts_bad_text (FmServingParts *self);

G_END_DECLS
