/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-serving-rows.c - rows of sample indices in serving order */
#include "core/statistics/fm-serving-private.h"

FmServingRows *
fm_serving_rows_new (guint n_rows, guint n_per_row, guint n_samples)
{
  FmServingRows *self = g_new0 (FmServingRows, 1);
  self->n_rows = n_rows;
  self->n_per_row = n_per_row;
  self->n_samples = n_samples;
  self->sample = g_new0 (guint, (gsize)n_rows * n_per_row);
  return self;
}

void
fm_serving_rows_free (FmServingRows *self)
{
  if (self == NULL)
    return;
  g_free (self->sample);
  g_free (self);
}

guint
fm_serving_rows_get (const FmServingRows *self, guint row, guint position)
{
  g_return_val_if_fail (row < self->n_rows && position < self->n_per_row, 0);
  return self->sample[row * self->n_per_row + position];
}
