/* test-mix-designs.c - designs of mixtures against published ones */
#include "core/fm-mix.h"

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

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reference/mix-designs/lawson-polvoron", test_polvoron);
  g_test_add_func ("/reference/mix-designs/mclean-anderson-1966", test_mclean_anderson);
  g_test_add_func ("/reference/mix-designs/cornell-2002-p465", test_cornell);
  g_test_add_func ("/reference/mix-designs/piepel-1988", test_piepel);
  g_test_add_func ("/reference/mix-designs/snee-marquardt-1976", test_snee_marquardt);
  return g_test_run ();
}
