/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* tasting.h - small tastings for the tests */
#pragma once

#include <math.h>

#include "core/tasting/fm-tasting.h"

/* Samples "Draft 1" ... (experiments 11, 12 ...), tasters "T1" ... */
static inline FmTasting *
tasting_planned (guint n_samples, guint n_tasters, guint tasks, guint64 seed)
{
  FmTasting *self = fm_tasting_new ();
  self->seed = seed;
  self->tasks = tasks;
  self->max_per_taster = MAX (n_samples, 2);
  for (guint s = 0; s < n_samples; s++) {
    g_autofree char *name = g_strdup_printf ("Draft %u", s + 1);
    fm_tasting_add_sample (self, 11 + s, 101 + s, name);
  }
  for (guint t = 0; t < n_tasters; t++) {
    g_autofree char *name = g_strdup_printf ("T%u", t + 1);
    fm_tasting_add_taster (self, name);
  }
  if ((tasks & FM_TASTING_JAR) != 0)
    g_ptr_array_add (self->attributes, g_strdup ("salt"));
  self->pair[0] = self->triangle[0] = 0;
  self->pair[1] = self->triangle[1] = 1;
  return self;
}

static inline FmTasting *
tasting_sealed (guint n_samples, guint n_tasters, guint tasks, guint64 seed)
{
  g_autoptr (GError) error = NULL;
  FmTasting *self = tasting_planned (n_samples, n_tasters, tasks, seed);
  fm_tasting_arrange (self, 7, 1000, &error);
  g_assert_no_error (error);
  return self;
}

static inline void
tasting_mark (FmTasting *self, guint taster, guint sample, FmTastingTask task, double value)
{
  g_autoptr (GError) error = NULL;
  const FmTastingRound round =
      task == FM_TASTING_PREFERENCE ? FM_TASTING_ROUND_PAIR : FM_TASTING_ROUND_MAIN;
  fm_tasting_set_mark (self, 1, taster, fm_tasting_round_code (self, sample, round), task, 0, value,
                       &error);
  g_assert_no_error (error);
}

static inline void
tasting_all_in (FmTasting *self)
{
  for (guint t = 0; t < self->tasters->len; t++)
    fm_tasting_set_sheet (self, 1, t, FM_SHEET_IN);
}

static inline void
tasting_open (FmTasting *self)
{
  g_autoptr (GError) error = NULL;
  fm_tasting_open (self, 2000, "for the test", &error);
  g_assert_no_error (error);
}

/* The cup of a triangle that is the odd one, or (not @right) one of the others */
static inline guint
tasting_triangle_code (const FmTasting *self, guint taster, gboolean right)
{
  g_autoptr (GPtrArray) cups = fm_tasting_cups (self, taster, FM_TASTING_ROUND_TRIANGLE);
  const FmTastingCup *cup[3] = { cups->pdata[0], cups->pdata[1], cups->pdata[2] };
  const guint odd = cup[0]->sample == cup[1]->sample ? 2 : cup[0]->sample == cup[2]->sample ? 1 : 0;
  return cup[right ? odd : (odd + 1) % 3]->code;
}
