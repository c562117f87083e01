/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* tasting-fixture.h - tastings to put into a notebook */
#pragma once

#include <math.h>

#include "log-fixture.h"
#include "store/fm-tastings.h"

#define N_TASTERS 3

/* Four samples (three experiments, one from outside), three tasters, every question asked. */
static inline FmTasting *
new_tasting (Fixture *fixture)
{
  FmTasting *tasting = fm_tasting_new ();
  static const char *const names[] = { "Ada", "Ben", "Cleo" };
  static const guint places[] = { 2, 1, 4, 3 };

  tasting->title = g_strdup ("Tuesday");
  tasting->held_at = 1750000000;
  tasting->seed = (G_GUINT64_CONSTANT (1) << 53) - 1;
  tasting->tasks = FM_TASTING_RANK | FM_TASTING_LIKING | FM_TASTING_JAR | FM_TASTING_PREFERENCE |
                   FM_TASTING_TRIANGLE | FM_TASTING_REMARKS;
  for (guint i = 0; i < 3; i++) {
    g_autofree char *name = g_strdup_printf ("Secret sample %u", i + 1);
    fm_tasting_add_sample (tasting, fixture_add_experiment (fixture, name, NULL),
                           fixture->version_id, name);
  }
  fm_tasting_add_sample (tasting, 0, 0, "Secret outside");
  for (guint i = 0; i < N_TASTERS; i++)
    fm_tasting_add_taster (tasting, names[i]);
  g_ptr_array_add (tasting->attributes, g_strdup ("salt"));
  g_ptr_array_add (tasting->attributes, g_strdup ("juiciness"));
  tasting->pair[0] = 0;
  tasting->pair[1] = 3;
  tasting->triangle[0] = 1;
  tasting->triangle[1] = 2;
  tasting->expected_place = g_array_new (FALSE, TRUE, sizeof (guint));
  g_array_append_vals (tasting->expected_place, places, G_N_ELEMENTS (places));
  return tasting;
}

static inline FmTasting *
new_sealed (Fixture *fixture)
{
  FmTasting *tasting = new_tasting (fixture);
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_tasting_arrange (tasting, 7, 1750000100, &error));
  g_assert_no_error (error);
  return tasting;
}

static inline const FmTastingCup *
cup_at (const FmTasting *tasting, guint taster, FmTastingRound round, guint position)
{
  g_autoptr (GPtrArray) cups = fm_tasting_cups (tasting, taster, round);
  return cups->pdata[position];
}

static inline void
set_mark (FmTasting *tasting, guint taster, guint code, FmTastingTask task, guint part, double mark)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (fm_tasting_set_mark (tasting, 1, taster, code, task, part, mark, &error));
  g_assert_no_error (error);
}

/* The liking is 1 + the index of the sample, plus that of the taster. */
static inline void
fill_sheet (FmTasting *tasting, guint taster)
{
  g_autoptr (GPtrArray) cups = fm_tasting_cups (tasting, taster, FM_TASTING_ROUND_MAIN);

  for (guint i = 0; i < cups->len; i++) {
    const FmTastingCup *cup = cups->pdata[i];
    set_mark (tasting, taster, cup->code, FM_TASTING_RANK, 0, i + 1);
    set_mark (tasting, taster, cup->code, FM_TASTING_LIKING, 0, 1 + cup->sample + taster);
    set_mark (tasting, taster, cup->code, FM_TASTING_JAR, 0, 3);
    set_mark (tasting, taster, cup->code, FM_TASTING_JAR, 1, 1 + i % 5);
    fm_tasting_set_remark (tasting, 1, taster, cup->code, "a little dry, \"crisp\"");
  }
  set_mark (tasting, taster, cup_at (tasting, taster, FM_TASTING_ROUND_PAIR, 1)->code,
            FM_TASTING_PREFERENCE, 0, 1);
  set_mark (tasting, taster, cup_at (tasting, taster, FM_TASTING_ROUND_TRIANGLE, 2)->code,
            FM_TASTING_TRIANGLE, 0, 1);
  fm_tasting_set_sheet (tasting, 1, taster, FM_SHEET_IN);
}

static inline void
save_tasting (Fixture *fixture, FmTasting *tasting)
{
  g_autoptr (GError) error = NULL;
  gboolean ok = fm_tastings_save (fixture->notebook, tasting, &error);

  g_assert_no_error (error);
  g_assert_true (ok);
}

static inline FmTasting *
load_tasting (Fixture *fixture, gint64 id)
{
  g_autoptr (GError) error = NULL;
  FmTasting *tasting = fm_tastings_load (fixture->notebook, id, &error);

  g_assert_no_error (error);
  return tasting;
}

static inline void
assert_stored (Fixture *fixture, const FmTasting *tasting)
{
  g_autoptr (FmTasting) loaded = load_tasting (fixture, tasting->id);
  g_assert_true (fm_tasting_equal (loaded, tasting));
}

static inline FmTasting *
new_opened (Fixture *fixture)
{
  FmTasting *tasting = new_sealed (fixture);
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < N_TASTERS; i++)
    fill_sheet (tasting, i);
  g_assert_true (fm_tasting_open (tasting, 1750000200, NULL, &error));
  return tasting;
}
