/* fm-serving-bib.c - balanced incomplete blocks */
#include <glib/gi18n-lib.h>

#include "core/fm-error.h"
#include "core/fm-serving-private.h"

#define MAX_FAMILY 3
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

FmServingRows *
fm_serving_bib (guint t, guint k, GError **error)
{
  if (t < 3 || t > FM_SERVING_MAX_SAMPLES || k < 2 || k >= t) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("Parts of %u out of %u samples cannot be planned. Take at least 2, fewer "
                    "than all, and at most %d samples."),
                 k, t, FM_SERVING_MAX_SAMPLES);
    return NULL;
  }
  if (t == 9 && k == 3)
    return plane_of_nine ();

  const guint64 n_all = binomial (t, k);
  for (guint m = 1; m <= MAX_FAMILY; m++) {
    FmServingRows *rows = NULL;
    if (m * (t - 1) < n_all)
      rows = cyclic_with_fixed (t, k, m);
    if (rows == NULL && m * t < n_all)
      rows = cyclic (t, k, m);
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
