/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-more-sheets.h - how many more sheets a question needs, asked of tastings read together
 */
#pragma once

#include "core/statistics/fm-pool-plan.h"
#include "core/tasting/fm-tasting-pool.h"

G_BEGIN_DECLS

/** What is asked: is @better put before @worse on @preferred (½ < .. < 1) of the sheets? */
typedef struct {
  char *better; /* names of items of the pool */
  char *worse;
  double preferred;
  gboolean has_prior;
} FmTastingMoreSheets;

/**
 * fm_tasting_more_sheets_text:
 * @pool: opened tastings
 *
 * Takes up to seconds: call it in a task. Returns: (transfer full): the answer in words; %NULL with
 *   @error when a sample is not in @pool any more, see also fm_pool_plan()
 */
char *fm_tasting_more_sheets_text (const FmTastingMoreSheets *self,
                                   const FmTastingPool *pool,
                                   const FmStop *stop,
                                   GError **error);
void fm_tasting_more_sheets_free (FmTastingMoreSheets *self);

G_END_DECLS
