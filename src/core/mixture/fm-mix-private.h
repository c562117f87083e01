/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-private.h - a region as a polytope, and the search for D-optimal choices */
#pragma once

#include "core/mixture/fm-mix.h"
#include "core/statistics/fm-stat.h"

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
/** Of @names, else "component 2". (transfer full) */
char *fm_mix_component_name (const char *const *names, guint index);
/**
 * (transfer full): array of FmMixCorner in the order of their shares, one of a single point.
 * @names (nullable) as fm_mix_region_check(), whose errors it shares but for the single point.
 */
GArray *fm_mix_region_corners (const FmMixRegion *self, const char *const *names, GError **error);
/** The checks of fm_mix_region_check() that need no corners. */
gboolean
fm_mix_region_check_bounds (const FmMixRegion *self, const char *const *names, GError **error);

/* What stays the same over all starts of a D-optimal choice. The rows are those of the model,
 * times R^-1 of their QR decomposition. */
typedef struct {
  guint p;        /* terms */
  guint n_rows;   /* candidates, then the points already made */
  guint n_all;    /* candidates */
  guint n_trials; /* to choose */
  double *z;      /* n_rows x p */
  guint *allowed; /* candidates that may be chosen: not the points already made */
  guint n_allowed;
  double log_scale; /* log of det(R)^2 */
  const FmStop *stop;
} FmMixProblem;

typedef struct {
  const FmMixProblem *problem;
  guint *index;    /* n_trials */
  double *inverse; /* p x p: (Z'Z)^-1 */
  double *d;       /* n_all: variance of each candidate */
  double log_det;  /* of Z'Z; -INFINITY when the choice cannot carry the model */
} FmMixSearch;

/* Columns, or what is left of them, shorter than this are taken as dependent. */
#define FM_MIX_DEPENDENT 1e-11

const double *fm_mix_problem_row (const FmMixProblem *self, guint index);
/** How many terms the points already made can tell apart. */
guint fm_mix_problem_rank_of_kept (const FmMixProblem *self);
FmMixSearch *fm_mix_search_new (const FmMixProblem *problem);
void fm_mix_search_free (FmMixSearch *self);
/** A random choice; the same @random gives the same one. */
void fm_mix_search_start (FmMixSearch *self, FmRandom *random);
/** Exchanges until no swap of one trial is better; FALSE when stopped. */
gboolean fm_mix_search_climb (FmMixSearch *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmMixSearch, fm_mix_search_free)

G_END_DECLS
