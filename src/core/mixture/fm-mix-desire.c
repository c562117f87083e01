/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-desire.c - several responses joined into one number */
#include <math.h>

#include "core/mixture/fm-mix-fit.h"

/* Place of @value on the way from @from to @to, 0 .. 1; a step where the two are the same */
static double
climb (double value, double from, double to)
{
  if (from == to)
    return value >= to ? 1.0 : 0.0;
  return CLAMP ((value - from) / (to - from), 0.0, 1.0);
}

double
fm_mix_desirability (const FmMixGoal *goal, double value)
{
  if (isnan (value))
    return NAN;
  switch (goal->kind) {
  case FM_MIX_GOAL_HIGH:
    return climb (value, goal->low, goal->high);
  case FM_MIX_GOAL_LOW:
    return climb (-value, -goal->high, -goal->low);
  case FM_MIX_GOAL_NEAR:
    return value <= goal->target ? climb (value, goal->low, goal->target)
                                 : climb (-value, -goal->high, -goal->target);
  }
  g_return_val_if_reached (NAN);
}

double
fm_mix_desirability_joined (guint n, const FmMixGoal *goals, const double *values)
{
  double log_sum = 0.0, weights = 0.0;
  gboolean zero = FALSE;

  for (guint i = 0; i < n; i++) {
    const double d = fm_mix_desirability (&goals[i], values[i]);
    if (isnan (d))
      return NAN;
    zero = zero || d <= 0.0;
    log_sum += goals[i].weight * log (d);
    weights += goals[i].weight;
  }
  if (zero)
    return 0.0;
  return weights > 0.0 ? exp (log_sum / weights) : NAN;
}
