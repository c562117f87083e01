/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-weighable.h - masses that a scale can weigh, with the targets still met */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** Linear limits on the masses: min <= sum (row_i x mass_i) <= max. */
typedef struct {
  guint n;      /* masses */
  guint n_rows; /* limits */
  const double *ideal_g;
  const double *min_g;   /* least mass of each */
  const double *max_g;   /* greatest mass of each */
  const gboolean *fixed; /* (nullable) keeps ideal_g as it is, on the scale or not */
  const double *rows;    /* n_rows x n, by rows */
  const double *row_min; /* NaN = open */
  const double *row_max; /* NaN = open */
  const double *cost;    /* (nullable) per g; NULL = stay near ideal_g */
  double step_g;         /* > 0 */
} FmWeighable;

typedef enum {
  FM_WEIGHABLE_OK,
  FM_WEIGHABLE_IMPOSSIBLE, /* no masses in whole steps meet the limits */
  FM_WEIGHABLE_NOT_FOUND,  /* none was found among the nodes allowed */
} FmWeighableStatus;

/**
 * Whole steps that keep the sum of @ideal_g (to the nearest step) and every limit. Rounds by
 * largest remainder, repairs by moving single steps between two masses, and then lets a
 * whole-number program look for better. The work is bounded by counts, never by time: what is given
 * decides the answer. It need not be the best one on the scale: say what rounding costs. @mass_g:
 * (out) (array length=n): best effort even when not OK.
 */
FmWeighableStatus fm_weighable_round (const FmWeighable *self, double *mass_g);

G_END_DECLS
