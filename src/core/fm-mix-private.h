/* fm-mix-private.h - a region as a polytope: its corners and what holds them there */
#pragma once

#include "core/fm-mix.h"

G_BEGIN_DECLS

/* Lower and upper bounds, then the low and high ends of the limits; at most 48. */
#define FM_MIX_MAX_SIDES (2 * (FM_MIX_MAX_COMPONENTS + FM_MIX_MAX_LIMITS))

/** Where the shares sum to 1, the side is h x >= 0; h x is a distance in shares. */
typedef struct {
  double h[FM_MIX_MAX_COMPONENTS];
} FmMixSide;

/** A vertex, and the sides that it lies on, as bits. */
typedef struct {
  double x[FM_MIX_MAX_COMPONENTS];
  guint64 sides;
} FmMixCorner;

/** Bit of the lower bound of component i is i, of the upper one q + i. */
guint fm_mix_region_sides (const FmMixRegion *self, FmMixSide *side);
double fm_mix_side_distance (const FmMixSide *self, guint q, const double *x);
/**
 * (transfer full): array of FmMixCorner in the order of their shares, one of a single point.
 * @names (nullable) as fm_mix_region_check(), whose errors it shares but for the single point.
 */
GArray *fm_mix_region_corners (const FmMixRegion *self, const char *const *names, GError **error);
/** The checks of fm_mix_region_check() that need no corners. */
gboolean
fm_mix_region_check_bounds (const FmMixRegion *self, const char *const *names, GError **error);

G_END_DECLS
