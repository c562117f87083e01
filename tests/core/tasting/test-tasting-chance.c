/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-tasting-chance.c - under no difference p < .05 comes no oftener than 5 %, through the whole
 * path from the plan to the reading */
#include "core/statistics/fm-stat.h"
#include "core/tasting/fm-tasting-reading.h"
#include "tasting.h"

#define DRAWS 400
/* permuted tests are slower */
#define BLOCK_DRAWS 150

typedef struct {
  guint rank;
  guint preference;
  guint triangle;
  guint position;
} Alarms;

static void
fill_at_random (FmTasting *self, guint taster, gboolean ties, FmRandom *random)
{
  g_autoptr (GPtrArray) cups = fm_tasting_cups (self, taster, FM_TASTING_ROUND_MAIN);
  g_autofree guint *place = g_new (guint, cups->len);
  for (guint i = 0; i < cups->len; i++)
    place[i] = ties ? 1 + fm_random_below (random, 2) : i + 1;
  fm_random_shuffle (random, place, cups->len);
  for (guint i = 0; i < cups->len; i++)
    tasting_mark (self, taster, ((const FmTastingCup *)cups->pdata[i])->sample, FM_TASTING_RANK,
                  place[i]);
  if ((self->tasks & FM_TASTING_PREFERENCE) != 0)
    tasting_mark (self, taster, fm_random_below (random, 2), FM_TASTING_PREFERENCE, 1);
  if ((self->tasks & FM_TASTING_TRIANGLE) == 0)
    return;
  g_autoptr (GPtrArray) three = fm_tasting_cups (self, taster, FM_TASTING_ROUND_TRIANGLE);
  const FmTastingCup *chosen = three->pdata[fm_random_below (random, 3)];
  g_assert_true (
      fm_tasting_set_mark (self, 1, taster, chosen->code, FM_TASTING_TRIANGLE, 0, 1, NULL));
}

static void
taste_nothing (FmTasting *self, gboolean ties, FmRandom *random, Alarms *alarms)
{
  g_assert_true (fm_tasting_arrange (self, 7, 1, NULL));
  for (guint t = 0; t < self->tasters->len; t++)
    fill_at_random (self, t, ties, random);
  tasting_all_in (self);
  tasting_open (self);
  g_autoptr (FmTastingReading) reading = fm_tasting_read (self, NULL, NULL);
  alarms->rank += reading->rank->p < 0.05;
  alarms->preference += reading->has_preference && reading->preference.p < 0.05;
  alarms->triangle += reading->has_triangle && reading->triangle.p < 0.05;
  alarms->position += reading->position_rank->p < 0.05;
}

/* 5 % and three standard errors of a share of @draws */
static void
assert_rare (guint hits, guint draws)
{
  g_assert_cmpfloat ((double)hits / draws, <=, 0.05 + 3 * sqrt (0.05 * 0.95 / draws));
}

static void
check_panel (guint n_samples, guint per_taster, guint n_tasters, gboolean ties, guint draws)
{
  Alarms alarms = { 0 };
  FmRandom random;
  fm_random_init (&random, 1000 * n_samples + n_tasters);
  for (guint draw = 0; draw < draws; draw++) {
    g_autoptr (FmTasting) self =
        tasting_planned (n_samples, n_tasters,
                         FM_TASTING_RANK | FM_TASTING_PREFERENCE | FM_TASTING_TRIANGLE, draw + 1);
    self->max_per_taster = per_taster;
    taste_nothing (self, ties, &random, &alarms);
  }
  g_test_message ("%u samples, %u each, %u tasters, ties %d: rank %.3f, preference %.3f, triangle "
                  "%.3f, position %.3f of %u",
                  n_samples, per_taster, n_tasters, ties, (double)alarms.rank / draws,
                  (double)alarms.preference / draws, (double)alarms.triangle / draws,
                  (double)alarms.position / draws, draws);
  assert_rare (alarms.rank, draws);
  assert_rare (alarms.preference, draws);
  assert_rare (alarms.triangle, draws);
  assert_rare (alarms.position, draws);
}

static void
test_complete (void)
{
  for (guint n = 2; n <= 8; n++)
    for (guint ties = 0; ties < 2; ties++) {
      check_panel (3, 3, n, ties, DRAWS);
      check_panel (4, 4, n, ties, DRAWS);
    }
}

static void
test_blocks (void)
{
  check_panel (7, 3, 7, FALSE, BLOCK_DRAWS);
  check_panel (7, 3, 5, TRUE, BLOCK_DRAWS);
  check_panel (6, 4, 8, FALSE, BLOCK_DRAWS);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tasting-chance/complete", test_complete);
  g_test_add_func ("/tasting-chance/blocks", test_blocks);
  return g_test_run ();
}
