/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-equal.c - do two values hold the same tasting? */
#include <string.h>

#include "core/tasting/fm-tasting.h"

static gboolean
same_samples (const FmTasting *a, const FmTasting *b)
{
  if (a->samples->len != b->samples->len)
    return FALSE;
  for (guint i = 0; i < a->samples->len; i++) {
    const FmTastingSample *x = a->samples->pdata[i], *y = b->samples->pdata[i];
    if (x->experiment_id != y->experiment_id || x->version_id != y->version_id ||
        g_strcmp0 (x->name, y->name) != 0)
      return FALSE;
  }
  return TRUE;
}

static gboolean
same_tasters (const FmTasting *a, const FmTasting *b)
{
  if (a->tasters->len != b->tasters->len)
    return FALSE;
  for (guint i = 0; i < a->tasters->len; i++) {
    const FmTaster *x = a->tasters->pdata[i], *y = b->tasters->pdata[i];
    if (x->sheet != y->sheet || g_strcmp0 (x->name, y->name) != 0)
      return FALSE;
  }
  return TRUE;
}

static gboolean
same_attributes (const FmTasting *a, const FmTasting *b)
{
  if (a->attributes->len != b->attributes->len)
    return FALSE;
  for (guint i = 0; i < a->attributes->len; i++)
    if (g_strcmp0 (a->attributes->pdata[i], b->attributes->pdata[i]) != 0)
      return FALSE;
  return TRUE;
}

static gboolean
same_cups (const FmTasting *a, const FmTasting *b)
{
  if (a->cups->len != b->cups->len)
    return FALSE;
  for (guint i = 0; i < a->cups->len; i++) {
    const FmTastingCup *x = &g_array_index (a->cups, FmTastingCup, i);
    const FmTastingCup *y = &g_array_index (b->cups, FmTastingCup, i);
    if (x->taster != y->taster || x->round != y->round || x->position != y->position ||
        x->sample != y->sample || x->code != y->code)
      return FALSE;
  }
  return TRUE;
}

/* In any order: both are sets */
static gboolean
same_sheets (const FmTasting *a, const FmTasting *b)
{
  if (a->marks->len != b->marks->len || a->remarks->len != b->remarks->len)
    return FALSE;
  for (guint i = 0; i < a->marks->len; i++) {
    const FmTastingMark *x = &g_array_index (a->marks, FmTastingMark, i);
    if (fm_tasting_mark (b, x->taster, x->code, x->task, x->attribute) != x->value)
      return FALSE;
  }
  for (guint i = 0; i < a->remarks->len; i++) {
    const FmTastingRemark *x = a->remarks->pdata[i];
    if (g_strcmp0 (fm_tasting_remark (b, x->taster, x->code), x->text) != 0)
      return FALSE;
  }
  return TRUE;
}

static gboolean
same_events (const FmTasting *a, const FmTasting *b)
{
  if (a->events->len != b->events->len)
    return FALSE;
  for (guint i = 0; i < a->events->len; i++) {
    const FmTastingEvent *x = a->events->pdata[i], *y = b->events->pdata[i];
    if (x->at != y->at || x->kind != y->kind || g_strcmp0 (x->text, y->text) != 0)
      return FALSE;
  }
  return TRUE;
}

static gboolean
same_expectation (const GArray *a, const GArray *b)
{
  if (a == NULL || b == NULL)
    return a == b;
  return a->len == b->len && memcmp (a->data, b->data, a->len * sizeof (guint)) == 0;
}

gboolean
fm_tasting_equal (const FmTasting *a, const FmTasting *b)
{
  return a->id == b->id && a->held_at == b->held_at && a->tasks == b->tasks && a->seed == b->seed &&
         a->hidden == b->hidden && a->blinding == b->blinding &&
         a->max_per_taster == b->max_per_taster && a->state == b->state &&
         a->pair[0] == b->pair[0] && a->pair[1] == b->pair[1] && a->triangle[0] == b->triangle[0] &&
         a->triangle[1] == b->triangle[1] && g_strcmp0 (a->title, b->title) == 0 &&
         g_strcmp0 (a->notes, b->notes) == 0 && same_samples (a, b) && same_tasters (a, b) &&
         same_attributes (a, b) && same_expectation (a->expected_place, b->expected_place) &&
         same_cups (a, b) && same_sheets (a, b) && same_events (a, b);
}
