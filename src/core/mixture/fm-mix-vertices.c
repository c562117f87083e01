/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-vertices.c - the extreme vertices of a region
 *
 * Starting from the simplex above the lower bounds, each further side cuts off the corners beyond
 * it and puts a new one on every edge that it crosses (double description: Motzkin, Raiffa,
 * Thompson and Thrall, 1953; for mixtures Snee, 1979, Technometrics 21). Two corners share an edge
 * if no third one lies on all the sides that both lie on; that holds in degenerate regions too.
 */
#include "core/mixture/fm-mix-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

/* Corners on the way to the last side; more of them than in the end. */
#define MAX_WORKING_CORNERS (2 * FM_MIX_MAX_POINTS)
/* Corners nearer than this in each share are one. */
#define SAME_SHARE 1e-8

static FmMixCorner *
corner_at (const GArray *corners, guint index)
{
  return &g_array_index (corners, FmMixCorner, index);
}

static GArray *
simplex_above_lower (const FmMixRegion *region)
{
  const guint q = region->q;
  const guint64 all = (G_GUINT64_CONSTANT (1) << q) - 1;
  GArray *corners = g_array_new (FALSE, FALSE, sizeof (FmMixCorner));
  FmMixCorner corner = { .sides = all };
  double room = 1.0;

  memcpy (corner.x, region->lower, sizeof corner.x);
  for (guint i = 0; i < q; i++)
    room -= region->lower[i];
  if (room <= FM_MIX_EPSILON) {
    g_array_append_val (corners, corner);
    return corners;
  }
  for (guint i = 0; i < q; i++) {
    corner.x[i] = region->lower[i] + room;
    corner.sides = all & ~(G_GUINT64_CONSTANT (1) << i);
    g_array_append_val (corners, corner);
    corner.x[i] = region->lower[i];
  }
  return corners;
}

static guint
count_sides (guint64 sides)
{
  return (guint)__builtin_popcountll (sides);
}

/* An edge lies on q - 2 sides at least. Where just q - 1 sides meet in a corner they are
 * independent, and any q - 2 of them are an edge; else the other corners have to be asked. */
static gboolean
share_an_edge (const GArray *corners, guint a, guint b, guint q)
{
  const guint64 first = corner_at (corners, a)->sides, second = corner_at (corners, b)->sides;
  const guint64 common = first & second;
  if (count_sides (common) + 2 < q)
    return FALSE;
  if (count_sides (first) + 1 == q || count_sides (second) + 1 == q)
    return TRUE;
  for (guint i = 0; i < corners->len; i++)
    if ((corner_at (corners, i)->sides & common) == common && i != a && i != b)
      return FALSE;
  return TRUE;
}

static FmMixCorner
corner_between (
    const FmMixCorner *inside, double in, const FmMixCorner *outside, double out, guint q)
{
  FmMixCorner corner = { .sides = inside->sides & outside->sides };
  const double weight = in / (in - out);
  for (guint i = 0; i < q; i++)
    corner.x[i] = inside->x[i] + weight * (outside->x[i] - inside->x[i]);
  return corner;
}

/* The corners that are left once @side has cut; more than MAX_WORKING_CORNERS says too many. */
static GArray *
cut (const GArray *corners, const FmMixSide *side, guint bit, guint q)
{
  GArray *left = g_array_new (FALSE, FALSE, sizeof (FmMixCorner));
  g_autofree double *distance = g_new (double, corners->len);
  const guint64 mark = G_GUINT64_CONSTANT (1) << bit;

  for (guint i = 0; i < corners->len; i++) {
    FmMixCorner corner = *corner_at (corners, i);
    distance[i] = fm_mix_side_distance (side, q, corner.x);
    if (fabs (distance[i]) <= FM_MIX_EPSILON)
      corner.sides |= mark;
    if (distance[i] >= -FM_MIX_EPSILON)
      g_array_append_val (left, corner);
  }
  for (guint i = 0; i < corners->len; i++)
    for (guint j = 0; distance[i] > FM_MIX_EPSILON && j < corners->len; j++)
      if (distance[j] < -FM_MIX_EPSILON && left->len <= MAX_WORKING_CORNERS &&
          share_an_edge (corners, i, j, q)) {
        FmMixCorner corner = corner_between (corner_at (corners, i), distance[i],
                                             corner_at (corners, j), distance[j], q);
        corner.sides |= mark;
        g_array_append_val (left, corner);
      }
  return left;
}

static double
rounded (double share)
{
  return floor (share / SAME_SHARE + 0.5);
}

static int
compare_corners (gconstpointer a, gconstpointer b)
{
  const FmMixCorner *first = a, *second = b;
  for (guint i = 0; i < FM_MIX_MAX_COMPONENTS; i++) {
    const double x = rounded (first->x[i]), y = rounded (second->x[i]);
    if (x != y)
      return x < y ? -1 : 1;
  }
  return 0;
}

static gboolean
same_corner (const FmMixCorner *a, const FmMixCorner *b, guint q)
{
  for (guint i = 0; i < q; i++)
    if (fabs (a->x[i] - b->x[i]) > SAME_SHARE)
      return FALSE;
  return TRUE;
}

static GArray *
sort_and_merge (GArray *corners, guint q)
{
  GArray *merged = g_array_new (FALSE, FALSE, sizeof (FmMixCorner));
  g_array_sort (corners, compare_corners);
  for (guint i = 0; i < corners->len; i++) {
    FmMixCorner *last = merged->len > 0 ? corner_at (merged, merged->len - 1) : NULL;
    if (last != NULL && same_corner (last, corner_at (corners, i), q))
      last->sides |= corner_at (corners, i)->sides;
    else
      g_array_append_val (merged, *corner_at (corners, i));
  }
  return merged;
}

/* Rounding leaves a share beside the bound it lies on; put it there. */
static void
snap_to_bounds (GArray *corners, const FmMixRegion *region)
{
  for (guint c = 0; c < corners->len; c++) {
    FmMixCorner *corner = corner_at (corners, c);
    for (guint i = 0; i < region->q; i++) {
      if (corner->sides >> i & 1)
        corner->x[i] = region->lower[i];
      else if (corner->sides >> (region->q + i) & 1)
        corner->x[i] = region->upper[i];
    }
  }
}

static void
fail_empty (const FmMixRegion *region, const GArray *corners, guint bit, GError **error)
{
  const guint k = (bit - 2 * region->q) / 2;
  const gboolean is_high = bit % 2 == 1;
  const FmMixLimit *limit = &region->limit[k];
  double best = is_high ? INFINITY : -INFINITY;

  for (guint c = 0; c < corners->len; c++) {
    double value = 0.0;
    for (guint i = 0; i < region->q; i++)
      value += limit->a[i] * corner_at (corners, c)->x[i];
    best = is_high ? MIN (best, value) : MAX (best, value);
  }
  g_autofree char *asked = fm_number_format (is_high ? limit->high : limit->low, 3);
  g_autofree char *reached = fm_number_format (best, 3);
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               is_high ? _ ("Limit %u asks for at most %s, but the bounds and the limits before it "
                            "leave no less than %s. Loosen one of them.")
                       : _ ("Limit %u asks for at least %s, but the bounds and the limits before "
                            "it leave no more than %s. Loosen one of them."),
               k + 1, asked, reached);
}

static void
fail_too_many (GError **error)
{
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("This region has more than %d corners. Use fewer components or limits."),
               FM_MIX_MAX_POINTS);
}

GArray *
fm_mix_region_corners (const FmMixRegion *region, const char *const *names, GError **error)
{
  FmMixSide side[FM_MIX_MAX_SIDES];
  if (!fm_mix_region_check_bounds (region, names, error))
    return NULL;

  const guint q = region->q;
  const guint n_sides = fm_mix_region_sides (region, side);
  g_autoptr (GArray) corners = simplex_above_lower (region);
  for (guint bit = q; bit < n_sides; bit++) {
    g_autoptr (GArray) left = cut (corners, &side[bit], bit, q);
    if (left->len == 0 && bit >= 2 * q) {
      fail_empty (region, corners, bit, error);
      return NULL;
    }
    if (left->len > MAX_WORKING_CORNERS) {
      fail_too_many (error);
      return NULL;
    }
    /* Upper bounds that rounding alone makes unreachable leave the corners as they are. */
    if (left->len > 0) {
      g_array_unref (corners);
      corners = g_steal_pointer (&left);
    }
  }
  snap_to_bounds (corners, region);
  GArray *merged = sort_and_merge (corners, q);
  if (merged->len <= FM_MIX_MAX_POINTS)
    return merged;
  g_array_unref (merged);
  fail_too_many (error);
  return NULL;
}

static void
fail_single (const double *x, guint q, const char *const *names, GError **error)
{
  g_autoptr (GString) blend = g_string_new (NULL);
  for (guint i = 0; i < q; i++) {
    g_autofree char *name = fm_mix_component_name (names, i);
    g_autofree char *share = fm_number_format (x[i] * 100.0, 1);
    g_string_append_printf (blend, _ ("%s%s %s %%"), i > 0 ? ", " : "", name, share);
  }
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("The bounds and limits leave one single blend: %s. Widen them to have something "
                  "to compare."),
               blend->str);
}

gboolean
fm_mix_region_check (const FmMixRegion *self, const char *const *names, GError **error)
{
  g_autoptr (GArray) corners = fm_mix_region_corners (self, names, error);
  if (corners == NULL)
    return FALSE;
  if (corners->len > 1)
    return TRUE;
  fail_single (g_array_index (corners, FmMixCorner, 0).x, self->q, names, error);
  return FALSE;
}

FmMixPoints *
fm_mix_region_vertices (const FmMixRegion *self, GError **error)
{
  g_autoptr (GArray) corners = fm_mix_region_corners (self, NULL, error);
  if (corners == NULL)
    return NULL;
  if (corners->len == 1) {
    fail_single (g_array_index (corners, FmMixCorner, 0).x, self->q, NULL, error);
    return NULL;
  }
  FmMixPoints *points = fm_mix_points_new (self->q);
  for (guint i = 0; i < corners->len; i++)
    fm_mix_points_add (points, g_array_index (corners, FmMixCorner, i).x);
  return points;
}
