/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-design.c - draws up the trials of a map */
#include "core/mixture/fm-map-design.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"

/* Two trials nearer than this in every share are one blend. */
#define SAME_SHARE 1e-6
/* A term counts as told apart when this much of it is not made up of the terms before it. */
#define SMALLEST_REST 1e-6

#define KIND(kind) (1u << (kind))

static void
add_point (GArray *points, const double *x, guint q, FmMixPointKind kind)
{
  FmMapPoint point = { .kind = kind };

  memcpy (point.x, x, q * sizeof *x);
  g_array_append_val (points, point);
}

static GArray *
from_rows (const FmMixPoints *rows, const GArray *kinds, guint q)
{
  GArray *points = g_array_new (FALSE, TRUE, sizeof (FmMapPoint));

  for (guint i = 0; i < rows->n; i++)
    add_point (points, fm_mix_points_get (rows, i), q,
               kinds != NULL ? g_array_index (kinds, FmMixPointKind, i) : FM_MIX_POINT_OTHER);
  return points;
}

/* A design of pure pseudo-components, put above the lower bounds. */
static GArray *
from_simplex (FmMixPoints *z, const FmMixRegion *region, GError **error)
{
  g_autoptr (FmMixPoints) rows = z != NULL ? fm_mix_from_pseudo (z, region->lower, error) : NULL;

  return rows != NULL ? from_rows (rows, NULL, region->q) : NULL;
}

static GArray *
lattice (const FmMap *self, const FmMixRegion *region, GError **error)
{
  g_autoptr (FmMixPoints) z = fm_mix_lattice (region->q, self->degree, error);

  return from_simplex (z, region, error);
}

static GArray *
centroid (const FmMixRegion *region, GError **error)
{
  g_autoptr (FmMixPoints) z = fm_mix_simplex_centroid (region->q, error);

  return from_simplex (z, region, error);
}

/* With three components the sides are edges; with more, their middles would be too many. */
static guint
side_kinds (guint q)
{
  return KIND (FM_MIX_POINT_VERTEX) | KIND (FM_MIX_POINT_CENTROID) |
         (q <= 3 ? KIND (FM_MIX_POINT_EDGE) : KIND (FM_MIX_POINT_FACE));
}

static GArray *
vertices (const FmMixRegion *region, guint kinds, GError **error)
{
  GArray *kind = NULL;
  g_autoptr (FmMixPoints) rows = fm_mix_region_points (region, kinds, &kind, error);
  GArray *points = rows != NULL ? from_rows (rows, kind, region->q) : NULL;

  g_clear_pointer (&kind, g_array_unref);
  return points;
}

static FmMixPoints *
made_rows (const FmMap *self, guint q)
{
  FmMixPoints *rows = fm_mix_points_new (q);

  for (guint i = 0; i < self->points->len; i++) {
    const FmMapPoint *point = &g_array_index (self->points, FmMapPoint, i);

    if (point->version_id != 0)
      fm_mix_points_add (rows, point->x);
  }
  return rows;
}

static GArray *
optimal (const FmMap *self, const FmMixRegion *region, const FmStop *stop, GError **error)
{
  const guint kinds = side_kinds (region->q) | KIND (FM_MIX_POINT_EDGE) | KIND (FM_MIX_POINT_FACE) |
                      KIND (FM_MIX_POINT_AXIAL);
  g_autoptr (GArray) candidates = vertices (region, kinds, error);
  g_autoptr (FmMixPoints) rows = fm_mix_points_new (region->q);
  g_autoptr (FmMixPoints) kept = made_rows (self, region->q);
  g_autoptr (FmMixChoice) choice = NULL;
  GArray *points;

  if (candidates == NULL)
    return NULL;
  for (guint i = 0; i < candidates->len; i++)
    fm_mix_points_add (rows, g_array_index (candidates, FmMapPoint, i).x);
  choice = fm_mix_d_optimal (rows, self->order, self->n_trials, kept->n > 0 ? kept : NULL,
                             self->seed, stop, error);
  if (choice == NULL)
    return NULL;
  points = g_array_new (FALSE, TRUE, sizeof (FmMapPoint));
  for (guint i = 0; i < choice->n; i++)
    g_array_append_val (points, g_array_index (candidates, FmMapPoint, choice->index[i]));
  return points;
}

GArray *
fm_map_design_points (const FmMap *self,
                      const FmMixRegion *region,
                      const FmStop *stop,
                      GError **error)
{
  g_autoptr (GArray) points = NULL;

  if (!fm_mix_region_check (region, NULL, error))
    return NULL;
  switch (self->design) {
  case FM_MAP_LATTICE:
    points = lattice (self, region, error);
    break;
  case FM_MAP_CENTROID:
    points = centroid (region, error);
    break;
  case FM_MAP_VERTICES:
    points = vertices (region, side_kinds (region->q), error);
    break;
  case FM_MAP_OPTIMAL:
    points = optimal (self, region, stop, error);
    break;
  }
  if (points == NULL || points->len <= FM_MAP_MAX_TRIALS)
    return g_steal_pointer (&points);
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               ngettext ("That makes %u blend, more than anybody can make and taste. Choose fewer "
                         "components or a choice for a given number of trials.",
                         "That makes %u blends, more than anybody can make and taste. Choose fewer "
                         "components or a choice for a given number of trials.",
                         points->len),
               points->len);
  return NULL;
}

static gboolean
same_blend (const double *a, const double *b, guint q)
{
  for (guint i = 0; i < q; i++)
    if (fabs (a[i] - b[i]) > SAME_SHARE)
      return FALSE;
  return TRUE;
}

/* A D-optimal choice may want a blend twice; only as many are left out as are made. */
static gboolean
take_made (GArray *unmatched, const double *x, guint q)
{
  for (guint i = 0; i < unmatched->len; i++)
    if (same_blend (g_array_index (unmatched, FmMapPoint, i).x, x, q)) {
      g_array_remove_index_fast (unmatched, i);
      return TRUE;
    }
  return FALSE;
}

GArray *
fm_map_design_join (const GArray *made, const GArray *design, guint q)
{
  GArray *joined = g_array_new (FALSE, TRUE, sizeof (FmMapPoint));
  g_autoptr (GArray) unmatched = NULL;

  for (guint i = 0; i < made->len; i++)
    if (g_array_index (made, FmMapPoint, i).version_id != 0)
      g_array_append_val (joined, g_array_index (made, FmMapPoint, i));
  unmatched = g_array_copy (joined);
  for (guint i = 0; i < design->len; i++)
    if (!take_made (unmatched, g_array_index (design, FmMapPoint, i).x, q))
      g_array_append_val (joined, g_array_index (design, FmMapPoint, i));
  return joined;
}

guint
fm_map_design_n_outside (const GArray *points, const FmMixRegion *region)
{
  guint n = 0;

  for (guint i = 0; i < points->len; i++)
    n += !fm_mix_region_contains (region, g_array_index (points, FmMapPoint, i).x, SAME_SHARE);
  return n;
}

static double
dot (const double *a, const double *b, guint n)
{
  double sum = 0.0;

  for (guint i = 0; i < n; i++)
    sum += a[i] * b[i];
  return sum;
}

/* Takes from column @k what the columns before it already say; FALSE when little is left. The
 * columns before it are of unit length or, where little was left of them, not reached. */
static gboolean
orthogonalize (double *columns, guint n, guint k)
{
  double *column = columns + (gsize)k * n;
  const double length = sqrt (dot (column, column, n));
  double rest;

  /* Twice, because one pass of Gram and Schmidt loses digits. */
  for (int pass = 0; pass < 2; pass++)
    for (guint j = 0; j < k; j++) {
      const double *other = columns + (gsize)j * n;
      const double share = dot (column, other, n);

      for (guint i = 0; i < n; i++)
        column[i] -= share * other[i];
    }
  rest = sqrt (dot (column, column, n));
  if (!(length > 0.0) || rest < SMALLEST_REST * length)
    return FALSE;
  for (guint i = 0; i < n; i++)
    column[i] /= rest;
  return TRUE;
}

gboolean
fm_map_design_carries (const GArray *points, FmMixOrder order, guint q)
{
  const guint n = points->len, n_terms = fm_mix_n_terms (order, q);
  g_autofree double *columns = g_new0 (double, (gsize)n *n_terms);
  g_autofree double *row = g_new0 (double, n_terms);

  if (n < n_terms)
    return FALSE;
  for (guint i = 0; i < n; i++) {
    fm_mix_terms (order, q, g_array_index (points, FmMapPoint, i).x, row);
    for (guint k = 0; k < n_terms; k++)
      columns[(gsize)k * n + i] = row[k];
  }
  for (guint k = 0; k < n_terms; k++)
    if (!orthogonalize (columns, n, k))
      return FALSE;
  return TRUE;
}
