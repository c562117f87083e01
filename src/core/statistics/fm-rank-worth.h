/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-rank-worth.h - how good samples are that not everybody ranked
 *
 * Where tasters ranked different subsets, sums of places reward being ranked more often and beside
 * weaker samples. Worths do not: the chance that a sample is put first among those on a sheet is
 * its worth over the sum of theirs, and so on down the sheet.
 * Sources: Luce (1959), Individual Choice Behavior; Plackett (1975, Applied Statistics 24); ties
 * after Davidson (1970, JASA 65): a set of d samples that share a place counts a tie weight times
 * the geometric mean of their worths, against all sets of the sizes that were tied.
 */
#pragma once

#include "core/statistics/fm-rank.h"

G_BEGIN_DECLS

/** As of the pooled reading (FM_POOL_PRIOR_SD). */
#define FM_RANK_WORTH_PRIOR_SD 2.0
/** Log worths closer than this are equal: what the search for them leaves open. */
#define FM_RANK_WORTH_SAME 1e-5

/**
 * fm_rank_worth:
 * @prior_sd: of the normal prior of each log worth, centred at 0; INFINITY for none
 *
 * Returns: (transfer full) (array length=n_samples): log worths, high = liked, mean 0 over the
 *   ranked ones; NaN for a sample on no sheet with two ranks or more. %NULL when some samples were
 *   never compared with the others, not even through a third one: nothing can be said of them.
 */
double *fm_rank_worth (const FmRankTable *table, double prior_sd);

G_END_DECLS
