/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-prices.h - what an ingredient cost, and since when
 *
 * A price is kept under the identity of its ingredient (fm_ingredient_identity()), so that all
 * blends of a notebook share one history. A saved version keeps the price it was made with, which
 * lies in its own formula and not here.
 */
#pragma once

#include "core/composition/fm-ingredient.h"
#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

typedef struct {
  double price_per_kg; /* as purchased, in the notebook's currency */
  gint64 recorded_at;  /* unix seconds */
} FmPrice;

/**
 * Notes the price of @ingredient at @recorded_at, unless it is the one noted last. An ingredient
 * without a price is left out, which is no error.
 */
gboolean fm_prices_record (FmNotebook *self,
                           const FmIngredient *ingredient,
                           gint64 recorded_at,
                           GError **error);
/** At most @n_max prices, the latest first. Returns: (transfer full) (element-type FmPrice). */
GArray *fm_prices_list (FmNotebook *self, const char *identity, guint n_max, GError **error);
/** identity -> FmPrice, the one noted last of each. Returns: (transfer full). */
GHashTable *fm_prices_today (FmNotebook *self, GError **error);
/** Notes the prices of @ingredients (FmIngredient) as fm_prices_record(), all or none; an own entry
 * keeps its new price as well. @n_changed: (out): how many were not the same already. */
gboolean fm_prices_record_all (FmNotebook *self,
                               const GPtrArray *ingredients,
                               gint64 recorded_at,
                               guint *n_changed,
                               GError **error);

G_END_DECLS
