/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-double.h - numbers that may be unknown */
#pragma once

#include <glib.h>
#include <math.h>

G_BEGIN_DECLS

/** Two unknown (NaN) numbers are the same number here, unlike with ==. */
static inline gboolean
fm_double_same (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

/** TRUE for an unknown number and for one in [@min, @max]. */
static inline gboolean
fm_double_unknown_or_within (double value, double min, double max)
{
  return isnan (value) || (value >= min && value <= max);
}

/** The sum of what is known of two numbers: NaN only where both are unknown. */
static inline double
fm_double_add_known (double a, double b)
{
  if (isnan (a))
    return b;
  return isnan (b) ? a : a + b;
}

G_END_DECLS
