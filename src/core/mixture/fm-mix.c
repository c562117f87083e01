/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix.c - points of a mixture and the terms of Scheffe's models */
#include "core/mixture/fm-mix.h"

#include <string.h>

FmMixPoints *
fm_mix_points_new (guint q)
{
  FmMixPoints *self = g_new0 (FmMixPoints, 1);
  self->q = q;
  self->x = g_array_new (FALSE, FALSE, sizeof (double));
  return self;
}

FmMixPoints *
fm_mix_points_copy (const FmMixPoints *self)
{
  FmMixPoints *copy = fm_mix_points_new (self->q);
  copy->n = self->n;
  if (self->x->len > 0)
    g_array_append_vals (copy->x, self->x->data, self->x->len);
  return copy;
}

void
fm_mix_points_free (FmMixPoints *self)
{
  g_array_unref (self->x);
  g_free (self);
}

void
fm_mix_points_add (FmMixPoints *self, const double *x)
{
  g_array_append_vals (self->x, x, self->q);
  self->n++;
}

const double *
fm_mix_points_get (const FmMixPoints *self, guint row)
{
  g_return_val_if_fail (row < self->n, NULL);
  return &g_array_index (self->x, double, row * self->q);
}

guint
fm_mix_n_terms (FmMixOrder order, guint q)
{
  guint n = q;
  if (order >= FM_MIX_QUADRATIC)
    n += q * (q - 1) / 2;
  if (order >= FM_MIX_SPECIAL_CUBIC && q >= 3)
    n += q * (q - 1) * (q - 2) / 6;
  return n;
}

void
fm_mix_terms (FmMixOrder order, guint q, const double *x, double *row)
{
  memcpy (row, x, q * sizeof *row);
  row += q;
  for (guint i = 0; order >= FM_MIX_QUADRATIC && i < q; i++)
    for (guint j = i + 1; j < q; j++)
      *row++ = x[i] * x[j];
  for (guint i = 0; order >= FM_MIX_SPECIAL_CUBIC && i < q; i++)
    for (guint j = i + 1; j < q; j++)
      for (guint k = j + 1; k < q; k++)
        *row++ = x[i] * x[j] * x[k];
}

char **
fm_mix_term_names (FmMixOrder order, guint q, const char *const *names)
{
  char **term = g_new0 (char *, fm_mix_n_terms (order, q) + 1);
  guint n = 0;

  for (guint i = 0; i < q; i++)
    term[n++] = g_strdup (names[i]);
  for (guint i = 0; order >= FM_MIX_QUADRATIC && i < q; i++)
    for (guint j = i + 1; j < q; j++)
      term[n++] = g_strdup_printf ("%s × %s", names[i], names[j]);
  for (guint i = 0; order >= FM_MIX_SPECIAL_CUBIC && i < q; i++)
    for (guint j = i + 1; j < q; j++)
      for (guint k = j + 1; k < q; k++)
        term[n++] = g_strdup_printf ("%s × %s × %s", names[i], names[j], names[k]);
  return term;
}
