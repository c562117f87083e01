/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-reprice.h - what a version costs at other prices than its own, by ingredient
 *
 * A version keeps the prices that it was saved with. Where none is noted since, its own counts on
 * and is said to be its own.
 */
#pragma once

#include "core/formula/fm-formula.h"

G_BEGIN_DECLS

/** Prices are per kg as purchased; @then, @now and @change are of the line in 1 kg of blend,
 * edible, after trim loss. NaN = not known. */
typedef struct {
  const FmIngredient *ingredient; /* of the formula, which outlives the line */
  double share_pct;
  double price_then;
  double price_now;
  gboolean is_own_price; /* none is noted: @price_now is that of the version */
  double then;
  double now;
  double change;
} FmRepriceLine;

typedef struct {
  GArray *lines; /* FmRepriceLine, the greatest change first, unknown ones last */
  double then;   /* per kg of blend; the known part, NaN = none */
  double now;
  double change;     /* of the lines whose two prices are known */
  gboolean is_whole; /* both prices of every line are known */
} FmReprice;

/** @today: fm_ingredient_identity() -> double*, price per kg. NULL + EMPTY for a formula that
 * weighs nothing. */
FmReprice *fm_reprice_new (const FmFormula *formula, GHashTable *today, GError **error);
void fm_reprice_free (FmReprice *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmReprice, fm_reprice_free)

G_END_DECLS
