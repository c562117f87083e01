/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-text.c - what a solution says, in sentences */
#include "app/targets/fm-targets-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "core/base/fm-number.h"

/* Changes of the cost below this show as nothing. */
#define LEAST_COST_CHANGE 0.00005

static char *
signed_cost (double cost_per_kg)
{
  const char *currency = fm_notebook_units ()->currency;
  g_autofree char *text = fm_number_format_unit (fabs (cost_per_kg), 4, currency);

  return g_strconcat (cost_per_kg < 0.0 ? "−" : "+", text, NULL);
}

static char *
row_reach (const FmTargetRow *row, const FmReach *reach, const char *unit)
{
  g_autofree char *min = fm_number_format (reach->min, row->decimals);
  g_autofree char *max = fm_number_format_unit (reach->max, row->decimals, unit);

  return g_strdup_printf (_ ("These ingredients reach %s to %s."), min, max);
}

/* An exact target on a scale: what it is off by is stated, not counted as missed. */
static char *
row_words (const FmTargets *targets, const FmTargetsResult *result, guint index)
{
  const FmTargetRow *row = g_ptr_array_index (targets->rows, index);
  const double value = result->row_value[index];
  g_autofree char *target = NULL;
  g_autofree char *step = NULL;
  g_autofree char *tolerance = NULL;

  if (!(result->row_tolerance[index] > 0.0))
    return fm_band_describe (&row->band, value, row->decimals, row->unit);
  target = fm_number_format_unit (row->band.min, row->decimals, row->unit);
  step = fm_number_to_edit (targets->scale_step_g, 3);
  tolerance = fm_number_format_unit (result->row_tolerance[index], row->decimals + 1, row->unit);
  /* Translators: "the target is 20.0 %; steps of 5 g can be off by up to 0.15 %" */
  return g_strdup_printf (_ ("the target is %s; steps of %s g can be off by up to %s"), target,
                          step, tolerance);
}

char *
fm_targets_text_row (const FmTargets *targets, const FmTargetsResult *result, guint index)
{
  const FmTargetRow *row = g_ptr_array_index (targets->rows, index);
  const double value = result->row_value[index];
  const FmReach *reach = &result->reach[index];
  const char *unit = row->unit;
  g_autofree char *words = row_words (targets, result, index);
  g_autofree char *now = fm_number_format_unit (value, row->decimals, unit);
  g_autofree char *text = isnan (value) ? g_strdup_printf ("%s: %s", row->name, words)
                                        : g_strdup_printf ("%s: %s, %s", row->name, now, words);
  g_autofree char *range = NULL;

  if (isnan (reach->min) || isnan (reach->max))
    return g_steal_pointer (&text);
  range = row_reach (row, reach, unit);
  return g_strdup_printf ("%s. %s", text, range);
}

char *
fm_targets_text_share_cost (const FmTargets *targets, const FmTargetsResult *result, guint index)
{
  const FmCandidate *candidate = g_ptr_array_index (targets->candidates, index);
  const double change = result->cost_per_share_pct[index];
  g_autofree char *cost = NULL;

  if (candidate->locked || result->left_out[index])
    return NULL;
  if (!result->can_take_more[index])
    return g_strdup_printf (_ ("One more %% of %s is not possible within the targets and limits."),
                            candidate->ingredient->name);
  if (isnan (change))
    return NULL;
  if (fabs (change) < LEAST_COST_CHANGE)
    return g_strdup_printf (_ ("One more %% of %s does not change the cost."),
                            candidate->ingredient->name);
  cost = signed_cost (change);
  return g_strdup_printf (_ ("One more %% of %s changes the cost by %s per kg."),
                          candidate->ingredient->name, cost);
}

char *
fm_targets_text_limit_cost (const FmTargets *targets, const FmTargetsResult *result, guint index)
{
  const FmTargetRow *row = g_ptr_array_index (targets->rows, index);
  const double change = result->cost_per_unit[index];
  g_autofree char *cost = NULL;
  g_autofree char *step = NULL;

  /* A limit of the cost that binds moves the cost by itself: no news. */
  if (isnan (change) || fabs (change) < LEAST_COST_CHANGE || row->quantity == FM_QUANTITY_COST)
    return NULL;
  cost = signed_cost (change);
  step = fm_number_format_unit (1.0, 0, row->unit);
  /* Translators: "1 %" more in the limit of "Fat" */
  return g_strdup_printf (_ ("The limit of %s raised by %s changes the cost by %s per kg."),
                          row->name, step, cost);
}

char *
fm_targets_text_cost (double cost_per_kg)
{
  const char *currency = fm_notebook_units ()->currency;
  g_autofree char *cost = fm_number_format_unit (cost_per_kg, 2, currency);

  if (isnan (cost_per_kg))
    return g_strdup (_ ("Cost not known: an ingredient in use has no price."));
  return g_strdup_printf (_ ("Cost: %s per kg"), cost);
}

char *
fm_targets_text_fat_reach (const FmReach *reach)
{
  g_autofree char *min = fm_number_format (reach->min, 1);
  g_autofree char *max = fm_number_format_unit (reach->max, 1, "%");

  if (isnan (reach->min) || isnan (reach->max))
    return NULL;
  return g_strdup_printf (_ ("With these ingredients, locks and share limits fat can be %s to %s."),
                          min, max);
}
