/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-demo-tasting.c - one invented tasting */
#include "store/demo/fm-demo-tasting.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/tasting/fm-tasting-outcome.h"
#include "store/fm-tastings.h"

#define TASTER_SPREAD 0.8
#define NOISE 0.5

/* Invented, like all that they say. */
/* A demo is the same each time; a real tasting draws this at sealing. */
#define HIDDEN_PART 1

static const char *const names[] = { N_ ("Alma"), N_ ("Bruno"), N_ ("Cleo"),
                                     N_ ("Dara"), N_ ("Edin"),  N_ ("Fay") };

static FmTasting *
plan (const char *title,
      gint64 held_at,
      const FmDemoSample *samples,
      guint n_samples,
      guint n_tasters,
      guint32 seed)
{
  FmTasting *tasting = fm_tasting_new ();

  g_free (tasting->title);
  tasting->title = g_strdup (title);
  tasting->held_at = held_at;
  tasting->seed = seed;
  tasting->tasks = FM_TASTING_RANK | FM_TASTING_LIKING | FM_TASTING_REMARKS;
  for (guint i = 0; i < n_samples; i++)
    fm_tasting_add_sample (tasting, samples[i].experiment_id, samples[i].version_id,
                           samples[i].name);
  for (guint i = 0; i < n_tasters; i++)
    fm_tasting_add_taster (tasting, _ (names[i]));
  return tasting;
}

static double
next_noise (GRand *random)
{
  double sum = -6;

  for (guint i = 0; i < 12; i++)
    sum += g_rand_double (random);
  return NOISE * sum;
}

/* One sheet: scores round what is felt, ranks order it. */
static gboolean
fill_sheet (
    FmTasting *tasting, guint taster, const FmDemoSample *samples, GRand *random, GError **error)
{
  g_autoptr (GPtrArray) cups = fm_tasting_cups (tasting, taster, FM_TASTING_ROUND_MAIN);
  g_autofree double *noise = g_new (double, tasting->samples->len);
  g_autofree double *felt = g_new (double, cups->len);
  const double habit = g_rand_double_range (random, -TASTER_SPREAD, TASTER_SPREAD);
  gboolean ok = TRUE;

  /* by sample, so that the scores do not hang on the order of serving */
  for (guint s = 0; s < tasting->samples->len; s++)
    noise[s] = next_noise (random);
  for (guint i = 0; i < cups->len; i++) {
    const FmTastingCup *cup = g_ptr_array_index (cups, i);

    felt[i] = samples[cup->sample].liking + habit + noise[cup->sample];
  }
  for (guint i = 0; ok && i < cups->len; i++) {
    const FmTastingCup *cup = g_ptr_array_index (cups, i);
    guint place = 1;

    for (guint j = 0; j < cups->len; j++)
      place += felt[j] > felt[i];
    ok = fm_tasting_set_mark (tasting, tasting->held_at, taster, cup->code, FM_TASTING_LIKING, 0,
                              CLAMP (round (felt[i]), 1, 9), error) &&
         fm_tasting_set_mark (tasting, tasting->held_at, taster, cup->code, FM_TASTING_RANK, 0,
                              place, error);
  }
  if (ok)
    fm_tasting_set_sheet (tasting, tasting->held_at, taster, FM_SHEET_IN);
  return ok;
}

static gboolean
keep_outcome (FmNotebook *notebook, const FmTasting *tasting, GError **error)
{
  g_autoptr (FmTastingReading) reading = fm_tasting_read (tasting, NULL, error);
  g_autoptr (GPtrArray) outcomes =
      reading != NULL ? fm_tasting_outcomes_new (tasting, reading, error) : NULL;

  return outcomes != NULL &&
         fm_tastings_save_outcome (notebook, tasting->id, reading->headline, outcomes, error);
}

gboolean
fm_demo_tasting_add (FmNotebook *notebook,
                     const char *title,
                     gint64 held_at,
                     const FmDemoSample *samples,
                     guint n_samples,
                     gboolean sealed,
                     guint32 seed,
                     GError **error)
{
  const guint n_tasters = sealed ? 3 : G_N_ELEMENTS (names);
  g_autoptr (FmTasting) tasting = plan (title, held_at, samples, n_samples, n_tasters, seed);
  GRand *random = g_rand_new_with_seed (seed);
  gboolean ok = fm_tasting_arrange (tasting, HIDDEN_PART, held_at, error);

  for (guint i = 0; ok && i < (sealed ? 1 : n_tasters); i++)
    ok = fill_sheet (tasting, i, samples, random, error);
  g_rand_free (random);
  if (ok && !sealed)
    ok = fm_tasting_open (tasting, held_at + 3600, NULL, error);
  return ok && fm_tastings_save (notebook, tasting, error) &&
         (sealed || keep_outcome (notebook, tasting, error));
}
