/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-serving.h - who gets which sample when: codes and serving orders
 *
 * Sources: Williams (1949, Aust. J. Sci. Res. A 2), designs balanced for position and carry-over;
 * Bose (1939) and Cochran and Cox, Experimental Designs, for balanced incomplete blocks by cyclic
 * development of base blocks; three-digit random codes: ISO 4120, ISO 8587.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define FM_SERVING_MAX_SAMPLES 26
#define FM_SERVING_MAX_TASTERS 500

/** Rows of sample indices (0 based) in serving order. */
typedef struct {
  guint n_rows;
  guint n_per_row;
  guint n_samples;
  guint *sample; /* n_rows x n_per_row by rows */
} FmServingRows;

typedef struct {
  FmServingRows *rows;      /* one per taster */
  gboolean is_incomplete;   /* tasters get a part of the samples */
  guint full_round;         /* tasters after which the design is fully balanced */
  gboolean is_balanced;     /* n_tasters is a multiple of full_round */
  gboolean is_near_balance; /* no small balanced plan is known: served and compared as evenly as
                               could be found; full_round is 0 */
  guint served_min;         /* fewest and most tasters that get any one sample */
  guint served_max;
  guint together_min; /* fewest and most tasters that get any one pair of samples */
  guint together_max;
} FmServingPlan;

/** @n different codes 100 .. 999 from @seed; (array length=n) (transfer full). Errors: n > 900. */
guint *fm_serving_codes (guint n, guint64 seed, GError **error);

/** Williams square of @k >= 2: every sample once in each position and after each other sample; odd
 * k: twice, with the reversed rows appended (2k rows). First rows 0, 1, k-1, 2, k-2 ... */
FmServingRows *fm_serving_williams (guint k, GError **error);

/**
 * fm_serving_bib:
 * @t: samples, 3 .. FM_SERVING_MAX_SAMPLES
 * @k: samples per taster, 2 .. t - 1
 *
 * Balanced incomplete blocks: each sample in r blocks, each pair in lambda. The smallest of: a
 * known design, cyclic development of base blocks (with or without a fixed point), all
 * combinations. Error when even that takes more than FM_SERVING_MAX_TASTERS blocks.
 */
FmServingRows *fm_serving_bib (guint t, guint k, GError **error);

/**
 * fm_serving_plan_new:
 * @max_per_taster: samples one person can taste in the session, >= 2
 *
 * Williams rows (samples and rows shuffled by @seed, used in rounds; of an odd number of samples
 * one Latin square after the other, so that every k tasters are even in position), or incomplete
 * blocks: whole rounds of fm_serving_bib(), and for the tasters left over (all, where no design of
 * up to FM_SERVING_MAX_TASTERS blocks is known) blocks as even as a search finds. Their orders are
 * chosen so that positions and successions stay as even as can be.
 * The same arguments always give the same plan.
 */
FmServingPlan *fm_serving_plan_new (
    guint n_samples, guint n_tasters, guint max_per_taster, guint64 seed, GError **error);
void fm_serving_plan_free (FmServingPlan *self);

/** Serving orders of a triangle test: AAB, ABA, BAA, BBA, BAB, ABB equally often, shuffled;
 * n x 3 of 0 (A) and 1 (B). */
FmServingRows *fm_serving_triangles (guint n, guint64 seed, GError **error);
/** AB and BA equally often, shuffled; n x 2. */
FmServingRows *fm_serving_pairs (guint n, guint64 seed, GError **error);

guint fm_serving_rows_get (const FmServingRows *self, guint row, guint position);
void fm_serving_rows_free (FmServingRows *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmServingRows, fm_serving_rows_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmServingPlan, fm_serving_plan_free)

G_END_DECLS
