/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-reading-position.c - did it matter when a cup was served */
#include <math.h>

#include "core/statistics/fm-serving-private.h"
#include "core/tasting/fm-tasting-private.h"
#include "core/tasting/fm-tasting-reading-private.h"

static guint
column_of (const FmTastingReading *self, guint sample)
{
  guint column = 0;
  while (column + 1 < self->n_samples && self->sample[column] != sample)
    column++;
  return column;
}

/* The serving orders of the counted sheets; (nullable) */
static FmServingRows *
serving_orders (const FmTastingReading *self, const FmTastingSheets *sheets)
{
  FmServingRows *rows = NULL;
  for (guint t = 0; t < self->n_tasters; t++) {
    g_autoptr (GPtrArray) cups =
        fm_tasting_cups (sheets->tasting, sheets->taster[t], FM_TASTING_ROUND_MAIN);
    if (rows == NULL)
      rows = fm_serving_rows_new (self->n_tasters, cups->len, self->n_samples);
    for (guint i = 0; i < MIN (cups->len, rows->n_per_row); i++)
      rows->sample[t * rows->n_per_row + i] =
          column_of (self, ((const FmTastingCup *)cups->pdata[i])->sample);
  }
  return rows;
}

static gboolean
is_spread_evenly (const FmServingRows *rows)
{
  g_autofree guint *served = g_new0 (guint, (gsize)rows->n_samples * rows->n_per_row);
  for (guint t = 0; t < rows->n_rows; t++)
    for (guint i = 0; i < rows->n_per_row; i++)
      served[fm_serving_rows_get (rows, t, i) * rows->n_per_row + i]++;
  for (guint i = 1; i < rows->n_samples * rows->n_per_row; i++)
    if (served[i] != served[0])
      return FALSE;
  return TRUE;
}

static double *
mean_by_position (const FmRankTable *scores)
{
  double *mean = g_new (double, scores->n_samples);
  for (guint i = 0; i < scores->n_samples; i++) {
    double sum = 0;
    guint n = 0;
    for (guint t = 0; t < scores->n_tasters; t++) {
      const double score = fm_rank_table_get (scores, t, i);
      if (isnan (score))
        continue;
      sum += score;
      n++;
    }
    mean[i] = n > 0 ? sum / n : NAN;
  }
  return mean;
}

void
fm_tasting_reading_positions (FmTastingReading *self, const FmTastingSheets *sheets)
{
  if (self->ranks == NULL && self->liking == NULL)
    return;
  g_autoptr (FmServingRows) rows = serving_orders (self, sheets);
  self->n_positions = rows->n_per_row;
  self->positions_balanced = is_spread_evenly (rows);
  if (self->ranks != NULL) {
    g_autoptr (FmRankTable) ranks = fm_panel_by_position (self->ranks, rows, NULL);
    self->position_rank = fm_rank_test (ranks, sheets->tasting->seed, NULL);
  }
  if (self->liking != NULL) {
    const FmRankTable given = { self->n_tasters, self->n_samples, self->liking };
    g_autoptr (FmRankTable) scores = fm_panel_by_position (&given, rows, NULL);
    self->position_liking =
        fm_anova_liking (scores->n_tasters, scores->n_samples, scores->value, NULL);
    self->position_mean_liking = mean_by_position (scores);
  }
  self->position_sentence = fm_panel_position_sentence (self->position_rank, self->position_liking,
                                                        self->positions_balanced);
}
