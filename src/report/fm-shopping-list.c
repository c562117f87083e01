/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-shopping-list.c - what to buy for several batches, by supplier, on paper */
#include "report/fm-shopping-list.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "report/fm-batch-sheet-private.h"

static void
add_head (FmBatchSheet *self, const FmShoppingHead *head)
{
  g_autoptr (GString) origin = g_string_new (NULL);

  fm_batch_sheet_add (self, FM_SHEET_TITLE, g_strdup (_ ("Shopping list")));
  if (head->notebook_name != NULL)
    g_string_append_printf (origin, _ ("Notebook: %s"), head->notebook_name);
  if (head->date_text != NULL)
    g_string_append_printf (origin, "%s%s", origin->len > 0 ? " · " : "", head->date_text);
  if (origin->len > 0)
    fm_batch_sheet_add (self, FM_SHEET_SMALL, g_strdup (origin->str));
  for (const char *const *batch = head->batches; *batch != NULL; batch++)
    fm_batch_sheet_add (self, FM_SHEET_TEXT, g_strdup (*batch));
}

static void
add_columns (FmBatchSheet *self)
{
  FmSheetRow *row = fm_batch_sheet_add (self, FM_SHEET_COLUMNS, g_strdup (_ ("Ingredient")));

  row->cells[3] = g_strdup (_ ("To buy"));
  row->cells[4] = g_strdup (_ ("Cost"));
}

static void
add_item (FmBatchSheet *self, const FmShoppingItem *item, const FmShoppingHead *head)
{
  FmSheetRow *row =
      fm_batch_sheet_add (self, FM_SHEET_INGREDIENT, g_strdup (item->ingredient->name));
  const int decimals = head->buy_step_g >= 1.0 ? 0 : 1;

  row->cells[3] = fm_number_format_unit (item->bought_g, decimals, "g");
  row->cells[4] = fm_batch_sheet_known_money (head->currency, item->is_cost_whole, item->cost);
}

static void
add_items (FmBatchSheet *self, const FmShopping *shopping, const FmShoppingHead *head)
{
  const char *before = NULL;

  for (guint i = 0; i < shopping->items->len; i++) {
    const FmShoppingItem *item = &g_array_index (shopping->items, FmShoppingItem, i);

    if (i == 0 || g_strcmp0 (item->supplier, before) != 0) {
      fm_batch_sheet_add (
          self, FM_SHEET_HEADING,
          g_strdup (item->supplier != NULL ? item->supplier : _ ("Supplier not known")));
      add_columns (self);
    }
    before = item->supplier;
    add_item (self, item, head);
  }
}

static void
add_total (FmBatchSheet *self, const FmShopping *shopping, const FmShoppingHead *head)
{
  FmSheetRow *row = fm_batch_sheet_add (self, FM_SHEET_TOTAL, g_strdup (_ ("In all")));
  g_autofree char *salt = fm_number_format_unit (shopping->surface_salt_g, 0, "g");
  g_autofree char *step = fm_number_to_edit (head->buy_step_g, 1);

  row->cells[4] =
      fm_batch_sheet_known_money (head->currency, shopping->is_cost_whole, shopping->cost);
  if (shopping->surface_salt_g > 0.0)
    fm_batch_sheet_add (self, FM_SHEET_TEXT,
                        g_strdup_printf (_ ("Salt for the surface besides: %s"), salt));
  if (head->buy_step_g > 0.0)
    fm_batch_sheet_add (
        self, FM_SHEET_SMALL,
        g_strdup_printf (_ ("To buy: with trim loss, the sum of all batches rounded "
                            "up to steps of %s g. Costs are of what goes in."),
                         step));
}

/* Names of the items without a stated trim loss. */
static void
add_assumed (FmBatchSheet *self, const FmShopping *shopping)
{
  g_autoptr (GString) names = g_string_new (NULL);

  for (guint i = 0; i < shopping->items->len; i++) {
    const FmShoppingItem *item = &g_array_index (shopping->items, FmShoppingItem, i);

    if (item->yield_assumed)
      g_string_append_printf (names, "%s%s", names->len > 0 ? "; " : "", item->ingredient->name);
  }
  if (names->len > 0)
    fm_batch_sheet_add (
        self, FM_SHEET_SMALL,
        g_strdup_printf (_ ("No trim loss is stated, so all of it is taken as edible: %s."),
                         names->str));
}

FmBatchSheet *
fm_shopping_list_new (const FmShopping *shopping, const FmShoppingHead *head)
{
  FmBatchSheet *self = fm_batch_sheet_new_empty (_ ("Shopping List"));

  add_head (self, head);
  add_items (self, shopping, head);
  add_total (self, shopping, head);
  add_assumed (self, shopping);
  return self;
}
