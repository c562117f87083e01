/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pool-liking.h - liking scores of several sessions in one reading
 *
 * score = item + taster + session + error, all fixed, by least squares with a generalised
 * inverse: a hard day and a taster who gives all things an eight move no item. Items are told
 * apart only where sheets link them, through a third one if need be.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct {
  guint session;
  guint taster;
  guint item;
  double score;
} FmPoolScore;

/**
 * FmPoolLiking:
 * @group: (array length=n_items): as of #FmPoolFit
 * @mean: (array length=n_items): as if all tasters of all sessions had scored it; NaN = no score
 * @low, @high: (array length=n_items): 95 % t interval of that mean
 */
typedef struct {
  guint n_items;
  guint n_scores;
  guint *group;
  double *mean;
  double *low;
  double *high;
  double *covariance; /* of the means, n_items² by rows */
  guint df_error;
  double ms_error;
} FmPoolLiking;

/**
 * fm_pool_liking:
 * @scores: (element-type FmPoolScore)
 *
 * Returns: (transfer full): %NULL with @error when fewer than two items have scores (EMPTY), or
 *   nothing is left to tell the error from (OUT_OF_RANGE)
 */
FmPoolLiking *fm_pool_liking (const GArray *scores, guint n_items, GError **error);
void fm_pool_liking_free (FmPoolLiking *self);
/** mean of @a minus that of @b and its standard error; both NaN between groups. */
double fm_pool_liking_difference (const FmPoolLiking *self, guint a, guint b, double *se);
/** How probable it is that @a is liked better than @b, by the t distribution; NaN between groups
 * and of an item with itself. */
double fm_pool_liking_better (const FmPoolLiking *self, guint a, guint b);
/** TRUE where the difference holds over all pairs together (Tukey and Kramer, 5 %). */
gboolean fm_pool_liking_is_apart (const FmPoolLiking *self, guint a, guint b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmPoolLiking, fm_pool_liking_free)

G_END_DECLS
