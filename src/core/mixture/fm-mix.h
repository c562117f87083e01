/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix.h - mixtures: shares that sum to 1, the region they may lie in, and designs on it
 *
 * Sources: Scheffe (1958, J. R. Stat. Soc. B 20), simplex lattice; Scheffe (1963, JRSS B 25),
 * simplex centroid; McLean and Anderson (1966, Technometrics 8), extreme vertices; Snee and
 * Marquardt (1974, Technometrics 16) and Piepel (1988, J. Quality Technology 20), vertices and
 * centroids with bounds and further linear limits; Cornell, Experiments with Mixtures (2002);
 * Fedorov exchange for D-optimal choices, as in Atkinson and Donev.
 *
 * All shares are fractions of the mixture, 0 .. 1.
 */
#pragma once

#include "core/base/fm-stop.h"

G_BEGIN_DECLS

#define FM_MIX_MAX_COMPONENTS 12
#define FM_MIX_MAX_LIMITS 12
#define FM_MIX_MAX_POINTS 20000
#define FM_MIX_MAX_TRIALS 1000 /* chosen at once */
/* How far a bound may be missed and still count as met. */
#define FM_MIX_EPSILON 1e-9

/** Points by rows; each row sums to 1. */
typedef struct {
  guint n;
  guint q;   /* components */
  GArray *x; /* double, n x q */
} FmMixPoints;

/** low <= sum a_i x_i <= high; -INFINITY / INFINITY where there is no limit on that side. */
typedef struct {
  double a[FM_MIX_MAX_COMPONENTS];
  double low;
  double high;
} FmMixLimit;

typedef struct {
  guint q; /* 2 .. FM_MIX_MAX_COMPONENTS */
  double lower[FM_MIX_MAX_COMPONENTS];
  double upper[FM_MIX_MAX_COMPONENTS];
  guint n_limits;
  FmMixLimit limit[FM_MIX_MAX_LIMITS];
} FmMixRegion;

/** Which corner of the region a point is. */
typedef enum {
  FM_MIX_POINT_VERTEX,
  FM_MIX_POINT_EDGE,     /* middle of an edge (a one-dimensional side) */
  FM_MIX_POINT_FACE,     /* centroid of a side of two dimensions or more */
  FM_MIX_POINT_CENTROID, /* mean of all vertices */
  FM_MIX_POINT_AXIAL,    /* half way from the centroid to a vertex */
  FM_MIX_POINT_OTHER,    /* lattice, picked by hand, ... */
} FmMixPointKind;

typedef enum {
  FM_MIX_LINEAR,        /* sum b_i x_i */
  FM_MIX_QUADRATIC,     /* + sum b_ij x_i x_j */
  FM_MIX_SPECIAL_CUBIC, /* + sum b_ijk x_i x_j x_k */
} FmMixOrder;

FmMixPoints *fm_mix_points_new (guint q);
FmMixPoints *fm_mix_points_copy (const FmMixPoints *self);
void fm_mix_points_free (FmMixPoints *self);
void fm_mix_points_add (FmMixPoints *self, const double *x);
const double *fm_mix_points_get (const FmMixPoints *self, guint row);

/** All shares free from 0 to 1, no limits. */
void fm_mix_region_init (FmMixRegion *self, guint q);
/**
 * Errors (a sentence for a cook, naming component numbers through @names, nullable): a bound
 * outside 0 .. 1 or not a number, lower above upper, lowers above 1 or uppers below 1 in sum,
 * limits that no blend can meet, a region of one single point.
 */
gboolean fm_mix_region_check (const FmMixRegion *self, const char *const *names, GError **error);
gboolean fm_mix_region_contains (const FmMixRegion *self, const double *x, double tolerance);
/** Tightens bounds that the others make unreachable (Piepel's implied bounds). */
void fm_mix_region_tighten (FmMixRegion *self);
/** Extreme vertices, without doubles, in a stable order. Errors as fm_mix_region_check(), or more
 * than FM_MIX_MAX_POINTS. */
FmMixPoints *fm_mix_region_vertices (const FmMixRegion *self, GError **error);
/** Vertices, edge middles, face centroids and the overall centroid, as asked by @kinds (bits
 * 1 << FmMixPointKind); @kind: (out) (optional) (transfer full): GArray of FmMixPointKind. */
FmMixPoints *
fm_mix_region_points (const FmMixRegion *self, guint kinds, GArray **kind, GError **error);

/** {q, m} simplex lattice; (q + m - 1)! / (m! (q - 1)!) points. */
FmMixPoints *fm_mix_lattice (guint q, guint m, GError **error);
/** Simplex centroid: 2^q - 1 points. */
FmMixPoints *fm_mix_simplex_centroid (guint q, GError **error);
guint64 fm_mix_lattice_count (guint q, guint m); /* 0 = too many to count */
guint64 fm_mix_simplex_centroid_count (guint q);
/** Design of pure pseudo-components into real shares: x_i = L_i + (1 - sum L) z_i. Only lower
 * bounds count. Errors: sum of lower bounds 1 or more. */
FmMixPoints *fm_mix_from_pseudo (const FmMixPoints *z, const double *lower, GError **error);

guint fm_mix_n_terms (FmMixOrder order, guint q);
/** Model row of a point: x_i, then x_i x_j (i < j), then x_i x_j x_k. @row: [n_terms] */
void fm_mix_terms (FmMixOrder order, guint q, const double *x, double *row);
/** "A", "A x B" ... from the components' @names; (transfer full) (array zero-terminated=1) */
char **fm_mix_term_names (FmMixOrder order, guint q, const char *const *names);

typedef struct {
  guint n;
  guint *index;         /* rows of the candidates, repeats allowed, sorted */
  double log_det;       /* of X'X */
  double d_efficiency;  /* 100 x det(X'X)^(1/p) / n, in per cent, of this scale only */
  double mean_variance; /* of the predicted mean over all candidates, in units of sigma^2 */
  double max_variance;
} FmMixChoice;

/**
 * fm_mix_d_optimal:
 * @candidates: points to choose from
 * @n_trials: how many to choose; with @kept at least as many as the model has terms
 * @kept: (nullable): points already made, which count but are not chosen again; they need not be
 *   among the candidates
 *
 * Best of seeded random starts with Fedorov exchange. The same seed gives the same choice. It is
 * the best that was found: no swap of one trial improves it.
 * May take seconds: call it in a task. Errors: too few trials, candidates that cannot carry the
 * model, candidates whose shares do not add up to 1, all made already, stopped.
 */
FmMixChoice *fm_mix_d_optimal (const FmMixPoints *candidates,
                               FmMixOrder order,
                               guint n_trials,
                               const FmMixPoints *kept,
                               guint64 seed,
                               const FmStop *stop,
                               GError **error);
void fm_mix_choice_free (FmMixChoice *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMixPoints, fm_mix_points_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMixChoice, fm_mix_choice_free)

G_END_DECLS
