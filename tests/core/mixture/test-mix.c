/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-mix.c - regions of mixtures and designs on them */
#include "core/mixture/fm-mix.h"

#include <math.h>
#include <string.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-stat.h"

#define N_RANDOM 300

static void
assert_sums (const FmMixPoints *points)
{
  for (guint row = 0; row < points->n; row++) {
    double sum = 0.0;
    for (guint i = 0; i < points->q; i++)
      sum += fm_mix_points_get (points, row)[i];
    g_assert_cmpfloat_with_epsilon (sum, 1.0, 1e-9);
  }
}

static double
distance (const double *a, const double *b, guint q)
{
  double most = 0.0;
  for (guint i = 0; i < q; i++)
    most = MAX (most, fabs (a[i] - b[i]));
  return most;
}

static gboolean
holds (const FmMixPoints *points, const double *x)
{
  for (guint row = 0; row < points->n; row++)
    if (distance (fm_mix_points_get (points, row), x, points->q) < 1e-7)
      return TRUE;
  return FALSE;
}

static void
assert_all_different (const FmMixPoints *points)
{
  for (guint a = 0; a < points->n; a++)
    for (guint b = a + 1; b < points->n; b++)
      g_assert_cmpfloat (
          distance (fm_mix_points_get (points, a), fm_mix_points_get (points, b), points->q), >,
          1e-9);
}

/* Solves a q x q system by elimination; FALSE when it is singular. */
static gboolean
solve (double a[][FM_MIX_MAX_COMPONENTS + 1], guint q, double *x)
{
  for (guint column = 0; column < q; column++) {
    guint pivot = column;
    for (guint row = column + 1; row < q; row++)
      if (fabs (a[row][column]) > fabs (a[pivot][column]))
        pivot = row;
    if (fabs (a[pivot][column]) < 1e-9)
      return FALSE;
    for (guint k = 0; k <= q; k++) {
      const double swap = a[column][k];
      a[column][k] = a[pivot][k];
      a[pivot][k] = swap;
    }
    for (guint row = 0; row < q; row++)
      for (guint k = q + 1; row != column && k-- > column;)
        a[row][k] -= a[row][column] / a[column][column] * a[column][k];
  }
  for (guint i = 0; i < q; i++)
    x[i] = a[i][q] / a[i][i];
  return TRUE;
}

/* Side @index as a row of the system: a bound or an end of a limit, met exactly. */
static gboolean
side_row (const FmMixRegion *region, guint index, double *row)
{
  const guint q = region->q;
  memset (row, 0, (q + 1) * sizeof *row);
  if (index < 2 * q) {
    row[index / 2] = 1.0;
    row[q] = index % 2 ? region->upper[index / 2] : region->lower[index / 2];
    return TRUE;
  }
  const FmMixLimit *limit = &region->limit[(index - 2 * q) / 2];
  memcpy (row, limit->a, q * sizeof *row);
  row[q] = index % 2 ? limit->high : limit->low;
  return isfinite (row[q]);
}

/* All choices of q - 1 sides, solved one by one: slow, but nothing can be missed. */
static FmMixPoints *
vertices_by_trying (const FmMixRegion *region)
{
  const guint q = region->q, n_sides = 2 * (q + region->n_limits);
  FmMixPoints *found = fm_mix_points_new (q);
  for (guint mask = 0; mask < 1u << n_sides; mask++) {
    double a[FM_MIX_MAX_COMPONENTS][FM_MIX_MAX_COMPONENTS + 1], x[FM_MIX_MAX_COMPONENTS];
    if ((guint)__builtin_popcount (mask) != q - 1)
      continue;
    gboolean usable = TRUE;
    guint n = 0;
    for (guint side = 0; side < n_sides; side++)
      if (mask >> side & 1)
        usable = side_row (region, side, a[n++]) && usable;
    for (guint i = 0; i <= q; i++)
      a[n][i] = 1.0;
    if (usable && solve (a, q, x) && fm_mix_region_contains (region, x, 1e-9) && !holds (found, x))
      fm_mix_points_add (found, x);
  }
  return found;
}

static double
tenths (FmRandom *random, guint least, guint most)
{
  return (least + fm_random_below (random, most - least + 1)) / 10.0;
}

/* Round numbers make many sides meet in one corner. */
static void
random_region (FmRandom *random, FmMixRegion *region, gboolean limits)
{
  fm_mix_region_init (region, 3 + fm_random_below (random, 3));
  for (guint i = 0; i < region->q; i++) {
    region->lower[i] = tenths (random, 0, 2);
    region->upper[i] = region->lower[i] + tenths (random, 0, 5);
  }
  region->n_limits = limits ? fm_random_below (random, 3) : 0;
  for (guint k = 0; k < region->n_limits; k++) {
    for (guint i = 0; i < region->q; i++)
      region->limit[k].a[i] = fm_random_below (random, 4) * 10.0;
    region->limit[k].low = fm_random_below (random, 3) == 0 ? 10.0 : -INFINITY;
    region->limit[k].high = fm_random_below (random, 3) == 0 ? INFINITY : 15.0;
    if (fm_random_below (random, 5) == 0)
      region->limit[k].low = region->limit[k].high = 12.0;
  }
}

static void
test_vertices_by_trying (void)
{
  FmRandom random;
  guint n_many = 0, n_single = 0, n_none = 0;
  fm_random_init (&random, 41);
  for (guint round = 0; round < N_RANDOM; round++) {
    FmMixRegion region;
    g_autoptr (GError) error = NULL;
    random_region (&random, &region, TRUE);
    g_autoptr (FmMixPoints) expected = vertices_by_trying (&region);
    g_autoptr (FmMixPoints) vertices = fm_mix_region_vertices (&region, &error);
    n_none += expected->n == 0;
    n_single += expected->n == 1;
    n_many += expected->n > 1;
    if (expected->n <= 1) {
      g_assert_null (vertices);
      g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
      g_assert_true ((strstr (error->message, "single blend") != NULL) == (expected->n == 1));
      continue;
    }
    g_assert_no_error (error);
    g_assert_cmpuint (vertices->n, ==, expected->n);
    assert_sums (vertices);
    assert_all_different (vertices);
    for (guint row = 0; row < vertices->n; row++) {
      g_assert_true (holds (expected, fm_mix_points_get (vertices, row)));
      g_assert_true (fm_mix_region_contains (&region, fm_mix_points_get (vertices, row), 1e-9));
    }
  }
  g_assert_cmpuint (n_many, >, N_RANDOM / 4);
  g_assert_cmpuint (n_none, >, 5);
  g_assert_cmpuint (n_single, >, 0);
}

/* Implied bounds are those that the corners reach, and a second turn changes nothing. */
static void
test_tighten (void)
{
  FmRandom random;
  fm_random_init (&random, 43);
  for (guint round = 0; round < N_RANDOM; round++) {
    FmMixRegion region;
    random_region (&random, &region, FALSE);
    g_autoptr (FmMixPoints) vertices = fm_mix_region_vertices (&region, NULL);
    if (vertices == NULL)
      continue;
    fm_mix_region_tighten (&region);
    for (guint i = 0; i < region.q; i++) {
      double least = 1.0, most = 0.0;
      for (guint row = 0; row < vertices->n; row++) {
        least = MIN (least, fm_mix_points_get (vertices, row)[i]);
        most = MAX (most, fm_mix_points_get (vertices, row)[i]);
      }
      g_assert_cmpfloat_with_epsilon (region.lower[i], least, 1e-9);
      g_assert_cmpfloat_with_epsilon (region.upper[i], most, 1e-9);
    }
  }
}

static guint
count_kind (const GArray *kind, FmMixPointKind wanted)
{
  guint n = 0;
  for (guint i = 0; i < kind->len; i++)
    n += g_array_index (kind, FmMixPointKind, i) == wanted;
  return n;
}

/* Bounded regions of four components are solids: Euler's vertices - edges + faces = 2. */
static void
test_points (void)
{
  const guint kinds = 1u << FM_MIX_POINT_VERTEX | 1u << FM_MIX_POINT_EDGE |
                      1u << FM_MIX_POINT_FACE | 1u << FM_MIX_POINT_CENTROID |
                      1u << FM_MIX_POINT_AXIAL;
  FmRandom random;
  guint n_solids = 0;
  fm_random_init (&random, 47);
  for (guint round = 0; round < N_RANDOM; round++) {
    FmMixRegion region;
    g_autoptr (GArray) kind = NULL;
    random_region (&random, &region, TRUE);
    g_autoptr (FmMixPoints) points = fm_mix_region_points (&region, kinds, &kind, NULL);
    if (points == NULL)
      continue;
    assert_sums (points);
    assert_all_different (points);
    g_assert_cmpuint (points->n, ==, kind->len);
    for (guint row = 0; row < points->n; row++)
      g_assert_true (fm_mix_region_contains (&region, fm_mix_points_get (points, row), 1e-8));
    const guint n_faces = count_kind (kind, FM_MIX_POINT_FACE);
    if (region.q != 4 || n_faces < 4)
      continue;
    g_assert_cmpuint (count_kind (kind, FM_MIX_POINT_VERTEX) + n_faces, ==,
                      count_kind (kind, FM_MIX_POINT_EDGE) + 2);
    n_solids++;
  }
  g_assert_cmpuint (n_solids, >, 10);
}

/* The middle of a line is its centroid; asked for edges alone, it is the edge. */
static void
test_line (void)
{
  FmMixRegion region;
  g_autoptr (GArray) kind = NULL;
  fm_mix_region_init (&region, 2);
  g_autoptr (FmMixPoints) edges =
      fm_mix_region_points (&region, 1u << FM_MIX_POINT_EDGE, &kind, NULL);
  g_assert_cmpuint (edges->n, ==, 1);
  g_assert_cmpfloat (fm_mix_points_get (edges, 0)[0], ==, 0.5);
  g_autoptr (FmMixPoints) both = fm_mix_region_points (
      &region, 1u << FM_MIX_POINT_EDGE | 1u << FM_MIX_POINT_CENTROID, NULL, NULL);
  g_assert_cmpuint (both->n, ==, 1);
}

static void
assert_refused (const FmMixRegion *region, const char *part)
{
  static const char *const names[] = { "chuck", "belly", "salt" };
  g_autoptr (GError) error = NULL;
  g_assert_false (fm_mix_region_check (region, names, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  if (strstr (error->message, part) == NULL)
    g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, part));
  g_assert_null (fm_mix_region_vertices (region, NULL));
}

static void
test_bad_region (void)
{
  FmMixRegion good, bad;
  fm_mix_region_init (&good, 3);
  g_assert_true (fm_mix_region_check (&good, NULL, NULL));

  bad = good;
  bad.q = 1;
  assert_refused (&bad, "2 to 12 components");
  bad.q = 40;
  assert_refused (&bad, "2 to 12 components");
  bad = good;
  bad.lower[1] = NAN;
  assert_refused (&bad, "belly must be numbers");
  bad.lower[1] = -0.1;
  assert_refused (&bad, "belly must be numbers");
  bad = good;
  bad.upper[0] = 1e300;
  assert_refused (&bad, "chuck must be numbers");
  bad = good;
  bad.lower[0] = 0.6;
  bad.upper[0] = 0.5;
  assert_refused (&bad, "least share of chuck (60.0 %)");
  bad = good;
  bad.lower[0] = bad.lower[1] = 0.6;
  assert_refused (&bad, "add up to 120.0 %");
  bad = good;
  bad.upper[0] = bad.upper[1] = bad.upper[2] = 0.3;
  assert_refused (&bad, "add up to 90.0 %");
  bad = good;
  bad.lower[0] = bad.upper[0] = 0.6;
  bad.lower[1] = bad.upper[1] = 0.3;
  assert_refused (&bad, "one single blend: chuck 60.0 %, belly 30.0 %, salt 10.0 %");
  bad = good;
  bad.lower[0] = 1.0;
  assert_refused (&bad, "one single blend");
}

static void
test_bad_limit (void)
{
  FmMixRegion region;
  fm_mix_region_init (&region, 3);
  region.n_limits = 2;
  region.limit[0] = (FmMixLimit){ { 10, 20, 30 }, 15, 25 };
  region.limit[1] = (FmMixLimit){ { 1, 1, 1 }, -INFINITY, INFINITY };
  g_assert_true (fm_mix_region_check (&region, NULL, NULL));
  region.limit[1].low = 1.0;
  region.limit[1].high = 1.0;
  g_assert_true (fm_mix_region_check (&region, NULL, NULL));

  region.limit[1].low = 1.1;
  assert_refused (&region, "lower end of limit 2 is above");
  region.limit[1].high = 1.2;
  assert_refused (&region, "Limit 2 asks for at least 1.100, but");
  region.limit[1] = (FmMixLimit){ { 20, 0, 0 }, -INFINITY, -1 };
  assert_refused (&region, "no less than 0.000");
  region.limit[1] = (FmMixLimit){ { 20, NAN, 0 }, -INFINITY, 10 };
  assert_refused (&region, "Limit 2 holds something that is not a number");
  region.limit[1] = (FmMixLimit){ { 20, 1, 0 }, NAN, 10 };
  assert_refused (&region, "Limit 2 holds something that is not a number");
  region.limit[1] = (FmMixLimit){ { 20, 1, 0 }, INFINITY, INFINITY };
  assert_refused (&region, "Limit 2 holds something that is not a number");
  region.n_limits = 13;
  assert_refused (&region, "at most 12 limits");
}

static void
test_contains (void)
{
  const double inside[] = { 0.2, 0.3, 0.5 }, sum[] = { 0.2, 0.3, 0.6 };
  const double unknown[] = { 0.2, NAN, 0.5 }, near[] = { 0.2001, 0.2999, 0.5 };
  FmMixRegion region;
  fm_mix_region_init (&region, 3);
  region.n_limits = 1;
  region.limit[0] = (FmMixLimit){ { 1, 0, 0 }, 0, 0.2 };
  g_assert_true (fm_mix_region_contains (&region, inside, 1e-9));
  g_assert_false (fm_mix_region_contains (&region, sum, 1e-9));
  g_assert_false (fm_mix_region_contains (&region, unknown, 1e-9));
  g_assert_false (fm_mix_region_contains (&region, near, 1e-9));
  g_assert_true (fm_mix_region_contains (&region, near, 1e-3));
}

static void
test_lattices (void)
{
  for (guint q = 2; q <= 6; q++) {
    for (guint m = 1; m <= 4; m++) {
      g_autoptr (FmMixPoints) lattice = fm_mix_lattice (q, m, NULL);
      g_assert_cmpuint (lattice->n, ==, fm_mix_lattice_count (q, m));
      assert_sums (lattice);
      assert_all_different (lattice);
    }
    g_autoptr (FmMixPoints) centroid = fm_mix_simplex_centroid (q, NULL);
    g_assert_cmpuint (centroid->n, ==, fm_mix_simplex_centroid_count (q));
    assert_sums (centroid);
    assert_all_different (centroid);
  }
}

static void
test_bad_lattice (void)
{
  g_autoptr (GError) none = NULL, many = NULL, one = NULL;
  g_assert_null (fm_mix_lattice (3, 0, &none));
  g_assert_error (none, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_assert_null (fm_mix_lattice (12, 12, &many));
  g_assert_error (many, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_assert_null (fm_mix_simplex_centroid (1, &one));
  g_assert_error (one, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_assert_cmpuint (fm_mix_lattice_count (12, G_MAXUINT), ==, 0);
  g_assert_cmpuint (fm_mix_simplex_centroid_count (64), ==, 0);
}

static void
test_pseudo (void)
{
  const double lower[] = { 0.2, 0.1, 0.1 }, full[] = { 0.5, 0.3, 0.2 }, bad[] = { NAN, 0.3, 0.2 };
  const double first[] = { 0.8, 0.1, 0.1 };
  g_autoptr (GError) error = NULL, not_a_number = NULL;
  g_autoptr (FmMixPoints) z = fm_mix_simplex_centroid (3, NULL);
  g_autoptr (FmMixPoints) x = fm_mix_from_pseudo (z, lower, NULL);
  g_assert_cmpuint (x->n, ==, 7);
  assert_sums (x);
  g_assert_cmpfloat (distance (fm_mix_points_get (x, 0), first, 3), <, 1e-12);
  g_assert_null (fm_mix_from_pseudo (z, full, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_assert_null (fm_mix_from_pseudo (z, bad, &not_a_number));
  g_assert_error (not_a_number, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

static void
test_terms (void)
{
  static const char *const names[] = { "A", "B", "C" };
  const double x[] = { 0.5, 0.3, 0.2 };
  const double expected[] = { 0.5, 0.3, 0.2, 0.15, 0.1, 0.06, 0.03 };
  double row[7];
  g_auto (GStrv) term = fm_mix_term_names (FM_MIX_SPECIAL_CUBIC, 3, names);
  g_autofree char *joined = g_strjoinv ("; ", term);

  fm_mix_terms (FM_MIX_SPECIAL_CUBIC, 3, x, row);
  for (guint i = 0; i < 7; i++)
    g_assert_cmpfloat_with_epsilon (row[i], expected[i], 1e-15);
  g_assert_cmpstr (joined, ==, "A; B; C; A × B; A × C; B × C; A × B × C");
}

static void
test_points_list (void)
{
  const double x[] = { 0.25, 0.75 };
  g_autoptr (FmMixPoints) points = fm_mix_points_new (2);
  g_autoptr (FmMixPoints) empty = fm_mix_points_copy (points);
  fm_mix_points_add (points, x);
  g_autoptr (FmMixPoints) copy = fm_mix_points_copy (points);
  g_assert_cmpuint (empty->n, ==, 0);
  g_assert_cmpuint (copy->n, ==, 1);
  g_assert_cmpfloat (fm_mix_points_get (copy, 0)[1], ==, 0.75);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/mix/points-list", test_points_list);
  g_test_add_func ("/core/mix/terms", test_terms);
  g_test_add_func ("/core/mix/vertices-by-trying", test_vertices_by_trying);
  g_test_add_func ("/core/mix/tighten", test_tighten);
  g_test_add_func ("/core/mix/points", test_points);
  g_test_add_func ("/core/mix/line", test_line);
  g_test_add_func ("/core/mix/bad-region", test_bad_region);
  g_test_add_func ("/core/mix/bad-limit", test_bad_limit);
  g_test_add_func ("/core/mix/contains", test_contains);
  g_test_add_func ("/core/mix/lattices", test_lattices);
  g_test_add_func ("/core/mix/bad-lattice", test_bad_lattice);
  g_test_add_func ("/core/mix/pseudo", test_pseudo);
  return g_test_run ();
}
