/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-trace.c - what happens when one share changes and the others keep their proportions */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/mixture/fm-mix-fit.h"

/* x = start + share * slope with the share of the component as parameter */
typedef struct {
  double start[FM_MIX_MAX_COMPONENTS];
  double slope[FM_MIX_MAX_COMPONENTS];
} Line;

static void
line_init (Line *self, guint q, const double *reference, guint component)
{
  const double others = 1.0 - reference[component];
  for (guint i = 0; i < q; i++) {
    const double part = others > FM_MIX_EPSILON ? reference[i] / others : 1.0 / (q - 1);
    self->start[i] = i == component ? 0.0 : part;
    self->slope[i] = i == component ? 1.0 : -part;
  }
}

/* Narrows @low .. @high to where @value + share * @slope lies between @min and @max */
static void
keep_within (double value, double slope, double min, double max, double *low, double *high)
{
  if (slope == 0.0) {
    if (value < min - FM_MIX_EPSILON || value > max + FM_MIX_EPSILON)
      *high = -INFINITY;
    return;
  }
  const double a = (min - value) / slope, b = (max - value) / slope;
  *low = MAX (*low, MIN (a, b));
  *high = MIN (*high, MAX (a, b));
}

FmMixPoints *
fm_mix_trace (
    const FmMixRegion *region, const double *reference, guint component, guint n, GError **error)
{
  const guint q = region->q;
  double low = 0.0, high = 1.0;
  Line line;

  g_return_val_if_fail (component < q && n >= 2, NULL);
  line_init (&line, q, reference, component);
  for (guint i = 0; i < q; i++)
    keep_within (line.start[i], line.slope[i], region->lower[i], region->upper[i], &low, &high);
  for (guint l = 0; l < region->n_limits; l++) {
    double value = 0.0, slope = 0.0;
    for (guint i = 0; i < q; i++) {
      value += region->limit[l].a[i] * line.start[i];
      slope += region->limit[l].a[i] * line.slope[i];
    }
    keep_within (value, slope, region->limit[l].low, region->limit[l].high, &low, &high);
  }
  if (!(high - low > FM_MIX_EPSILON)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("The limits leave this component no room to change while the others "
                            "keep their proportions."));
    return NULL;
  }

  FmMixPoints *points = fm_mix_points_new (q);
  for (guint p = 0; p < n; p++) {
    const double share = low + (high - low) * p / (n - 1);
    double x[FM_MIX_MAX_COMPONENTS];
    for (guint i = 0; i < q; i++)
      x[i] = line.start[i] + share * line.slope[i];
    fm_mix_points_add (points, x);
  }
  return points;
}
