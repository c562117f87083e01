/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-mix-surface.c - the numbers of a simplex plot, and a model in words */
#include <math.h>

#include "core/base/fm-error.h"
#include "core/mixture/fm-mix-surface.h"
#include "core/mixture/fm-mix-text.h"

static const guint first_three[] = { 0, 1, 2 };

/* Values of a straight model, 10 x1 + 4 x2 + 1 x3 (+ 2 x4), with a little that alternates */
static FmMixFit *
straight_fit (guint q, double bump)
{
  const double slope[] = { 10, 4, 1, 2 };
  g_autoptr (FmMixPoints) lattice = fm_mix_lattice (q, 3, NULL);
  g_autoptr (FmMixData) data = fm_mix_data_new (q, 0);
  g_autoptr (GError) error = NULL;

  for (guint row = 0; row < lattice->n; row++) {
    const double *x = fm_mix_points_get (lattice, row);
    double y = row % 2 == 0 ? bump : -bump;
    for (guint i = 0; i < q; i++)
      y += slope[i] * x[i];
    fm_mix_data_add (data, x, y, NULL);
  }
  FmMixFit *fit = fm_mix_fit (data, FM_MIX_LINEAR, &error);
  g_assert_no_error (error);
  return fit;
}

static double
polygon_area (const GArray *polygon)
{
  double twice = 0.0;
  for (guint i = 0; i < polygon->len; i++) {
    const FmMixPlanePoint a = g_array_index (polygon, FmMixPlanePoint, i);
    const FmMixPlanePoint b = g_array_index (polygon, FmMixPlanePoint, (i + 1) % polygon->len);
    twice += a.x * b.y - b.x * a.y;
  }
  return fabs (twice) / 2;
}

static void
test_plane (void)
{
  const double corner[3][3] = { { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } };
  const double inside[] = { 0.2, 0.5, 0.3 };
  double u[3];

  g_assert_cmpfloat_with_epsilon (fm_mix_slice_to_plane (corner[0]).y, sqrt (0.75), 1e-12);
  g_assert_cmpfloat (fm_mix_slice_to_plane (corner[1]).x, ==, 0);
  g_assert_cmpfloat (fm_mix_slice_to_plane (corner[2]).x, ==, 1);
  fm_mix_slice_from_plane (fm_mix_slice_to_plane (inside), u);
  for (guint c = 0; c < 3; c++)
    g_assert_cmpfloat_with_epsilon (u[c], inside[c], 1e-12);
}

static void
test_slice (void)
{
  const guint component[] = { 3, 0, 2 }, twice[] = { 0, 0, 2 };
  const double held[] = { 0.9, 0.2, 0.9, 0.9 }, full[] = { 0, 1, 0, 0 }, u[] = { 0.5, 0.25, 0.25 };
  double x[4], back[3];
  FmMixRegion region;
  FmMixSlice slice;
  g_autoptr (GError) error = NULL;

  fm_mix_region_init (&region, 4);
  region.lower[3] = 0.3;
  g_assert_true (fm_mix_slice_init (&slice, 4, component, held, &region, NULL));
  g_assert_cmpfloat_with_epsilon (slice.span, 0.5, 1e-12);
  fm_mix_slice_to_shares (&slice, u, x);
  g_assert_cmpfloat_with_epsilon (x[3], 0.55, 1e-12);
  g_assert_cmpfloat_with_epsilon (x[0], 0.125, 1e-12);
  g_assert_cmpfloat_with_epsilon (x[1], 0.2, 1e-12);
  g_assert_cmpfloat_with_epsilon (fm_mix_slice_from_shares (&slice, x, back), 0, 1e-12);
  for (guint c = 0; c < 3; c++)
    g_assert_cmpfloat_with_epsilon (back[c], u[c], 1e-12);
  /* a tenth of the mixture moved to the component that is held lies beside the slice */
  x[1] += 0.1;
  x[3] -= 0.1;
  g_assert_cmpfloat_with_epsilon (fm_mix_slice_from_shares (&slice, x, back), 0.1, 1e-12);

  g_assert_false (fm_mix_slice_init (&slice, 4, twice, NULL, NULL, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_clear_error (&error);
  g_assert_false (fm_mix_slice_init (&slice, 4, component, full, NULL, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

static void
test_outline (void)
{
  FmMixRegion region;
  FmMixSlice slice;
  const double whole = sqrt (0.75) / 2;

  fm_mix_region_init (&region, 3);
  g_assert_true (fm_mix_slice_init (&slice, 3, first_three, NULL, NULL, NULL));
  g_autoptr (GArray) triangle = fm_mix_slice_outline (&slice, &region);
  g_assert_cmpuint (triangle->len, ==, 3);
  g_assert_cmpfloat_with_epsilon (polygon_area (triangle), whole, 1e-12);

  /* at most half of each: the middle triangle, a quarter */
  for (guint i = 0; i < 3; i++)
    region.upper[i] = 0.5;
  g_autoptr (GArray) middle = fm_mix_slice_outline (&slice, &region);
  g_assert_cmpfloat_with_epsilon (polygon_area (middle), whole / 4, 1e-9);

  /* x1 >= x2 halves it */
  region.limit[region.n_limits++] = (FmMixLimit){ { 1, -1, 0 }, 0, INFINITY };
  g_autoptr (GArray) half = fm_mix_slice_outline (&slice, &region);
  g_assert_cmpfloat_with_epsilon (polygon_area (half), whole / 8, 1e-9);

  region.limit[region.n_limits++] = (FmMixLimit){ { 1, 1, 1 }, 1.5, 2 };
  g_autoptr (GArray) nothing = fm_mix_slice_outline (&slice, &region);
  g_assert_cmpuint (nothing->len, ==, 0);
}

static void
test_line (void)
{
  const double fat[] = { 0.1, 0.2, 0.4 };
  FmMixSlice slice;
  FmMixSegment segment;

  g_assert_true (fm_mix_slice_init (&slice, 3, first_three, NULL, NULL, NULL));
  g_assert_true (fm_mix_slice_line (&slice, fat, 0.25, &segment));
  for (guint end = 0; end < 2; end++) {
    double u[3];
    fm_mix_slice_from_plane (end == 0 ? segment.from : segment.to, u);
    g_assert_cmpfloat_with_epsilon (0.1 * u[0] + 0.2 * u[1] + 0.4 * u[2], 0.25, 1e-12);
    g_assert_cmpfloat (MIN (u[0], MIN (u[1], u[2])), >=, -1e-12);
  }
  g_assert_false (fm_mix_slice_line (&slice, fat, 0.45, &segment));
  g_assert_false (fm_mix_slice_line (&slice, fat, 0.4, &segment)); /* a corner only */
  /* through a corner, 0.2, and the opposite side */
  g_assert_true (fm_mix_slice_line (&slice, fat, 0.2, &segment));
}

/* Of a straight model every piece of a contour lies on the straight line of its level */
static void
test_contour (void)
{
  g_autoptr (FmMixFit) fit = straight_fit (3, 0.1);
  FmMixRegion region;
  FmMixSlice slice;
  double whole = 0.0, inside = 0.0;
  FmMixSegment line;

  fm_mix_region_init (&region, 3);
  region.upper[2] = 0.3;
  g_assert_true (fm_mix_slice_init (&slice, 3, first_three, NULL, NULL, NULL));
  g_autoptr (FmMixSurface) surface = fm_mix_surface_new (fit, &slice, &region, 25);
  g_autoptr (GArray) levels = fm_mix_surface_levels (surface, 8);
  g_assert_cmpuint (levels->len, >=, 3);
  g_assert_cmpuint (levels->len, <=, 8);
  const double level = g_array_index (levels, double, levels->len / 2);
  g_assert_cmpfloat (level, >, surface->low);
  g_assert_cmpfloat (level, <, surface->high);
  g_assert_cmpint (fm_mix_surface_decimals (surface, 8), ==, 0);

  g_autoptr (GArray) all = fm_mix_surface_contour (surface, level, NULL);
  g_autoptr (GArray) cut = fm_mix_surface_contour (surface, level, &region);
  for (guint i = 0; i < all->len; i++) {
    const FmMixSegment *piece = &g_array_index (all, FmMixSegment, i);
    double u[3];
    fm_mix_slice_from_plane (piece->from, u);
    g_assert_cmpfloat_with_epsilon (fit->coefficient[0] * u[0] + fit->coefficient[1] * u[1] +
                                        fit->coefficient[2] * u[2],
                                    level, 1e-9);
    whole += hypot (piece->to.x - piece->from.x, piece->to.y - piece->from.y);
  }
  g_assert_true (fm_mix_slice_line (&slice, fit->coefficient, level, &line));
  g_assert_cmpfloat_with_epsilon (whole, hypot (line.to.x - line.from.x, line.to.y - line.from.y),
                                  1e-9);
  for (guint i = 0; i < cut->len; i++) {
    const FmMixSegment *piece = &g_array_index (cut, FmMixSegment, i);
    double u[3], x[3];
    fm_mix_slice_from_plane (piece->to, u);
    fm_mix_slice_to_shares (&slice, u, x);
    g_assert_true (fm_mix_region_contains (&region, x, 1e-8));
    inside += hypot (piece->to.x - piece->from.x, piece->to.y - piece->from.y);
  }
  g_assert_cmpfloat (inside, >, 0);
  g_assert_cmpfloat (inside, <, whole);
}

static void
test_grid (void)
{
  const double held[] = { 0, 0, 0, 0.2 };
  g_autoptr (FmMixFit) fit = straight_fit (4, 0.1);
  FmMixPrediction prediction;
  FmMixRegion region;
  FmMixSlice slice;
  double x[4];

  fm_mix_region_init (&region, 4);
  g_assert_true (fm_mix_slice_init (&slice, 4, first_three, held, NULL, NULL));
  g_autoptr (FmMixSurface) surface = fm_mix_surface_new (fit, &slice, &region, 9);
  const FmMixSurfacePoint *point = fm_mix_surface_get (surface, 5, 3);
  fm_mix_slice_to_shares (&slice, point->u, x);
  fm_mix_predict (fit, x, &prediction);
  g_assert_cmpfloat (x[3], ==, 0.2);
  g_assert_true (point->inside);
  g_assert_cmpfloat_with_epsilon (point->mean, prediction.mean, 1e-12);
  g_assert_cmpfloat_with_epsilon (point->se, prediction.se_mean, 1e-12);

  /* held where the region does not go: nothing inside, no levels */
  region.upper[3] = 0.1;
  g_autoptr (FmMixSurface) beside = fm_mix_surface_new (fit, &slice, &region, 9);
  g_autoptr (GArray) levels = fm_mix_surface_levels (beside, 8);
  g_assert_true (isnan (beside->low) && isnan (beside->se_high));
  g_assert_cmpuint (levels->len, ==, 0);
}

static void
assert_contains (const char *text, const char *part)
{
  if (strstr (text, part) == NULL)
    g_error ("'%s' lacks '%s'", text, part);
}

static void
test_words (void)
{
  const char *names[] = { "chuck", "brisket", "short rib", NULL };
  const FmMixResponse liking = { .name = "liking", .decimals = 1, .once = "one new score" };
  const FmMixResponse loss = {
    .name = "cook loss", .unit = "%", .decimals = 1, .confirm = "Weigh a cook."
  };
  const FmMixSpot spot = { { 0.3, 0.55, 0.15 }, 0.24 }, flat = { { 1, 0, 0 }, 0.001 };
  g_autoptr (FmMixFit) fit = straight_fit (3, 0.4);
  const FmMixFit *fits[] = { fit };
  FmMixPrediction prediction;

  fm_mix_predict (fit, spot.x, &prediction);
  g_autofree char *interval = g_strdup_printf (
      "liking %.1f (95 %% intervals: expected mean %.1f to %.1f, one new score "
      "%.1f to %.1f)",
      prediction.mean, prediction.low, prediction.high, prediction.new_low, prediction.new_high);
  g_autofree char *best = fm_mix_best_sentence (fit, &spot, names, &liking);
  g_autofree char *next = fm_mix_next_sentence (fit, &spot, names, &liking);
  g_autofree char *done = fm_mix_next_sentence (fit, &flat, names, &liking);
  g_autofree char *unknown = fm_mix_unknown_sentence (fit, &spot, names, &liking);
  g_autofree char *joined = fm_mix_joined_sentence (1, fits, &liking, &spot, names);
  g_autofree char *lack = fm_mix_lack_sentence (fit);
  g_autofree char *pure = fm_mix_shares_text (3, flat.x, names);

  g_autofree char *least = fm_mix_best_sentence (fit, &spot, names, &loss);
  const FmMixFit *both[] = { fit, fit };
  const FmMixResponse two[] = { loss, liking };
  g_autofree char *mixed = fm_mix_joined_sentence (2, both, two, &spot, names);

  assert_contains (least, "Weigh a cook.");
  assert_contains (mixed, "confirm it in a blind tasting");
  assert_contains (best, "brisket, 30\u00a0% chuck, 15\u00a0% short rib");
  assert_contains (best, interval);
  assert_contains (best, "confirm it in a blind tasting");
  assert_contains (next, "0.2 on average");
  assert_contains (next, "confirm it in a blind tasting");
  assert_contains (done, "promises better liking");
  assert_contains (unknown, interval);
  assert_contains (unknown, "confirm it in a blind tasting");
  assert_contains (joined, "0.24 of 1");
  assert_contains (lack, "No blend was repeated");
  g_assert_cmpstr (pure, ==, "100\u00a0% chuck");
}

/* A straight model is met everywhere, on the grid and between. */
static void
test_at (void)
{
  g_autoptr (FmMixFit) fit = straight_fit (3, 0.01);
  FmMixRegion region = { .q = 3, .upper = { 1, 1, 1 } };
  FmMixSlice slice;
  g_autoptr (FmMixSurface) surface = NULL;
  FmMixPrediction prediction;
  double mean, se;

  g_assert_true (fm_mix_slice_init (&slice, 3, first_three, NULL, NULL, NULL));
  surface = fm_mix_surface_new (fit, &slice, &region, 7);
  for (int i = 0; i <= 40; i++)
    for (int j = 0; j <= 40 - i; j++) {
      const double u[] = { i / 40.0, j / 40.0, (40 - i - j) / 40.0 };

      g_assert_true (fm_mix_surface_at (surface, u, &mean, &se));
      fm_mix_predict (fit, u, &prediction);
      g_assert_cmpfloat_with_epsilon (mean, prediction.mean, 1e-9);
      g_assert_cmpfloat (se, >, 0);
    }
  g_assert_false (fm_mix_surface_at (surface, (const double[]){ -0.1, 0.6, 0.5 }, &mean, &se));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mix-surface/at", test_at);
  g_test_add_func ("/mix-surface/plane", test_plane);
  g_test_add_func ("/mix-surface/slice", test_slice);
  g_test_add_func ("/mix-surface/outline", test_outline);
  g_test_add_func ("/mix-surface/line", test_line);
  g_test_add_func ("/mix-surface/contour", test_contour);
  g_test_add_func ("/mix-surface/grid", test_grid);
  g_test_add_func ("/mix-surface/words", test_words);
  return g_test_run ();
}
