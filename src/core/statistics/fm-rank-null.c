/* fm-rank-null.c - counts the orders all tasters together can give */
#include <math.h>
#include <string.h>

#include "core/statistics/fm-rank-private.h"
#include "core/statistics/fm-stat.h"

/* steps (set of sums x order of one taster) that stay within about a second */
#define WORK_LIMIT 30000000.0
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

/* Adds one taster to every set of sums. With @last only the ways to a spread >= @spread count. */
static gboolean
add_row (const Packing *packing,
         SumSet *set,
         const FmRankRow *row,
         double *work,
         gboolean last,
         gint64 spread,
         double *hits,
         double *total)
{
  guint n_orders = 0;
  g_autofree guint64 *order = packed_orders (packing, row, &n_orders);
  if (order == NULL || (*work += (double)set->used * n_orders) > WORK_LIMIT)
    return FALSE;

  SumSet next = { 0 };
  if (!last)
    sum_set_init (&next, 1024);
  for (gsize slot = 0; slot < set->size; slot++) {
    if (set->ways[slot] == 0)
      continue;
    for (guint o = 0; o < n_orders; o++) {
      const guint64 key = set->key[slot] + order[o];
      if (!last)
        sum_set_add (&next, packing->rows->is_complete ? sorted_key (packing, key) : key,
                     set->ways[slot]);
      else if (key_spread (packing, key) >= spread)
        *hits += set->ways[slot];
    }
  }
  *total *= n_orders;
  if (!last) {
    sum_set_clear (set);
    *set = next;
  }
  return TRUE;
}

gboolean
fm_rank_rows_count (const FmRankRows *self, gint64 spread, double *p)
{
  Packing packing;
  if (!packing_init (&packing, self))
    return FALSE;

  SumSet set;
  double work = 0, hits = 0, total = 1;
  guint64 start = 0;
  guint first = 0;
  /* by symmetry one complete taster's order may be held fixed */
  if (self->is_complete) {
    for (guint i = 0; i < self->row[0].n; i++)
      start += (guint64)self->row[0].score[i] << (packing.bits * self->row[0].item[i]);
    start = sorted_key (&packing, start);
    first = 1;
  }
  sum_set_init (&set, 1024);
  sum_set_add (&set, start, 1);
  gboolean done = TRUE;
  for (guint r = first; r < self->n_rows && done; r++)
    done = add_row (&packing, &set, &self->row[r], &work, r + 1 == self->n_rows, spread, &hits,
                    &total);
  if (first == self->n_rows)
    hits = key_spread (&packing, start) >= spread ? 1 : 0;
  sum_set_clear (&set);
  *p = hits / total;
  return done;
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
  return (FmRankTail){ p, sqrt (p * (1 - p) / FM_RANK_PERMUTATIONS), FM_RANK_PERMUTED };
}

static FmRankTail
drawn_tail (const FmRankRows *self, gint64 spread, guint64 seed)
{
  FmRankRows shuffled = *self;
  gint64 sum[FM_RANK_MAX_SAMPLES], expected[FM_RANK_MAX_SAMPLES];
  FmRandom random;
  guint hits = 0;

  shuffled.row = g_memdup2 (self->row, self->n_rows * sizeof *self->row);
  fm_random_init (&random, seed);
  for (guint draw = 0; draw < FM_RANK_PERMUTATIONS; draw++) {
    fm_rank_rows_shuffle (&shuffled, &random);
    fm_rank_rows_sums (&shuffled, sum, expected);
    hits += fm_rank_spread (sum, expected, self->n_samples) >= spread;
  }
  g_free (shuffled.row);
  return fm_rank_tail_from_draws (hits);
}

FmRankTail
fm_rank_rows_tail (const FmRankRows *self, gint64 spread, guint64 seed)
{
  FmRankTail tail = { 1, 0, FM_RANK_EXACT };
  return fm_rank_rows_count (self, spread, &tail.p) ? tail : drawn_tail (self, spread, seed);
}
