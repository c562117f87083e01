/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pool-private.h - sheets as stages, shared by the fit and its checks */
#pragma once

#include "core/statistics/fm-pool.h"

G_BEGIN_DECLS

/** Items of one sheet still to be placed, and how many of them share the next place. */
typedef struct {
  guint n;
  guint n_tied; /* the first n_tied of @item */
  guint item[FM_POOL_MAX_ON_SHEET];
} FmPoolStage;

/** Appends the stages of @sheet to @stages. */
void fm_pool_add_stages (GArray *stages, const FmPoolSheet *sheet);
/** Sum over all sets of @d of the @n factors, @i and @j (or @n) not among them, of their product.
 */
double fm_pool_sum_of_products (const double *factor, guint n, guint i, guint j, guint d);
/** Log likelihood of the sheets at the worths and tie weights of @fit. */
double fm_pool_log_likelihood (const FmPool *self, const FmPoolFit *fit);

G_END_DECLS
