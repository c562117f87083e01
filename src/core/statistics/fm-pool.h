/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pool.h - orders of many sheets and sessions in one reading
 *
 * Each sheet puts some of the items in order, ties allowed. The chance that an item is put first
 * among those on a sheet is its worth over the sum of theirs, and so on down the sheet; two on a
 * sheet are a pair, and a tie of two is no preference. Ranks are never averaged over sheets: a
 * third place among three says something else than one among eight. Sources: Luce (1959),
 * Individual Choice Behavior; Plackett (1975, Applied Statistics 24); Bradley and Terry (1952,
 * Biometrika 39); ties after Davidson (1970, JASA 65): a set of d items that share a place counts a
 * tie weight times the geometric mean of their worths, against all sets of the sizes that were
 * tied. Errors from the information matrix at the worths found, that of the prior included.
 */
#pragma once

#include "core/base/fm-stop.h"
#include "core/statistics/fm-stat.h"

G_BEGIN_DECLS

/** Items on one sheet. */
#define FM_POOL_MAX_ON_SHEET 64
/** Standard deviation of a log worth before any sheet: one item in six beats an average one more
 * than 7 : 1. Weak, but it keeps an item that won its only comparison from being infinitely good.
 * Chosen here: common practice, no source. */
#define FM_POOL_PRIOR_SD 2.0
/** Group of an item that stands on no sheet beside another. */
#define FM_POOL_NO_GROUP G_MAXUINT

/** Equal places are a tie; the lower is the better. */
typedef struct {
  guint session;
  guint taster;
  guint n;
  guint item[FM_POOL_MAX_ON_SHEET];
  double place[FM_POOL_MAX_ON_SHEET];
} FmPoolSheet;

typedef struct {
  guint n_items;
  guint n_sessions; /* one more than the highest that was added */
  guint n_tasters;
  GArray *sheets; /* FmPoolSheet of two items or more */
} FmPool;

FmPool *fm_pool_new (guint n_items);
void fm_pool_free (FmPool *self);
/** Adds a sheet; those of fewer than two items say nothing and are left out. */
void fm_pool_add (
    FmPool *self, guint session, guint taster, guint n, const guint *item, const double *place);

/**
 * FmPoolFit:
 * @group: (array length=n_items): items of one group were compared, if only through a third one;
 *   nothing can be said between groups
 * @worth: (array length=n_items): log worth, 0 = mean of its group; NaN on no sheet
 * @se: (array length=n_items): standard error of @worth
 * @covariance: (array length=n_items²): of @worth, by rows
 * @tie: (array length=n_sizes): log weight of a tie of @size items; the first is 0 of size 1
 * @log_likelihood: of the sheets, the prior not in it
 */
typedef struct {
  guint n_items;
  guint n_groups;
  guint *group;
  double *worth;
  double *se;
  double *covariance;
  guint n_sizes;
  guint size[FM_POOL_MAX_ON_SHEET + 1];
  double tie[FM_POOL_MAX_ON_SHEET + 1];
  double log_likelihood;
} FmPoolFit;

/**
 * fm_pool_fit:
 * @prior_sd: of the normal prior of each log worth, centred at 0; INFINITY for none
 *
 * Returns: (transfer full): %NULL with @error when no sheet is there (EMPTY), or when, without a
 *   prior, an item has no finite worth since it won or lost whatever it was in (OUT_OF_RANGE)
 */
FmPoolFit *fm_pool_fit (const FmPool *self, double prior_sd, GError **error);
void fm_pool_fit_free (FmPoolFit *self);
/** worth of @a minus that of @b, and its standard error; both NaN between groups. */
double fm_pool_fit_difference (const FmPoolFit *self, guint a, guint b, double *se);
/** How probable it is that @a is better than @b, 0 .. 1, by the normal distribution of the
 * difference; NaN between groups and of an item with itself. */
double fm_pool_fit_better (const FmPoolFit *self, guint a, guint b);
/** TRUE where the difference holds over all pairs of the group together: among items that are all
 * alike any pair is told apart in at most 5 % of readings (studentized range). */
gboolean fm_pool_fit_is_apart (const FmPoolFit *self, guint a, guint b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmPool, fm_pool_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmPoolFit, fm_pool_fit_free)

G_END_DECLS
