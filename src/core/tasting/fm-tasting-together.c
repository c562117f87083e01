/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-together.c - several opened tastings in one reading */
#include "core/tasting/fm-tasting-together.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"

/* Enough to tell 5 in 100 from 1 in 100. */
#define N_SIMULATIONS 199
#define SEED 20260214

static double
prior_sd (const FmTastingTogether *self)
{
  return self->has_prior ? FM_POOL_PRIOR_SD : (double)INFINITY;
}

/* Part of the pairs that two sides put the same way round; 1 when there was none. */
static double
same_part (const FmPoolAgreement *agreement)
{
  return agreement->n_pairs > 0 ? (double)agreement->n_same / agreement->n_pairs : 1.0;
}

static void
find_opposed (FmTastingTogether *self)
{
  for (guint a = 0; a < self->pool->tasters->len; a++)
    for (guint b = 0; b < a; b++) {
      const FmPoolAgreement found = fm_pool_with_each_other (self->pool->orders, b, a);

      if (found.n_pairs == 0 || same_part (&found) >= same_part (&self->opposition))
        continue;
      self->opposition = found;
      self->opposed[0] = b;
      self->opposed[1] = a;
    }
}

static void
check_tasters (FmTastingTogether *self)
{
  const guint n = self->pool->tasters->len;

  self->rest = g_new0 (FmPoolAgreement, n);
  self->self = g_new0 (FmPoolAgreement, n);
  for (guint t = 0; t < n; t++) {
    self->rest[t] = fm_pool_with_rest (self->pool->orders, t, FM_POOL_PRIOR_SD);
    self->self[t] = fm_pool_with_self (self->pool->orders, t);
  }
  find_opposed (self);
}

FmTastingTogether *
fm_tasting_together_new (FmTastingPool *pool,
                         gboolean with_prior,
                         const FmStop *stop,
                         GError **error)
{
  g_autoptr (FmTastingTogether) self = g_new0 (FmTastingTogether, 1);
  g_autoptr (GError) problem = NULL;

  self->pool = pool;
  self->has_prior = with_prior;
  self->drift_p = self->tasters_p = NAN;
  self->orders = fm_pool_fit (pool->orders, prior_sd (self), &problem);
  self->liking = fm_pool_liking (pool->scores, pool->items->len, NULL);
  if (problem != NULL && pool->orders->sheets->len > 0)
    self->problem = g_strdup (problem->message);
  if (self->orders == NULL && self->liking == NULL) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         self->problem != NULL
                             ? self->problem
                             : _ ("No opened tasting puts two samples in order or scores two of "
                                  "them yet. Open a tasting first."));
    return NULL;
  }
  check_tasters (self);
  if (self->orders != NULL) {
    self->drift_p = fm_pool_split_p (pool->orders, self->orders, FM_POOL_BY_SESSION,
                                     FM_POOL_PRIOR_SD, N_SIMULATIONS, SEED, stop);
    self->tasters_p = fm_pool_split_p (pool->orders, self->orders, FM_POOL_BY_TASTER,
                                       FM_POOL_PRIOR_SD, N_SIMULATIONS, SEED, stop);
  }
  if (fm_stop_asked (stop)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_STOPPED, _ ("Stopped."));
    return NULL;
  }
  return g_steal_pointer (&self);
}

void
fm_tasting_together_free (FmTastingTogether *self)
{
  if (self == NULL)
    return;
  fm_tasting_pool_free (self->pool);
  g_clear_pointer (&self->orders, fm_pool_fit_free);
  g_clear_pointer (&self->liking, fm_pool_liking_free);
  g_free (self->problem);
  g_free (self->rest);
  g_free (self->self);
  g_free (self);
}

double
fm_tasting_together_better (const FmTastingTogether *self, guint a, guint b)
{
  return self->orders != NULL ? fm_pool_fit_better (self->orders, a, b)
                              : fm_pool_liking_better (self->liking, a, b);
}

guint *
fm_tasting_together_order (const FmTastingTogether *self)
{
  const guint n = self->pool->items->len;
  const guint *group = self->orders != NULL ? self->orders->group : self->liking->group;
  const double *value = self->orders != NULL ? self->orders->worth : self->liking->mean;
  guint *order = g_new (guint, n);

  for (guint i = 0; i < n; i++) {
    guint at = i;

    for (; at > 0; at--) {
      const guint before = order[at - 1];

      if (group[before] < group[i] || (group[before] == group[i] && !(value[i] > value[before])))
        break;
      order[at] = before;
    }
    order[at] = i;
  }
  return order;
}
