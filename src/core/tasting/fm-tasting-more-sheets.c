/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-more-sheets.c - how many more sheets a question needs, asked of tastings read together
 */
#include "core/tasting/fm-tasting-more-sheets.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"

/* Any number does; the same question gets the same answer. */
#define SEED 20

static gboolean
find_item (const FmTastingPool *pool, const char *name, guint *item, GError **error)
{
  for (*item = 0; *item < pool->items->len; (*item)++)
    if (g_strcmp0 (pool->items->pdata[*item], name) == 0)
      return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
               /* Translators: %s is a sample */
               _ ("%s is in none of the tastings that are read. Choose another sample."), name);
  return FALSE;
}

static guint
in_100 (double share)
{
  return (guint)lround (100 * share);
}

/* What the answer rests on. */
static char *
if_text (const FmTastingMoreSheets *self)
{
  /* Translators: two samples and a count of 100 */
  return g_strdup_printf (_ ("if %s is really put before %s on %u of 100 sheets"), self->better,
                          self->worse, in_100 (self->preferred));
}

static char *
answer (const FmTastingMoreSheets *self, const FmPoolPlan *plan)
{
  g_autofree char *condition = if_text (self);

  if (plan->n_sheets == 0)
    /* Translators: two samples */
    return g_strdup_printf (_ ("None: the sheets that are read tell %s from %s already."),
                            self->better, self->worse);
  if (plan->n_sheets > FM_POOL_PLAN_MAX_SHEETS)
    /* Translators: a count of sheets, a count of 100, the condition "if …" */
    return g_strdup_printf (_ ("More than %u: with so many more sheets the two are told apart in "
                               "only %u of 100 simulated cases, %s."),
                            FM_POOL_PLAN_MAX_SHEETS, in_100 (plan->found), condition);
  return g_strdup_printf (
      /* Translators: a count of sheets, samples on each, a count of 100, the condition "if …" */
      ngettext ("About %u more sheet that ranks both, %u samples on it: then they are told apart "
                "in %u of 100 simulated cases, %s. Settle the number before and look once; whoever "
                "looks after each sheet finds differences too often.",
                "About %u more sheets that rank both, %u samples on each: then they are told apart "
                "in %u of 100 simulated cases, %s. Settle the number before and look once; whoever "
                "looks after each sheet finds differences too often.",
                plan->n_sheets),
      plan->n_sheets, plan->n_on_sheet, in_100 (plan->found), condition);
}

char *
fm_tasting_more_sheets_text (const FmTastingMoreSheets *self,
                             const FmTastingPool *pool,
                             const FmStop *stop,
                             GError **error)
{
  FmPoolPlan plan;
  guint better;
  guint worse;

  if (!find_item (pool, self->better, &better, error) ||
      !find_item (pool, self->worse, &worse, error))
    return NULL;
  if (!fm_pool_plan (pool->orders, self->has_prior ? FM_POOL_PRIOR_SD : (double)INFINITY, better,
                     worse, self->preferred, SEED, stop, &plan, error))
    return NULL;
  return answer (self, &plan);
}

void
fm_tasting_more_sheets_free (FmTastingMoreSheets *self)
{
  g_free (self->better);
  g_free (self->worse);
  g_free (self);
}
