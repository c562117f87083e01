/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-map-design.c - trials of a map */
#include "core/mixture/fm-map-design.h"

#include <math.h>

static void
region_init (FmMixRegion *region, guint q, const double *lower, const double *upper)
{
  fm_mix_region_init (region, q);
  for (guint i = 0; i < q; i++) {
    region->lower[i] = lower[i];
    region->upper[i] = upper[i];
  }
}

static GArray *
draw (FmMap *map, const FmMixRegion *region)
{
  g_autoptr (GError) error = NULL;
  GArray *points = fm_map_design_points (map, region, NULL, &error);

  g_assert_no_error (error);
  for (guint i = 0; i < points->len; i++) {
    const FmMapPoint *point = &g_array_index (points, FmMapPoint, i);
    double sum = 0.0;

    for (guint k = 0; k < region->q; k++)
      sum += point->x[k];
    g_assert_cmpfloat (fabs (sum - 1.0), <, 1e-9);
    g_assert_cmpint (point->version_id, ==, 0);
  }
  return points;
}

/* {3, 2} lattice over lower bounds; the bound of the first share cuts a corner off. */
static void
test_lattice (void)
{
  static const double lower[] = { 0.2, 0.1, 0.1 };
  static const double upper[] = { 0.6, 1.0, 1.0 };
  FmMap map = { .design = FM_MAP_LATTICE, .degree = 2, .points = g_array_new (FALSE, TRUE, 1) };
  FmMixRegion region;
  g_autoptr (GArray) points = NULL;

  region_init (&region, 3, lower, upper);
  points = draw (&map, &region);
  g_assert_cmpuint (points->len, ==, 6);
  g_assert_cmpuint (fm_map_design_n_outside (points, &region), ==, 1);
  g_assert_true (fm_map_design_carries (points, FM_MIX_QUADRATIC, 3));
  g_assert_false (fm_map_design_carries (points, FM_MIX_SPECIAL_CUBIC, 3));
  g_array_unref (map.points);
}

/* McLean and Anderson (1966), Technometrics 8, flares (bounds from memory): four components between
 * bounds: 8 vertices, 6 centroids of sides and the overall one, for a quadratic model. */
static void
test_mclean_anderson_1966 (void)
{
  static const double lower[] = { 0.4, 0.1, 0.1, 0.03 };
  static const double upper[] = { 0.6, 0.5, 0.5, 0.08 };
  FmMap map = { .design = FM_MAP_VERTICES, .points = g_array_new (FALSE, TRUE, 1) };
  FmMixRegion region;
  g_autoptr (GArray) points = NULL;

  region_init (&region, 4, lower, upper);
  points = draw (&map, &region);
  g_assert_cmpuint (points->len, ==, 15);
  g_assert_cmpuint (fm_map_design_n_outside (points, &region), ==, 0);
  g_assert_true (fm_map_design_carries (points, FM_MIX_QUADRATIC, 4));
  g_array_unref (map.points);
}

static void
test_optimal_is_repeatable (void)
{
  static const double lower[] = { 0.2, 0.1, 0.1 };
  static const double upper[] = { 0.6, 0.7, 0.5 };
  FmMap map = { .design = FM_MAP_OPTIMAL,
                .order = FM_MIX_QUADRATIC,
                .n_trials = 8,
                .seed = 17,
                .points = g_array_new (FALSE, TRUE, sizeof (FmMapPoint)) };
  FmMixRegion region;
  g_autoptr (GArray) points = NULL;
  g_autoptr (GArray) again = NULL;

  region_init (&region, 3, lower, upper);
  points = draw (&map, &region);
  again = draw (&map, &region);
  g_assert_cmpuint (points->len, ==, 8);
  g_assert_true (fm_map_design_carries (points, FM_MIX_QUADRATIC, 3));
  for (guint i = 0; i < points->len; i++)
    for (guint k = 0; k < 3; k++)
      g_assert_cmpfloat (g_array_index (points, FmMapPoint, i).x[k], ==,
                         g_array_index (again, FmMapPoint, i).x[k]);
  g_array_unref (map.points);
}

/* Trials that are versions already stay, with their version. */
static void
test_join_keeps_versions (void)
{
  static const double lower[] = { 0.0, 0.0 };
  static const double upper[] = { 1.0, 1.0 };
  FmMap map = { .design = FM_MAP_CENTROID, .points = g_array_new (FALSE, TRUE, 1) };
  FmMapPoint half = { .x = { 0.5, 0.5 }, .version_id = 7 };
  FmMapPoint odd = { .x = { 0.3, 0.7 }, .version_id = 8 };
  FmMapPoint unmade = { .x = { 0.4, 0.6 } };
  FmMixRegion region;
  g_autoptr (GArray) made = g_array_new (FALSE, TRUE, sizeof (FmMapPoint));
  g_autoptr (GArray) points = NULL;
  g_autoptr (GArray) joined = NULL;

  g_array_append_val (made, unmade);
  g_array_append_val (made, half);
  g_array_append_val (made, odd);
  region_init (&region, 2, lower, upper);
  points = draw (&map, &region);
  g_assert_cmpuint (points->len, ==, 3);
  joined = fm_map_design_join (made, points, 2);
  g_assert_cmpuint (joined->len, ==, 4);
  g_assert_cmpint (g_array_index (joined, FmMapPoint, 0).version_id, ==, 7);
  g_assert_cmpint (g_array_index (joined, FmMapPoint, 1).version_id, ==, 8);
  g_assert_cmpint (g_array_index (joined, FmMapPoint, 2).version_id, ==, 0);
  g_array_unref (map.points);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/map-design/lattice", test_lattice);
  g_test_add_func ("/map-design/mclean-anderson-1966", test_mclean_anderson_1966);
  g_test_add_func ("/map-design/optimal-is-repeatable", test_optimal_is_repeatable);
  g_test_add_func ("/map-design/join-keeps-versions", test_join_keeps_versions);
  return g_test_run ();
}
