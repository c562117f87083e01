/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map.h - a map of blends: components, bounds, a design and the versions made from it */
#pragma once

#include "core/mixture/fm-mix-blend.h"
#include "core/mixture/fm-mix-fit.h"

G_BEGIN_DECLS

typedef enum {
  FM_MAP_LATTICE,  /* simplex lattice {q, degree} in pseudo-components */
  FM_MAP_CENTROID, /* simplex centroid in pseudo-components */
  FM_MAP_VERTICES, /* extreme vertices with centroids */
  FM_MAP_OPTIMAL,  /* D-optimal choice of n_trials among those */
} FmMapDesign;

typedef struct {
  double x[FM_MIX_BLEND_MAX_COMPONENTS];
  FmMixPointKind kind;
  gint64 version_id; /* 0 = not made into a version yet */
} FmMapPoint;

typedef struct {
  gint64 id; /* 0 = not stored yet */
  gint64 blend_id;
  gint64 base_version_id;
  char *name;
  gint64 created_at;     /* unix seconds */
  GPtrArray *components; /* FmMixComponent */
  double lower[FM_MIX_BLEND_MAX_COMPONENTS];
  double upper[FM_MIX_BLEND_MAX_COMPONENTS];
  FmMapDesign design;
  guint degree;     /* of the lattice, 1 .. 4 */
  FmMixOrder order; /* model that the optimal design is for */
  guint n_trials;
  guint64 seed;   /* below 2^53 */
  GArray *points; /* FmMapPoint */
} FmMap;

FmMap *fm_map_new (void);
FmMap *fm_map_copy (const FmMap *self);
void fm_map_free (FmMap *self);
gboolean fm_map_equal (const FmMap *a, const FmMap *b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMap, fm_map_free)

G_END_DECLS
