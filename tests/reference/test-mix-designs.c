/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-mix-designs.c - designs of mixtures against published ones */
#include "core/mixture/fm-mix.h"

#include "test-stat-csv.h"

typedef struct {
  const char *name;
  FmMixPoints *vertices;
  double centroid[FM_MIX_MAX_COMPONENTS];
  guint seen;
} VertexCase;

static void
set_bounds (FmMixRegion *region, guint q, const double bound[][2])
{
  fm_mix_region_init (region, q);
  for (guint i = 0; i < q; i++) {
    region->lower[i] = bound[i][0];
    region->upper[i] = bound[i][1];
  }
}

static void
assert_point (const double *x, guint q, char **field, double tolerance)
{
  for (guint i = 0; i < q; i++)
    g_assert_cmpfloat_with_epsilon (x[i], stat_csv_number (field[i]), tolerance);
}

static void
check_vertex (char **field, guint n_fields, gpointer data)
{
  VertexCase *expected = data;
  if (g_strcmp0 (field[0], expected->name) != 0)
    return;
  if (g_strcmp0 (field[1], "centroid") == 0) {
    assert_point (expected->centroid, expected->vertices->q, field + 3, 1e-6);
    return;
  }
  const guint row = stat_csv_count (field[2]) - 1;
  assert_point (fm_mix_points_get (expected->vertices, row), expected->vertices->q, field + 3,
                1e-9);
  expected->seen++;
}

/* The table is in the order of the shares, and so are the vertices. */
static void
check_case (const char *name, const FmMixRegion *region)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmMixPoints) vertices = fm_mix_region_vertices (region, &error);
  g_assert_no_error (error);
  VertexCase expected = { .name = name, .vertices = vertices };
  for (guint v = 0; v < vertices->n; v++)
    for (guint i = 0; i < region->q; i++)
      expected.centroid[i] += fm_mix_points_get (vertices, v)[i] / vertices->n;
  stat_csv_read ("mix_vertices.csv", check_vertex, &expected);
  g_assert_cmpuint (expected.seen, ==, vertices->n);
}

/* Lawson, Design and Analysis of Experiments with R, ch. 11: read. */
static void
test_polvoron (void)
{
  static const double bound[][2] = { { 0.0, 0.8 }, { 0.1, 0.95 }, { 0.05, 0.5 } };
  FmMixRegion region;
  set_bounds (&region, 3, bound);
  check_case ("polvoron", &region);
}

/* McLean and Anderson (1966), flares: memory, recomputed. */
static void
test_mclean_anderson (void)
{
  static const double bound[][2] = { { 0.4, 0.6 }, { 0.1, 0.5 }, { 0.1, 0.5 }, { 0.03, 0.08 } };
  FmMixRegion region;
  set_bounds (&region, 4, bound);
  check_case ("mclean_anderson_1966", &region);
}

/* Cornell (2002) p. 465: bounds read, vertices computed. */
static void
test_cornell (void)
{
  static const double bound[][2] = {
    { 0.124, 0.188 }, { 0.064, 0.128 }, { 0.374, 0.438 }, { 0.374, 0.438 }
  };
  FmMixRegion region;
  set_bounds (&region, 4, bound);
  check_case ("cornell_p465", &region);
}

/* Piepel (1988): constraint matrix read, vertices computed. Two limits over three bounds. */
static void
test_piepel (void)
{
  static const double bound[][2] = { { 0.1, 0.5 }, { 0.1, 0.7 }, { 0.0, 0.7 } };
  FmMixRegion region;
  set_bounds (&region, 3, bound);
  region.n_limits = 2;
  region.limit[0] = (FmMixLimit){ { 85, 90, 100 }, 90, 95 };
  region.limit[1] = (FmMixLimit){ { 0.7, 0, 1 }, 0.4, INFINITY };
  check_case ("piepel_1988", &region);
}

/* Snee and Marquardt (1976), 8 components: bounds read; 182 vertices memory = computed. */
static void
test_snee_marquardt (void)
{
  static const double bound[][2] = { { 0.1, 0.45 }, { 0.05, 0.5 }, { 0, 0.1 },  { 0, 0.1 },
                                     { 0.1, 0.6 },  { 0.05, 0.2 }, { 0, 0.05 }, { 0, 0.05 } };
  FmMixRegion region;
  set_bounds (&region, 8, bound);
  g_autoptr (FmMixPoints) vertices = fm_mix_region_vertices (&region, NULL);
  g_assert_cmpuint (vertices->n, ==, 182);
  /* one package example prints 0.4 for the fourth */
  region.upper[3] = 0.4;
  g_autoptr (FmMixPoints) misprint = fm_mix_region_vertices (&region, NULL);
  g_assert_cmpuint (misprint->n, ==, 170);
}

static gboolean
holds (const FmMixPoints *points, const double *x)
{
  for (guint row = 0; row < points->n; row++) {
    double most = 0.0;
    for (guint i = 0; i < points->q; i++)
      most = MAX (most, fabs (fm_mix_points_get (points, row)[i] - x[i]));
    if (most < 1e-9)
      return TRUE;
  }
  return FALSE;
}

static void
check_polvoron_run (char **field, guint n_fields, gpointer data)
{
  const double x[] = { stat_csv_number (field[0]), stat_csv_number (field[1]),
                       stat_csv_number (field[2]) };
  g_assert_true (holds (data, x));
}

/* Lawson ch. 11: the runs made, read, are vertices, middles of edges and the centroid. */
static void
test_polvoron_runs (void)
{
  static const double bound[][2] = { { 0.0, 0.8 }, { 0.1, 0.95 }, { 0.05, 0.5 } };
  const guint kinds =
      1u << FM_MIX_POINT_VERTEX | 1u << FM_MIX_POINT_EDGE | 1u << FM_MIX_POINT_CENTROID;
  FmMixRegion region;
  set_bounds (&region, 3, bound);
  g_autoptr (FmMixPoints) points = fm_mix_region_points (&region, kinds, NULL, NULL);
  g_assert_cmpuint (points->n, ==, 11);
  stat_csv_read ("mix_polvoron_data.csv", check_polvoron_run, points);
}

/* McLean and Anderson (1966): 8 vertices, 6 face centroids, 1 centroid; memory, recomputed here
 * as the means of the vertices that share a bound. */
static void
test_mclean_anderson_faces (void)
{
  static const double bound[][2] = { { 0.4, 0.6 }, { 0.1, 0.5 }, { 0.1, 0.5 }, { 0.03, 0.08 } };
  static const double face[][4] = { { 0.5, 0.1, 0.345, 0.055 },     { 0.5, 0.345, 0.1, 0.055 },
                                    { 0.4, 0.2725, 0.2725, 0.055 }, { 0.6, 0.1725, 0.1725, 0.055 },
                                    { 0.5, 0.235, 0.235, 0.03 },    { 0.5, 0.21, 0.21, 0.08 } };
  FmMixRegion region;
  set_bounds (&region, 4, bound);
  g_autoptr (FmMixPoints) faces =
      fm_mix_region_points (&region, 1u << FM_MIX_POINT_FACE, NULL, NULL);
  g_assert_cmpuint (faces->n, ==, G_N_ELEMENTS (face));
  for (guint i = 0; i < G_N_ELEMENTS (face); i++)
    g_assert_true (holds (faces, face[i]));
}

static void
check_count (char **field, guint n_fields, gpointer data)
{
  const guint q = stat_csv_count (field[1]), m = stat_csv_count (field[2]);
  const guint count = stat_csv_count (field[3]);
  if (g_strcmp0 (field[0], "lattice") == 0) {
    g_autoptr (FmMixPoints) lattice = fm_mix_lattice (q, m, NULL);
    g_assert_cmpuint (lattice->n, ==, count);
    g_assert_cmpuint (fm_mix_lattice_count (q, m), ==, count);
  } else if (g_strcmp0 (field[0], "centroid") == 0) {
    g_autoptr (FmMixPoints) centroid = fm_mix_simplex_centroid (q, NULL);
    g_assert_cmpuint (centroid->n, ==, count);
    g_assert_cmpuint (fm_mix_simplex_centroid_count (q), ==, count);
  } else if (g_strcmp0 (field[0], "terms_linear") == 0) {
    g_assert_cmpuint (fm_mix_n_terms (FM_MIX_LINEAR, q), ==, count);
  } else if (g_strcmp0 (field[0], "terms_quadratic") == 0) {
    g_assert_cmpuint (fm_mix_n_terms (FM_MIX_QUADRATIC, q), ==, count);
  } else if (g_strcmp0 (field[0], "terms_special_cubic") == 0) {
    g_assert_cmpuint (fm_mix_n_terms (FM_MIX_SPECIAL_CUBIC, q), ==, count);
  } else {
    /* the full cubic model is not fitted here */
    g_assert_cmpstr (field[0], ==, "terms_full_cubic");
  }
  (*(guint *)data)++;
}

/* NIST/SEMATECH e-Handbook 5.5.4.2 and 5.5.4.3: formulas read, counts computed. */
static void
test_counts (void)
{
  guint n_rows = 0;
  stat_csv_read ("mix_counts.csv", check_count, &n_rows);
  g_assert_cmpuint (n_rows, ==, 63);
}

/* Kiefer (1961, Ann. Math. Statist. 32): the D-optimal weights of the quadratic model lie evenly
 * on the {q, 2} lattice; memory. */
static void
test_kiefer (void)
{
  for (guint q = 2; q <= 4; q++) {
    g_autoptr (FmMixPoints) candidates = fm_mix_lattice (q, 6, NULL);
    g_autoptr (FmMixPoints) optimal = fm_mix_lattice (q, 2, NULL);
    g_autoptr (FmMixChoice) choice =
        fm_mix_d_optimal (candidates, FM_MIX_QUADRATIC, optimal->n, NULL, 1961, NULL, NULL);
    for (guint i = 0; i < choice->n; i++) {
      g_assert_true (holds (optimal, fm_mix_points_get (candidates, choice->index[i])));
      g_assert_true (i == 0 || choice->index[i] != choice->index[i - 1]);
    }
    /* equivalence theorem (Kiefer and Wolfowitz, 1960): nowhere above p / n */
    g_assert_cmpfloat_with_epsilon (choice->max_variance, 1.0, 1e-9);
  }
}

/* Atwood (1969, Ann. Math. Statist. 40): of the special cubic model, evenly on the simplex
 * centroid of up to three components; memory. */
static void
test_atwood (void)
{
  g_autoptr (FmMixPoints) candidates = fm_mix_lattice (3, 12, NULL);
  g_autoptr (FmMixPoints) optimal = fm_mix_simplex_centroid (3, NULL);
  g_autoptr (FmMixChoice) choice =
      fm_mix_d_optimal (candidates, FM_MIX_SPECIAL_CUBIC, 7, NULL, 1969, NULL, NULL);
  for (guint i = 0; i < choice->n; i++)
    g_assert_true (holds (optimal, fm_mix_points_get (candidates, choice->index[i])));
  g_assert_cmpfloat_with_epsilon (choice->max_variance, 1.0, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reference/mix-designs/lawson-polvoron", test_polvoron);
  g_test_add_func ("/reference/mix-designs/mclean-anderson-1966", test_mclean_anderson);
  g_test_add_func ("/reference/mix-designs/cornell-2002-p465", test_cornell);
  g_test_add_func ("/reference/mix-designs/piepel-1988", test_piepel);
  g_test_add_func ("/reference/mix-designs/snee-marquardt-1976", test_snee_marquardt);
  g_test_add_func ("/reference/mix-designs/lawson-polvoron-runs", test_polvoron_runs);
  g_test_add_func ("/reference/mix-designs/mclean-anderson-1966-faces", test_mclean_anderson_faces);
  g_test_add_func ("/reference/mix-designs/nist-counts", test_counts);
  g_test_add_func ("/reference/mix-designs/kiefer-1961-quadratic", test_kiefer);
  g_test_add_func ("/reference/mix-designs/atwood-1969-special-cubic", test_atwood);
  return g_test_run ();
}
