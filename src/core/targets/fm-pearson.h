/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pearson.h - the Pearson square: two ingredients that meet one target between them
 *
 * Source: Pearson square as taught in the meat and feed trades (agricultural education): the
 * parts of each are the distance of the *other* from the target, read across the diagonal.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** Values in the corners and the middle are in %, e.g. fat; parts are in % points. */
typedef struct {
  double a_pct;      /* upper left */
  double b_pct;      /* lower left */
  double target_pct; /* middle */
  double a_parts;    /* upper right: |b - target| */
  double b_parts;    /* lower right: |a - target| */
  double a_share_pct;
  double b_share_pct;
} FmPearson;

/**
 * Fills @self. Fails with OUT_OF_RANGE when the target does not lie between @a_pct and @b_pct,
 * with UNKNOWN_VALUE when a value is NaN. When both and the target are the same, each is half.
 */
gboolean
fm_pearson_init (FmPearson *self, double a_pct, double b_pct, double target_pct, GError **error);
/** Amounts of both in a batch of @total (any unit of mass). */
void fm_pearson_batch (const FmPearson *self, double total, double *a, double *b);
/** How much of B goes with @a of A; NaN when the square uses no A. */
double fm_pearson_b_for_a (const FmPearson *self, double a);

G_END_DECLS
