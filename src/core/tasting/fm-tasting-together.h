/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-together.h - several opened tastings in one reading, and what it says in words
 *
 * Orders are read by worths (fm-pool.h), likings by a linear model (fm-pool-liking.h). Ranks are
 * not averaged over tastings: the place of a sample depends on what it stood beside.
 */
#pragma once

#include "core/statistics/fm-pool-check.h"
#include "core/statistics/fm-pool-liking.h"
#include "core/tasting/fm-tasting-pool.h"

G_BEGIN_DECLS

typedef struct {
  FmTastingPool *pool;
  gboolean has_prior;
  FmPoolFit *orders;     /* (nullable): nothing was put in order, or see @problem */
  FmPoolLiking *liking;  /* (nullable): nothing was scored twice on a sheet */
  char *problem;         /* (nullable): why the orders cannot be read */
  double drift_p;        /* how often chance makes tastings differ so; NaN = one tasting */
  double tasters_p;      /* the same of tasters */
  FmPoolAgreement *rest; /* by taster, with all others */
  FmPoolAgreement *self; /* by taster, with the own sheets on a pair that came again */
  guint opposed[2];      /* the two tasters who agree least */
  FmPoolAgreement opposition;
} FmTastingTogether;

/**
 * fm_tasting_together_new:
 * @pool: (transfer full)
 * @with_prior: whether a weak assumption keeps two tasters from giving certainty
 *
 * Takes up to seconds: call it in a task. Errors: nothing to read (EMPTY), stopped.
 */
FmTastingTogether *fm_tasting_together_new (FmTastingPool *pool,
                                            gboolean with_prior,
                                            const FmStop *stop,
                                            GError **error);
void fm_tasting_together_free (FmTastingTogether *self);

/** How probable it is that item @a is better than @b: by the orders, where there are none by the
 * likings; NaN where they were never compared. */
double fm_tasting_together_better (const FmTastingTogether *self, guint a, guint b);
/** Items from the best down, those of one group together; those never compared last. By
 * item index (array length = n items). (transfer full) */
guint *fm_tasting_together_order (const FmTastingTogether *self);

/* Each (transfer full). */
/** "Over 5 tastings and 9 tasters version 7 is the most liked; 78 in 100 that it beats version 4;
 * not told apart: version 4 and version 6." */
char *fm_tasting_together_headline (const FmTastingTogether *self);
/** What the likings say beside the orders; NULL where only one was asked. */
char *fm_tasting_together_liking_text (const FmTastingTogether *self);
/** Samples that were never compared, even through a third; NULL when all were. */
char *fm_tasting_together_apart_text (const FmTastingTogether *self);
/** Who disagrees, a sentence a line. */
char *fm_tasting_together_tasters_text (const FmTastingTogether *self);
char *fm_tasting_together_drift_text (const FmTastingTogether *self);
/** Whether tasters repeat themselves, a line each; NULL when no pair came again. */
char *fm_tasting_together_repeat_text (const FmTastingTogether *self);
char *fm_tasting_together_method_text (const FmTastingTogether *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmTastingTogether, fm_tasting_together_free)

G_END_DECLS
