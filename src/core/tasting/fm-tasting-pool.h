/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-pool.h - the sheets of several opened tastings, by what was tasted
 *
 * Samples of one version are one item, whichever tasting they stood in and whatever they were
 * called; a sample from outside is known by its name. Tasters are known by their names, whatever
 * the case of the letters. A missing sheet is not counted, one of a taster who left is.
 */
#pragma once

#include "core/statistics/fm-pool.h"
#include "core/tasting/fm-tasting.h"

G_BEGIN_DECLS

typedef struct {
  GPtrArray *items;      /* char*: what an item is called; of the latest tasting */
  GArray *version_ids;   /* gint64 by item; 0 = from outside */
  GPtrArray *tasters;    /* char* */
  GPtrArray *tastings;   /* char*: title, oldest first */
  GArray *ids;           /* gint64 by tasting */
  GArray *held_at;       /* gint64 by tasting */
  FmPool *orders;        /* rank orders, and the pairs */
  GArray *scores;        /* FmPoolScore: likings */
  guint n_without_order; /* tastings that put nothing in order and scored nothing */
} FmTastingPool;

/** @tastings: (element-type FmTasting): those that are not opened are left out. */
FmTastingPool *fm_tasting_pool_new (const GPtrArray *tastings);
void fm_tasting_pool_free (FmTastingPool *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmTastingPool, fm_tasting_pool_free)

G_END_DECLS
