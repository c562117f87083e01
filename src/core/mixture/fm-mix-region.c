/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-region.c - where the shares of a mixture may lie */
#include "core/mixture/fm-mix-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

/* Coefficients that differ by less than this part of the largest are taken as equal. */
#define SAME_COEFFICIENT 1e-12

void
fm_mix_region_init (FmMixRegion *self, guint q)
{
  *self = (FmMixRegion){ .q = q };
  for (guint i = 0; i < FM_MIX_MAX_COMPONENTS; i++)
    self->upper[i] = i < q ? 1.0 : 0.0;
}

static double
sum_of (const double *values, guint n)
{
  double sum = 0.0;
  for (guint i = 0; i < n; i++)
    sum += values[i];
  return sum;
}

/* A step of one share for another moves the limit by at most this. */
static double
limit_range (const FmMixLimit *limit, guint q)
{
  double least = limit->a[0], most = limit->a[0], largest = 0.0;
  for (guint i = 0; i < q; i++) {
    least = MIN (least, limit->a[i]);
    most = MAX (most, limit->a[i]);
    largest = MAX (largest, fabs (limit->a[i]));
  }
  if (most - least > SAME_COEFFICIENT * largest)
    return most - least;
  return largest > 0.0 ? largest : 1.0;
}

guint
fm_mix_region_sides (const FmMixRegion *self, FmMixSide *side)
{
  const guint q = self->q;
  for (guint i = 0; i < q; i++)
    for (guint j = 0; j < q; j++) {
      side[i].h[j] = (i == j ? 1.0 : 0.0) - self->lower[i];
      side[q + i].h[j] = self->upper[i] - (i == j ? 1.0 : 0.0);
    }
  for (guint k = 0; k < self->n_limits; k++) {
    const FmMixLimit *limit = &self->limit[k];
    const double range = limit_range (limit, q);
    for (guint j = 0; j < q; j++) {
      side[2 * (q + k)].h[j] = isfinite (limit->low) ? (limit->a[j] - limit->low) / range : 1.0;
      side[2 * (q + k) + 1].h[j] =
          isfinite (limit->high) ? (limit->high - limit->a[j]) / range : 1.0;
    }
  }
  return 2 * (q + self->n_limits);
}

double
fm_mix_side_distance (const FmMixSide *self, guint q, const double *x)
{
  double distance = 0.0;
  for (guint i = 0; i < q; i++)
    distance += self->h[i] * x[i];
  return distance;
}

gboolean
fm_mix_region_contains (const FmMixRegion *self, const double *x, double tolerance)
{
  FmMixSide side[FM_MIX_MAX_SIDES];
  const guint n = fm_mix_region_sides (self, side);

  if (!(fabs (sum_of (x, self->q) - 1.0) <= tolerance + FM_MIX_EPSILON))
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (!(fm_mix_side_distance (&side[i], self->q, x) >= -tolerance))
      return FALSE;
  return TRUE;
}

void
fm_mix_region_tighten (FmMixRegion *self)
{
  const double room = 1.0 - sum_of (self->lower, self->q);
  const double lack = 1.0 - sum_of (self->upper, self->q);

  for (guint i = 0; i < self->q; i++) {
    const double lower = self->lower[i], upper = self->upper[i];
    self->lower[i] = MAX (lower, lack + upper);
    self->upper[i] = MIN (upper, room + lower);
  }
}

char *
fm_mix_component_name (const char *const *names, guint index)
{
  return names != NULL ? g_strdup (names[index]) : g_strdup_printf (_ ("component %u"), index + 1);
}

static gboolean
check_bound (const FmMixRegion *self, const char *const *names, guint i, GError **error)
{
  const double lower = self->lower[i], upper = self->upper[i];
  if (lower >= 0.0 && upper <= 1.0 && lower <= upper)
    return TRUE;

  g_autofree char *name = fm_mix_component_name (names, i);
  if (lower > upper) {
    g_autofree char *low_text = fm_number_format (lower * 100.0, 1);
    g_autofree char *high_text = fm_number_format (upper * 100.0, 1);
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The least share of %s (%s %%) is above its greatest share (%s %%). Lower the "
                    "one or raise the other."),
                 name, low_text, high_text);
  } else {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The shares of %s must be numbers from 0 to 100 %%."), name);
  }
  return FALSE;
}

static gboolean
check_limit (const FmMixRegion *self, guint index, GError **error)
{
  const FmMixLimit *limit = &self->limit[index];
  gboolean is_number = !isnan (limit->low) && !isnan (limit->high) && limit->low < INFINITY &&
                       limit->high > -INFINITY;
  for (guint i = 0; i < self->q; i++)
    is_number = is_number && isfinite (limit->a[i]);
  if (is_number && limit->low <= limit->high)
    return TRUE;
  if (is_number)
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The lower end of limit %u is above its upper end. Swap or change them."),
                 index + 1);
  else
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("Limit %u holds something that is not a number. Type it again."), index + 1);
  return FALSE;
}

static gboolean
check_sums (const FmMixRegion *self, GError **error)
{
  const double least = sum_of (self->lower, self->q), most = sum_of (self->upper, self->q);
  if (least <= 1.0 + FM_MIX_EPSILON && most >= 1.0 - FM_MIX_EPSILON)
    return TRUE;

  const gboolean too_much = least > 1.0;
  g_autofree char *sum = fm_number_format ((too_much ? least : most) * 100.0, 1);
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               too_much ? _ ("The least shares add up to %s %%, which is more than the whole "
                             "mixture. Lower one of them.")
                        : _ ("The greatest shares add up to %s %%, which does not fill the "
                             "mixture. Raise one of them."),
               sum);
  return FALSE;
}

gboolean
fm_mix_region_check_bounds (const FmMixRegion *self, const char *const *names, GError **error)
{
  if (self->q < 2 || self->q > FM_MIX_MAX_COMPONENTS || self->n_limits > FM_MIX_MAX_LIMITS) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A mixture has 2 to %d components and at most %d limits."),
                 FM_MIX_MAX_COMPONENTS, FM_MIX_MAX_LIMITS);
    return FALSE;
  }
  for (guint i = 0; i < self->q; i++)
    if (!check_bound (self, names, i, error))
      return FALSE;
  for (guint k = 0; k < self->n_limits; k++)
    if (!check_limit (self, k, error))
      return FALSE;
  return check_sums (self, error);
}
