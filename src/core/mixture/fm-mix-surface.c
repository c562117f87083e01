/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-surface.c - a fitted model over a triangle, and its contours */
#include "core/mixture/fm-mix-surface.h"

#include <math.h>

#include "core/base/fm-chart-scale.h"
#include "core/mixture/fm-mix-fit-private.h"

static guint
place (guint row, guint column)
{
  return row * (row + 1) / 2 + column;
}

const FmMixSurfacePoint *
fm_mix_surface_get (const FmMixSurface *self, guint row, guint column)
{
  g_return_val_if_fail (row < self->n_side && column <= row, NULL);
  return &self->point[place (row, column)];
}

static void
fill_point (FmMixSurfacePoint *point,
            const FmMixFit *fit,
            const FmMixSlice *slice,
            const FmMixRegion *region)
{
  double x[FM_MIX_MAX_COMPONENTS];

  fm_mix_slice_to_shares (slice, point->u, x);
  point->mean = fm_mix_fit_mean (fit, x);
  point->se = fm_mix_fit_se (fit, x);
  point->inside = fm_mix_region_contains (region, x, FM_MIX_EPSILON * 10);
}

static void
note_range (FmMixSurface *self, const FmMixSurfacePoint *point)
{
  if (!point->inside)
    return;
  /* fmin and fmax take the number when the other is NaN */
  self->low = fmin (self->low, point->mean);
  self->high = fmax (self->high, point->mean);
  self->se_low = fmin (self->se_low, point->se);
  self->se_high = fmax (self->se_high, point->se);
}

FmMixSurface *
fm_mix_surface_new (const FmMixFit *fit,
                    const FmMixSlice *slice,
                    const FmMixRegion *region,
                    guint n_side)
{
  FmMixSurface *self;

  g_return_val_if_fail (n_side >= 2 && n_side <= 200, NULL);
  g_return_val_if_fail (fit->q == slice->q && region->q == slice->q, NULL);
  self = g_new0 (FmMixSurface, 1);
  self->slice = *slice;
  self->n_side = n_side;
  self->point = g_new0 (FmMixSurfacePoint, place (n_side, 0));
  self->low = self->high = self->se_low = self->se_high = NAN;
  for (guint row = 0; row < n_side; row++)
    for (guint column = 0; column <= row; column++) {
      FmMixSurfacePoint *point = &self->point[place (row, column)];
      point->u[0] = 1.0 - (double)row / (n_side - 1);
      point->u[2] = (double)column / (n_side - 1);
      point->u[1] = (double)(row - column) / (n_side - 1);
      fill_point (point, fit, slice, region);
      note_range (self, point);
    }
  return self;
}

/* From the corner of the cell over its two other corners of that half. */
static void
blend (const FmMixSurfacePoint *corner,
       const FmMixSurfacePoint *first,
       const FmMixSurfacePoint *second,
       double at_first,
       double at_second,
       double *mean,
       double *se)
{
  *mean = corner->mean + at_first * (first->mean - corner->mean) +
          at_second * (second->mean - first->mean);
  *se = corner->se + at_first * (first->se - corner->se) + at_second * (second->se - first->se);
}

gboolean
fm_mix_surface_at (const FmMixSurface *self, const double u[3], double *mean, double *se)
{
  const double last = self->n_side - 1;
  const double down = (1.0 - u[0]) * last;
  const double along = u[2] * last;
  const guint row = (guint)CLAMP (floor (down), 0, last - 1);
  const guint column = (guint)CLAMP (floor (along), 0, row);
  const double into_row = down - row;
  const double into_column = along - column;
  const FmMixSurfacePoint *corner = fm_mix_surface_get (self, row, column);
  const FmMixSurfacePoint *opposite = fm_mix_surface_get (self, row + 1, column + 1);

  if (MIN (u[0], MIN (u[1], u[2])) < -FM_MIX_EPSILON)
    return FALSE;
  if (into_column <= into_row || column == row)
    blend (corner, fm_mix_surface_get (self, row + 1, column), opposite, into_row, into_column,
           mean, se);
  else
    blend (corner, fm_mix_surface_get (self, row, column + 1), opposite, into_column, into_row,
           mean, se);
  return TRUE;
}

void
fm_mix_surface_free (FmMixSurface *self)
{
  if (self == NULL)
    return;
  g_free (self->point);
  g_free (self);
}

/* Round steps of the range; FALSE when there is none to speak of */
static gboolean
level_scale (const FmMixSurface *self, guint max_levels, FmChartScale *scale)
{
  const double range = self->high - self->low;

  if (!(range > 1e-9 * MAX (fabs (self->high), fabs (self->low))))
    return FALSE;
  fm_chart_scale_init (scale, &range, 1, max_levels + 1);
  return TRUE;
}

GArray *
fm_mix_surface_levels (const FmMixSurface *self, guint max_levels)
{
  GArray *levels = g_array_new (FALSE, FALSE, sizeof (double));
  FmChartScale scale;

  g_return_val_if_fail (max_levels >= 3, levels);
  if (!level_scale (self, max_levels, &scale))
    return levels;
  const double first = floor (self->low / scale.step + 1e-9) + 1;
  for (double k = first; k * scale.step < self->high - 1e-9 * scale.step; k += 1) {
    const double level = k * scale.step;
    g_array_append_val (levels, level);
  }
  return levels;
}

int
fm_mix_surface_decimals (const FmMixSurface *self, guint max_levels)
{
  FmChartScale scale;
  return level_scale (self, max_levels, &scale) ? scale.decimals : 1;
}

typedef struct {
  double u[3];
} End;

static gboolean
crossing (const FmMixSurfacePoint *a, const FmMixSurfacePoint *b, double level, End *end)
{
  if ((a->mean >= level) == (b->mean >= level))
    return FALSE;
  const double part = (level - a->mean) / (b->mean - a->mean);
  for (guint c = 0; c < 3; c++)
    end->u[c] = a->u[c] + part * (b->u[c] - a->u[c]);
  return TRUE;
}

/* Narrows @start .. @stop, parts of the way, to where from + part (to - from) >= 0 */
static void
keep_positive (double from, double to, double *start, double *stop)
{
  if (from < 0.0 && to < 0.0)
    *stop = -1.0;
  else if (from < 0.0)
    *start = MAX (*start, from / (from - to));
  else if (to < 0.0)
    *stop = MIN (*stop, from / (from - to));
}

/* Cuts the piece to the region; FALSE when nothing is left */
static gboolean
cut (const FmMixSlice *slice, const FmMixRegion *region, End *from, End *to)
{
  double a[FM_MIX_MAX_COMPONENTS], b[FM_MIX_MAX_COMPONENTS], start = 0.0, stop = 1.0;

  fm_mix_slice_to_shares (slice, from->u, a);
  fm_mix_slice_to_shares (slice, to->u, b);
  for (guint i = 0; i < region->q; i++) {
    keep_positive (a[i] - region->lower[i] + FM_MIX_EPSILON,
                   b[i] - region->lower[i] + FM_MIX_EPSILON, &start, &stop);
    keep_positive (region->upper[i] - a[i] + FM_MIX_EPSILON,
                   region->upper[i] - b[i] + FM_MIX_EPSILON, &start, &stop);
  }
  for (guint l = 0; l < region->n_limits; l++) {
    const FmMixLimit *limit = &region->limit[l];
    double at_a = 0.0, at_b = 0.0;
    for (guint i = 0; i < region->q; i++) {
      at_a += limit->a[i] * a[i];
      at_b += limit->a[i] * b[i];
    }
    if (limit->low > -INFINITY)
      keep_positive (at_a - limit->low, at_b - limit->low, &start, &stop);
    if (limit->high < INFINITY)
      keep_positive (limit->high - at_a, limit->high - at_b, &start, &stop);
  }
  if (stop <= start)
    return FALSE;
  const End whole = *from;
  for (guint c = 0; c < 3; c++) {
    const double way = to->u[c] - whole.u[c];
    from->u[c] = whole.u[c] + start * way;
    to->u[c] = whole.u[c] + stop * way;
  }
  return TRUE;
}

static void
add_cell (const FmMixSurface *self,
          const FmMixSurfacePoint *const cell[3],
          double level,
          const FmMixRegion *region,
          GArray *segments)
{
  End end[3];
  guint n = 0;

  for (guint c = 0; c < 3; c++)
    n += crossing (cell[c], cell[(c + 1) % 3], level, &end[n]);
  if (n < 2 || (region != NULL && !cut (&self->slice, region, &end[0], &end[1])))
    return;
  const FmMixSegment segment = { level, fm_mix_slice_to_plane (end[0].u),
                                 fm_mix_slice_to_plane (end[1].u) };
  g_array_append_val (segments, segment);
}

GArray *
fm_mix_surface_contour (const FmMixSurface *self, double level, const FmMixRegion *region)
{
  GArray *segments = g_array_new (FALSE, FALSE, sizeof (FmMixSegment));

  for (guint row = 0; row + 1 < self->n_side; row++)
    for (guint column = 0; column <= row; column++) {
      const FmMixSurfacePoint *top = fm_mix_surface_get (self, row, column);
      const FmMixSurfacePoint *left = fm_mix_surface_get (self, row + 1, column);
      const FmMixSurfacePoint *right = fm_mix_surface_get (self, row + 1, column + 1);
      add_cell (self, (const FmMixSurfacePoint *const[]){ top, left, right }, level, region,
                segments);
      if (column < row)
        add_cell (self,
                  (const FmMixSurfacePoint *const[]){ top, right,
                                                      fm_mix_surface_get (self, row, column + 1) },
                  level, region, segments);
    }
  return segments;
}
