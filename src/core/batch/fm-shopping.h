/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-shopping.h - what to buy for several batches together
 *
 * The same stuff of all batches is one item; only the sum is rounded up to the steps of the shop.
 */
#pragma once

#include "core/batch/fm-batch.h"

G_BEGIN_DECLS

typedef struct {
  const FmFormula *formula; /* outlives the list */
  FmBatchPlan plan;
} FmShoppingOrder;

typedef struct {
  const FmIngredient *ingredient; /* as in the first batch that has it */
  const char *supplier;           /* (nullable) not known */
  double purchased_g;             /* with trim loss */
  double bought_g;                /* in whole steps, rounded up */
  double cost;                    /* of purchased_g that has a price; NaN = none has */
  gboolean is_cost_whole;
  gboolean yield_assumed; /* no EP yield is stated, 100 % taken */
} FmShoppingItem;

typedef struct {
  GArray *items;         /* FmShoppingItem by supplier, the unknown one last, then by name */
  double surface_salt_g; /* for the surface of the patties, on top of the items */
  double cost;           /* of the items; NaN = none has a price */
  gboolean is_cost_whole;
} FmShopping;

/**
 * fm_shopping_new:
 * @orders: FmShoppingOrder, one a batch
 * @suppliers: (nullable): fm_ingredient_identity() -> name; outlives the list
 * @buy_step_g: steps in which the shop weighs out; 0 = exact
 *
 * NULL + error as fm_batch_new(), and EMPTY without orders.
 */
FmShopping *
fm_shopping_new (const GArray *orders, GHashTable *suppliers, double buy_step_g, GError **error);
void fm_shopping_free (FmShopping *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmShopping, fm_shopping_free)

G_END_DECLS
