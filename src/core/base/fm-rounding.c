/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-rounding.c - numbers of a list that add up to its total as they are shown */
#include "core/base/fm-rounding.h"

#include <math.h>

/* The value that lost most by being rounded down; n when all have had their step. */
static guint
largest_remainder (guint n, const double *value, double per_unit, const double *steps)
{
  guint best = n;
  double most = 0.0;
  for (guint i = 0; i < n; i++) {
    double remainder = value[i] * per_unit - steps[i];
    if (remainder > most) {
      best = i;
      most = remainder;
    }
  }
  return best;
}

void
fm_round_to_sum (guint n, const double *value, int decimals, double *shown)
{
  g_autofree double *exact = g_memdup2 (value, n * sizeof *value);
  double per_unit = pow (10.0, decimals);
  double sum = 0.0;
  double given = 0.0;
  for (guint i = 0; i < n; i++) {
    shown[i] = floor (exact[i] * per_unit);
    sum += isnan (exact[i]) ? 0.0 : exact[i];
    given += isnan (exact[i]) ? 0.0 : shown[i];
  }
  for (double left = round (sum * per_unit) - given; left > 0.5; left -= 1.0) {
    guint i = largest_remainder (n, exact, per_unit, shown);
    if (i == n)
      break;
    shown[i] += 1.0;
  }
  for (guint i = 0; i < n; i++)
    shown[i] /= per_unit;
}
