/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-surface.h - what a simplex plot shows, as plain numbers
 *
 * Three components span the triangle; the others are held (a slice). Corners of the plane: first
 * component at the top (0.5, sqrt 3 / 2), second at the left (0, 0), third at the right (1, 0).
 * Contours by marching triangles: the mean is taken as straight within a cell of the grid.
 */
#pragma once

#include "core/mixture/fm-mix-fit.h"

G_BEGIN_DECLS

/** A triangle in the space of shares. */
typedef struct {
  guint q;
  guint component[3];
  double held[FM_MIX_MAX_COMPONENTS];   /* shares at which the others are held */
  double corner[FM_MIX_MAX_COMPONENTS]; /* shares all points of the triangle have at least */
  double span;                          /* share that the three divide; > 0 */
} FmMixSlice;

typedef struct {
  double x;
  double y;
} FmMixPlanePoint;

typedef struct {
  double level; /* of a contour; of a limit its value */
  FmMixPlanePoint from;
  FmMixPlanePoint to;
} FmMixSegment;

typedef struct {
  double u[3]; /* parts of the corners, sum 1 */
  double mean;
  double se;
  gboolean inside; /* in the region */
} FmMixSurfacePoint;

typedef struct {
  FmMixSlice slice;
  guint n_side;             /* points on a side */
  FmMixSurfacePoint *point; /* [n_side (n_side + 1) / 2], rows from the top, left to right */
  double low;               /* of the means inside; NaN when no point is inside */
  double high;
  double se_low;
  double se_high;
} FmMixSurface;

/**
 * fm_mix_slice_init:
 * @held: (nullable): shares of all components; those of the three do not count; 0 without
 * @region: (nullable): the triangle is drawn in to the lower bounds of the three there
 *
 * Errors: less than three components, twice the same, the others take the whole mixture.
 */
gboolean fm_mix_slice_init (FmMixSlice *self,
                            guint q,
                            const guint component[3],
                            const double *held,
                            const FmMixRegion *region,
                            GError **error);
/** Shares of the point with parts @u of the corners; [q] */
void fm_mix_slice_to_shares (const FmMixSlice *self, const double u[3], double *x);
/** Parts of the corners of a blend's three shares, which is where it is drawn; they sum to 1 only
 * when the blend lies in the slice. Returns: how much of the mixture lies elsewhere, >= 0: half the
 * sum of the differences to the held shares and to the triangle. */
double fm_mix_slice_from_shares (const FmMixSlice *self, const double *x, double u[3]);
FmMixPlanePoint fm_mix_slice_to_plane (const double u[3]);
/** Parts of the corners at @at; below 0 outside the triangle. */
void fm_mix_slice_from_plane (FmMixPlanePoint at, double u[3]);

/** Corners of what the slice shares with @region, in turn; FmMixPlanePoint, empty when they do not
 * meet. (transfer full) */
GArray *fm_mix_slice_outline (const FmMixSlice *self, const FmMixRegion *region);
/** Where sum a_i x_i = @value crosses the triangle; FALSE when it does not, or only in a corner. */
gboolean
fm_mix_slice_line (const FmMixSlice *self, const double *a, double value, FmMixSegment *segment);

/** @n_side: 2 .. 200 points on a side. */
FmMixSurface *fm_mix_surface_new (const FmMixFit *fit,
                                  const FmMixSlice *slice,
                                  const FmMixRegion *region,
                                  guint n_side);
void fm_mix_surface_free (FmMixSurface *self);
const FmMixSurfacePoint *fm_mix_surface_get (const FmMixSurface *self, guint row, guint column);
/** Mean and standard error where the corners have the parts @u, straight within a cell; FALSE
 * outside of the triangle. */
gboolean fm_mix_surface_at (const FmMixSurface *self, const double u[3], double *mean, double *se);
/** At most @max_levels (>= 3) round levels between low and high; double. (transfer full) */
GArray *fm_mix_surface_levels (const FmMixSurface *self, guint max_levels);
/** Decimals that tell such levels apart. */
int fm_mix_surface_decimals (const FmMixSurface *self, guint max_levels);
/** Pieces of the contour at @level over the whole triangle, to be clipped to the outline when
 * drawn, or cut to @region here (nullable); FmMixSegment. (transfer full) */
GArray *fm_mix_surface_contour (const FmMixSurface *self, double level, const FmMixRegion *region);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMixSurface, fm_mix_surface_free)

G_END_DECLS
