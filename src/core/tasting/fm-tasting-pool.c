/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-pool.c - the sheets of several opened tastings, by what was tasted */
#include "core/tasting/fm-tasting-pool.h"

#include <math.h>

#include "core/statistics/fm-pool-liking.h"

static gboolean
is_called (const char *a, const char *b)
{
  g_autofree char *folded_a = g_utf8_casefold (a, -1);
  g_autofree char *folded_b = g_utf8_casefold (b, -1);

  return g_str_equal (folded_a, folded_b);
}

static guint
taster_index (FmTastingPool *self, const char *name)
{
  for (guint i = 0; i < self->tasters->len; i++)
    if (is_called (self->tasters->pdata[i], name))
      return i;
  g_ptr_array_add (self->tasters, g_strdup (name));
  return self->tasters->len - 1;
}

static guint
item_index (FmTastingPool *self, const FmTastingSample *sample)
{
  const char *name = sample->name != NULL ? sample->name : "";

  for (guint i = 0; i < self->items->len; i++) {
    const gint64 version_id = g_array_index (self->version_ids, gint64, i);

    if (version_id != sample->version_id ||
        (version_id == 0 && !is_called (self->items->pdata[i], name)))
      continue;
    g_free (self->items->pdata[i]);
    self->items->pdata[i] = g_strdup (name);
    return i;
  }
  g_ptr_array_add (self->items, g_strdup (name));
  g_array_append_val (self->version_ids, sample->version_id);
  return self->items->len - 1;
}

static gboolean
is_counted (const FmTasting *tasting, guint taster)
{
  const FmTaster *who = tasting->tasters->pdata[taster];

  return who->sheet == FM_SHEET_IN || who->sheet == FM_SHEET_DROPPED_OUT;
}

/* What a taster put beside a sample; NaN = nothing. */
static double
mark_of (
    const FmTasting *tasting, guint taster, guint sample, FmTastingRound round, FmTastingTask task)
{
  const guint code = fm_tasting_round_code (tasting, sample, round);

  return code != 0 ? fm_tasting_mark (tasting, taster, code, task, 0) : (double)NAN;
}

static void
add_order (
    FmTastingPool *self, const FmTasting *tasting, guint session, guint taster, const guint *item)
{
  const FmTaster *who = tasting->tasters->pdata[taster];
  guint on_sheet[FM_TASTING_MAX_SAMPLES], n = 0;
  double place[FM_TASTING_MAX_SAMPLES];

  for (guint s = 0; s < tasting->samples->len; s++) {
    place[n] = mark_of (tasting, taster, s, FM_TASTING_ROUND_MAIN, FM_TASTING_RANK);
    on_sheet[n] = item[s];
    n += !isnan (place[n]);
  }
  if (n > 1)
    fm_pool_add (self->orders, session, taster_index (self, who->name), n, on_sheet, place);
}

/* The chosen one of a pair is put before the other. */
static void
add_pair (
    FmTastingPool *self, const FmTasting *tasting, guint session, guint taster, const guint *item)
{
  const FmTaster *who = tasting->tasters->pdata[taster];
  guint pair[2];
  double place[2];

  if (tasting->pair[0] < 0 || tasting->pair[1] < 0)
    return;
  for (guint i = 0; i < 2; i++) {
    const guint sample = (guint)tasting->pair[i];

    pair[i] = item[sample];
    place[i] =
        isnan (mark_of (tasting, taster, sample, FM_TASTING_ROUND_PAIR, FM_TASTING_PREFERENCE)) ? 2
                                                                                                : 1;
  }
  if (place[0] != place[1])
    fm_pool_add (self->orders, session, taster_index (self, who->name), 2, pair, place);
}

static void
add_likings (
    FmTastingPool *self, const FmTasting *tasting, guint session, guint taster, const guint *item)
{
  const FmTaster *who = tasting->tasters->pdata[taster];

  for (guint s = 0; s < tasting->samples->len; s++) {
    FmPoolScore score = { session, 0, item[s],
                          mark_of (tasting, taster, s, FM_TASTING_ROUND_MAIN, FM_TASTING_LIKING) };

    if (isnan (score.score))
      continue;
    score.taster = taster_index (self, who->name);
    g_array_append_val (self->scores, score);
  }
}

static void
add_tasting (FmTastingPool *self, const FmTasting *tasting)
{
  const guint session = self->tastings->len;
  const guint before = self->orders->sheets->len + self->scores->len;
  guint item[FM_TASTING_MAX_SAMPLES];

  g_ptr_array_add (self->tastings, g_strdup (tasting->title != NULL ? tasting->title : ""));
  g_array_append_val (self->ids, tasting->id);
  g_array_append_val (self->held_at, tasting->held_at);
  for (guint s = 0; s < tasting->samples->len; s++)
    item[s] = item_index (self, tasting->samples->pdata[s]);
  for (guint taster = 0; taster < tasting->tasters->len; taster++) {
    if (!is_counted (tasting, taster))
      continue;
    add_order (self, tasting, session, taster, item);
    add_pair (self, tasting, session, taster, item);
    add_likings (self, tasting, session, taster, item);
  }
  self->n_without_order += self->orders->sheets->len + self->scores->len == before;
}

static int
compare_days (gconstpointer a, gconstpointer b)
{
  const FmTasting *first = *(FmTasting *const *)a, *second = *(FmTasting *const *)b;

  return (first->held_at > second->held_at) - (first->held_at < second->held_at);
}

FmTastingPool *
fm_tasting_pool_new (const GPtrArray *tastings)
{
  FmTastingPool *self = g_new0 (FmTastingPool, 1);
  g_autoptr (GPtrArray) sorted = g_ptr_array_new ();

  self->items = g_ptr_array_new_with_free_func (g_free);
  self->version_ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->tasters = g_ptr_array_new_with_free_func (g_free);
  self->tastings = g_ptr_array_new_with_free_func (g_free);
  self->ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->held_at = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->scores = g_array_new (FALSE, FALSE, sizeof (FmPoolScore));
  self->orders = fm_pool_new (0);
  for (guint i = 0; i < tastings->len; i++)
    if (((const FmTasting *)tastings->pdata[i])->state == FM_TASTING_OPENED)
      g_ptr_array_add (sorted, tastings->pdata[i]);
  g_ptr_array_sort (sorted, compare_days);
  for (guint i = 0; i < sorted->len; i++)
    add_tasting (self, sorted->pdata[i]);
  self->orders->n_items = self->items->len;
  return self;
}

void
fm_tasting_pool_free (FmTastingPool *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->items);
  g_array_unref (self->version_ids);
  g_ptr_array_unref (self->tasters);
  g_ptr_array_unref (self->tastings);
  g_array_unref (self->ids);
  g_array_unref (self->held_at);
  g_array_unref (self->scores);
  fm_pool_free (self->orders);
  g_free (self);
}
