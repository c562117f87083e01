/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-composition.c - a row of nutrient values with its unknowns */
#include "core/composition/fm-composition.h"

#include <math.h>

#include "core/base/fm-double.h"

void
fm_composition_init_unknown (FmComposition *self)
{
  g_return_if_fail (self != NULL);

  for (int i = 0; i < FM_N_NUTRIENTS; i++)
    self->per_100g[i] = (double)NAN;
}

void
fm_composition_copy (FmComposition *self, const FmComposition *from)
{
  g_return_if_fail (self != NULL && from != NULL);

  *self = *from;
}

gboolean
fm_composition_equal (const FmComposition *a, const FmComposition *b)
{
  g_return_val_if_fail (a != NULL && b != NULL, FALSE);

  for (int i = 0; i < FM_N_NUTRIENTS; i++) {
    if (!fm_double_same (a->per_100g[i], b->per_100g[i]))
      return FALSE;
  }
  return TRUE;
}

gboolean
fm_composition_is_known (const FmComposition *self, FmNutrient nutrient)
{
  g_return_val_if_fail (self != NULL, FALSE);
  g_return_val_if_fail ((int)nutrient >= 0 && nutrient < FM_N_NUTRIENTS, FALSE);

  return !isnan (self->per_100g[nutrient]);
}

guint
fm_composition_n_known (const FmComposition *self)
{
  guint n_known = 0;

  g_return_val_if_fail (self != NULL, 0);

  for (int i = 0; i < FM_N_NUTRIENTS; i++)
    n_known += isnan (self->per_100g[i]) ? 0 : 1;
  return n_known;
}
