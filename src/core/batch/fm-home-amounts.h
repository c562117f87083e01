/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-home-amounts.h - amounts that a reader at home can weigh, with the targets as they were
 *
 * Each ingredient is rounded to the coarsest step at which every target of the brief stands as it
 * did: what was within its band stays there. What is light is rounded finer, by a kitchen scale's
 * own steps (common practice, no source). Where no step holds, the finest is taken and said so.
 */
#pragma once

#include "core/formula/fm-formula.h"

G_BEGIN_DECLS

typedef struct {
  FmFormula *formula; /* as rounded */
  double step_g;      /* of what is heavy */
  gboolean holds;     /* every target stands as before */
} FmHomeAmounts;

/** @n_patties: of the brief's mass; > 0. @ounces: steps of ounces. NULL + error for a formula that
 * weighs nothing. */
FmHomeAmounts *
fm_home_amounts_new (const FmFormula *formula, int n_patties, gboolean ounces, GError **error);
void fm_home_amounts_free (FmHomeAmounts *self);
/** "600 g", "21 1/4 oz", "0.5 g". Returns: (transfer full). */
char *fm_home_amount_text (double mass_g, gboolean ounces);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmHomeAmounts, fm_home_amounts_free)

G_END_DECLS
