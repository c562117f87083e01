/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pool-plan.c - how many more sheets are likely to tell two items apart */
#include "core/statistics/fm-pool-plan.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-pool-check.h"

/* The share found of so many has a standard error of 3 in 100 at most. */
#define N_SIMULATIONS 200
/* As good as the other. */
#define HALF 0.5

typedef struct {
  const FmPool *known;
  double prior_sd;
  guint a;
  guint b;
  guint64 seed;
  const FmStop *stop;
  FmPoolFit *truth; /* the worths that new sheets are drawn from */
  GArray *others;   /* guint: what else a new sheet can hold */
  guint n_on_sheet;
} Work;

static void
work_clear (Work *self)
{
  g_clear_pointer (&self->truth, fm_pool_fit_free);
  g_clear_pointer (&self->others, g_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Work, work_clear)

/* Both move by half, so that they stay where they are among the others. */
static void
set_apart (Work *self, double preferred)
{
  double *worth = self->truth->worth;
  const double middle = (worth[self->a] + worth[self->b]) / 2;
  const double half = log (preferred / (1 - preferred)) / 2;

  worth[self->a] = middle + half;
  worth[self->b] = middle - half;
}

/* What was compared with both. Where the two never were, a new sheet holds nothing but them. */
static void
find_others (Work *self)
{
  const guint *group = self->truth->group;
  guint longest = 2;

  for (guint i = 0; i < self->known->n_items; i++)
    if (i != self->a && i != self->b && group[i] == group[self->a] && group[i] == group[self->b] &&
        group[i] != FM_POOL_NO_GROUP)
      g_array_append_val (self->others, i);
  for (guint i = 0; i < self->known->sheets->len; i++)
    longest = MAX (longest, g_array_index (self->known->sheets, FmPoolSheet, i).n);
  self->n_on_sheet = MIN (longest, 2 + self->others->len);
}

/* The others take turns. The places are drawn later. */
static FmPool *
new_sheets (const Work *self, guint n_sheets)
{
  FmPool *sheets = fm_pool_new (self->known->n_items);
  guint turn = 0;

  for (guint s = 0; s < n_sheets; s++) {
    guint item[FM_POOL_MAX_ON_SHEET] = { self->a, self->b };
    double place[FM_POOL_MAX_ON_SHEET] = { 1, 2 };

    for (guint i = 2; i < self->n_on_sheet; i++, turn++) {
      item[i] = g_array_index (self->others, guint, turn % self->others->len);
      place[i] = i + 1;
    }
    fm_pool_add (sheets, self->known->n_sessions, s, self->n_on_sheet, item, place);
  }
  return sheets;
}

static void
add_all (FmPool *pool, const FmPool *sheets)
{
  for (guint s = 0; s < sheets->sheets->len; s++) {
    const FmPoolSheet *sheet = &g_array_index (sheets->sheets, FmPoolSheet, s);

    fm_pool_add (pool, sheet->session, sheet->taster, sheet->n, sheet->item, sheet->place);
  }
}

/* The right way round: to call the worse one better is no success. */
static gboolean
tells_apart (const FmPoolFit *fit, guint a, guint b)
{
  return fm_pool_fit_better (fit, a, b) > HALF && fm_pool_fit_is_apart (fit, a, b);
}

static gboolean
is_found (const Work *self, const FmPool *drawn)
{
  g_autoptr (FmPool) all = fm_pool_new (self->known->n_items);

  add_all (all, self->known);
  add_all (all, drawn);
  g_autoptr (FmPoolFit) fit = fm_pool_fit (all, self->prior_sd, NULL);
  return fit != NULL && tells_apart (fit, self->a, self->b);
}

/* Share of simulations that find the difference with @n_sheets; NaN when stopped. Simulation i
 * draws the same first sheets whatever the number, so that the share changes smoothly with it. */
static double
share_found (const Work *self, guint n_sheets)
{
  g_autoptr (FmPool) sheets = new_sheets (self, n_sheets);
  guint n_found = 0;

  for (guint i = 0; i < N_SIMULATIONS; i++) {
    FmRandom random;

    if (fm_stop_asked (self->stop))
      return NAN;
    fm_random_init (&random, self->seed + i);
    g_autoptr (FmPool) drawn = fm_pool_draw (sheets, self->truth, &random);
    n_found += is_found (self, drawn);
  }
  return (double)n_found / N_SIMULATIONS;
}

/* Doubles until it is enough, then halves the step. */
static void
search (const Work *self, FmPoolPlan *plan)
{
  guint low = 0;
  guint high = 5;

  plan->found = share_found (self, high);
  while (plan->found < FM_POOL_PLAN_CHANCE && high < FM_POOL_PLAN_MAX_SHEETS) {
    low = high;
    high *= 2;
    plan->found = share_found (self, high);
  }
  plan->n_sheets = plan->found < FM_POOL_PLAN_CHANCE ? FM_POOL_PLAN_MAX_SHEETS + 1 : high;
  while (!isnan (plan->found) && plan->n_sheets == high && high - low > 1) {
    const guint middle = (low + high) / 2;
    const double found = share_found (self, middle);

    if (found < FM_POOL_PLAN_CHANCE) {
      low = middle;
    } else {
      plan->n_sheets = high = middle;
      plan->found = found;
    }
  }
}

gboolean
fm_pool_plan (const FmPool *self,
              double prior_sd,
              guint a,
              guint b,
              double preferred,
              guint64 seed,
              const FmStop *stop,
              FmPoolPlan *plan,
              GError **error)
{
  g_auto (Work) work = {
    .known = self,
    .prior_sd = prior_sd,
    .a = a,
    .b = b,
    .seed = seed,
    .stop = stop,
  };

  if (!(preferred > HALF && preferred < 1) || a == b) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("Choose two different samples, and a share between half of the sheets "
                            "and all of them."));
    return FALSE;
  }
  work.others = g_array_new (FALSE, FALSE, sizeof (guint));
  work.truth = fm_pool_fit (self, prior_sd, error);
  if (work.truth == NULL)
    return FALSE;
  find_others (&work);
  *plan = (FmPoolPlan){ .n_on_sheet = work.n_on_sheet, .found = 1 };
  if (tells_apart (work.truth, a, b))
    return TRUE;
  set_apart (&work, preferred);
  search (&work, plan);
  if (!isnan (plan->found))
    return TRUE;
  g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_STOPPED, _ ("Stopped."));
  return FALSE;
}
