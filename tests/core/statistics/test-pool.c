/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-pool.c - intervals of pooled worths cover what they say, and equal samples stay equal
 *
 * Each count is of readings that were drawn from a known truth. A bound on a count allows for four
 * standard deviations of it, so that only a wrong method fails.
 */
#include "core/statistics/fm-pool-check.h"

#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-pool-liking.h"

#define N_TASTERS 3
#define N_SESSIONS 4
#define N_SAMPLES 4
#define N_READINGS 600
/* Readings that are drawn from again, or whose pairs cost an integral each. */
#define N_DRAWN 100

/* Sheets of a panel that ranks all four samples at every session; the places are drawn later. */
static FmPool *
blank_sheets (void)
{
  static const guint item[] = { 0, 1, 2, 3 };
  static const double place[] = { 1, 2, 3, 4 };
  FmPool *pool = fm_pool_new (N_SAMPLES);

  for (guint session = 0; session < N_SESSIONS; session++)
    for (guint taster = 0; taster < N_TASTERS; taster++)
      fm_pool_add (pool, session, taster, N_SAMPLES, item, place);
  return pool;
}

/* A truth in the form of a fit: worths, and no ties. */
static FmPoolFit *
truth_new (const FmPool *pool, const double *worth)
{
  FmPoolFit *truth = fm_pool_fit (pool, 1, NULL);

  memcpy (truth->worth, worth, N_SAMPLES * sizeof *worth);
  return truth;
}

/* Three tasters over four sessions, worths as they may be: 95 % intervals of differences. */
static void
test_coverage (void)
{
  const double worth[][N_SAMPLES] = { { 0, 0, 0, 0 },
                                      { 0.6, 0.2, -0.2, -0.6 },
                                      { 1.2, 0, 0, -1.2 } };
  g_autoptr (FmPool) sheets = blank_sheets ();

  for (guint w = 0; w < G_N_ELEMENTS (worth); w++) {
    g_autoptr (FmPoolFit) truth = truth_new (sheets, worth[w]);
    guint n_covered = 0;
    FmRandom random;

    fm_random_init (&random, 11 + w);
    for (guint i = 0; i < N_READINGS; i++) {
      g_autoptr (FmPool) drawn = fm_pool_draw (sheets, truth, &random);
      g_autoptr (FmPoolFit) fit = fm_pool_fit (drawn, FM_POOL_PRIOR_SD, NULL);

      for (guint a = 0; a < N_SAMPLES; a++)
        n_covered += fabs (fit->worth[a] - worth[w][a]) <= 1.959964 * fit->se[a];
    }
    const double covered_pct = 100.0 * n_covered / (N_READINGS * N_SAMPLES);
    g_test_message ("covered %.1f %%", covered_pct);
    g_assert_cmpfloat (covered_pct, >=, 90);
    g_assert_cmpfloat (covered_pct, <=, 97);
  }
}

/* Among samples that are all alike any pair is called apart in 5 % of readings at most. */
static void
test_nothing_claimed_of_equals (void)
{
  const double worth[N_SAMPLES] = { 0 };
  g_autoptr (FmPool) sheets = blank_sheets ();
  g_autoptr (FmPoolFit) truth = truth_new (sheets, worth);
  guint n_claimed = 0;
  FmRandom random;

  fm_random_init (&random, 5);
  for (guint i = 0; i < N_READINGS; i++) {
    g_autoptr (FmPool) drawn = fm_pool_draw (sheets, truth, &random);
    g_autoptr (FmPoolFit) fit = fm_pool_fit (drawn, FM_POOL_PRIOR_SD, NULL);
    gboolean claimed = FALSE;

    for (guint a = 0; a < N_SAMPLES; a++)
      for (guint b = 0; b < a; b++)
        claimed = claimed || fm_pool_fit_is_apart (fit, a, b);
    n_claimed += claimed;
  }
  g_test_message ("claimed in %u of %u", n_claimed, N_READINGS);
  g_assert_cmpuint (n_claimed, <=, N_READINGS / 20 + 21);
}

/* The same of liking: a taster's level, a session's level and noise, and no sample better. */
static void
test_no_liking_claimed_of_equals (void)
{
  guint n_claimed = 0;
  FmRandom random;

  fm_random_init (&random, 6);
  for (guint i = 0; i < N_DRAWN; i++) {
    g_autoptr (GArray) scores = g_array_new (FALSE, FALSE, sizeof (FmPoolScore));
    gboolean claimed = FALSE;

    for (guint session = 0; session < N_SESSIONS; session++)
      for (guint taster = 0; taster < N_TASTERS; taster++)
        for (guint a = 0; a < N_SAMPLES; a++) {
          FmPoolScore score = { session, taster, a, taster + 0.5 * session };

          for (guint draw = 0; draw < 12; draw++)
            score.score += fm_random_unit (&random) - 0.5;
          g_array_append_val (scores, score);
        }
    g_autoptr (FmPoolLiking) liking = fm_pool_liking (scores, N_SAMPLES, NULL);
    for (guint a = 0; a < N_SAMPLES; a++)
      for (guint b = 0; b < a; b++)
        claimed = claimed || fm_pool_liking_is_apart (liking, a, b);
    n_claimed += claimed;
  }
  g_test_message ("claimed in %u of %u", n_claimed, N_DRAWN);
  g_assert_cmpuint (n_claimed, <=, N_DRAWN / 20 + 9);
}

/* Two tasters who agree never give certainty; without the weak assumption there is no end. */
static void
test_two_tasters (void)
{
  const guint item[] = { 0, 1, 2 };
  const double place[] = { 1, 2, 3 };
  g_autoptr (FmPool) pool = fm_pool_new (3);
  g_autoptr (GError) error = NULL;

  for (guint taster = 0; taster < 2; taster++)
    fm_pool_add (pool, 0, taster, 3, item, place);
  g_autoptr (FmPoolFit) fit = fm_pool_fit (pool, FM_POOL_PRIOR_SD, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (fm_pool_fit_better (fit, 0, 1), >, 0.5);
  g_assert_cmpfloat (fm_pool_fit_better (fit, 0, 2), <, 0.98);
  g_assert_false (fm_pool_fit_is_apart (fit, 0, 2));
  g_assert_cmpfloat_with_epsilon (fm_pool_fit_better (fit, 0, 1) + fm_pool_fit_better (fit, 1, 0),
                                  1, 1e-12);
  g_assert_true (isnan (fm_pool_fit_better (fit, 1, 1)));
  g_assert_null (fm_pool_fit (pool, INFINITY, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

static void
test_nothing_to_read (void)
{
  const guint item[] = { 0 };
  const double place[] = { 1 };
  g_autoptr (FmPool) pool = fm_pool_new (3);
  g_autoptr (GError) error = NULL;

  fm_pool_add (pool, 0, 0, 1, item, place);
  g_assert_null (fm_pool_fit (pool, FM_POOL_PRIOR_SD, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
}

/* A sample that nobody tasted stands apart; two pairs on no common sheet are two groups. */
static void
test_groups (void)
{
  const guint pairs[][2] = { { 0, 3 }, { 4, 1 }, { 3, 5 } };
  const double place[] = { 1, 2 };
  g_autoptr (FmPool) pool = fm_pool_new (6);

  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++)
    fm_pool_add (pool, i, 0, 2, pairs[i], place);
  g_autoptr (FmPoolFit) fit = fm_pool_fit (pool, FM_POOL_PRIOR_SD, NULL);
  g_assert_cmpuint (fit->n_groups, ==, 2);
  g_assert_cmpuint (fit->group[0], ==, fit->group[5]);
  g_assert_cmpuint (fit->group[1], ==, fit->group[4]);
  g_assert_cmpuint (fit->group[0], !=, fit->group[1]);
  g_assert_cmpuint (fit->group[2], ==, FM_POOL_NO_GROUP);
  g_assert_true (isnan (fit->worth[2]) && isnan (fit->se[2]));
}

/* Ana and Ben agree, Cem turns all round; Ana comes twice and turns one pair round. */
static void
test_who_disagrees (void)
{
  const guint item[] = { 0, 1, 2 };
  const double forth[] = { 1, 2, 3 }, back[] = { 3, 2, 1 }, almost[] = { 2, 1, 3 };
  g_autoptr (FmPool) pool = fm_pool_new (3);

  fm_pool_add (pool, 0, 0, 3, item, forth);
  fm_pool_add (pool, 0, 1, 3, item, forth);
  fm_pool_add (pool, 0, 2, 3, item, back);
  fm_pool_add (pool, 1, 0, 3, item, almost);
  const FmPoolAgreement cem = fm_pool_with_rest (pool, 2, FM_POOL_PRIOR_SD);
  const FmPoolAgreement ana = fm_pool_with_self (pool, 0);
  const FmPoolAgreement both = fm_pool_with_each_other (pool, 1, 2);
  g_assert_cmpuint (cem.n_pairs, ==, 3);
  g_assert_cmpuint (cem.n_same, ==, 0);
  g_assert_cmpuint (ana.n_pairs, ==, 3);
  g_assert_cmpuint (ana.n_same, ==, 2);
  g_assert_cmpuint (both.n_pairs, ==, 3);
  g_assert_cmpuint (both.n_same, ==, 0);
  g_assert_cmpuint (fm_pool_with_self (pool, 1).n_pairs, ==, 0);
}

/* Taste that turns round between sessions is seen; taste that stays is not called drift. */
static void
test_drift (void)
{
  const guint item[] = { 0, 1, 2, 3 };
  const double forth[] = { 1, 2, 3, 4 }, back[] = { 4, 3, 2, 1 }, almost[] = { 1, 3, 2, 4 };

  for (guint turned = 0; turned < 2; turned++) {
    g_autoptr (FmPool) pool = fm_pool_new (4);

    for (guint session = 0; session < 2; session++)
      for (guint taster = 0; taster < 4; taster++)
        fm_pool_add (pool, session, taster, 4, item,
                     turned && session == 1 ? back
                     : taster == 3          ? almost
                                            : forth);
    g_autoptr (FmPoolFit) fit = fm_pool_fit (pool, FM_POOL_PRIOR_SD, NULL);
    const double p =
        fm_pool_split_p (pool, fit, FM_POOL_BY_SESSION, FM_POOL_PRIOR_SD, 199, 1, NULL);
    g_test_message ("p %.3f", p);
    g_assert_true (turned ? p <= 0.02 : p > 0.2);
  }
}

/* Where the sheets are drawn from one reading, chance alone is not called drift too often. */
static void
test_no_drift_by_chance (void)
{
  const double worth[N_SAMPLES] = { 0.8, 0.3, -0.3, -0.8 };
  g_autoptr (FmPool) sheets = blank_sheets ();
  g_autoptr (FmPoolFit) truth = truth_new (sheets, worth);
  guint n_called = 0;
  FmRandom random;

  fm_random_init (&random, 9);
  for (guint i = 0; i < N_DRAWN; i++) {
    g_autoptr (FmPool) drawn = fm_pool_draw (sheets, truth, &random);
    g_autoptr (FmPoolFit) fit = fm_pool_fit (drawn, FM_POOL_PRIOR_SD, NULL);

    n_called +=
        fm_pool_split_p (drawn, fit, FM_POOL_BY_SESSION, FM_POOL_PRIOR_SD, 39, i, NULL) <= 0.05;
  }
  g_test_message ("called in %u of %u", n_called, N_DRAWN);
  g_assert_cmpuint (n_called, <=, N_DRAWN / 20 + 9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pool/coverage", test_coverage);
  g_test_add_func ("/pool/nothing-claimed-of-equals", test_nothing_claimed_of_equals);
  g_test_add_func ("/pool/no-liking-claimed-of-equals", test_no_liking_claimed_of_equals);
  g_test_add_func ("/pool/two-tasters", test_two_tasters);
  g_test_add_func ("/pool/nothing-to-read", test_nothing_to_read);
  g_test_add_func ("/pool/groups", test_groups);
  g_test_add_func ("/pool/who-disagrees", test_who_disagrees);
  g_test_add_func ("/pool/drift", test_drift);
  g_test_add_func ("/pool/no-drift-by-chance", test_no_drift_by_chance);
  return g_test_run ();
}
