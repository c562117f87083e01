/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pool.c - orders of many sheets and sessions in one reading */
#include "core/statistics/fm-pool.h"

#include <string.h>

#include "core/statistics/fm-pool-private.h"

FmPool *
fm_pool_new (guint n_items)
{
  FmPool *self = g_new0 (FmPool, 1);

  self->n_items = n_items;
  self->sheets = g_array_new (FALSE, FALSE, sizeof (FmPoolSheet));
  return self;
}

void
fm_pool_free (FmPool *self)
{
  g_array_unref (self->sheets);
  g_free (self);
}

void
fm_pool_add (
    FmPool *self, guint session, guint taster, guint n, const guint *item, const double *place)
{
  FmPoolSheet sheet = { .session = session, .taster = taster, .n = n };

  g_return_if_fail (n <= FM_POOL_MAX_ON_SHEET);
  if (n < 2)
    return;
  memcpy (sheet.item, item, n * sizeof *item);
  memcpy (sheet.place, place, n * sizeof *place);
  g_array_append_val (self->sheets, sheet);
  self->n_sessions = MAX (self->n_sessions, session + 1);
  self->n_tasters = MAX (self->n_tasters, taster + 1);
}

void
fm_pool_add_stages (GArray *stages, const FmPoolSheet *sheet)
{
  guint order[FM_POOL_MAX_ON_SHEET];

  for (guint i = 0; i < sheet->n; i++) {
    guint j = i;
    for (; j > 0 && sheet->place[order[j - 1]] > sheet->place[i]; j--)
      order[j] = order[j - 1];
    order[j] = i;
  }
  for (guint from = 0; from + 1 < sheet->n;) {
    FmPoolStage stage = { .n = sheet->n - from };
    for (guint i = from; i < sheet->n; i++) {
      stage.item[i - from] = sheet->item[order[i]];
      stage.n_tied += sheet->place[order[i]] == sheet->place[order[from]];
    }
    g_array_append_val (stages, stage);
    from += stage.n_tied;
  }
}

double
fm_pool_sum_of_products (const double *factor, guint n, guint i, guint j, guint d)
{
  double sum[FM_POOL_MAX_ON_SHEET + 1] = { 1 };

  for (guint at = 0; at < n; at++)
    for (guint k = at != i && at != j ? d : 0; k > 0; k--)
      sum[k] += factor[at] * sum[k - 1];
  return sum[d];
}
