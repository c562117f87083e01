/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-shopping.c - what to buy for several batches together */
#include "core/batch/fm-shopping.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-double.h"
#include "core/base/fm-error.h"

static FmShoppingItem *
find_item (FmShopping *self, const FmIngredient *ingredient)
{
  for (guint i = 0; i < self->items->len; i++) {
    FmShoppingItem *item = &g_array_index (self->items, FmShoppingItem, i);

    if (strcmp (fm_ingredient_identity (item->ingredient), fm_ingredient_identity (ingredient)) ==
        0)
      return item;
  }
  return NULL;
}

static FmShoppingItem *
add_item (FmShopping *self, const FmIngredient *ingredient, GHashTable *suppliers)
{
  FmShoppingItem item = { .ingredient = ingredient, .cost = NAN, .is_cost_whole = TRUE };

  if (suppliers != NULL)
    item.supplier = g_hash_table_lookup (suppliers, fm_ingredient_identity (ingredient));
  g_array_append_val (self->items, item);
  return &g_array_index (self->items, FmShoppingItem, self->items->len - 1);
}

static void
add_batch (FmShopping *self, const FmBatch *batch, GHashTable *suppliers)
{
  for (guint i = 0; i < batch->lines->len; i++) {
    const FmBatchLine *line = &g_array_index (batch->lines, FmBatchLine, i);
    FmShoppingItem *item = find_item (self, line->line->ingredient);

    if (item == NULL)
      item = add_item (self, line->line->ingredient, suppliers);
    item->purchased_g += line->purchased_g;
    item->cost = fm_double_add_known (item->cost, line->cost);
    item->is_cost_whole &= !isnan (line->cost);
    item->yield_assumed |= line->yield_assumed;
  }
  if (!isnan (batch->salt_g))
    self->surface_salt_g += batch->salt_g;
}

static int
compare_items (gconstpointer first, gconstpointer second)
{
  const FmShoppingItem *a = first, *b = second;
  const int by_known = (a->supplier == NULL) - (b->supplier == NULL);
  const int by_supplier =
      a->supplier != NULL && b->supplier != NULL ? g_utf8_collate (a->supplier, b->supplier) : 0;

  if (by_known != 0)
    return by_known;
  return by_supplier != 0 ? by_supplier : g_utf8_collate (a->ingredient->name, b->ingredient->name);
}

static void
add_up (FmShopping *self, double buy_step_g)
{
  self->cost = NAN;
  self->is_cost_whole = TRUE;
  for (guint i = 0; i < self->items->len; i++) {
    FmShoppingItem *item = &g_array_index (self->items, FmShoppingItem, i);

    item->bought_g = fm_batch_bought_g (item->purchased_g, buy_step_g);
    self->cost = fm_double_add_known (self->cost, item->cost);
    self->is_cost_whole &= item->is_cost_whole;
  }
}

FmShopping *
fm_shopping_new (const GArray *orders, GHashTable *suppliers, double buy_step_g, GError **error)
{
  g_autoptr (FmShopping) self = g_new0 (FmShopping, 1);

  self->items = g_array_new (FALSE, FALSE, sizeof (FmShoppingItem));
  for (guint i = 0; i < orders->len; i++) {
    const FmShoppingOrder *order = &g_array_index (orders, FmShoppingOrder, i);
    g_autoptr (FmBatch) batch = fm_batch_new (order->formula, &order->plan, error);

    if (batch == NULL)
      return NULL;
    add_batch (self, batch, suppliers);
  }
  if (orders->len == 0) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("Choose at least one version to buy for."));
    return NULL;
  }
  g_array_sort (self->items, compare_items);
  add_up (self, buy_step_g);
  return g_steal_pointer (&self);
}

void
fm_shopping_free (FmShopping *self)
{
  g_array_unref (self->items);
  g_free (self);
}
