/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-tasting.c - published rank data read through a whole tasting */
#include "../core/tasting/tasting.h"
#include "core/statistics/fm-stat.h"
#include "core/tasting/fm-tasting-reading.h"
#include "test-stat-csv.h"

typedef struct {
  const char *name;
  guint k;
  double *value;
} Case;

static void
add_value (char **field, guint n_fields, gpointer data)
{
  Case *wanted = data;
  if (g_strcmp0 (field[0], wanted->name) == 0)
    wanted->value[(stat_csv_count (field[1]) - 1) * wanted->k + stat_csv_count (field[2]) - 1] =
        stat_csv_number (field[3]);
}

/* Tasters write the places of the published values */
static FmTastingReading *
read_published (const char *name, guint n, guint k)
{
  g_autoptr (FmTasting) self = tasting_sealed (k, n, FM_TASTING_RANK, 31);
  g_autofree double *value = g_new0 (double, n *k);
  g_autofree double *place = g_new0 (double, k);
  Case wanted = { name, k, value };

  stat_csv_read ("rank_data.csv", add_value, &wanted);
  for (guint t = 0; t < n; t++) {
    fm_stat_midranks (value + t * k, k, place);
    for (guint s = 0; s < k; s++)
      tasting_mark (self, t, s, FM_TASTING_RANK, place[s]);
  }
  tasting_all_in (self);
  tasting_open (self);
  return fm_tasting_read (self, NULL, NULL);
}

/* Hollander and Wolfe (1973) p. 140, rounding first base: statistic 11.143, read. Exact p and mean
 * Spearman: computed with SciPy. The large-sample distance over all pairs is
 * 3.314 sqrt (22 x 3 x 4 / 12) = 15.5: the second, 15 behind, is not clearly so. */
static void
test_first_base (void)
{
  const double sums[] = { 53, 47, 32 };
  g_autoptr (FmTastingReading) reading = read_published ("hw_first_base", 22, 3);
  for (guint s = 0; s < 3; s++)
    g_assert_cmpfloat (reading->rank->rank_sum[s], ==, sums[s]);
  g_assert_cmpfloat_with_epsilon (reading->rank->statistic, 11.142857142857142, 1e-12);
  g_assert_cmpfloat_with_epsilon (reading->rank->p, 0.0031498272816088088, 1e-12);
  g_assert_cmpfloat_with_epsilon (reading->rank->kendall_w, 0.2532467532467532, 1e-12);
  g_assert_cmpfloat_with_epsilon (reading->lsd_conover, 11.56787645233422, 1e-6);
  g_assert_cmpstr (reading->headline, ==,
                   "22 tasters see a difference between these three that chance gives in 3 of "
                   "1,000 sessions; Draft 3 came first, clearly ahead of Draft 1 (by 15.5 in rank "
                   "sum or more, a distance that holds over all pairs).");
}

/* Conover (1999), grass, with ties: statistic 8.1, LSD 11.48, read (agricolae vignette). */
static void
test_grass (void)
{
  const double sums[] = { 38, 23.5, 24.5, 34 };
  g_autoptr (FmTastingReading) reading = read_published ("conover_grass", 12, 4);
  for (guint s = 0; s < 4; s++)
    g_assert_cmpfloat (reading->rank->rank_sum[s], ==, sums[s]);
  g_assert_true (reading->rank->has_ties);
  g_assert_cmpfloat_with_epsilon (reading->rank->statistic, 8.097345132743364, 1e-12);
  g_assert_cmpfloat_with_epsilon (reading->lsd_conover, 11.48167759470489, 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reference/tasting/hollander-wolfe-first-base-read", test_first_base);
  g_test_add_func ("/reference/tasting/conover-grass-read", test_grass);
  return g_test_run ();
}
