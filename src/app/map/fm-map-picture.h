/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-picture.h - a slice of a fitted map, worked out for drawing; plane as in fm-mix-surface.h
 */
#pragma once

#include "app/map/fm-map-marks.h"
#include "core/mixture/fm-mix-surface.h"

G_BEGIN_DECLS

/** A line with its words. */
typedef struct {
  char *text;
  GArray *segments; /* FmMixSegment */
} FmMapLine;

typedef struct {
  FmMixPlanePoint at;
  gboolean on_slice; /* FALSE: more than 2 points of the mixture lie elsewhere */
  guint index;       /* in marks */
} FmMapPlaced;

typedef struct {
  FmMixSlice slice;
  const FmMapFit *fit; /* (transfer none): outlives the picture */
  char *name[3];       /* of the corners' components */
  char *corner[3];     /* "Chuck 60 %" */
  GPtrArray *contours; /* FmMapLine */
  GPtrArray *limits;   /* FmMapLine, one segment each */
  GArray *outline;     /* FmMixPlanePoint */
  FmMixSurface *surface;
  GArray *marks;  /* FmMapMark */
  GArray *placed; /* FmMapPlaced: marks that fall into the triangle or close to it */
  double low;     /* of the means inside; NaN when the region misses the slice */
  double high;
  double se_less;    /* standard error from which it is less sure */
  double se_least;   /* and least sure; both NaN when it is about the same everywhere */
  gboolean predicts; /* FALSE: neither contours nor expected values */
  FmMapResponse response;
} FmMapPicture;

/** @fit: has a model, and outlives the picture. */
FmMapPicture *
fm_map_picture_new (FmMapDocument *document, const FmMapFit *fit, const FmMixSlice *slice);
void fm_map_picture_free (FmMapPicture *self);
/** What it shows, in words. (transfer full) */
char *fm_map_picture_describe (const FmMapPicture *self, FmMapDocument *document);
/** @x: (out): the blend at a place of the triangle. FALSE when it lies outside of the region. */
gboolean fm_map_picture_blend_at (const FmMapPicture *self, FmMixPlanePoint at, double *x);
/** What the model says at a place of the triangle, in words. (transfer full) */
char *
fm_map_picture_text_at (const FmMapPicture *self, FmMapDocument *document, FmMixPlanePoint at);
/** What its lines and patterns mean, in words. (transfer full) */
char *fm_map_picture_legend (const FmMapPicture *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMapPicture, fm_map_picture_free)

G_END_DECLS
