/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-map-pictures.c - what stands where in the picture of a map, near and far, shaded and hatched
 */
#include "app/map/fm-map-plot-draw.h"

#include "tests/charts/picture.h"

#define N_SIDE 41

static void
line_free (gpointer data)
{
  FmMapLine *line = data;

  g_free (line->text);
  g_array_unref (line->segments);
  g_free (line);
}

static void
add_line (GPtrArray *lines, const char *text, FmMixSegment segment)
{
  FmMapLine *line = g_new0 (FmMapLine, 1);

  line->text = g_strdup (text);
  line->segments = g_array_new (FALSE, FALSE, sizeof (FmMixSegment));
  g_array_append_val (line->segments, segment);
  g_ptr_array_add (lines, line);
}

static void
add_mark (FmMapPicture *picture, FmMapMarkKind kind, int number, double x, double y)
{
  const FmMapMark mark = { .kind = kind, .number = number };
  const FmMapPlaced placed = { { x, y }, TRUE, picture->marks->len };

  g_array_append_val (picture->marks, mark);
  g_array_append_val (picture->placed, placed);
}

/* Limits end where versions stand, as in the demo: their names once lay over the numbers. */
static FmMapPicture *
new_map (void)
{
  FmMapPicture *map = g_new0 (FmMapPicture, 1);

  map->corner[0] = g_strdup ("Chuck 76 %");
  map->corner[1] = g_strdup ("Shank 66 %");
  map->corner[2] = g_strdup ("Suet 50 %");
  map->contours = g_ptr_array_new_with_free_func (line_free);
  map->limits = g_ptr_array_new_with_free_func (line_free);
  map->outline = g_array_new (FALSE, FALSE, sizeof (FmMixPlanePoint));
  map->marks = g_array_new (FALSE, FALSE, sizeof (FmMapMark));
  map->placed = g_array_new (FALSE, FALSE, sizeof (FmMapPlaced));
  add_line (map->limits, "Fat 24 %", (FmMixSegment){ 0, { 0.3, 0 }, { 0.56, 0.75 } });
  add_line (map->limits, "Fat 14 %", (FmMixSegment){ 0, { 0.05, 0 }, { 0.13, 0.2 } });
  for (int i = 0; i < 4; i++)
    add_line (map->contours, "6.5",
              (FmMixSegment){ 0, { 0.3, 0.3 + 0.01 * i }, { 0.35, 0.35 + 0.01 * i } });
  add_mark (map, FM_MAP_MARK_VERSION, 5, 0.55, 0.75);
  add_mark (map, FM_MAP_MARK_VERSION, 6, 0.55, 0.75);
  add_mark (map, FM_MAP_MARK_VERSION, 7, 0.44, 0.75);
  add_mark (map, FM_MAP_MARK_VERSION, 3, 0.12, 0.2);
  add_mark (map, FM_MAP_MARK_VERSION, 8, 0.6, 0.2);
  add_mark (map, FM_MAP_MARK_BEST, 0, 0.35, 0.45);
  add_mark (map, FM_MAP_MARK_NEXT, 0, 0.5, 0.3);
  add_mark (map, FM_MAP_MARK_UNKNOWN, 0, 0.25, 0.1);
  return map;
}

static void
check_map (Picture *picture, const FmMapPicture *map)
{
  const FmChartPalette *palette = &picture->canvas.palette;
  FmMapFrame frame;
  double x, y;

  picture_check_labels (picture);
  picture_check_marks (picture, map->placed->len);
  fm_map_frame_init (&frame, map, picture->canvas.width, picture->canvas.height);
  fm_map_frame_place (&frame, (FmMixPlanePoint){ 0.6, 0.2 }, &x, &y);
  g_assert_true (picture_has (picture, x, y, &palette->ink));
  g_assert_true (has_in_middle (picture, 5, &palette->ink));
  g_assert_true (has_in_middle (picture, 6, &palette->ink));
  /* No name lies over a mark; the question mark is one. */
  for (guint i = 0; i < picture->canvas.labels->len; i++)
    for (guint row = 0; row < 7; row++) {
      const FmBox box = mark_box (picture, row);

      g_assert_false (fm_box_overlaps (&g_array_index (picture->canvas.labels, FmBox, i), &box));
    }
}

/* The mean grows to the right, the standard error upwards. */
static FmMixSurface *
new_surface (void)
{
  FmMixSurface *surface = g_new0 (FmMixSurface, 1);
  guint at = 0;

  surface->n_side = N_SIDE;
  surface->point = g_new0 (FmMixSurfacePoint, N_SIDE * (N_SIDE + 1) / 2);
  for (guint row = 0; row < N_SIDE; row++)
    for (guint column = 0; column <= row; column++) {
      FmMixSurfacePoint *point = &surface->point[at++];

      point->u[0] = 1.0 - (double)row / (N_SIDE - 1);
      point->u[2] = (double)column / (N_SIDE - 1);
      point->u[1] = 1.0 - point->u[0] - point->u[2];
      point->mean = fm_mix_slice_to_plane (point->u).x;
      point->se = point->u[0];
    }
  return surface;
}

/* A region of four corners between @left and @right; shares and names as of a real map. */
static FmMapPicture *
new_shaded (double left, double right, double lower, double upper)
{
  FmMapPicture *map = new_map ();
  const FmMixPlanePoint region[] = {
    { left, lower }, { right, lower }, { right - 0.05, upper }, { left + 0.05, upper }
  };

  g_array_append_vals (map->outline, region, G_N_ELEMENTS (region));
  map->surface = new_surface ();
  map->predicts = TRUE;
  map->low = left;
  map->high = right;
  map->se_less = 0.3;
  map->se_least = 0.5;
  map->slice = (FmMixSlice){ .q = 3, .component = { 0, 1, 2 }, .span = 1 };
  map->name[0] = g_strdup ("Chuck");
  map->name[1] = g_strdup ("Shank");
  map->name[2] = g_strdup ("Suet");
  return map;
}

static void
draw_map (Picture *picture, const FmMapPicture *map, int width, FmChartScheme scheme, int scale)
{
  picture_init (picture, width, MIN (0.8 * width, 600), scheme, scale);
  fm_map_plot_draw (map, &picture->canvas);
}

/* The shade of a place, by the most frequent colour around it: lines and hatches are thin. */
static double
lightness_at (const Picture *picture, const FmMapPicture *map, FmMixPlanePoint at)
{
  FmMapFrame frame;
  double x, y, sum = 0;

  fm_map_frame_init (&frame, map, picture->canvas.width, picture->canvas.height);
  fm_map_frame_place (&frame, at, &x, &y);
  for (int i = 0; i < 25; i++) {
    const GdkRGBA pixel = picture_pixel (picture, x + i % 5 - 2, y + i / 5 - 2);
    const FmColour colour = { pixel.red, pixel.green, pixel.blue };

    sum += fm_colour_to_lab (&colour).l / 25;
  }
  return sum;
}

/* High and low are told by lightness alone, inside of the region and nowhere else. */
static void
test_shades (void)
{
  FmMapPicture *map = new_shaded (0.1, 0.9, 0.05, 0.2);

  PICTURE_FOREACH (scheme, scale)
  {
    Picture picture;
    double low, high, beside;

    draw_map (&picture, map, 560, scheme, scale);
    picture_check_labels (&picture);
    low = lightness_at (&picture, map, (FmMixPlanePoint){ 0.17, 0.07 });
    high = lightness_at (&picture, map, (FmMixPlanePoint){ 0.83, 0.07 });
    beside = lightness_at (&picture, map, (FmMixPlanePoint){ 0.5, 0.02 });
    g_assert_cmpfloat (fabs (low - high), >, 15);
    if (scheme == FM_CHART_LIGHT || scheme == FM_CHART_LIGHT_CONTRAST)
      g_assert_cmpfloat (beside, >, low);
    picture_clear (&picture);
  }
  fm_map_picture_free (map);
}

/* More ink where the model is less sure, and most where it is least sure. */
static void
test_hatches (void)
{
  FmMapPicture *map = new_shaded (0.3, 0.7, 0.1, 0.6);
  Picture picture;
  FmMapFrame frame;
  guint inked[3];
  const double heights[] = { 0.2, 0.37, 0.5 };

  g_array_set_size (map->placed, 0);
  g_ptr_array_set_size (map->contours, 0);
  g_ptr_array_set_size (map->limits, 0);
  map->predicts = FALSE;
  draw_map (&picture, map, 560, FM_CHART_LIGHT, 2);
  fm_map_frame_init (&frame, map, 560, 0.8 * 560);
  for (guint i = 0; i < 3; i++) {
    double x, y;

    fm_map_frame_place (&frame, (FmMixPlanePoint){ 0.43, heights[i] }, &x, &y);
    inked[i] = picture_ink (&picture, &(FmBox){ x - 14, y - 14, 28, 28 });
  }
  g_assert_cmpuint (inked[1], >, inked[0] + 100);
  g_assert_cmpuint (inked[2], >, inked[1] + 100);
  picture_clear (&picture);
  fm_map_picture_free (map);
}

/* A small region is drawn large, and a place goes there and back. */
static void
test_near (void)
{
  FmMapPicture *map = new_shaded (0.4, 0.5, 0.2, 0.3);
  FmMapFrame frame;
  double left, right, y;
  FmMixPlanePoint back;

  g_array_set_size (map->placed, 0);
  fm_map_frame_init (&frame, map, 560, 448);
  fm_map_frame_place (&frame, (FmMixPlanePoint){ 0.4, 0.2 }, &left, &y);
  fm_map_frame_place (&frame, (FmMixPlanePoint){ 0.5, 0.2 }, &right, &y);
  g_assert_cmpfloat (right - left, >, 300);
  back = fm_map_frame_back (&frame, left, y);
  g_assert_cmpfloat_with_epsilon (back.x, 0.4, 1e-9);
  g_assert_cmpfloat_with_epsilon (back.y, 0.2, 1e-9);
  g_assert_false (fm_map_frame_shows (&frame, (FmMixPlanePoint){ 0, 0 }));
  fm_map_picture_free (map);
}

/* Labels of generated maps: none meets another, leaves the picture or lies on a mark. */
static void
test_generated (void)
{
  for (guint32 seed = 1; seed <= 40; seed++) {
    GRand *rand = g_rand_new_with_seed (seed);
    const double left = g_rand_double_range (rand, 0.05, 0.6);
    const double lower = g_rand_double_range (rand, 0.02, 0.4);
    FmMapPicture *map = new_shaded (left, left + g_rand_double_range (rand, 0.15, 0.35), lower,
                                    lower + g_rand_double_range (rand, 0.1, 0.35));
    Picture picture;

    g_array_set_size (map->placed, 0);
    g_array_set_size (map->marks, 0);
    for (int i = 1; i <= 20; i++)
      add_mark (map, FM_MAP_MARK_VERSION, 10 * i, g_rand_double_range (rand, left, left + 0.2),
                g_rand_double_range (rand, lower, lower + 0.15));
    for (int i = 0; i < 6; i++) {
      const double x = g_rand_double_range (rand, left, left + 0.2);

      add_line (map->contours, "7.25", (FmMixSegment){ 0, { x, lower }, { x + 0.1, lower + 0.2 } });
      add_line (map->limits, "Saturated fat 12.5 g",
                (FmMixSegment){ 0, { x, lower }, { x - 0.1, lower + 0.2 } });
    }
    draw_map (&picture, map, g_rand_int_range (rand, 240, 900), FM_CHART_LIGHT, 1);
    picture_check_labels (&picture);
    picture_check_marks (&picture, 20);
    for (guint i = 0; i < picture.canvas.labels->len; i++)
      for (guint row = 0; row < 20; row++) {
        const FmBox box = mark_box (&picture, row);

        g_assert_false (fm_box_overlaps (&g_array_index (picture.canvas.labels, FmBox, i), &box));
      }
    picture_clear (&picture);
    fm_map_picture_free (map);
    g_rand_free (rand);
  }
}

static void
test_map (void)
{
  FmMapPicture *map = new_map ();

  PICTURE_FOREACH (scheme, scale)
  {
    for (int width = 240; width <= 680; width += 220) {
      Picture picture;

      picture_init (&picture, width, MIN (0.8 * width, 600), scheme, scale);
      fm_map_plot_draw (map, &picture.canvas);
      check_map (&picture, map);
      /* Three corners, the question mark, five versions and both limits at the least. */
      g_assert_cmpuint (picture.canvas.labels->len, >=, width > 240 ? 11 : 9);
      picture_clear (&picture);
    }
  }
  fm_map_picture_free (map);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/map-pictures/map", test_map);
  g_test_add_func ("/map-pictures/shades", test_shades);
  g_test_add_func ("/map-pictures/hatches", test_hatches);
  g_test_add_func ("/map-pictures/near", test_near);
  g_test_add_func ("/map-pictures/generated", test_generated);
  return g_test_run ();
}
