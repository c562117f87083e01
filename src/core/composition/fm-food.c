/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food.c - one row of the food-composition dataset */
#include "core/composition/fm-food.h"

#include <math.h>

FmFood *
fm_food_new (const char *ndb_no, const char *name, const char *original_name)
{
  FmFood *self = g_new0 (FmFood, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->ndb_no = g_strdup (ndb_no);
  self->name = g_strdup (name);
  self->original_name = g_strdup (original_name);
  fm_composition_init_unknown (&self->composition);
  self->refuse_pct = (double)NAN;
  for (guint i = 0; i < FM_N_HOUSEHOLD_WEIGHTS; i++)
    self->household_weights[i].mass_g = (double)NAN;
  return self;
}

FmFood *
fm_food_ref (FmFood *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fm_food_unref (FmFood *self)
{
  g_return_if_fail (self != NULL);

  if (!g_atomic_ref_count_dec (&self->ref_count))
    return;
  for (guint i = 0; i < FM_N_HOUSEHOLD_WEIGHTS; i++)
    g_free (self->household_weights[i].description);
  g_free (self->original_name);
  g_free (self->name);
  g_free (self->ndb_no);
  g_free (self);
}
