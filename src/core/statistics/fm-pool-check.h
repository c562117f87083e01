/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pool-check.h - whether the sheets of a pool say one thing: over tasters, sessions, repeats */
#pragma once

#include "core/statistics/fm-pool.h"

G_BEGIN_DECLS

/** Pairs of items that two sides both put in an order, and how many of them the same way round. */
typedef struct {
  guint n_pairs;
  guint n_same;
} FmPoolAgreement;

/** @taster against the worths that all others give, without the own sheets. Empty when the others
 * say nothing. */
FmPoolAgreement fm_pool_with_rest (const FmPool *self, guint taster, double prior_sd);
/** @a against @b: over each pair that both put in an order, once for each such two sheets. */
FmPoolAgreement fm_pool_with_each_other (const FmPool *self, guint a, guint b);
/** @taster's own sheets against each other: whether a pair that came again was put the same way. */
FmPoolAgreement fm_pool_with_self (const FmPool *self, guint taster);

typedef enum {
  FM_POOL_BY_SESSION,
  FM_POOL_BY_TASTER,
} FmPoolSplit;

/**
 * fm_pool_split_p:
 * @n_simulations: sets of sheets drawn from @fit
 *
 * How often chance alone makes sessions (or tasters) differ by as much as these do: the gain in log
 * likelihood of worths of their own, against its distribution over sheets drawn from the one
 * reading (parametric bootstrap; Davison and Hinkley, 1997, Bootstrap Methods and their
 * Application, 4.2.3).
 *
 * Returns: 0 .. 1; NaN for one session (taster) only, and when stopped
 */
double fm_pool_split_p (const FmPool *self,
                        const FmPoolFit *fit,
                        FmPoolSplit by,
                        double prior_sd,
                        guint n_simulations,
                        guint64 seed,
                        const FmStop *stop);
/** Sheets of the same tasters and items, drawn from the worths and tie weights of @fit. */
FmPool *fm_pool_draw (const FmPool *self, const FmPoolFit *fit, FmRandom *random);

G_END_DECLS
