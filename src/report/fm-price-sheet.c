/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-price-sheet.c - a version at today's prices, the change explained by ingredient, on paper */
#include "report/fm-price-sheet.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "report/fm-batch-sheet-private.h"

static char *
price_text (const char *currency, double price)
{
  return fm_batch_sheet_known_money (currency, TRUE, price);
}

/* "+0.12", "-0.05": what is not known is said in words. */
static char *
change_text (double change)
{
  g_autofree char *text = fm_number_format (change, 2);

  if (isnan (change))
    return g_strdup (_ ("not known"));
  return change > 0.0 ? g_strconcat ("+", text, NULL) : g_steal_pointer (&text);
}

static void
add_line (FmBatchSheet *self, const FmRepriceLine *line, const char *currency)
{
  FmSheetRow *row = fm_batch_sheet_add (
      self, FM_SHEET_TOTAL,
      /* TRANSLATORS: an ingredient whose price nobody noted since */
      line->is_own_price ? g_strdup_printf (_ ("%s (no price noted)"), line->ingredient->name)
                         : g_strdup (line->ingredient->name));

  row->cells[1] = fm_number_format_unit (line->share_pct, 1, "%");
  row->cells[2] = price_text (currency, line->price_then);
  row->cells[3] = price_text (currency, line->price_now);
  row->cells[4] = change_text (line->change);
}

static void
add_total (FmBatchSheet *self, const FmReprice *reprice, const char *currency)
{
  g_autofree char *then = fm_batch_sheet_known_money (currency, reprice->is_whole, reprice->then);
  g_autofree char *now = fm_batch_sheet_known_money (currency, reprice->is_whole, reprice->now);
  g_autofree char *known = change_text (reprice->change);
  /* TRANSLATORS: "+0.12": a change to which some ingredients are missing */
  g_autofree char *change = reprice->is_whole || isnan (reprice->change)
                                ? g_strdup (known)
                                : g_strdup_printf (_ ("%s as far as known"), known);

  /* TRANSLATORS: three amounts of money */
  fm_batch_sheet_add (self, FM_SHEET_SUBTITLE,
                      g_strdup_printf (_ ("A kilogram of blend: %s as saved, %s today, change %s"),
                                       then, now, change));
}

FmBatchSheet *
fm_price_sheet_new (const FmReprice *reprice,
                    const char *formula_name,
                    const char *date_text,
                    const char *currency)
{
  FmBatchSheet *self = fm_batch_sheet_new_empty (_ ("Prices Today"));
  FmSheetRow *head;

  fm_batch_sheet_add (self, FM_SHEET_TITLE,
                      /* TRANSLATORS: "Pan patty, version 3" */
                      g_strdup_printf (_ ("At today’s prices: %s"), formula_name));
  if (date_text != NULL)
    fm_batch_sheet_add (self, FM_SHEET_SMALL, g_strdup (date_text));
  add_total (self, reprice, currency);
  head = fm_batch_sheet_add (self, FM_SHEET_COLUMNS, g_strdup (_ ("Ingredient")));
  head->cells[1] = g_strdup (_ ("Share"));
  head->cells[2] = g_strdup (_ ("Then, per kg"));
  head->cells[3] = g_strdup (_ ("Now, per kg"));
  head->cells[4] = g_strdup (_ ("Change"));
  for (guint i = 0; i < reprice->lines->len; i++)
    add_line (self, &g_array_index (reprice->lines, FmRepriceLine, i), currency);
  fm_batch_sheet_add (
      self, FM_SHEET_SMALL,
      g_strdup (
          _ ("Prices are as purchased. The change is of what goes into a kilogram of blend, "
             "trim loss included. Where no price is noted the one of the version counts on.")));
  return self;
}
