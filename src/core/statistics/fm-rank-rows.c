/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-rank-rows.c - what tasters ranked, as a table and as rows of doubled ranks */
#include <math.h>

#include "core/statistics/fm-rank-private.h"
#include "core/statistics/fm-stat.h"

FmRankTable *
fm_rank_table_new (guint n_tasters, guint n_samples)
{
  FmRankTable *self = g_new0 (FmRankTable, 1);
  self->n_tasters = n_tasters;
  self->n_samples = n_samples;
  self->value = g_new (double, MAX ((gsize)n_tasters * n_samples, 1));
  for (gsize i = 0; i < (gsize)n_tasters * n_samples; i++)
    self->value[i] = NAN;
  return self;
}

void
fm_rank_table_free (FmRankTable *self)
{
  if (self == NULL)
    return;
  g_free (self->value);
  g_free (self);
}

double
fm_rank_table_get (const FmRankTable *self, guint taster, guint sample)
{
  g_return_val_if_fail (taster < self->n_tasters && sample < self->n_samples, NAN);
  return self->value[(gsize)taster * self->n_samples + sample];
}

void
fm_rank_table_set (FmRankTable *self, guint taster, guint sample, double value)
{
  g_return_if_fail (taster < self->n_tasters && sample < self->n_samples);
  self->value[(gsize)taster * self->n_samples + sample] = value;
}

static void
read_row (const FmRankTable *table, guint taster, FmRankRow *row)
{
  double value[FM_RANK_MAX_SAMPLES], rank[FM_RANK_MAX_SAMPLES];
  row->n = 0;
  for (guint s = 0; s < table->n_samples; s++) {
    const double given = fm_rank_table_get (table, taster, s);
    if (isnan (given))
      continue;
    row->item[row->n] = s;
    value[row->n++] = given;
  }
  fm_stat_midranks (value, row->n, rank);
  for (guint i = 0; i < row->n; i++)
    row->score[i] = (guint)lround (2 * rank[i]);
}

FmRankRows *
fm_rank_rows_new (const FmRankTable *table, gboolean complete_only)
{
  FmRankRows *self = g_new0 (FmRankRows, 1);
  self->n_samples = table->n_samples;
  self->is_complete = TRUE;
  self->row = g_new0 (FmRankRow, MAX (table->n_tasters, 1));
  for (guint t = 0; t < table->n_tasters; t++) {
    FmRankRow *row = &self->row[self->n_rows];
    read_row (table, t, row);
    if (row->n < (complete_only ? table->n_samples : 2))
      continue;
    self->n_rows++;
    self->is_complete = self->is_complete && row->n == table->n_samples;
  }
  return self;
}

FmRankRows *
fm_rank_rows_new_untied (guint k, guint n)
{
  g_autoptr (FmRankTable) table = fm_rank_table_new (n, k);
  for (guint t = 0; t < n; t++)
    for (guint s = 0; s < k; s++)
      fm_rank_table_set (table, t, s, s + 1);
  return fm_rank_rows_new (table, TRUE);
}

void
fm_rank_rows_free (FmRankRows *self)
{
  if (self == NULL)
    return;
  g_free (self->row);
  g_free (self);
}
