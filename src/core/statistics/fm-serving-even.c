/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-serving-even.c - blocks as even as can be where there is no balanced design
 *
 * Filled by always taking the samples served least, then exchanged between tasters while the
 * squared numbers of tasters that compare each pair get smaller, or no larger (the (M,S) criterion
 * of incomplete blocks; John and Williams, Cyclic and Computer Generated Designs, from memory).
 */
#include "core/statistics/fm-serving-private.h"

#define EXCHANGES_PER_CUP 60
#define MIN_EXCHANGES 6000
#define MAX_EXCHANGES 200000

typedef struct {
  FmServingRows *rows;
  guint *together; /* samples x samples; how many tasters got both */
  FmRandom *random;
} Blocks;

static gboolean
holds (const guint *row, guint k, guint sample)
{
  for (guint i = 0; i < k; i++)
    if (row[i] == sample)
      return TRUE;
  return FALSE;
}

/* Change of the sum of squares when @sample meets the others of a row (step 1) or leaves them */
static gint64
meet (Blocks *self, const guint *row, guint n, guint place, guint sample, int step)
{
  const guint t = self->rows->n_samples;
  gint64 change = 0;
  for (guint i = 0; i < n; i++) {
    if (i == place)
      continue;
    guint *count = &self->together[sample * t + row[i]];
    change += step > 0 ? 2 * (gint64)*count + 1 : 1 - 2 * (gint64)*count;
    *count += (guint)step;
    self->together[row[i] * t + sample] = *count;
  }
  return change;
}

static guint
most_wanted (const Blocks *self, const guint *row, guint filled, const guint *served)
{
  const guint t = self->rows->n_samples;
  guint best = 0, best_served = G_MAXUINT, best_met = G_MAXUINT, n_ties = 0;
  for (guint s = 0; s < t; s++) {
    guint met = 0;
    if (holds (row, filled, s))
      continue;
    for (guint i = 0; i < filled; i++)
      met += self->together[s * t + row[i]];
    if (served[s] > best_served || (served[s] == best_served && met > best_met))
      continue;
    n_ties = served[s] == best_served && met == best_met ? n_ties + 1 : 1;
    if (n_ties > 1 && fm_random_below (self->random, n_ties) > 0)
      continue;
    best = s;
    best_served = served[s];
    best_met = met;
  }
  return best;
}

static void
fill (Blocks *self)
{
  const guint k = self->rows->n_per_row;
  g_autofree guint *served = g_new0 (guint, self->rows->n_samples);
  for (guint r = 0; r < self->rows->n_rows; r++) {
    guint *row = self->rows->sample + r * k;
    for (guint i = 0; i < k; i++) {
      row[i] = most_wanted (self, row, i, served);
      served[row[i]]++;
      meet (self, row, i, k, row[i], 1);
    }
  }
}

static gint64
replace (Blocks *self, guint *row, guint place, guint sample)
{
  const guint k = self->rows->n_per_row;
  gint64 change = meet (self, row, k, place, row[place], -1);
  row[place] = sample;
  return change + meet (self, row, k, place, sample, 1);
}

/* Two tasters exchange one sample each, so that all are served as often as before */
static void
try_exchange (Blocks *self)
{
  const guint k = self->rows->n_per_row;
  guint *row = self->rows->sample + fm_random_below (self->random, self->rows->n_rows) * k;
  guint *other = self->rows->sample + fm_random_below (self->random, self->rows->n_rows) * k;
  const guint i = fm_random_below (self->random, k), j = fm_random_below (self->random, k);
  const guint mine = row[i], theirs = other[j];

  if (holds (row, k, theirs) || holds (other, k, mine))
    return;
  if (replace (self, row, i, theirs) + replace (self, other, j, mine) <= 0)
    return;
  replace (self, row, i, mine);
  replace (self, other, j, theirs);
}

FmServingRows *
fm_serving_even_blocks (guint t, guint k, guint n, FmRandom *random)
{
  FmServingRows *rows = fm_serving_rows_new (n, k, t);
  g_autofree guint *together = g_new0 (guint, (gsize)t * t);
  Blocks blocks = { rows, together, random };
  const guint n_exchanges = CLAMP (EXCHANGES_PER_CUP * n * k, MIN_EXCHANGES, MAX_EXCHANGES);

  fill (&blocks);
  for (guint i = 0; n > 1 && i < n_exchanges; i++)
    try_exchange (&blocks);
  return rows;
}
