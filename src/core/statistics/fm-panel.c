/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-panel.c */
#include "core/statistics/fm-panel.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-stat-choice.h"

#define ALPHA 0.05
#define WANTED_POWER 0.8
#define ENOUGH_SHARE 0.2
/* power goes up and down a little with every answer; a size counts once the next ones hold too */
#define STEADY 5

static guint
triangle_size_for_power (double discriminators)
{
  guint steady = 0;
  for (guint n = 3; n <= FM_SERVING_MAX_TASTERS; n++) {
    const gboolean enough =
        fm_choice_power (FM_CHOICE_TRIANGLE, n, discriminators, ALPHA) >= WANTED_POWER;
    steady = enough ? steady + 1 : 0;
    if (steady > STEADY)
      return n - STEADY;
  }
  return 0;
}

void
fm_panel_outlook (guint n_tasters, guint n_samples, FmPanelOutlook *outlook)
{
  *outlook = (FmPanelOutlook){ .n_tasters = n_tasters, .n_samples = n_samples };
  outlook->smallest_p = n_samples < 2 ? 1 : fm_rank_smallest_p (n_samples, n_tasters);
  if (n_samples >= 2)
    for (outlook->tasters_for_05 = 1;
         fm_rank_smallest_p (n_samples, outlook->tasters_for_05) > ALPHA;)
      outlook->tasters_for_05++;
  outlook->triangle_critical = fm_choice_critical (FM_CHOICE_TRIANGLE, n_tasters, ALPHA);
  outlook->triangle_power_30 = fm_choice_power (FM_CHOICE_TRIANGLE, n_tasters, 0.3, ALPHA);
  outlook->triangle_power_50 = fm_choice_power (FM_CHOICE_TRIANGLE, n_tasters, 0.5, ALPHA);
  outlook->triangle_n_power_80 = triangle_size_for_power (0.5);
  outlook->preference_critical = fm_choice_critical (FM_CHOICE_PAIRED_PREFERENCE, n_tasters, ALPHA);
}

typedef struct {
  double sum;
  guint n;
} Mean;

static void
mean_add (Mean *self, double value)
{
  if (isnan (value))
    return;
  self->sum += value;
  self->n++;
}

static double
mean_of (const Mean *self)
{
  return self->n > 0 ? self->sum / self->n : NAN;
}

static gboolean
count_jar (guint n, const guint *jar, FmJarResult *result, GError **error)
{
  for (guint i = 0; i < n; i++) {
    if (jar[i] > 5) {
      g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                   _ ("%u is no answer on the just-about-right scale; it runs from 1 to 5."),
                   jar[i]);
      return FALSE;
    }
    if (jar[i] > 0) {
      result->count[jar[i] - 1]++;
      result->n++;
    }
  }
  if (result->n == 0) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("No just-about-right answer is in yet. Enter at least one sheet."));
    return FALSE;
  }
  return TRUE;
}

gboolean
fm_panel_jar (guint n, const guint *jar, const double *liking, FmJarResult *result, GError **error)
{
  Mean low = { 0 }, right = { 0 }, high = { 0 }, others = { 0 };

  *result = (FmJarResult){ 0 };
  if (!count_jar (n, jar, result, error))
    return FALSE;
  for (guint i = 0; i < n; i++) {
    if (jar[i] == 0)
      continue;
    const double given = liking != NULL ? liking[i] : NAN;
    mean_add (jar[i] < 3 ? &low : jar[i] > 3 ? &high : &right, given);
    if (jar[i] != 3)
      mean_add (&others, given);
  }
  result->n_low = result->count[0] + result->count[1];
  result->n_high = result->count[3] + result->count[4];
  result->share_low = (double)result->n_low / result->n;
  result->share_high = (double)result->n_high / result->n;
  result->mean_low = mean_of (&low);
  result->mean_just_right = mean_of (&right);
  result->mean_high = mean_of (&high);
  result->drop_low = result->mean_just_right - result->mean_low;
  result->drop_high = result->mean_just_right - result->mean_high;
  result->weighted_low = result->drop_low * result->share_low;
  result->weighted_high = result->drop_high * result->share_high;
  result->overall_penalty = result->mean_just_right - mean_of (&others);
  result->enough_low = result->share_low >= ENOUGH_SHARE;
  result->enough_high = result->share_high >= ENOUGH_SHARE;
  return TRUE;
}

FmRankTable *
fm_panel_by_position (const FmRankTable *table, const FmServingRows *rows, GError **error)
{
  if (rows->n_rows != table->n_tasters || rows->n_samples != table->n_samples) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("The serving orders do not belong to these sheets."));
    return NULL;
  }
  FmRankTable *self = fm_rank_table_new (rows->n_rows, rows->n_per_row);
  for (guint t = 0; t < rows->n_rows; t++)
    for (guint i = 0; i < rows->n_per_row; i++)
      fm_rank_table_set (self, t, i,
                         fm_rank_table_get (table, t, fm_serving_rows_get (rows, t, i)));
  return self;
}
