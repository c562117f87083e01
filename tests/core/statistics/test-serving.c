/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-serving.c - codes and serving orders of plans */
#include "core/statistics/fm-serving.h"

#include <string.h>

#include "core/base/fm-error.h"

static void
test_codes (void)
{
  gboolean seen[1000] = { FALSE };
  g_autoptr (GError) error = NULL;
  g_autofree guint *codes = fm_serving_codes (900, 7, NULL);
  g_autofree guint *again = fm_serving_codes (5, 7, NULL);

  for (guint i = 0; i < 900; i++) {
    g_assert_true (codes[i] >= 100 && codes[i] <= 999 && !seen[codes[i]]);
    seen[codes[i]] = TRUE;
  }
  g_assert_cmpmem (codes, 5 * sizeof *codes, again, 5 * sizeof *again);
  g_assert_null (fm_serving_codes (901, 7, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

/* A full round puts every sample equally often in each position and after each other sample. */
static void
test_balance (void)
{
  for (guint k = 2; k <= 9; k++) {
    const guint n = k % 2 == 1 ? 2 * k : k;
    g_autoptr (FmServingPlan) plan = fm_serving_plan_new (k, n, k, 11 + k, NULL);
    guint position[9][9] = { { 0 } }, after[9][9] = { { 0 } };

    g_assert_true (plan->is_balanced);
    for (guint row = 0; row < n; row++)
      for (guint i = 0; i < k; i++) {
        const guint sample = fm_serving_rows_get (plan->rows, row, i);
        position[sample][i]++;
        if (i > 0)
          after[sample][fm_serving_rows_get (plan->rows, row, i - 1)]++;
      }
    for (guint a = 0; a < k; a++)
      for (guint b = 0; b < k; b++) {
        g_assert_cmpuint (position[a][b], ==, n / k);
        g_assert_cmpuint (after[a][b], ==, a == b ? 0 : n / k);
      }
  }
}

/* As many tasters as samples: each sample once in each position, for odd numbers as well. */
static void
test_latin_panels (void)
{
  for (guint k = 3; k <= 9; k += 2)
    for (guint64 seed = 1; seed <= 20; seed++)
      for (guint n = k; n <= 3 * k; n += k) {
        g_autoptr (FmServingPlan) plan = fm_serving_plan_new (k, n, k, seed, NULL);
        guint position[9][9] = { { 0 } };
        for (guint row = 0; row < n; row++)
          for (guint i = 0; i < k; i++)
            position[fm_serving_rows_get (plan->rows, row, i)][i]++;
        for (guint a = 0; a < k; a++)
          for (guint b = 0; b < k; b++)
            g_assert_cmpuint (position[a][b], ==, n / k);
      }
}

static void
test_blocks_up_to_thirteen (void)
{
  guint refused = 0;
  for (guint t = 3; t <= 13; t++)
    for (guint k = 2; k < t && k <= 6; k++) {
      g_autoptr (GError) error = NULL;
      g_autoptr (FmServingRows) blocks = fm_serving_bib (t, k, &error);
      if (blocks == NULL) {
        g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
        refused++;
        continue;
      }
      g_autoptr (FmServingPlan) plan =
          fm_serving_plan_new (t, MIN (blocks->n_rows, FM_SERVING_MAX_TASTERS), k, 5, NULL);
      g_test_message ("%u samples, %u each: %u tasters", t, k, blocks->n_rows);
      g_assert_true (plan->is_incomplete && plan->is_balanced);
      g_assert_cmpuint (plan->served_min, ==, plan->served_max);
      g_assert_cmpuint (plan->together_min, ==, plan->together_max);
      g_assert_cmpuint (plan->together_min, >, 0);
    }
  g_test_message ("%u refused", refused);
  g_assert_cmpuint (refused, <=, 4);
}

/* Numbers from Cochran and Cox, Experimental Designs, plans 11 (from memory): b r lambda */
static void
test_small_designs (void)
{
  static const guint known[][3] = { { 8, 3, 56 },  { 10, 3, 30 }, { 10, 4, 15 }, { 10, 6, 15 },
                                    { 10, 7, 30 }, { 9, 6, 12 },  { 13, 8, 39 }, { 12, 3, 44 } };
  for (guint i = 0; i < G_N_ELEMENTS (known); i++) {
    g_autoptr (FmServingRows) blocks = fm_serving_bib (known[i][0], known[i][1], NULL);
    g_assert_nonnull (blocks);
    g_assert_cmpuint (blocks->n_rows, ==, known[i][2]);
  }
}

/* Where the panel does not fill a design, samples are served equally often to within one, and no
 * pair is compared two more often than the even share (rounded up) */
static void
test_uneven_panels (void)
{
  static const guint sizes[][2] = {
    { 8, 3 }, { 10, 3 }, { 10, 4 }, { 12, 5 }, { 12, 7 }, { 9, 4 }
  };
  for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
    for (guint n = 4; n <= 40; n += 3) {
      const guint t = sizes[i][0], k = sizes[i][1];
      g_autoptr (FmServingPlan) plan = fm_serving_plan_new (t, n, k, 77 + n, NULL);
      g_assert_nonnull (plan);
      g_assert_cmpuint (plan->served_max - plan->served_min, <=, 1);
      g_assert_cmpuint (plan->served_min, >=, n * k / t);
      g_assert_cmpuint (plan->together_max, <=, 2 + n * k * (k - 1) / (t * (t - 1)));
      g_assert_true (plan->is_near_balance == (t == 12 && !plan->is_balanced));
      g_assert_cmpuint (plan->full_round == 0, ==, t == 12);
    }
}

static void
test_seed_repeats (void)
{
  g_autoptr (FmServingPlan) a = fm_serving_plan_new (5, 8, 3, 99, NULL);
  g_autoptr (FmServingPlan) b = fm_serving_plan_new (5, 8, 3, 99, NULL);
  g_autoptr (FmServingPlan) c = fm_serving_plan_new (5, 8, 3, 100, NULL);
  const gsize size = 24 * sizeof (guint);

  g_assert_cmpmem (a->rows->sample, size, b->rows->sample, size);
  g_assert_cmpint (memcmp (a->rows->sample, c->rows->sample, size), !=, 0);
}

static void
test_triangles (void)
{
  guint odd_b = 0;
  g_autoptr (FmServingRows) rows = fm_serving_triangles (12, 4, NULL);
  for (guint row = 0; row < 12; row++) {
    guint sum = 0;
    for (guint i = 0; i < 3; i++)
      sum += fm_serving_rows_get (rows, row, i);
    g_assert_true (sum == 1 || sum == 2);
    odd_b += sum == 1;
  }
  g_assert_cmpuint (odd_b, ==, 6);
}

static void
test_refuses (void)
{
  g_autoptr (GError) e1 = NULL, e2 = NULL, e3 = NULL;
  g_assert_null (fm_serving_plan_new (4, 0, 4, 1, &e1));
  g_assert_error (e1, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_assert_null (fm_serving_plan_new (1, 4, 4, 1, &e2));
  g_assert_error (e2, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_assert_null (fm_serving_plan_new (6, 4, 1, 1, &e3));
  g_assert_error (e3, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/serving/codes", test_codes);
  g_test_add_func ("/serving/balance", test_balance);
  g_test_add_func ("/serving/latin-panels", test_latin_panels);
  g_test_add_func ("/serving/blocks-up-to-thirteen", test_blocks_up_to_thirteen);
  g_test_add_func ("/serving/small-designs", test_small_designs);
  g_test_add_func ("/serving/uneven-panels", test_uneven_panels);
  g_test_add_func ("/serving/seed-repeats", test_seed_repeats);
  g_test_add_func ("/serving/triangles", test_triangles);
  g_test_add_func ("/serving/refuses", test_refuses);
  return g_test_run ();
}
