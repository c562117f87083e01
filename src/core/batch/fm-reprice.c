/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-reprice.c - what a version costs at other prices than its own, by ingredient */
#include "core/batch/fm-reprice.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-double.h"
#include "core/base/fm-error.h"

/* Of what a line weighs in 1 kg of blend. */
static double
cost (const FmIngredient *ingredient, double price_per_kg, double share_pct)
{
  const double yield_pct = isnan (ingredient->ep_yield_pct) ? 100.0 : ingredient->ep_yield_pct;

  return price_per_kg * share_pct / yield_pct;
}

static FmRepriceLine
reprice_line (const FmIngredient *ingredient, double share_pct, GHashTable *today)
{
  const double *noted = g_hash_table_lookup (today, fm_ingredient_identity (ingredient));
  FmRepriceLine line = { .ingredient = ingredient, .share_pct = share_pct };

  line.price_then = ingredient->price_per_kg;
  line.is_own_price = noted == NULL;
  line.price_now = noted != NULL ? *noted : ingredient->price_per_kg;
  line.then = cost (ingredient, line.price_then, share_pct);
  line.now = cost (ingredient, line.price_now, share_pct);
  line.change = line.now - line.then;
  return line;
}

static int
compare_lines (gconstpointer first, gconstpointer second)
{
  const FmRepriceLine *a = first, *b = second;

  if (isnan (a->change) || isnan (b->change))
    return isnan (a->change) - isnan (b->change);
  return (fabs (a->change) < fabs (b->change)) - (fabs (a->change) > fabs (b->change));
}

FmReprice *
fm_reprice_new (const FmFormula *formula, GHashTable *today, GError **error)
{
  FmReprice *self;

  if (!(fm_formula_total_g (formula) > 0.0)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("The blend weighs nothing yet. Type the mass of at least one line "
                            "first."));
    return NULL;
  }
  self = g_new0 (FmReprice, 1);
  self->lines = g_array_new (FALSE, FALSE, sizeof (FmRepriceLine));
  self->then = self->now = self->change = NAN;
  self->is_whole = TRUE;
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    FmRepriceLine line = reprice_line (fm_formula_line (formula, i)->ingredient,
                                       fm_formula_share_pct (formula, i), today);

    if (!(line.share_pct > 0.0))
      continue;
    g_array_append_val (self->lines, line);
    self->then = fm_double_add_known (self->then, line.then);
    self->now = fm_double_add_known (self->now, line.now);
    self->change = fm_double_add_known (self->change, line.change);
    self->is_whole &= !isnan (line.change);
  }
  g_array_sort (self->lines, compare_lines);
  return self;
}

void
fm_reprice_free (FmReprice *self)
{
  g_array_unref (self->lines);
  g_free (self);
}
