/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-rank-page.c - Page's test of an order written down before */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-rank-private.h"
#include "core/statistics/fm-stat.h"

#define ORDER_LIMIT 40320

/* Doubled L of one taster's scores */
static guint
row_l (const FmRankRow *row, const guint *score, const guint *place)
{
  guint l = 0;
  for (guint i = 0; i < row->n; i++)
    l += place[row->item[i]] * score[i];
  return l;
}

/* Chance of every doubled L of one taster, from 0 to @top */
static double *
row_distribution (const FmRankRow *row, const guint *place, guint top)
{
  guint n_orders;
  g_autofree guint *order = fm_rank_row_orders (row, ORDER_LIMIT, &n_orders);
  if (order == NULL)
    return NULL;
  double *chance = g_new0 (double, top + 1);
  for (guint o = 0; o < n_orders; o++)
    chance[row_l (row, order + o * row->n, place)] += 1.0 / n_orders;
  return chance;
}

static gboolean
count_tail (const FmRankRows *rows, const guint *place, guint l, double *p)
{
  const guint k = rows->n_samples;
  const guint top = k * (k + 1) * (2 * k + 1) / 3; /* doubled L in full agreement */
  g_autofree double *chance = g_new0 (double, 1);
  guint reach = 0;

  chance[0] = 1;
  for (guint r = 0; r < rows->n_rows; r++) {
    g_autofree double *one = row_distribution (&rows->row[r], place, top);
    if (one == NULL)
      return FALSE;
    double *sum = g_new0 (double, reach + top + 1);
    for (guint i = 0; i <= reach; i++)
      for (guint j = 0; chance[i] > 0 && j <= top; j++)
        sum[i + j] += chance[i] * one[j];
    g_free (chance);
    chance = sum;
    reach += top;
  }
  *p = 0;
  for (guint i = reach + 1; i > l; i--)
    *p += chance[i - 1];
  *p = MIN (*p, 1);
  return TRUE;
}

static guint
total_l (const FmRankRows *rows, const guint *place)
{
  guint l = 0;
  for (guint r = 0; r < rows->n_rows; r++)
    l += row_l (&rows->row[r], rows->row[r].score, place);
  return l;
}

static FmRankTail
drawn_tail (FmRankRows *rows, const guint *place, guint l, guint64 seed)
{
  FmRandom random;
  guint hits = 0;
  fm_random_init (&random, seed);
  for (guint draw = 0; draw < FM_RANK_PERMUTATIONS; draw++) {
    fm_rank_rows_shuffle (rows, &random);
    hits += total_l (rows, place) >= l;
  }
  return fm_rank_tail_from_draws (hits);
}

static gboolean
is_order (const guint *place, guint n)
{
  gboolean taken[FM_RANK_MAX_SAMPLES] = { FALSE };
  for (guint i = 0; i < n; i++) {
    if (place[i] < 1 || place[i] > n || taken[place[i] - 1])
      return FALSE;
    taken[place[i] - 1] = TRUE;
  }
  return TRUE;
}

gboolean
fm_rank_page (const FmRankTable *table,
              const guint *place,
              guint64 seed,
              FmPageResult *result,
              GError **error)
{
  if (place == NULL) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                         _ ("No order was written down before the tasting, so an expected "
                            "order cannot be tested."));
    return FALSE;
  }
  if (!is_order (place, table->n_samples)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("The expected order must give every sample its own place."));
    return FALSE;
  }
  g_autoptr (FmRankRows) rows = fm_rank_rows_new (table, TRUE);
  if (rows->n_rows == 0 || rows->n_samples < 2) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("No complete sheet is in yet. An expected order needs tasters who "
                            "ranked every sample."));
    return FALSE;
  }

  const guint l = total_l (rows, place);
  FmRankTail tail = { .p = 1, .method = FM_RANK_EXACT };
  *result = (FmPageResult){ .n_tasters = rows->n_rows, .l = l / 2.0 };
  if (!count_tail (rows, place, l, &tail.p))
    tail = drawn_tail (rows, place, l, seed);
  result->method = tail.method;
  result->p = tail.p;
  result->p_error = tail.p_error;
  return TRUE;
}

double
fm_rank_page_upper (guint k, guint n, double l)
{
  guint place[FM_RANK_MAX_SAMPLES];
  double p = NAN;
  g_return_val_if_fail (k >= 2 && k <= FM_RANK_MAX_SAMPLES && n >= 1, NAN);
  for (guint i = 0; i < k; i++)
    place[i] = i + 1;
  g_autoptr (FmRankRows) rows = fm_rank_rows_new_untied (k, n);
  return count_tail (rows, place, l > 0 ? (guint)ceil (2 * l - 1e-9) : 0, &p) ? p : NAN;
}
