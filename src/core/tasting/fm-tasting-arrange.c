/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-arrange.c - what a plan needs, and its cups: codes and serving orders */
#include <glib/gi18n-lib.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-serving.h"
#include "core/statistics/fm-stat.h"
#include "core/tasting/fm-tasting-private.h"

#define SEED_LIMIT (G_GUINT64_CONSTANT (1) << 53)

static gboolean
refuse (GError **error, FmCoreError code, const char *text)
{
  g_set_error_literal (error, FM_CORE_ERROR, code, text);
  return FALSE;
}

static char *
folded (const char *name)
{
  g_autofree char *stripped = g_strstrip (g_strdup (name != NULL ? name : ""));
  return g_utf8_casefold (stripped, -1);
}

/* Blank or given twice; @blank and @twice are sentences, @twice with one %s */
static gboolean
check_name (
    GHashTable *seen, const char *name, const char *blank, const char *twice, GError **error)
{
  char *key = folded (name);
  if (*key == '\0') {
    g_free (key);
    return refuse (error, FM_CORE_ERROR_EMPTY, blank);
  }
  if (g_hash_table_add (seen, key))
    return TRUE;
  g_autoptr (GString) text = g_string_new (twice);
  g_string_replace (text, "%s", name, 1);
  return refuse (error, FM_CORE_ERROR_OUT_OF_RANGE, text->str);
}

static gboolean
check_samples (const FmTasting *self, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GHashTable) experiments = g_hash_table_new (g_int64_hash, g_int64_equal);

  if (self->samples->len < 2)
    return refuse (error, FM_CORE_ERROR_EMPTY, _ ("A tasting needs at least two samples."));
  if (self->samples->len > FM_TASTING_MAX_SAMPLES) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A tasting holds up to %d samples, not %u. Make two sessions of it."),
                 FM_TASTING_MAX_SAMPLES, self->samples->len);
    return FALSE;
  }
  for (guint i = 0; i < self->samples->len; i++) {
    FmTastingSample *sample = self->samples->pdata[i];
    if (!check_name (seen, sample->name, _ ("A sample has no name. Give it one."),
                     _ ("Two samples are called “%s”. Give them names that can be told apart."),
                     error))
      return FALSE;
    if (sample->experiment_id != 0 && !g_hash_table_add (experiments, &sample->experiment_id))
      return refuse (error, FM_CORE_ERROR_OUT_OF_RANGE,
                     _ ("One experiment is among the samples twice. Take one of them out."));
  }
  return TRUE;
}

static gboolean
check_tasters (const FmTasting *self, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  if (self->tasters->len == 0)
    return refuse (error, FM_CORE_ERROR_EMPTY, _ ("A tasting needs at least one taster."));
  if (self->tasters->len > FM_TASTING_MAX_TASTERS) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A tasting holds up to %d tasters, not %u. Make two sessions of it."),
                 FM_TASTING_MAX_TASTERS, self->tasters->len);
    return FALSE;
  }
  for (guint i = 0; i < self->tasters->len; i++)
    if (!check_name (seen, fm_tasting_taster (self, i)->name,
                     _ ("A taster has no name. Give one; initials will do."),
                     _ ("Two tasters are called “%s”. Give them names that can be told apart."),
                     error))
      return FALSE;
  return TRUE;
}

static gboolean
check_attributes (const FmTasting *self, GError **error)
{
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  if ((self->tasks & FM_TASTING_JAR) == 0)
    return TRUE;
  if (self->attributes->len == 0)
    return refuse (error, FM_CORE_ERROR_EMPTY,
                   _ ("Say what is to be just about right: salt, juiciness, fat ..."));
  if (self->attributes->len > FM_TASTING_MAX_ATTRIBUTES) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("Up to %d attributes can be asked for, not %u. Leave some out."),
                 FM_TASTING_MAX_ATTRIBUTES, self->attributes->len);
    return FALSE;
  }
  for (guint i = 0; i < self->attributes->len; i++)
    if (!check_name (seen, self->attributes->pdata[i],
                     _ ("An attribute has no name. Give it one or leave it out."),
                     _ ("The attribute “%s” is asked for twice. Leave one out."), error))
      return FALSE;
  return TRUE;
}

static gboolean
is_two_samples (const FmTasting *self, const int chosen[2])
{
  const int n = (int)self->samples->len;
  return chosen[0] >= 0 && chosen[0] < n && chosen[1] >= 0 && chosen[1] < n &&
         chosen[0] != chosen[1];
}

static gboolean
check_chosen (const FmTasting *self, GError **error)
{
  if ((self->tasks & FM_TASTING_PREFERENCE) != 0 && !is_two_samples (self, self->pair))
    return refuse (error, FM_CORE_ERROR_EMPTY,
                   _ ("Choose the two different samples of the paired preference."));
  if ((self->tasks & FM_TASTING_TRIANGLE) != 0 && !is_two_samples (self, self->triangle))
    return refuse (error, FM_CORE_ERROR_EMPTY,
                   _ ("Choose the two different samples of the triangle test."));
  return TRUE;
}

static gboolean
check_expectation (const FmTasting *self, GError **error)
{
  const GArray *place = self->expected_place;
  gboolean seen[FM_TASTING_MAX_SAMPLES] = { FALSE };
  if (place == NULL)
    return TRUE;
  gboolean fits = place->len == self->samples->len;
  for (guint i = 0; fits && i < place->len; i++) {
    const guint given = g_array_index (place, guint, i);
    fits = given >= 1 && given <= place->len && !seen[given - 1];
    if (fits)
      seen[given - 1] = TRUE;
  }
  return fits || refuse (error, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("The order written down beforehand must give every sample a place of "
                            "its own, from 1 on. Complete it or leave it out."));
}

static gboolean
check_amount (const FmTasting *self, GError **error)
{
  const guint n = self->tasters->len, k = self->samples->len;
  if (self->max_per_taster < 2)
    return refuse (error, FM_CORE_ERROR_OUT_OF_RANGE,
                   _ ("Each person must taste at least two samples to compare anything."));
  if ((self->tasks & FM_TASTING_MAIN_TASKS) == 0 || n * self->max_per_taster >= k)
    return TRUE;
  g_set_error (
      error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
      ngettext ("%u taster with %u portions cannot taste all %u samples. Take more tasters or "
                "fewer samples, or let each taste more.",
                "%u tasters with %u portions each cannot taste all %u samples. Take more "
                "tasters or fewer samples, or let each taste more.",
                n),
      n, self->max_per_taster, k);
  return FALSE;
}

gboolean
fm_tasting_check (const FmTasting *self, GError **error)
{
  if ((self->tasks & (FM_TASTING_MAIN_TASKS | FM_TASTING_PREFERENCE | FM_TASTING_TRIANGLE)) == 0)
    return refuse (error, FM_CORE_ERROR_EMPTY, _ ("Choose at least one thing to ask the tasters."));
  if (!check_samples (self, error) || !check_tasters (self, error) ||
      !check_attributes (self, error) || !check_chosen (self, error) ||
      !check_expectation (self, error) || !check_amount (self, error))
    return FALSE;
  if (self->seed >= SEED_LIMIT)
    return refuse (error, FM_CORE_ERROR_OUT_OF_RANGE,
                   _ ("The seed is too large to be written down. Take a smaller number."));
  return TRUE;
}

/* One round of every taster: rows give places in @sample (NULL = the samples themselves) */
typedef struct {
  FmTastingRound round;
  FmServingRows *rows;
  const int *sample;
} Round;

static guint
code_index (FmTastingRound round, guint n_samples, guint taster, guint position, guint sample)
{
  switch (round) {
  case FM_TASTING_ROUND_MAIN:
    return sample;
  case FM_TASTING_ROUND_PAIR:
    return n_samples + sample;
  case FM_TASTING_ROUND_TRIANGLE:
    return 2 * n_samples + 3 * taster + position;
  }
  g_return_val_if_reached (0);
}

/* Neither part alone tells anything of the draws */
static guint64
joined_seed (guint64 seed, guint64 hidden)
{
  FmRandom random;
  fm_random_init (&random, seed);
  return fm_random_next (&random) ^ hidden;
}

static void
add_cups (FmTasting *self, guint taster, const Round *round, const guint *code, guint n_samples)
{
  for (guint i = 0; round->rows != NULL && i < round->rows->n_per_row; i++) {
    const guint given = fm_serving_rows_get (round->rows, taster, i);
    const guint sample = round->sample != NULL ? (guint)round->sample[given] : given;
    const FmTastingCup cup = {
      .taster = taster,
      .round = round->round,
      .position = i,
      .sample = sample,
      .code = code[code_index (round->round, n_samples, taster, i, sample)],
    };
    g_array_append_val (self->cups, cup);
  }
}

/* Each part has its own stream of the seed, so that asking a triangle too does not change the cups
 * of the main round */
static gboolean
serve (const FmTasting *self, guint64 seed, Round rounds[3], GError **error)
{
  const guint n = self->tasters->len;
  FmRandom random;
  fm_random_init (&random, seed);
  const guint64 main_seed = fm_random_next (&random);
  const guint64 pair_seed = fm_random_next (&random);
  const guint64 triangle_seed = fm_random_next (&random);

  if ((self->tasks & FM_TASTING_MAIN_TASKS) != 0) {
    FmServingPlan *plan =
        fm_serving_plan_new (self->samples->len, n, self->max_per_taster, main_seed, error);
    if (plan == NULL)
      return FALSE;
    rounds[0].rows = g_steal_pointer (&plan->rows);
    fm_serving_plan_free (plan);
  }
  if ((self->tasks & FM_TASTING_PREFERENCE) != 0)
    rounds[1].rows = fm_serving_pairs (n, pair_seed, error);
  if ((self->tasks & FM_TASTING_TRIANGLE) != 0)
    rounds[2].rows = fm_serving_triangles (n, triangle_seed, error);
  return TRUE;
}

gboolean
fm_tasting_arrange (FmTasting *self, guint64 hidden, gint64 now, GError **error)
{
  if (self->state != FM_TASTING_PLANNED)
    return refuse (error, FM_CORE_ERROR_OUT_OF_RANGE,
                   _ ("The codes of this tasting have been given out already."));
  if (!fm_tasting_check (self, error))
    return FALSE;

  const guint n = self->tasters->len, k = self->samples->len;
  Round rounds[3] = { { FM_TASTING_ROUND_MAIN, NULL, NULL },
                      { FM_TASTING_ROUND_PAIR, NULL, self->pair },
                      { FM_TASTING_ROUND_TRIANGLE, NULL, self->triangle } };
  const guint64 seed = joined_seed (self->seed, hidden);
  /* the main round's, the pair's, the triangles' */
  g_autofree guint *code = fm_serving_codes (2 * k + 3 * n, seed, error);
  const gboolean served = code != NULL && serve (self, seed, rounds, error);

  g_array_set_size (self->cups, 0);
  for (guint taster = 0; served && taster < n; taster++)
    for (guint i = 0; i < G_N_ELEMENTS (rounds); i++)
      add_cups (self, taster, &rounds[i], code, k);
  for (guint i = 0; i < G_N_ELEMENTS (rounds); i++)
    fm_serving_rows_free (rounds[i].rows);
  if (!served)
    return FALSE;
  self->hidden = hidden;
  self->state = FM_TASTING_SEALED;
  fm_tasting_record (self, now, FM_TASTING_EVENT_ARRANGED, NULL);
  return TRUE;
}
