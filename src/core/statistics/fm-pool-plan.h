/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pool-plan.h - how many more sheets are likely to tell two items apart
 *
 * By simulation: sheets are drawn from the worths as they are known, the two items set as far apart
 * as was asked, laid on the sheets that are there and read together with them. The answer holds
 * when the number is settled beforehand; who looks after each sheet and stops when it pleases finds
 * differences too often.
 */
#pragma once

#include "core/statistics/fm-pool.h"

G_BEGIN_DECLS

/** In how many of the simulated cases the two are to be told apart: common practice, no source. */
#define FM_POOL_PLAN_CHANCE 0.8
/** No more sheets than that are tried. */
#define FM_POOL_PLAN_MAX_SHEETS 320

/**
 * FmPoolPlan:
 * @n_on_sheet: items that each new sheet ranks: as many as the longest so far, the two among them
 * @n_sheets: fewest new ones with which @chance is reached; 0 = they are apart already;
 *   FM_POOL_PLAN_MAX_SHEETS + 1 = more than are tried
 * @found: how often they are told apart with @n_sheets (with the most that are tried), 0 .. 1
 */
typedef struct {
  guint n_on_sheet;
  guint n_sheets;
  double found;
} FmPoolPlan;

/**
 * fm_pool_plan:
 * @prior_sd: as of fm_pool_fit()
 * @a, @b: two items
 * @preferred: on how large a share of the sheets @a is really put before @b, ½ < .. < 1, ties apart
 * @seed: the same seed gives the same answer
 *
 * Takes up to seconds. Returns: FALSE with @error when it was stopped, @preferred is out of range,
 *   or the sheets that are there cannot be read (see fm_pool_fit())
 */
gboolean fm_pool_plan (const FmPool *self,
                       double prior_sd,
                       guint a,
                       guint b,
                       double preferred,
                       guint64 seed,
                       const FmStop *stop,
                       FmPoolPlan *plan,
                       GError **error);

G_END_DECLS
