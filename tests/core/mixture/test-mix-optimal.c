/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-mix-optimal.c - D-optimal choices of mixture trials */
#include "core/mixture/fm-mix.h"

#include <gsl/gsl_linalg.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"

/* log det (X'X) of the rows, worked out apart from the search. */
static double
log_det_of (const FmMixPoints *candidates,
            const guint *index,
            guint n,
            const FmMixPoints *kept,
            FmMixOrder order)
{
  const guint p = fm_mix_n_terms (order, candidates->q), n_kept = kept != NULL ? kept->n : 0;
  gsl_matrix *square = gsl_matrix_calloc (p, p);
  gsl_permutation *permutation = gsl_permutation_alloc (p);
  g_autofree double *row = g_new (double, p);
  int sign;

  for (guint i = 0; i < n + n_kept; i++) {
    fm_mix_terms (
        order, candidates->q,
        i < n ? fm_mix_points_get (candidates, index[i]) : fm_mix_points_get (kept, i - n), row);
    for (guint a = 0; a < p; a++)
      for (guint b = 0; b < p; b++)
        *gsl_matrix_ptr (square, a, b) += row[a] * row[b];
  }
  gsl_linalg_LU_decomp (square, permutation, &sign);
  const double value = gsl_linalg_LU_lndet (square);
  gsl_permutation_free (permutation);
  gsl_matrix_free (square);
  return value;
}

/* The best of all choices with repeats, tried one by one. */
static double
best_by_trying (const FmMixPoints *candidates, guint n, FmMixOrder order)
{
  guint index[16] = { 0 };
  double best = -INFINITY;
  for (;;) {
    const double value = log_det_of (candidates, index, n, NULL, order);
    best = value > best ? value : best;
    guint i = n;
    while (i > 0 && index[i - 1] == candidates->n - 1)
      i--;
    if (i == 0)
      return best;
    const guint next = index[i - 1] + 1;
    for (guint k = i - 1; k < n; k++)
      index[k] = next;
  }
}

static void
test_against_all (void)
{
  FmMixRegion region;
  fm_mix_region_init (&region, 3);
  region.lower[0] = 0.3;
  region.upper[1] = 0.4;
  region.upper[2] = 0.25;
  g_autoptr (FmMixPoints) candidates = fm_mix_region_points (&region, 15, NULL, NULL);
  for (guint n = 6; n <= 7; n++) {
    g_autoptr (FmMixChoice) choice =
        fm_mix_d_optimal (candidates, FM_MIX_QUADRATIC, n, NULL, 5, NULL, NULL);
    g_assert_cmpfloat_with_epsilon (choice->log_det,
                                    best_by_trying (candidates, n, FM_MIX_QUADRATIC), 1e-6);
  }
  g_autoptr (FmMixChoice) linear =
      fm_mix_d_optimal (candidates, FM_MIX_LINEAR, 5, NULL, 5, NULL, NULL);
  g_assert_cmpfloat_with_epsilon (linear->log_det, best_by_trying (candidates, 5, FM_MIX_LINEAR),
                                  1e-9);
}

static void
test_same_seed (void)
{
  g_autoptr (FmMixPoints) lattice = fm_mix_lattice (4, 4, NULL);
  g_autoptr (FmMixChoice) first =
      fm_mix_d_optimal (lattice, FM_MIX_QUADRATIC, 15, NULL, 99, NULL, NULL);
  g_autoptr (FmMixChoice) second =
      fm_mix_d_optimal (lattice, FM_MIX_QUADRATIC, 15, NULL, 99, NULL, NULL);
  const gsize size = first->n * sizeof *first->index;
  g_assert_cmpuint (first->n, ==, 15);
  g_assert_cmpmem (first->index, size, second->index, size);
  for (guint i = 1; i < first->n; i++)
    g_assert_cmpuint (first->index[i - 1], <=, first->index[i]);
  g_assert_cmpfloat_with_epsilon (
      first->log_det, log_det_of (lattice, first->index, 15, NULL, FM_MIX_QUADRATIC), 1e-6);
}

/* A pinch of salt: 1.8 to 2.0 % beside two meats, all terms nearly collinear. */
static void
test_narrow_region (void)
{
  FmMixRegion region;
  fm_mix_region_init (&region, 4);
  region.lower[3] = 0.018;
  region.upper[3] = 0.020;
  region.lower[0] = 0.3;
  region.upper[2] = 0.05;
  g_autoptr (GError) error = NULL;
  g_autoptr (FmMixPoints) candidates = fm_mix_region_points (&region, 15, NULL, NULL);
  g_autoptr (FmMixChoice) choice =
      fm_mix_d_optimal (candidates, FM_MIX_QUADRATIC, 12, NULL, 5, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (isfinite (choice->log_det) && choice->d_efficiency > 0.0);
  /* no fit of p terms can average a variance below p / n over its own trials */
  g_assert_cmpfloat (choice->max_variance, >=, 10.0 / 12.0 - 1e-9);
  g_assert_cmpfloat (choice->max_variance, >=, choice->mean_variance);
}

static void
test_kept (void)
{
  g_autoptr (FmMixPoints) lattice = fm_mix_lattice (3, 2, NULL);
  g_autoptr (FmMixPoints) kept = fm_mix_points_new (3);
  g_autoptr (GError) few = NULL, all = NULL;
  for (guint i = 0; i < 3; i++)
    fm_mix_points_add (kept, fm_mix_points_get (lattice, i));
  g_autoptr (FmMixChoice) choice =
      fm_mix_d_optimal (lattice, FM_MIX_QUADRATIC, 3, kept, 5, NULL, NULL);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpuint (choice->index[i], ==, 3 + i);
  g_assert_cmpfloat_with_epsilon (
      choice->log_det, log_det_of (lattice, choice->index, 3, kept, FM_MIX_QUADRATIC), 1e-9);
  g_assert_null (fm_mix_d_optimal (lattice, FM_MIX_QUADRATIC, 2, kept, 5, NULL, &few));
  g_assert_error (few, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_assert_nonnull (strstr (few->message, "at least 3 more trials"));
  g_assert_null (fm_mix_d_optimal (lattice, FM_MIX_QUADRATIC, 3, lattice, 5, NULL, &all));
  g_assert_error (all, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
}

static gboolean
stop_at_third (gpointer data)
{
  guint *asked = data;
  return ++*asked >= 3;
}

static void
test_stop (void)
{
  guint asked = 0;
  const FmStop stop = { stop_at_third, &asked };
  g_autoptr (GError) error = NULL;
  g_autoptr (FmMixPoints) lattice = fm_mix_lattice (5, 4, NULL);
  g_assert_null (fm_mix_d_optimal (lattice, FM_MIX_QUADRATIC, 20, NULL, 5, &stop, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_STOPPED);
  g_assert_cmpuint (asked, ==, 3);
}

static void
assert_refused (const FmMixPoints *candidates, guint n, int code, const char *part)
{
  g_autoptr (GError) error = NULL;
  g_assert_null (fm_mix_d_optimal (candidates, FM_MIX_QUADRATIC, n, NULL, 5, NULL, &error));
  g_assert_error (error, FM_CORE_ERROR, code);
  g_assert_nonnull (strstr (error->message, part));
}

static void
test_bad_input (void)
{
  const double odd[] = { 0.5, 0.6, 0.2 }, unknown[] = { NAN, 0.5, 0.5 };
  g_autoptr (FmMixPoints) none = fm_mix_points_new (3), line = fm_mix_points_new (3);
  g_autoptr (FmMixPoints) lattice = fm_mix_lattice (3, 2, NULL);
  g_autoptr (FmMixPoints) corners = fm_mix_lattice (3, 1, NULL);

  assert_refused (none, 6, FM_CORE_ERROR_EMPTY, "no blends to choose from");
  assert_refused (lattice, 5, FM_CORE_ERROR_OUT_OF_RANGE, "at least 6 more trials");
  assert_refused (lattice, 0, FM_CORE_ERROR_OUT_OF_RANGE, "at least 6 more trials");
  assert_refused (lattice, 100000, FM_CORE_ERROR_OUT_OF_RANGE, "At most");
  assert_refused (corners, 6, FM_CORE_ERROR_OUT_OF_RANGE, "has 6 terms");
  fm_mix_points_add (line, odd);
  assert_refused (line, 6, FM_CORE_ERROR_OUT_OF_RANGE, "blend 1 do not add up");
  fm_mix_points_add (lattice, unknown);
  assert_refused (lattice, 6, FM_CORE_ERROR_OUT_OF_RANGE, "blend 7 do not add up");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/mix-optimal/against-all", test_against_all);
  g_test_add_func ("/core/mix-optimal/same-seed", test_same_seed);
  g_test_add_func ("/core/mix-optimal/narrow-region", test_narrow_region);
  g_test_add_func ("/core/mix-optimal/kept", test_kept);
  g_test_add_func ("/core/mix-optimal/stop", test_stop);
  g_test_add_func ("/core/mix-optimal/bad-input", test_bad_input);
  return g_test_run ();
}
