/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pool-check.c - whether the sheets of a pool say one thing: over tasters, sessions, repeats */
#include "core/statistics/fm-pool-check.h"

#include <math.h>

#include "core/statistics/fm-pool-private.h"

/* Log worths closer than this are equal: what the search for them leaves open. */
#define SAME 1e-6

static const FmPoolSheet *
sheet_at (const FmPool *self, guint index)
{
  return &g_array_index (self->sheets, FmPoolSheet, index);
}

static guint
part_of (const FmPoolSheet *sheet, FmPoolSplit by)
{
  return by == FM_POOL_BY_SESSION ? sheet->session : sheet->taster;
}

static void
add_sheet (FmPool *self, const FmPoolSheet *sheet)
{
  fm_pool_add (self, sheet->session, sheet->taster, sheet->n, sheet->item, sheet->place);
}

/* The sheets of one session or taster, or of all but those. */
static FmPool *
take_part (const FmPool *self, FmPoolSplit by, guint part, gboolean others)
{
  FmPool *taken = fm_pool_new (self->n_items);

  for (guint s = 0; s < self->sheets->len; s++)
    if ((part_of (sheet_at (self, s), by) == part) != others)
      add_sheet (taken, sheet_at (self, s));
  return taken;
}

FmPoolAgreement
fm_pool_with_rest (const FmPool *self, guint taster, double prior_sd)
{
  g_autoptr (FmPool) rest = take_part (self, FM_POOL_BY_TASTER, taster, TRUE);
  g_autoptr (FmPoolFit) fit = fm_pool_fit (rest, prior_sd, NULL);
  FmPoolAgreement found = { 0 };

  for (guint s = 0; fit != NULL && s < self->sheets->len; s++) {
    const FmPoolSheet *sheet = sheet_at (self, s);

    for (guint i = 0; sheet->taster == taster && i < sheet->n; i++)
      for (guint j = 0; j < i; j++) {
        double se;
        const double own = sheet->place[j] - sheet->place[i];
        const double of_rest = fm_pool_fit_difference (fit, sheet->item[i], sheet->item[j], &se);

        if (own == 0 || !(fabs (of_rest) > SAME))
          continue;
        found.n_pairs++;
        found.n_same += (own > 0) == (of_rest > 0);
      }
  }
  return found;
}

/* Place of @item on @sheet; NaN when it is not on it. */
static double
place_of (const FmPoolSheet *sheet, guint item)
{
  for (guint i = 0; i < sheet->n; i++)
    if (sheet->item[i] == item)
      return sheet->place[i];
  return NAN;
}

static void
compare_sheets (const FmPoolSheet *a, const FmPoolSheet *b, FmPoolAgreement *found)
{
  for (guint i = 0; i < a->n; i++)
    for (guint j = 0; j < i; j++) {
      const double by_a = a->place[i] - a->place[j];
      const double by_b = place_of (b, a->item[i]) - place_of (b, a->item[j]);

      if (by_a == 0 || by_b == 0 || isnan (by_b))
        continue;
      found->n_pairs++;
      found->n_same += (by_a > 0) == (by_b > 0);
    }
}

FmPoolAgreement
fm_pool_with_each_other (const FmPool *self, guint a, guint b)
{
  FmPoolAgreement found = { 0 };

  for (guint s = 0; s < self->sheets->len; s++)
    for (guint t = 0; t < self->sheets->len; t++)
      if (sheet_at (self, s)->taster == a && sheet_at (self, t)->taster == b)
        compare_sheets (sheet_at (self, s), sheet_at (self, t), &found);
  return found;
}

FmPoolAgreement
fm_pool_with_self (const FmPool *self, guint taster)
{
  FmPoolAgreement found = { 0 };

  for (guint s = 0; s < self->sheets->len; s++)
    for (guint t = 0; t < s; t++)
      if (sheet_at (self, s)->taster == taster && sheet_at (self, t)->taster == taster)
        compare_sheets (sheet_at (self, s), sheet_at (self, t), &found);
  return found;
}

/* Which tie size comes next among @n items, by what each size adds to all that could happen. */
static guint
draw_size (const FmPoolFit *fit, const double *worth, guint n, FmRandom *random)
{
  double share[FM_POOL_MAX_ON_SHEET + 1], sum = 0;
  double factor[FM_POOL_MAX_ON_SHEET];
  guint w = 0;

  for (; w < fit->n_sizes && fit->size[w] <= n; w++) {
    for (guint i = 0; i < n; i++)
      factor[i] = exp (worth[i] / fit->size[w]);
    sum += exp (fit->tie[w]) * fm_pool_sum_of_products (factor, n, n, n, fit->size[w]);
    share[w] = sum;
  }
  const double at = fm_random_unit (random) * sum;
  for (guint i = 0; i < w; i++)
    if (at < share[i])
      return fit->size[i];
  return 1;
}

/* Moves a set of @d items, drawn by the product of their factors, to the front. */
static void
draw_set (guint *item, double *worth, guint n, guint d, FmRandom *random)
{
  double factor[FM_POOL_MAX_ON_SHEET];
  guint n_taken = 0;

  for (guint i = 0; i < n; i++)
    factor[i] = exp (worth[i] / d);
  for (guint i = 0; i < n && n_taken < d; i++) {
    const guint left = d - n_taken;
    const double with =
        factor[i] * fm_pool_sum_of_products (factor + i + 1, n - i - 1, n, n, left - 1);
    const double all = fm_pool_sum_of_products (factor + i, n - i, n, n, left);

    if (fm_random_unit (random) * all >= with)
      continue;
    const guint other = item[n_taken];
    const double other_worth = worth[n_taken];
    item[n_taken] = item[i];
    worth[n_taken++] = worth[i];
    item[i] = other;
    worth[i] = other_worth;
  }
}

static void
draw_sheet (FmPool *self, const FmPoolSheet *like, const FmPoolFit *fit, FmRandom *random)
{
  FmPoolSheet sheet = *like;
  double worth[FM_POOL_MAX_ON_SHEET];

  for (guint i = 0; i < sheet.n; i++)
    worth[i] = fit->worth[sheet.item[i]];
  for (guint from = 0; from < sheet.n;) {
    const guint n = sheet.n - from;
    const guint d = n > 1 ? draw_size (fit, worth + from, n, random) : 1;

    draw_set (sheet.item + from, worth + from, n, d, random);
    for (guint i = 0; i < d; i++)
      sheet.place[from + i] = from + 1;
    from += d;
  }
  add_sheet (self, &sheet);
}

FmPool *
fm_pool_draw (const FmPool *self, const FmPoolFit *fit, FmRandom *random)
{
  FmPool *drawn = fm_pool_new (self->n_items);

  for (guint s = 0; s < self->sheets->len; s++)
    draw_sheet (drawn, sheet_at (self, s), fit, random);
  return drawn;
}

/* What worths of their own gain in log likelihood. */
static double
split_gain (const FmPool *self, FmPoolSplit by, double prior_sd)
{
  const guint n_parts = by == FM_POOL_BY_SESSION ? self->n_sessions : self->n_tasters;
  g_autoptr (FmPoolFit) whole = fm_pool_fit (self, prior_sd, NULL);
  double gain = whole != NULL ? -whole->log_likelihood : (double)NAN;

  for (guint part = 0; part < n_parts; part++) {
    g_autoptr (FmPool) taken = take_part (self, by, part, FALSE);
    g_autoptr (FmPoolFit) fit = fm_pool_fit (taken, prior_sd, NULL);

    gain += fit != NULL ? fit->log_likelihood : 0;
  }
  return gain;
}

static guint
count_parts (const FmPool *self, FmPoolSplit by)
{
  guint n_parts = 0;

  for (guint s = 0; s < self->sheets->len; s++) {
    gboolean is_new = TRUE;

    for (guint t = 0; t < s; t++)
      is_new = is_new && part_of (sheet_at (self, s), by) != part_of (sheet_at (self, t), by);
    n_parts += is_new;
  }
  return n_parts;
}

double
fm_pool_split_p (const FmPool *self,
                 const FmPoolFit *fit,
                 FmPoolSplit by,
                 double prior_sd,
                 guint n_simulations,
                 guint64 seed,
                 const FmStop *stop)
{
  const double gain = split_gain (self, by, prior_sd);
  guint n_as_much = 0;
  FmRandom random;

  if (count_parts (self, by) < 2)
    return NAN;
  fm_random_init (&random, seed);
  for (guint i = 0; i < n_simulations; i++) {
    g_autoptr (FmPool) drawn = fm_pool_draw (self, fit, &random);

    if (fm_stop_asked (stop))
      return NAN;
    n_as_much += split_gain (drawn, by, prior_sd) >= gain;
  }
  return (n_as_much + 1.0) / (n_simulations + 1.0);
}
