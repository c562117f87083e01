/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-rank.c */
#include "core/statistics/fm-rank.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-rank-private.h"
#include "core/statistics/fm-rank-worth.h"
#include "core/statistics/fm-stat.h"

#define ALPHA 0.05

/* How many tasters ranked every pair of samples; 0 when it is not the same for all pairs, or the
 * tasters did not all rank equally many */
static guint
pairs_together (const FmRankRows *rows)
{
  const guint t = rows->n_samples;
  g_autofree guint *together = g_new0 (guint, (gsize)t * t);
  for (guint r = 0; r < rows->n_rows; r++) {
    const FmRankRow *row = &rows->row[r];
    if (row->n != rows->row[0].n)
      return 0;
    for (guint i = 0; i < row->n; i++)
      for (guint j = 0; j < row->n; j++)
        together[row->item[i] * t + row->item[j]]++;
  }
  for (guint a = 0; a < t; a++)
    for (guint b = 0; b < t; b++)
      if (together[a * t + b] != (a == b ? together[0] : together[1]))
        return 0;
  return together[1];
}

/* (t - 1) D / (A - C), D the squared deviations of the rank sums, A the squared ranks, C the same
 * if all were tied: Conover (1999), for complete and balanced incomplete blocks */
static double
tie_corrected (const FmRankRows *rows, gint64 spread)
{
  gint64 within = 0;
  for (guint r = 0; r < rows->n_rows; r++)
    for (guint i = 0; i < rows->row[r].n; i++) {
      const gint64 away = (gint64)rows->row[r].score[i] - (gint64)(rows->row[r].n + 1);
      within += away * away;
    }
  return within > 0 ? (rows->n_samples - 1.0) * (double)spread / (double)within : NAN;
}

static gboolean
rows_have_ties (const FmRankRows *rows)
{
  for (guint r = 0; r < rows->n_rows; r++)
    for (guint i = 0; i < rows->row[r].n; i++)
      for (guint j = 0; j < i; j++)
        if (rows->row[r].score[i] == rows->row[r].score[j])
          return TRUE;
  return FALSE;
}

static double
mean_agreement (const FmRankTable *table)
{
  double sum = 0;
  guint n = 0;
  for (guint a = 0; a < table->n_tasters; a++)
    for (guint b = 0; b < a; b++) {
      const double rho = fm_rank_agreement (table, a, b);
      if (isnan (rho))
        continue;
      sum += rho;
      n++;
    }
  return n > 0 ? sum / n : NAN;
}

/* Low = liked; NaN = not ranked, or nothing can be said */
static double
standing (const FmRankResult *result, guint sample)
{
  if (result->n_ranked[sample] == 0 || result->n_leaders == 0)
    return NAN;
  return result->worth != NULL ? -result->worth[sample]
                               : result->rank_sum[sample] - result->expected_sum[sample];
}

guint
fm_rank_place (const FmRankResult *result, guint sample, gboolean *is_shared)
{
  const double same = result->worth != NULL ? FM_RANK_WORTH_SAME : 1e-9;
  const double own = standing (result, sample);
  guint place = 1;

  *is_shared = FALSE;
  if (isnan (own))
    return 0;
  for (guint i = 0; i < result->n_samples; i++) {
    const double apart = own - standing (result, i);
    if (i == sample || isnan (apart))
      continue;
    place += apart > same;
    *is_shared = *is_shared || fabs (apart) <= same;
  }
  return place;
}

static void
find_leader (FmRankResult *result)
{
  guint n_leaders = 0;
  gboolean is_shared;
  result->n_leaders = 1;
  for (guint s = result->n_samples; s > 0; s--)
    if (fm_rank_place (result, s - 1, &is_shared) == 1) {
      result->leader = s - 1;
      n_leaders++;
    }
  result->n_leaders = n_leaders;
}

static gboolean
check_table (const FmRankTable *table, GError **error)
{
  if (table->n_samples > FM_RANK_MAX_SAMPLES || table->n_tasters > FM_RANK_MAX_TASTERS) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("Rank orders are read for up to %d samples and %d tasters. Split the "
                    "session."),
                 FM_RANK_MAX_SAMPLES, FM_RANK_MAX_TASTERS);
    return FALSE;
  }
  if (table->n_samples < 2) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("A rank order needs at least two samples."));
    return FALSE;
  }
  return TRUE;
}

static void
fill_sums (FmRankResult *result, const FmRankRows *rows, const gint64 *sum, const gint64 *expected)
{
  const guint t = rows->n_samples;
  result->rank_sum = g_new (double, t);
  result->expected_sum = g_new (double, t);
  result->lowest_sum = g_new0 (double, t);
  result->highest_sum = g_new0 (double, t);
  result->n_ranked = g_new0 (guint, t);
  for (guint s = 0; s < t; s++) {
    result->rank_sum[s] = (double)sum[s] / 2;
    result->expected_sum[s] = (double)expected[s] / 2;
  }
  for (guint r = 0; r < rows->n_rows; r++)
    for (guint i = 0; i < rows->row[r].n; i++) {
      const guint item = rows->row[r].item[i];
      result->n_ranked[item]++;
      result->lowest_sum[item] += 1;
      result->highest_sum[item] += rows->row[r].n;
    }
}

/* @lambda: see pairs_together() */
static void
fill_distances (FmRankResult *result, const FmRankRows *rows, guint lambda, guint clear_distance)
{
  const guint t = rows->n_samples, block = rows->row[0].n;
  /* variance of a difference of two rank sums: (k+1) lambda t / 6, = n k (k+1) / 6 if complete */
  const double lsd = gsl_cdf_ugaussian_Qinv (ALPHA / 2) * sqrt ((block + 1.0) * lambda * t / 6);
  result->lsd = lambda > 0 && result->p <= ALPHA ? lsd : NAN;
  result->clear_distance = lambda > 0 && clear_distance > 0 ? clear_distance / 2.0 : NAN;
  /* a hair less than half: bars that just touch are clearly apart already */
  result->half_width = result->clear_distance / 2 - 1e-9;
}

FmRankResult *
fm_rank_test (const FmRankTable *table, guint64 seed, GError **error)
{
  if (!check_table (table, error))
    return NULL;
  g_autoptr (FmRankRows) rows = fm_rank_rows_new (table, FALSE);
  if (rows->n_rows == 0) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("No rank order is in yet. Enter a sheet with at least two samples."));
    return NULL;
  }

  const guint t = rows->n_samples;
  gint64 sum[FM_RANK_MAX_SAMPLES], expected[FM_RANK_MAX_SAMPLES];
  fm_rank_rows_sums (rows, sum, expected);
  const gint64 spread = fm_rank_spread (sum, expected, t);
  const FmRankTail tail = fm_rank_rows_tail (rows, spread, seed);
  const guint lambda = pairs_together (rows);

  FmRankResult *result = g_new0 (FmRankResult, 1);
  result->design = rows->is_complete ? FM_RANK_FRIEDMAN : FM_RANK_INCOMPLETE;
  result->method = tail.method;
  result->n_tasters = rows->n_rows;
  result->n_left_out = table->n_tasters - rows->n_rows;
  result->n_samples = t;
  result->p = tail.p;
  result->p_error = tail.p_error;
  result->has_ties = rows_have_ties (rows);
  fill_sums (result, rows, sum, expected);
  result->statistic = lambda > 0 ? tie_corrected (rows, spread) : NAN;
  fill_distances (result, rows, lambda, tail.clear_distance);
  if (lambda == 0)
    result->worth = fm_rank_worth (table, FM_RANK_WORTH_PRIOR_SD);
  if (lambda > 0 || result->worth != NULL)
    find_leader (result);
  result->kendall_w = rows->is_complete ? result->statistic / (rows->n_rows * (t - 1.0)) : NAN;
  result->mean_spearman = rows->is_complete ? mean_agreement (table) : NAN;
  return result;
}

void
fm_rank_result_free (FmRankResult *self)
{
  if (self == NULL)
    return;
  g_free (self->rank_sum);
  g_free (self->lowest_sum);
  g_free (self->highest_sum);
  g_free (self->worth);
  g_free (self->expected_sum);
  g_free (self->n_ranked);
  g_free (self);
}

double
fm_rank_agreement (const FmRankTable *table, guint taster_a, guint taster_b)
{
  g_autofree double *a = g_new (double, table->n_samples);
  g_autofree double *b = g_new (double, table->n_samples);
  guint n = 0;
  for (guint s = 0; s < table->n_samples; s++) {
    a[n] = fm_rank_table_get (table, taster_a, s);
    b[n] = fm_rank_table_get (table, taster_b, s);
    n += !isnan (a[n]) && !isnan (b[n]);
  }
  return n >= 2 ? fm_stat_spearman (a, b, n) : NAN;
}

double
fm_rank_smallest_p (guint k, guint n)
{
  return n == 0 ? 1 : exp (-(n - 1.0) * lgamma (k + 1.0));
}

double
fm_rank_friedman_upper (guint k, guint n, double s)
{
  FmRankTail tail;
  g_return_val_if_fail (k >= 2 && k <= FM_RANK_MAX_SAMPLES && n >= 1, NAN);
  g_autoptr (FmRankRows) rows = fm_rank_rows_new_untied (k, n);
  return fm_rank_rows_count (rows, (gint64)ceil (4 * s - 1e-6), &tail) ? tail.p : NAN;
}

double
fm_rank_lsd (guint k, guint n, double alpha)
{
  return gsl_cdf_ugaussian_Qinv (alpha / 2) * sqrt (n * k * (k + 1.0) / 6);
}

double
fm_rank_lsd_conover (const FmRankTable *table, double alpha)
{
  g_autoptr (FmRankRows) rows = fm_rank_rows_new (table, TRUE);
  const guint n = rows->n_rows, k = rows->n_samples;
  gint64 sum[FM_RANK_MAX_SAMPLES], expected[FM_RANK_MAX_SAMPLES];
  double ranks_squared = 0, sums_squared = 0;

  if (n < 2 || k < 2 || n != table->n_tasters)
    return NAN;
  fm_rank_rows_sums (rows, sum, expected);
  for (guint s = 0; s < k; s++)
    sums_squared += (double)(sum[s] * sum[s]) / 4;
  for (guint r = 0; r < n; r++)
    for (guint i = 0; i < k; i++)
      ranks_squared += (double)(rows->row[r].score[i] * rows->row[r].score[i]) / 4;
  const double df = (n - 1.0) * (k - 1.0);
  return gsl_cdf_tdist_Qinv (alpha / 2, df) *
         sqrt (MAX (2 * (n * ranks_squared - sums_squared) / df, 0));
}
