/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-rank-null.c - counts the orders all tasters together can give */
#include <math.h>
#include <string.h>

#include "core/statistics/fm-rank-private.h"
#include "core/statistics/fm-stat.h"

#define ALPHA 0.05
/* steps (set of sums x order of one taster) that stay within about a second */
#define WORK_LIMIT 30000000.0
/* a count this far on is finished even when it turns out up to twice as long as foreseen */
#define WORK_KEPT (WORK_LIMIT / 8)
/* all orders of eight samples */
#define ORDER_LIMIT 40320
#define MAX_PACKED 32

/* Rank sums packed side by side into one number, so that adding a taster is one addition. The
 * number of ways that lead there is kept as a double: exact up to 2^53. */
typedef struct {
  guint64 *key;
  double *ways; /* 0 = free slot */
  gsize size;   /* a power of two */
  gsize used;
} SumSet;

typedef struct {
  const FmRankRows *rows;
  guint bits;
  guint n;
  gint64 expected[FM_RANK_MAX_SAMPLES];
} Packing;

/* Ways by the doubled distance of the two sums furthest apart */
typedef struct {
  double *ways;
  gsize size;
} Distances;

static void
sum_set_init (SumSet *self, gsize size)
{
  self->size = size;
  self->used = 0;
  self->key = g_new (guint64, size);
  self->ways = g_new0 (double, size);
}

static void
sum_set_clear (SumSet *self)
{
  g_clear_pointer (&self->key, g_free);
  g_clear_pointer (&self->ways, g_free);
}

static void sum_set_add (SumSet *self, guint64 key, double ways);

static void
sum_set_grow (SumSet *self)
{
  SumSet bigger;
  sum_set_init (&bigger, self->size * 4);
  for (gsize i = 0; i < self->size; i++)
    if (self->ways[i] > 0)
      sum_set_add (&bigger, self->key[i], self->ways[i]);
  sum_set_clear (self);
  *self = bigger;
}

static void
sum_set_add (SumSet *self, guint64 key, double ways)
{
  gsize slot = (gsize)((key * G_GUINT64_CONSTANT (0x9e3779b97f4a7c15)) >> 20) & (self->size - 1);
  while (self->ways[slot] > 0 && self->key[slot] != key)
    slot = (slot + 1) & (self->size - 1);
  if (self->ways[slot] == 0) {
    self->key[slot] = key;
    self->used++;
  }
  self->ways[slot] += ways;
  if (self->used * 2 > self->size)
    sum_set_grow (self);
}

static gboolean
next_order (guint *score, guint n)
{
  guint i = n - 1;
  while (i > 0 && score[i - 1] >= score[i])
    i--;
  if (i == 0)
    return FALSE;
  guint j = n - 1;
  while (score[j] <= score[i - 1])
    j--;
  guint swap = score[i - 1];
  score[i - 1] = score[j];
  score[j] = swap;
  for (guint a = i, b = n - 1; a < b; a++, b--) {
    swap = score[a];
    score[a] = score[b];
    score[b] = swap;
  }
  return TRUE;
}

static int
compare_scores (const void *a, const void *b)
{
  const guint *left = a, *right = b;
  return (*left > *right) - (*left < *right);
}

guint *
fm_rank_row_orders (const FmRankRow *row, guint limit, guint *n_orders)
{
  guint score[FM_RANK_MAX_SAMPLES];
  GArray *orders = g_array_new (FALSE, FALSE, sizeof (guint));

  memcpy (score, row->score, sizeof score);
  qsort (score, row->n, sizeof *score, compare_scores);
  *n_orders = 0;
  do {
    if (++*n_orders > limit) {
      g_array_unref (orders);
      return NULL;
    }
    g_array_append_vals (orders, score, row->n);
  } while (next_order (score, row->n));
  return (guint *)(gpointer)g_array_free (orders, FALSE);
}

void
fm_rank_rows_sums (const FmRankRows *self, gint64 *sum, gint64 *expected)
{
  memset (sum, 0, self->n_samples * sizeof *sum);
  memset (expected, 0, self->n_samples * sizeof *expected);
  for (guint r = 0; r < self->n_rows; r++)
    for (guint i = 0; i < self->row[r].n; i++) {
      sum[self->row[r].item[i]] += self->row[r].score[i];
      expected[self->row[r].item[i]] += self->row[r].n + 1;
    }
}

gint64
fm_rank_spread (const gint64 *sum, const gint64 *expected, guint n)
{
  gint64 spread = 0;
  for (guint i = 0; i < n; i++)
    spread += (sum[i] - expected[i]) * (sum[i] - expected[i]);
  return spread;
}

/* Where all tasters rank all samples it does not matter which sample has which sum */
static guint64
sorted_key (const Packing *self, guint64 key)
{
  guint64 field[MAX_PACKED];
  const guint64 mask = (G_GUINT64_CONSTANT (1) << self->bits) - 1;

  for (guint i = 0; i < self->n; i++, key >>= self->bits) {
    const guint64 value = key & mask;
    guint j = i;
    for (; j > 0 && field[j - 1] > value; j--)
      field[j] = field[j - 1];
    field[j] = value;
  }
  for (guint i = self->n; i > 0; i--)
    key = (key << self->bits) | field[i - 1];
  return key;
}

static gint64
key_spread (const Packing *self, guint64 key)
{
  const guint64 mask = (G_GUINT64_CONSTANT (1) << self->bits) - 1;
  gint64 spread = 0;
  for (guint i = 0; i < self->n; i++, key >>= self->bits) {
    const gint64 away = (gint64)(key & mask) - self->expected[i];
    spread += away * away;
  }
  return spread;
}

static gint64
range_of (const gint64 *sum, const gint64 *expected, guint n)
{
  gint64 least = G_MAXINT64, most = G_MININT64;
  for (guint i = 0; i < n; i++) {
    least = MIN (least, sum[i] - expected[i]);
    most = MAX (most, sum[i] - expected[i]);
  }
  return most - least;
}

static gint64
key_range (const Packing *self, guint64 key)
{
  const guint64 mask = (G_GUINT64_CONSTANT (1) << self->bits) - 1;
  gint64 sum[FM_RANK_MAX_SAMPLES];
  for (guint i = 0; i < self->n; i++, key >>= self->bits)
    sum[i] = (gint64)(key & mask);
  return range_of (sum, self->expected, self->n);
}

/* Large enough for the sample always best beside the sample always worst */
static void
distances_init (Distances *self, const FmRankRows *rows)
{
  self->size = 1;
  for (guint r = 0; r < rows->n_rows; r++)
    self->size += 2 * rows->row[r].n;
  self->ways = g_new0 (double, self->size);
}

/* @seen: ways counted for the order seen, beside @total others (see fm_rank_tail_from_draws()) */
static guint
clear_distance (const Distances *self, double seen, double total)
{
  double tail = seen;
  gsize distance = self->size;
  while (distance > 1 && tail + self->ways[distance - 1] <= ALPHA * total)
    tail += self->ways[--distance];
  while (distance < self->size && self->ways[distance] == 0)
    distance++;
  return distance < self->size ? (guint)distance : 0;
}

static guint64 *
packed_orders (const Packing *self, const FmRankRow *row, guint *n_orders)
{
  g_autofree guint *order = fm_rank_row_orders (row, ORDER_LIMIT, n_orders);
  if (order == NULL)
    return NULL;
  guint64 *packed = g_new0 (guint64, *n_orders);
  for (guint o = 0; o < *n_orders; o++)
    for (guint i = 0; i < row->n; i++)
      packed[o] += (guint64)order[o * row->n + i] << (self->bits * row->item[i]);
  return packed;
}

static gboolean
packing_init (Packing *self, const FmRankRows *rows)
{
  gint64 sum[FM_RANK_MAX_SAMPLES];
  guint64 most = 0;

  self->rows = rows;
  self->n = rows->n_samples;
  fm_rank_rows_sums (rows, sum, self->expected);
  for (guint i = 0; i < self->n; i++)
    most = MAX (most, (guint64)self->expected[i] * 2);
  self->bits = g_bit_storage ((gulong)most);
  return self->bits * self->n <= 63;
}

/* One taster more in every set of sums; FALSE when that taster has too many orders */
static gboolean
add_row (const Packing *packing, SumSet *set, const FmRankRow *row)
{
  guint n_orders = 0;
  g_autofree guint64 *order = packed_orders (packing, row, &n_orders);
  if (order == NULL)
    return FALSE;

  SumSet next = { 0 };
  sum_set_init (&next, 1024);
  for (gsize slot = 0; slot < set->size; slot++)
    for (guint o = 0; set->ways[slot] > 0 && o < n_orders; o++) {
      const guint64 key = set->key[slot] + order[o];
      sum_set_add (&next, packing->rows->is_complete ? sorted_key (packing, key) : key,
                   set->ways[slot]);
    }
  sum_set_clear (set);
  *set = next;
  return TRUE;
}

/* The last taster: sums are looked at, not kept. @hits: ways to a spread >= @spread. */
static gboolean
count_last (const Packing *packing,
            const SumSet *set,
            const FmRankRow *row,
            gint64 spread,
            double *hits,
            Distances *distances)
{
  guint n_orders = 0;
  g_autofree guint64 *order = packed_orders (packing, row, &n_orders);
  if (order == NULL)
    return FALSE;
  for (gsize slot = 0; slot < set->size; slot++)
    for (guint o = 0; set->ways[slot] > 0 && o < n_orders; o++) {
      const guint64 key = set->key[slot] + order[o];
      *hits += key_spread (packing, key) >= spread ? set->ways[slot] : 0;
      distances->ways[key_range (packing, key)] += set->ways[slot];
    }
  return TRUE;
}

double
fm_rank_row_n_orders (const FmRankRow *row)
{
  double n_orders = 1;
  for (guint i = 0; i < row->n; i++) {
    guint same = 1;
    for (guint j = 0; j < i; j++)
      same += row->score[j] == row->score[i];
    n_orders *= (i + 1.0) / same;
  }
  return n_orders;
}

/* All the work, foreseen from the sets after @next tasters: from the third on they grow by a power
 * of the number of tasters, and the power by which they grew last holds nearly on */
static double
foreseen_work (const FmRankRows *rows, guint next, double used, double used_before)
{
  const double power = next > 2 ? log (used / used_before) / log (next / (next - 1.0)) : 0;
  double work = 0;
  for (guint r = next; r < rows->n_rows; r++)
    work += used * pow ((double)r / next, power) * fm_rank_row_n_orders (&rows->row[r]);
  return work;
}

static gboolean
is_within_limit (double done, double foreseen)
{
  return done + foreseen <= (done < WORK_KEPT ? WORK_LIMIT : 2 * WORK_LIMIT);
}

/* By symmetry one complete taster's order may be held fixed; returns who comes next */
static guint
start_sets (const Packing *packing, SumSet *set)
{
  const FmRankRow *row = &packing->rows->row[0];
  const gboolean is_fixed = packing->rows->is_complete;
  guint64 start = 0;
  for (guint i = 0; is_fixed && i < row->n; i++)
    start += (guint64)row->score[i] << (packing->bits * row->item[i]);
  sum_set_init (set, 1024);
  sum_set_add (set, is_fixed ? sorted_key (packing, start) : start, 1);
  return is_fixed ? 1 : 0;
}

/* One taster alone: all orders of the same samples lie equally far apart */
static FmRankTail
tail_of_one (const FmRankRows *self, gint64 spread)
{
  gint64 sum[FM_RANK_MAX_SAMPLES], expected[FM_RANK_MAX_SAMPLES];
  fm_rank_rows_sums (self, sum, expected);
  const gboolean is_reached = fm_rank_spread (sum, expected, self->n_samples) >= spread;
  return (FmRankTail){ .p = is_reached ? 1 : 0, .method = FM_RANK_EXACT };
}

gboolean
fm_rank_rows_count (const FmRankRows *self, gint64 spread, FmRankTail *tail)
{
  Packing packing;
  if (self->n_rows == 1) {
    *tail = tail_of_one (self, spread);
    return TRUE;
  }
  if (!packing_init (&packing, self))
    return FALSE;

  SumSet set;
  Distances distances;
  double work = 0, used_before = 1, hits = 0, total = 1;
  guint r = start_sets (&packing, &set);
  gboolean is_counted = TRUE;
  distances_init (&distances, self);
  for (; r < self->n_rows && is_counted; r++) {
    const FmRankRow *row = &self->row[r];
    const double used = (double)set.used;
    is_counted =
        is_within_limit (work, foreseen_work (self, r, used, used_before)) &&
        (r + 1 < self->n_rows ? add_row (&packing, &set, row)
                              : count_last (&packing, &set, row, spread, &hits, &distances));
    work += is_counted ? used * fm_rank_row_n_orders (row) : 0;
    total *= fm_rank_row_n_orders (row);
    used_before = used;
  }
  sum_set_clear (&set);
  *tail = (FmRankTail){
    .p = hits / total,
    .method = FM_RANK_EXACT,
    .clear_distance = clear_distance (&distances, 0, total),
    .steps = work,
  };
  g_free (distances.ways);
  return is_counted;
}

void
fm_rank_rows_shuffle (FmRankRows *self, gpointer random)
{
  for (guint r = 0; r < self->n_rows; r++)
    fm_random_shuffle (random, self->row[r].score, self->row[r].n);
}

FmRankTail
fm_rank_tail_from_draws (guint hits)
{
  /* the order seen is one of the draws, so that p is never too small */
  const double p = (1.0 + hits) / (1.0 + FM_RANK_PERMUTATIONS);
  return (FmRankTail){
    .p = p,
    .p_error = sqrt (p * (1 - p) / FM_RANK_PERMUTATIONS),
    .method = FM_RANK_PERMUTED,
  };
}

static FmRankTail
drawn_tail (const FmRankRows *self, gint64 spread, guint64 seed)
{
  FmRankRows shuffled = *self;
  gint64 sum[FM_RANK_MAX_SAMPLES], expected[FM_RANK_MAX_SAMPLES];
  FmRandom random;
  Distances distances;
  guint hits = 0;

  shuffled.row = g_memdup2 (self->row, self->n_rows * sizeof *self->row);
  fm_random_init (&random, seed);
  distances_init (&distances, self);
  for (guint draw = 0; draw < FM_RANK_PERMUTATIONS; draw++) {
    fm_rank_rows_shuffle (&shuffled, &random);
    fm_rank_rows_sums (&shuffled, sum, expected);
    hits += fm_rank_spread (sum, expected, self->n_samples) >= spread;
    distances.ways[range_of (sum, expected, self->n_samples)]++;
  }
  g_free (shuffled.row);
  FmRankTail tail = fm_rank_tail_from_draws (hits);
  tail.clear_distance = clear_distance (&distances, 1, 1.0 + FM_RANK_PERMUTATIONS);
  g_free (distances.ways);
  return tail;
}

FmRankTail
fm_rank_rows_tail (const FmRankRows *self, gint64 spread, guint64 seed)
{
  FmRankTail tail;
  return fm_rank_rows_count (self, spread, &tail) ? tail : drawn_tail (self, spread, seed);
}
