/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-serving-bib.c - balanced incomplete blocks */
#include <glib/gi18n-lib.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-serving-private.h"

#define MAX_FAMILY 5
/* base blocks looked at before giving up on a smaller design than all combinations */
#define SEARCH_LIMIT 300000

typedef struct {
  guint points; /* cyclic points: t, or t - 1 beside a fixed one */
  guint t;
  guint k;
  guint n_family;
  guint n_with_fixed; /* of the base blocks, how many hold the fixed point */
  guint lambda;
  guint base[MAX_FAMILY][FM_SERVING_MAX_SAMPLES];
  guint seen[FM_SERVING_MAX_SAMPLES]; /* how often each difference has come up */
  guint steps;
} FamilySearch;

static guint64
binomial (guint n, guint k)
{
  guint64 value = 1;
  for (guint i = 1; i <= k; i++)
    value = value * (n - k + i) / i;
  return value;
}

static FmServingRows *
all_combinations (guint t, guint k)
{
  FmServingRows *rows = fm_serving_rows_new ((guint)binomial (t, k), k, t);
  g_autofree guint *pick = g_new (guint, k);

  for (guint i = 0; i < k; i++)
    pick[i] = i;
  for (guint row = 0; row < rows->n_rows; row++) {
    memcpy (rows->sample + row * k, pick, k * sizeof *pick);
    guint i = k;
    while (i > 0 && pick[i - 1] == t - k + i - 1)
      i--;
    if (i == 0)
      break;
    pick[i - 1]++;
    for (guint j = i; j < k; j++)
      pick[j] = pick[j - 1] + 1;
  }
  return rows;
}

/* Lines of the plane over the integers mod 3: 9 points, 12 blocks of 3 */
static FmServingRows *
plane_of_nine (void)
{
  FmServingRows *rows = fm_serving_rows_new (12, 3, 9);
  for (guint direction = 0; direction < 4; direction++)
    for (guint offset = 0; offset < 3; offset++)
      for (guint i = 0; i < 3; i++) {
        const guint x = direction == 3 ? offset : i;
        const guint y = direction == 3 ? i : (direction * i + offset) % 3;
        rows->sample[(direction * 3 + offset) * 3 + i] = 3 * x + y;
      }
  return rows;
}

/* b = 30, r = 9, lambda = 2: no cyclic design has these numbers */
static const guint8 three_of_ten[] = {
  0, 1, 7, 1, 2, 9, 3, 2, 4, 0, 3, 1, 2, 0, 8, 4, 5, 7, 3, 1, 6, 6, 8, 9, 8, 7, 5, 4, 7, 9,
  9, 0, 5, 8, 1, 2, 0, 5, 3, 6, 4, 8, 4, 6, 0, 5, 9, 2, 2, 5, 6, 6, 9, 3, 8, 0, 9, 1, 4, 5,
  2, 4, 0, 7, 6, 0, 7, 2, 6, 9, 1, 7, 2, 3, 7, 3, 5, 8, 7, 8, 3, 6, 5, 1, 4, 3, 9, 1, 4, 8,
};

/* b = 15, r = 6, lambda = 2 */
static const guint8 four_of_ten[] = {
  6, 8, 0, 3, 2, 8, 4, 7, 6, 4, 7, 9, 4, 6, 1, 3, 6, 5, 0, 7, 8, 2, 6, 9, 5, 1, 6, 2, 3, 4,
  5, 9, 4, 8, 0, 1, 5, 2, 0, 4, 7, 8, 5, 3, 1, 9, 5, 8, 1, 3, 2, 7, 0, 1, 7, 9, 2, 0, 9, 3,
};

static FmServingRows *
from_table (const guint8 *table, gsize size, guint t, guint k)
{
  FmServingRows *rows = fm_serving_rows_new ((guint)size / k, k, t);
  for (gsize i = 0; i < size; i++)
    rows->sample[i] = table[i];
  return rows;
}

/* Designs that the searches below do not reach */
static FmServingRows *
tabled (guint t, guint k)
{
  if (t == 9 && k == 3)
    return plane_of_nine ();
  if (t == 10 && k == 3)
    return from_table (three_of_ten, sizeof three_of_ten, t, k);
  if (t == 10 && k == 4)
    return from_table (four_of_ten, sizeof four_of_ten, t, k);
  return NULL;
}

static gboolean
count_differences (FamilySearch *self, const guint *block, guint filled, guint point, int step)
{
  gboolean fits = TRUE;
  for (guint i = 0; i < filled; i++) {
    const guint difference = (point + self->points - block[i]) % self->points;
    self->seen[difference] += (guint)step;
    self->seen[self->points - difference] += (guint)step;
    fits = fits && self->seen[difference] <= self->lambda &&
           self->seen[self->points - difference] <= self->lambda;
  }
  return fits;
}

static guint
base_size (const FamilySearch *self, guint which)
{
  return which < self->n_with_fixed ? self->k - 1 : self->k;
}

/* Every difference must come up lambda times over the family; each base block starts at 0 */
static gboolean
search_family (FamilySearch *self, guint which, guint filled)
{
  if (which == self->n_family)
    return TRUE;
  if (filled == base_size (self, which))
    return search_family (self, which + 1, 0);

  guint *block = self->base[which];
  const guint first = filled == 0 ? 0 : block[filled - 1] + 1;
  const guint last = filled == 0 ? 0 : self->points - 1;
  for (guint point = first; point <= last; point++) {
    if (++self->steps > SEARCH_LIMIT)
      return FALSE;
    block[filled] = point;
    if (count_differences (self, block, filled, point, 1) &&
        search_family (self, which, filled + 1))
      return TRUE;
    count_differences (self, block, filled, point, -1);
  }
  return FALSE;
}

static FmServingRows *
develop (const FamilySearch *self)
{
  FmServingRows *rows = fm_serving_rows_new (self->n_family * self->points, self->k, self->t);
  for (guint which = 0; which < self->n_family; which++)
    for (guint shift = 0; shift < self->points; shift++) {
      guint *row = rows->sample + (which * self->points + shift) * self->k;
      const guint size = base_size (self, which);
      for (guint i = 0; i < size; i++)
        row[i] = (self->base[which][i] + shift) % self->points;
      if (size < self->k)
        row[size] = self->t - 1;
    }
  return rows;
}

/* m base blocks over all t points: lambda (t - 1) = m k (k - 1) */
static FmServingRows *
cyclic (guint t, guint k, guint m)
{
  FamilySearch search = { .points = t, .t = t, .k = k, .n_family = m };
  if ((m * k * (k - 1)) % (t - 1) != 0)
    return NULL;
  search.lambda = m * k * (k - 1) / (t - 1);
  return search_family (&search, 0, 0) ? develop (&search) : NULL;
}

/* m base blocks mod t - 1 with a fixed point in f of them: r = f (t - 1) = m k (t - 1) / t */
static FmServingRows *
cyclic_with_fixed (guint t, guint k, guint m)
{
  FamilySearch search = { .points = t - 1, .t = t, .k = k, .n_family = m };
  if ((m * k) % t != 0)
    return NULL;
  search.n_with_fixed = m * k / t;
  search.lambda = search.n_with_fixed * (k - 1);
  return search_family (&search, 0, 0) ? develop (&search) : NULL;
}

gboolean
fm_serving_bib_is_possible (guint t, guint k)
{
  return t >= 3 && t <= FM_SERVING_MAX_SAMPLES && k >= 2 && k < t;
}

static FmServingRows *
smallest_family (guint t, guint k, guint64 n_all)
{
  FmServingRows *rows = NULL;
  for (guint m = 1; m <= MAX_FAMILY && rows == NULL; m++) {
    if (m * (t - 1) < n_all)
      rows = cyclic_with_fixed (t, k, m);
    if (rows == NULL && m * t < n_all)
      rows = cyclic (t, k, m);
  }
  return rows;
}

/* What each block of a balanced design leaves out is a balanced design too */
static FmServingRows *
complement (const FmServingRows *design)
{
  const guint t = design->n_samples, k = design->n_per_row;
  FmServingRows *rows = fm_serving_rows_new (design->n_rows, t - k, t);
  for (guint r = 0; r < design->n_rows; r++) {
    guint filled = 0;
    for (guint s = 0; s < t; s++) {
      gboolean is_held = FALSE;
      for (guint i = 0; i < k; i++)
        is_held = is_held || fm_serving_rows_get (design, r, i) == s;
      if (!is_held)
        rows->sample[r * (t - k) + filled++] = s;
    }
  }
  return rows;
}

static FmServingRows *
small_design (guint t, guint k, guint64 n_all)
{
  FmServingRows *rows = tabled (t, k);
  return rows != NULL ? rows : smallest_family (t, k, n_all);
}

FmServingRows *
fm_serving_bib (guint t, guint k, GError **error)
{
  if (!fm_serving_bib_is_possible (t, k)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("Parts of %u out of %u samples cannot be planned. Take at least 2, fewer "
                    "than all, and at most %d samples."),
                 k, t, FM_SERVING_MAX_SAMPLES);
    return NULL;
  }
  const guint64 n_all = binomial (t, k);
  /* the search is quick in small blocks only, and their complements are as good */
  if (2 * k > t && t - k >= 2) {
    g_autoptr (FmServingRows) left_out = small_design (t, t - k, n_all);
    if (left_out != NULL)
      return complement (left_out);
  } else {
    FmServingRows *rows = small_design (t, k, n_all);
    if (rows != NULL)
      return rows;
  }
  if (n_all > FM_SERVING_MAX_TASTERS) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("No small balanced plan is known for %u of %u samples each. Change the "
                    "number of samples, or how many each person tastes, by one."),
                 k, t);
    return NULL;
  }
  return all_combinations (t, k);
}
