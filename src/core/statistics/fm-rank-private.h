/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-rank-private.h - the distribution of rank sums when tasters rank at random */
#pragma once

#include "core/statistics/fm-rank.h"

G_BEGIN_DECLS

/** Ranks are doubled so that ties stay whole numbers. */
typedef struct {
  guint n;
  guint item[FM_RANK_MAX_SAMPLES];  /* the samples this taster ranked */
  guint score[FM_RANK_MAX_SAMPLES]; /* doubled midrank of each */
} FmRankRow;

typedef struct {
  guint n_rows;
  guint n_samples;
  gboolean is_complete; /* every row holds all samples */
  FmRankRow *row;
} FmRankRows;

typedef struct {
  double p;
  double p_error;
  FmRankMethod method;
  /* smallest doubled distance of the two rank sums furthest apart (each counted from its
   * expectation) that chance reaches in at most 5 % of sessions; 0 = no distance is that rare */
  guint clear_distance;
  double steps; /* sets of sums times orders that were counted, also where it was given up */
} FmRankTail;

/** Rows with two ranks or more (or only those with all, if @complete_only). */
FmRankRows *fm_rank_rows_new (const FmRankTable *table, gboolean complete_only);
FmRankRows *fm_rank_rows_new_untied (guint k, guint n);
void fm_rank_rows_free (FmRankRows *self);

/** All different orders of the scores of @row; (array length=n_orders x row->n). %NULL when more
 * than @limit. */
guint *fm_rank_row_orders (const FmRankRow *row, guint limit, guint *n_orders);
/** Doubled rank sum of each sample, and what it would be by chance. */
void fm_rank_rows_sums (const FmRankRows *self, gint64 *sum, gint64 *expected);
/** Sum of squares of (sum - expected). */
gint64 fm_rank_spread (const gint64 *sum, const gint64 *expected, guint n);

/** Chance of a spread >= @spread, and the clear distance; FALSE when too much to count. */
gboolean fm_rank_rows_count (const FmRankRows *self, gint64 spread, FmRankTail *tail);
FmRankTail fm_rank_rows_tail (const FmRankRows *self, gint64 spread, guint64 seed);
/** How many different orders the scores of @row can stand in. */
double fm_rank_row_n_orders (const FmRankRow *row);
/** Shuffles the scores of every row in place. */
void fm_rank_rows_shuffle (FmRankRows *self, gpointer random);
FmRankTail fm_rank_tail_from_draws (guint hits);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmRankRows, fm_rank_rows_free)

G_END_DECLS
