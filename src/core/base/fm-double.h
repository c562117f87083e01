/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-double.h - comparing numbers that may be unknown */
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

G_END_DECLS
