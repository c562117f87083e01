/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-rank-worth.c */
#include "core/statistics/fm-rank-worth.h"

#include <string.h>

#include "core/statistics/fm-pool.h"
#include "core/statistics/fm-rank-private.h"

double *
fm_rank_worth (const FmRankTable *table, double prior_sd)
{
  g_return_val_if_fail (table->n_samples <= FM_RANK_MAX_SAMPLES, NULL);
  g_autoptr (FmRankRows) rows = fm_rank_rows_new (table, FALSE);
  g_autoptr (FmPool) pool = fm_pool_new (table->n_samples);
  g_autoptr (FmPoolFit) fit = NULL;

  for (guint r = 0; r < rows->n_rows; r++) {
    double place[FM_RANK_MAX_SAMPLES];

    for (guint i = 0; i < rows->row[r].n; i++)
      place[i] = rows->row[r].score[i];
    fm_pool_add (pool, 0, r, rows->row[r].n, rows->row[r].item, place);
  }
  fit = fm_pool_fit (pool, prior_sd, NULL);
  return fit != NULL && fit->n_groups == 1 ? g_steal_pointer (&fit->worth) : NULL;
}
