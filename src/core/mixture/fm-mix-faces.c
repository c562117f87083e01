/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-faces.c - edges, faces and centroids of a region
 *
 * A face is known by the sides that all its vertices lie on. Intersecting the region with one
 * side after the other, and what is left likewise, meets every face once (Piepel, 1988, asks for
 * the centroids of all dimensions). Two vertices are an edge, three or more a face of at least two
 * dimensions.
 */
#include "core/mixture/fm-mix-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"

typedef struct {
  const GArray *corners; /* FmMixCorner */
  guint q;
  GHashTable *known; /* guint64: sides of the faces met so far */
  GArray *faces;     /* guint64, in the order met */
} FaceSearch;

typedef struct {
  FmMixPoints *points;
  GArray *kind;      /* FmMixPointKind */
  GHashTable *known; /* GBytes: rounded points */
} PointSet;

static const FmMixCorner *
corner_at (const GArray *corners, guint index)
{
  return &g_array_index (corners, FmMixCorner, index);
}

static GArray *
corners_on (const GArray *corners, guint64 sides)
{
  GArray *found = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < corners->len; i++)
    if ((corner_at (corners, i)->sides & sides) == sides)
      g_array_append_val (found, i);
  return found;
}

/* All sides that the corners of @face on side @bit have in common; 0 when there are none. */
static guint64
common_sides (const GArray *corners, const GArray *face, guint bit)
{
  guint64 common = 0;
  gboolean any = FALSE;
  for (guint i = 0; i < face->len; i++) {
    const guint64 sides = corner_at (corners, g_array_index (face, guint, i))->sides;
    if (!(sides >> bit & 1))
      continue;
    common = any ? common & sides : sides;
    any = TRUE;
  }
  return common;
}

static void
meet_face (FaceSearch *self, guint64 sides)
{
  if (g_hash_table_contains (self->known, &sides))
    return;
  g_hash_table_add (self->known, g_memdup2 (&sides, sizeof sides));
  g_array_append_val (self->faces, sides);
}

/* Faces of two corners or more, the whole region first; FALSE when there are too many. */
static gboolean
find_faces (FaceSearch *self)
{
  guint64 whole = ~G_GUINT64_CONSTANT (0);
  for (guint i = 0; i < self->corners->len; i++)
    whole &= corner_at (self->corners, i)->sides;
  meet_face (self, whole);
  for (guint next = 0; next < self->faces->len; next++) {
    const guint64 sides = g_array_index (self->faces, guint64, next);
    g_autoptr (GArray) face = corners_on (self->corners, sides);
    for (guint bit = 0; face->len > 2 && bit < FM_MIX_MAX_SIDES; bit++) {
      const guint64 smaller = sides >> bit & 1 ? 0 : common_sides (self->corners, face, bit);
      g_autoptr (GArray) on_it = smaller != 0 ? corners_on (self->corners, smaller) : NULL;
      if (on_it != NULL && on_it->len > 1)
        meet_face (self, smaller);
    }
    if (self->faces->len > FM_MIX_MAX_POINTS)
      return FALSE;
  }
  return TRUE;
}

/* A point that is there already is not added again. */
static void
add_point (PointSet *self, const double *x, FmMixPointKind kind)
{
  gint64 rounded[FM_MIX_MAX_COMPONENTS];
  const guint q = self->points->q;
  for (guint i = 0; i < q; i++)
    rounded[i] = (gint64)floor (x[i] * 1e8 + 0.5);
  if (!g_hash_table_add (self->known, g_bytes_new (rounded, q * sizeof *rounded)))
    return;
  fm_mix_points_add (self->points, x);
  g_array_append_val (self->kind, kind);
}

static void
mean_of (const GArray *corners, const GArray *some, guint q, double *mean)
{
  for (guint i = 0; i < q; i++) {
    mean[i] = 0.0;
    for (guint c = 0; c < some->len; c++)
      mean[i] += corner_at (corners, g_array_index (some, guint, c))->x[i] / some->len;
  }
}

static void
add_faces (PointSet *set, const FaceSearch *search, FmMixPointKind kind)
{
  /* the first is the whole region, whose middle is its centroid */
  for (guint f = 1; f < search->faces->len; f++) {
    double x[FM_MIX_MAX_COMPONENTS];
    g_autoptr (GArray) face =
        corners_on (search->corners, g_array_index (search->faces, guint64, f));
    if ((face->len == 2) != (kind == FM_MIX_POINT_EDGE))
      continue;
    mean_of (search->corners, face, search->q, x);
    add_point (set, x, kind);
  }
}

static void
add_central (PointSet *set, const GArray *corners, guint kinds)
{
  double centroid[FM_MIX_MAX_COMPONENTS];
  g_autoptr (GArray) all = corners_on (corners, 0);
  mean_of (corners, all, set->points->q, centroid);
  /* The only edge of a region that is a line is the region. */
  if (kinds & (1u << FM_MIX_POINT_EDGE) && corners->len == 2 &&
      !(kinds & (1u << FM_MIX_POINT_CENTROID)))
    add_point (set, centroid, FM_MIX_POINT_EDGE);
  if (kinds & (1u << FM_MIX_POINT_CENTROID))
    add_point (set, centroid, FM_MIX_POINT_CENTROID);
  for (guint c = 0; kinds & (1u << FM_MIX_POINT_AXIAL) && c < corners->len; c++) {
    double x[FM_MIX_MAX_COMPONENTS];
    for (guint i = 0; i < set->points->q; i++)
      x[i] = (centroid[i] + corner_at (corners, c)->x[i]) / 2.0;
    add_point (set, x, FM_MIX_POINT_AXIAL);
  }
}

static gboolean
fail_too_many (GError **error)
{
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("This region has more than %d edges and faces. Leave out the face centroids, or "
                  "use fewer components or limits."),
               FM_MIX_MAX_POINTS);
  return FALSE;
}

static gboolean
add_all (PointSet *set, const GArray *corners, guint kinds, GError **error)
{
  const guint faces = 1u << FM_MIX_POINT_EDGE | 1u << FM_MIX_POINT_FACE;
  FaceSearch search = { .corners = corners, .q = set->points->q };
  search.known = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  search.faces = g_array_new (FALSE, FALSE, sizeof (guint64));
  const gboolean found = !(kinds & faces) || find_faces (&search);

  for (guint c = 0; kinds & (1u << FM_MIX_POINT_VERTEX) && c < corners->len; c++)
    add_point (set, corner_at (corners, c)->x, FM_MIX_POINT_VERTEX);
  if (found && kinds & (1u << FM_MIX_POINT_EDGE))
    add_faces (set, &search, FM_MIX_POINT_EDGE);
  if (found && kinds & (1u << FM_MIX_POINT_FACE))
    add_faces (set, &search, FM_MIX_POINT_FACE);
  if (found)
    add_central (set, corners, kinds);
  g_hash_table_unref (search.known);
  g_array_unref (search.faces);
  return found || fail_too_many (error);
}

FmMixPoints *
fm_mix_region_points (const FmMixRegion *self, guint kinds, GArray **kind, GError **error)
{
  g_autoptr (GArray) corners = NULL;
  if (!fm_mix_region_check (self, NULL, error))
    return NULL;
  corners = fm_mix_region_corners (self, NULL, error);

  PointSet set = { .points = fm_mix_points_new (self->q) };
  set.kind = g_array_new (FALSE, FALSE, sizeof (FmMixPointKind));
  set.known =
      g_hash_table_new_full (g_bytes_hash, g_bytes_equal, (GDestroyNotify)g_bytes_unref, NULL);
  const gboolean done = add_all (&set, corners, kinds, error);
  g_hash_table_unref (set.known);
  if (done && kind != NULL)
    *kind = g_steal_pointer (&set.kind);
  g_clear_pointer (&set.kind, g_array_unref);
  if (!done)
    g_clear_pointer (&set.points, fm_mix_points_free);
  return set.points;
}
