/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-serving.c */
#include <glib/gi18n-lib.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-serving-private.h"
#include "core/statistics/fm-stat.h"

#define CODE_FIRST 100
#define CODE_COUNT 900
/* serving orders of an incomplete block that compete for the most even one */
#define ORDER_DRAWS 40

/* How often what has been served where, and after what, so far */
typedef struct {
  guint n;
  guint *at_position; /* sample x position */
  guint *after;       /* sample x the one before */
} Evenness;

guint *
fm_serving_codes (guint n, guint64 seed, GError **error)
{
  if (n > CODE_COUNT) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("%u samples need more than the %d three-digit codes there are. Split the "
                    "session."),
                 n, CODE_COUNT);
    return NULL;
  }
  guint pool[CODE_COUNT];
  FmRandom random;
  fm_random_init (&random, seed);
  for (guint i = 0; i < CODE_COUNT; i++)
    pool[i] = CODE_FIRST + i;
  fm_random_shuffle (&random, pool, CODE_COUNT);
  return g_memdup2 (pool, MAX (n, 1) * sizeof *pool);
}

FmServingRows *
fm_serving_williams (guint k, GError **error)
{
  if (k < 2 || k > FM_SERVING_MAX_SAMPLES) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A serving order needs 2 to %d samples, not %u."), FM_SERVING_MAX_SAMPLES, k);
    return NULL;
  }
  const gboolean is_odd = k % 2 == 1;
  FmServingRows *self = fm_serving_rows_new (is_odd ? 2 * k : k, k, k);
  for (guint row = 0; row < k; row++)
    for (guint i = 0; i < k; i++) {
      /* 0, 1, k-1, 2, k-2, ... shifted by the row */
      const guint start = i == 0 ? 0 : i % 2 == 1 ? (i + 1) / 2 : k - i / 2;
      const guint sample = (start + row) % k;
      self->sample[row * k + i] = sample;
      if (is_odd)
        self->sample[(k + row) * k + (k - 1 - i)] = sample;
    }
  return self;
}

/* Shuffles the rows of a square, whole Latin squares first: so every k tasters are served each
 * sample once in each position, also where a square of odd k takes 2 k rows */
static void
shuffle_square (guint *order, guint n_rows, guint k, FmRandom *random)
{
  const guint n_halves = n_rows / k, first = fm_random_below (random, n_halves);
  for (guint half = 0; half < n_halves; half++) {
    for (guint i = 0; i < k; i++)
      order[half * k + i] = (half + first) % n_halves * k + i;
    fm_random_shuffle (random, order + half * k, k);
  }
}

static void
plan_complete (FmServingRows *rows, const FmServingRows *square, FmRandom *random)
{
  const guint k = square->n_per_row;
  g_autofree guint *label = g_new (guint, k);
  g_autofree guint *order = g_new (guint, square->n_rows);

  for (guint row = 0; row < rows->n_rows; row++) {
    const guint in_round = row % square->n_rows;
    if (in_round == 0) {
      for (guint i = 0; i < k; i++)
        label[i] = i;
      fm_random_shuffle (random, label, k);
      shuffle_square (order, square->n_rows, k, random);
    }
    for (guint i = 0; i < k; i++)
      rows->sample[row * k + i] = label[fm_serving_rows_get (square, order[in_round], i)];
  }
}

static guint
unevenness (const Evenness *self, const guint *row, guint k)
{
  guint cost = 0;
  for (guint i = 0; i < k; i++) {
    cost += 2 * self->at_position[row[i] * self->n + i] + 1;
    if (i > 0)
      cost += 2 * self->after[row[i] * self->n + row[i - 1]] + 1;
  }
  return cost;
}

static void
serve (Evenness *self, const guint *row, guint k)
{
  for (guint i = 0; i < k; i++) {
    self->at_position[row[i] * self->n + i]++;
    if (i > 0)
      self->after[row[i] * self->n + row[i - 1]]++;
  }
}

/* One block for each taster: whole rounds of the design, the rest as even as can be found */
static FmServingRows *
blocks_for_all (const FmServingRows *design, guint t, guint k, guint n, FmRandom *random)
{
  const guint round = design != NULL ? design->n_rows : n + 1;
  const guint n_whole = n - n % round, n_rest = n - n_whole;
  g_autoptr (FmServingRows) rest = fm_serving_even_blocks (t, k, n_rest, random);
  FmServingRows *blocks = fm_serving_rows_new (n, k, t);

  for (guint row = 0; row < n_whole; row++)
    memcpy (blocks->sample + row * k, design->sample + (row % round) * k, k * sizeof (guint));
  if (n_rest > 0)
    memcpy (blocks->sample + n_whole * k, rest->sample, (gsize)n_rest * k * sizeof (guint));
  return blocks;
}

static void
plan_incomplete (FmServingRows *rows, const FmServingRows *blocks, FmRandom *random)
{
  const guint k = blocks->n_per_row, t = blocks->n_samples;
  g_autofree guint *label = g_new (guint, t);
  g_autofree guint *order = g_new (guint, blocks->n_rows);
  g_autofree guint *draw = g_new (guint, k);
  g_autofree guint *at_position = g_new0 (guint, (gsize)t * t);
  g_autofree guint *after = g_new0 (guint, (gsize)t * t);
  Evenness even = { t, at_position, after };

  for (guint i = 0; i < t; i++)
    label[i] = i;
  for (guint i = 0; i < blocks->n_rows; i++)
    order[i] = i;
  fm_random_shuffle (random, label, t);
  fm_random_shuffle (random, order, blocks->n_rows);
  for (guint row = 0; row < rows->n_rows; row++) {
    guint *best = rows->sample + row * k;
    guint best_cost = G_MAXUINT;
    for (guint i = 0; i < k; i++)
      draw[i] = label[fm_serving_rows_get (blocks, order[row], i)];
    for (guint attempt = 0; attempt < ORDER_DRAWS; attempt++) {
      fm_random_shuffle (random, draw, k);
      const guint cost = unevenness (&even, draw, k);
      if (cost < best_cost) {
        best_cost = cost;
        memcpy (best, draw, k * sizeof *draw);
      }
    }
    serve (&even, best, k);
  }
}

static void
count_servings (FmServingPlan *self)
{
  const FmServingRows *rows = self->rows;
  const guint t = rows->n_samples, k = rows->n_per_row;
  g_autofree guint *together = g_new0 (guint, (gsize)t * t);

  for (guint row = 0; row < rows->n_rows; row++)
    for (guint i = 0; i < k; i++)
      for (guint j = 0; j < k; j++)
        together[fm_serving_rows_get (rows, row, i) * t + fm_serving_rows_get (rows, row, j)]++;

  self->served_min = self->together_min = G_MAXUINT;
  for (guint a = 0; a < t; a++)
    for (guint b = 0; b < t; b++) {
      const guint n = together[a * t + b];
      guint *least = a == b ? &self->served_min : &self->together_min;
      guint *most = a == b ? &self->served_max : &self->together_max;
      *least = MIN (*least, n);
      *most = MAX (*most, n);
    }
}

static FmServingPlan *
plan_alloc (guint n_samples, guint n_tasters, guint per_taster)
{
  FmServingPlan *self = g_new0 (FmServingPlan, 1);
  self->rows = fm_serving_rows_new (n_tasters, per_taster, n_samples);
  self->is_incomplete = per_taster < n_samples;
  return self;
}

static FmServingPlan *
plan_new_incomplete (guint t, guint n, guint k, FmRandom *random, GError **error)
{
  g_autoptr (GError) no_design = NULL;
  g_autoptr (FmServingRows) design = fm_serving_bib (t, k, &no_design);
  if (design == NULL && !fm_serving_bib_is_possible (t, k)) {
    g_propagate_error (error, g_steal_pointer (&no_design));
    return NULL;
  }
  g_autoptr (FmServingRows) blocks = blocks_for_all (design, t, k, n, random);
  FmServingPlan *self = plan_alloc (t, n, k);
  self->full_round = design != NULL ? design->n_rows : 0;
  plan_incomplete (self->rows, blocks, random);
  count_servings (self);
  self->is_balanced =
      self->served_min == self->served_max && self->together_min == self->together_max;
  self->is_near_balance = design == NULL && !self->is_balanced;
  return self;
}

static FmServingPlan *
plan_new_complete (guint k, guint n, FmRandom *random, GError **error)
{
  g_autoptr (FmServingRows) square = fm_serving_williams (k, error);
  if (square == NULL)
    return NULL;
  FmServingPlan *self = plan_alloc (k, n, k);
  self->full_round = square->n_rows;
  self->is_balanced = n % square->n_rows == 0;
  plan_complete (self->rows, square, random);
  count_servings (self);
  return self;
}

FmServingPlan *
fm_serving_plan_new (
    guint n_samples, guint n_tasters, guint max_per_taster, guint64 seed, GError **error)
{
  if (n_tasters < 1 || n_tasters > FM_SERVING_MAX_TASTERS) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A session needs 1 to %d tasters, not %u."), FM_SERVING_MAX_TASTERS, n_tasters);
    return NULL;
  }
  FmRandom random;
  fm_random_init (&random, seed);
  return max_per_taster < n_samples
             ? plan_new_incomplete (n_samples, n_tasters, max_per_taster, &random, error)
             : plan_new_complete (n_samples, n_tasters, &random, error);
}

void
fm_serving_plan_free (FmServingPlan *self)
{
  if (self == NULL)
    return;
  fm_serving_rows_free (self->rows);
  g_free (self);
}

/* n rows, each pattern as often as can be, in shuffled order */
static FmServingRows *
shuffled_patterns (
    const guint *pattern, guint n_patterns, guint length, guint n, guint64 seed, GError **error)
{
  if (n < 1 || n > FM_SERVING_MAX_TASTERS) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A session needs 1 to %d tasters, not %u."), FM_SERVING_MAX_TASTERS, n);
    return NULL;
  }
  g_autofree guint *order = g_new (guint, n_patterns);
  FmRandom random;
  fm_random_init (&random, seed);
  FmServingRows *rows = fm_serving_rows_new (n, length, 2);

  for (guint row = 0; row < n; row++) {
    if (row % n_patterns == 0) {
      for (guint i = 0; i < n_patterns; i++)
        order[i] = i;
      fm_random_shuffle (&random, order, n_patterns);
    }
    memcpy (rows->sample + row * length, pattern + order[row % n_patterns] * length,
            length * sizeof *pattern);
  }
  return rows;
}

FmServingRows *
fm_serving_triangles (guint n, guint64 seed, GError **error)
{
  static const guint patterns[] = { 0, 0, 1, 0, 1, 0, 1, 0, 0, 1, 1, 0, 1, 0, 1, 0, 1, 1 };
  return shuffled_patterns (patterns, 6, 3, n, seed, error);
}

FmServingRows *
fm_serving_pairs (guint n, guint64 seed, GError **error)
{
  static const guint patterns[] = { 0, 1, 1, 0 };
  return shuffled_patterns (patterns, 2, 2, n, seed, error);
}
