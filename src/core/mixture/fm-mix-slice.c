/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-slice.c - a triangle of three components and what crosses it */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/mixture/fm-mix-surface.h"

static gboolean
check_components (guint q, const guint component[3], GError **error)
{
  const gboolean distinct =
      component[0] != component[1] && component[0] != component[2] && component[1] != component[2];
  gboolean known = q >= 3;

  for (guint c = 0; c < 3; c++)
    known = known && component[c] < q;
  if (distinct && known)
    return TRUE;
  g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                       _ ("A triangle needs three different components. Choose three."));
  return FALSE;
}

gboolean
fm_mix_slice_init (FmMixSlice *self,
                   guint q,
                   const guint component[3],
                   const double *held,
                   const FmMixRegion *region,
                   GError **error)
{
  double left = 1.0;

  if (!check_components (q, component, error))
    return FALSE;
  *self = (FmMixSlice){ .q = q };
  memcpy (self->component, component, sizeof self->component);
  for (guint i = 0; i < q && held != NULL; i++)
    self->held[i] = held[i];
  for (guint c = 0; c < 3; c++)
    self->held[component[c]] = 0.0;

  memcpy (self->corner, self->held, sizeof self->corner);
  for (guint c = 0; c < 3 && region != NULL; c++)
    self->corner[component[c]] = region->lower[component[c]];
  for (guint i = 0; i < q; i++)
    left -= self->corner[i];
  self->span = left;
  if (left > FM_MIX_EPSILON)
    return TRUE;
  g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                       _ ("The other components take the whole mixture, so nothing is left for "
                          "the three of the triangle. Hold the others at smaller shares."));
  return FALSE;
}

void
fm_mix_slice_to_shares (const FmMixSlice *self, const double u[3], double *x)
{
  memcpy (x, self->corner, self->q * sizeof (double));
  for (guint c = 0; c < 3; c++)
    x[self->component[c]] += self->span * u[c];
}

double
fm_mix_slice_from_shares (const FmMixSlice *self, const double *x, double u[3])
{
  double away = 0.0, sum = 0.0;

  for (guint c = 0; c < 3; c++) {
    u[c] = (x[self->component[c]] - self->corner[self->component[c]]) / self->span;
    sum += u[c];
    away += MAX (-u[c], 0.0) * self->span;
  }
  away += fabs (sum - 1.0) * self->span;
  for (guint i = 0; i < self->q; i++)
    if (i != self->component[0] && i != self->component[1] && i != self->component[2])
      away += fabs (x[i] - self->held[i]);
  return away / 2;
}

FmMixPlanePoint
fm_mix_slice_to_plane (const double u[3])
{
  const double sum = u[0] + u[1] + u[2];
  /* a blend beside the slice keeps the proportions of its three shares */
  const double part = sum > 0.0 ? 1.0 / sum : 1.0;
  return (FmMixPlanePoint){ part * (0.5 * u[0] + u[2]), part * u[0] * sqrt (0.75) };
}

void
fm_mix_slice_from_plane (FmMixPlanePoint at, double u[3])
{
  u[0] = at.y / sqrt (0.75);
  u[2] = at.x - 0.5 * u[0];
  u[1] = 1.0 - u[0] - u[2];
}

/* sum a_i x_i in the triangle: its values at the three corners */
static void
values_at_corners (const FmMixSlice *self, const double *a, double value[3])
{
  double base = 0.0;
  for (guint i = 0; i < self->q; i++)
    base += a[i] * self->corner[i];
  for (guint c = 0; c < 3; c++)
    value[c] = base + a[self->component[c]] * self->span;
}

typedef struct {
  double u[3];
} Corner;

static double
value_at (const Corner *at, const double value[3])
{
  return at->u[0] * value[0] + at->u[1] * value[1] + at->u[2] * value[2];
}

static Corner
between (const Corner *a, const Corner *b, double part)
{
  Corner middle;
  for (guint c = 0; c < 3; c++)
    middle.u[c] = a->u[c] + part * (b->u[c] - a->u[c]);
  return middle;
}

/* Keeps the part of the polygon where value >= low (Sutherland and Hodgman, 1974, CACM 17) */
static void
clip (GArray *polygon, const double value[3], double low)
{
  g_autoptr (GArray) before = g_array_copy (polygon);

  g_array_set_size (polygon, 0);
  for (guint i = 0; i < before->len; i++) {
    const Corner *here = &g_array_index (before, Corner, i);
    const Corner *next = &g_array_index (before, Corner, (i + 1) % before->len);
    const double a = value_at (here, value) - low, b = value_at (next, value) - low;
    if (a >= -FM_MIX_EPSILON)
      g_array_append_val (polygon, *here);
    if ((a > FM_MIX_EPSILON && b < -FM_MIX_EPSILON) ||
        (a < -FM_MIX_EPSILON && b > FM_MIX_EPSILON)) {
      const Corner crossing = between (here, next, a / (a - b));
      g_array_append_val (polygon, crossing);
    }
  }
}

static void
clip_band (GArray *polygon, const FmMixSlice *self, const double *a, double low, double high)
{
  double value[3], minus[3];

  values_at_corners (self, a, value);
  for (guint c = 0; c < 3; c++)
    minus[c] = -value[c];
  if (low > -INFINITY)
    clip (polygon, value, low);
  if (high < INFINITY)
    clip (polygon, minus, -high);
}

GArray *
fm_mix_slice_outline (const FmMixSlice *self, const FmMixRegion *region)
{
  GArray *outline = g_array_new (FALSE, FALSE, sizeof (FmMixPlanePoint));
  g_autoptr (GArray) polygon = g_array_new (FALSE, FALSE, sizeof (Corner));

  for (guint c = 0; c < 3; c++) {
    Corner corner = { { 0 } };
    corner.u[c] = 1.0;
    g_array_append_val (polygon, corner);
  }
  for (guint i = 0; i < self->q; i++) {
    double a[FM_MIX_MAX_COMPONENTS] = { 0 };
    a[i] = 1.0;
    clip_band (polygon, self, a, region->lower[i], region->upper[i]);
  }
  for (guint l = 0; l < region->n_limits; l++)
    clip_band (polygon, self, region->limit[l].a, region->limit[l].low, region->limit[l].high);
  for (guint i = 0; i < polygon->len; i++) {
    const FmMixPlanePoint at = fm_mix_slice_to_plane (g_array_index (polygon, Corner, i).u);
    g_array_append_val (outline, at);
  }
  return outline;
}

gboolean
fm_mix_slice_line (const FmMixSlice *self, const double *a, double value, FmMixSegment *segment)
{
  double corner[3];
  FmMixPlanePoint end[3];
  guint n = 0;

  values_at_corners (self, a, corner);
  for (guint c = 0; c < 3; c++) {
    const guint next = (c + 1) % 3;
    const double from = corner[c] - value, to = corner[next] - value;
    double u[3] = { 0 };
    /* each side owns its first corner only, so a line through a corner meets it once */
    if (!((from >= 0.0 && to < 0.0) || (from < 0.0 && to >= 0.0)))
      continue;
    u[next] = from / (from - to);
    u[c] = 1.0 - u[next];
    end[n++] = fm_mix_slice_to_plane (u);
  }
  if (n < 2 || hypot (end[0].x - end[1].x, end[0].y - end[1].y) < FM_MIX_EPSILON)
    return FALSE;
  *segment = (FmMixSegment){ value, end[0], end[1] };
  return TRUE;
}
