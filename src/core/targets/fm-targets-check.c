/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-check.c - refusing numbers that no blend can be made from */
#include "core/targets/fm-targets.h"

#include "core/base/fm-error.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MAX_LIMIT 1e9

static gboolean
check_band (const FmTargetRow *row, GError **error)
{
  const FmBand *band = &row->band;
  gboolean in_range = (isnan (band->min) || (band->min >= 0.0 && band->min <= MAX_LIMIT)) &&
                      (isnan (band->max) || (band->max >= 0.0 && band->max <= MAX_LIMIT));
  if (in_range && !(band->min > band->max))
    return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("Target for %s: type limits of 0 or more, the lower one first."), row->name);
  return FALSE;
}

static gboolean
check_candidate (const FmCandidate *candidate, GError **error)
{
  double min = candidate->min_share_pct;
  double max = candidate->max_share_pct;
  gboolean in_range = (isnan (min) || (min >= 0.0 && min <= 100.0)) &&
                      (isnan (max) || (max >= 0.0 && max <= 100.0)) && !(min > max);
  if (in_range && candidate->current_g >= 0.0 && candidate->current_g <= FM_MAX_LINE_MASS_G)
    return TRUE;
  g_set_error (
      error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
      _ ("%s: its mass must be 0 g or more and its share limits must lie from 0 to 100 %%, "
         "the lower one first."),
      candidate->ingredient->name);
  return FALSE;
}

gboolean
fm_targets_check (const FmTargets *self, GError **error)
{
  guint n = self->candidates->len;
  if (n == 0 || !(self->total_g > 0.0)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                 _ ("There is nothing to blend. Add at least one ingredient and a batch mass."));
    return FALSE;
  }
  if (n > FM_MAX_CANDIDATES || !(self->total_g <= FM_MAX_LINE_MASS_G) ||
      !(self->scale_step_g >= 0.0 && self->scale_step_g <= self->total_g)) {
    g_set_error (
        error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
        _ ("Use at most %d ingredients, a sensible batch mass, and a scale step that is no "
           "larger than the batch."),
        FM_MAX_CANDIDATES);
    return FALSE;
  }
  for (guint i = 0; i < n; i++)
    if (!check_candidate (g_ptr_array_index (self->candidates, i), error))
      return FALSE;
  for (guint r = 0; r < self->rows->len; r++)
    if (!check_band (g_ptr_array_index (self->rows, r), error))
      return FALSE;
  return TRUE;
}
