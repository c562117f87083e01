/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-pictures.c - what stands where in the drawn charts, in every palette and at twice the pixels
 */
#include "app/charts/fm-chart-bars.h"
#include "app/charts/fm-chart-intervals.h"
#include "app/charts/fm-fat-bar.h"
#include "app/charts/fm-map-curves.h"
#include "app/charts/fm-readings-chart.h"
#include "app/map/fm-map-plot-draw.h"

#include "tests/charts/picture.h"

static FmBox
mark_box (const Picture *picture, guint row)
{
  for (guint i = 0; i < picture->canvas.marks->len; i++)
    if (g_array_index (picture->canvas.marks, FmChartMark, i).row == row)
      return g_array_index (picture->canvas.marks, FmChartMark, i).box;
  g_assert_not_reached ();
}

/* A thin line may run between two pixels. */
static gboolean
has_in_middle (const Picture *picture, guint row, const GdkRGBA *colour)
{
  const FmBox box = mark_box (picture, row);

  for (int i = -1; i <= 1; i++)
    if (picture_has (picture, box.x + box.width / 2, box.y + box.height / 2 + i, colour))
      return TRUE;
  return FALSE;
}

static double
linear (double part)
{
  return part <= 0.04045 ? part / 12.92 : pow ((part + 0.055) / 1.055, 2.4);
}

static double
luminance (const GdkRGBA *colour)
{
  return 0.2126 * linear (colour->red) + 0.7152 * linear (colour->green) +
         0.0722 * linear (colour->blue);
}

/* Web Content Accessibility Guidelines 2.1 (W3C, 2018): contrast ratio. */
static double
contrast (const GdkRGBA *a, const GdkRGBA *b)
{
  const double one = luminance (a), other = luminance (b);

  return (MAX (one, other) + 0.05) / (MIN (one, other) + 0.05);
}

/* Criteria 1.4.3 (text 4.5), 1.4.6 (text 7) and 1.4.11 (what carries meaning 3). */
static void
test_contrast (void)
{
  PICTURE_FOREACH (scheme, scale)
  {
    const gboolean high = scheme == FM_CHART_LIGHT_CONTRAST || scheme == FM_CHART_DARK_CONTRAST;
    Picture picture;
    const FmChartPalette *palette = &picture.canvas.palette;

    picture_init (&picture, 10, 10, scheme, scale);
    g_assert_cmpfloat (contrast (&palette->ink, &palette->ground), >=, high ? 15.0 : 7.0);
    g_assert_cmpfloat (contrast (&palette->accent, &palette->ground), >=, high ? 7.0 : 4.5);
    g_assert_cmpfloat (contrast (&palette->grid, &palette->ground), >=, high ? 3.0 : 1.3);
    picture_clear (&picture);
  }
}

static void
test_bars (void)
{
  const FmBarsData data = { 4, { 21.5, NAN, 12.0, -4.5 }, 1, TRUE };

  PICTURE_FOREACH (scheme, scale)
  {
    Picture picture;
    FmBox a, c, d;

    picture_init (&picture, 240, 130, scheme, scale);
    fm_chart_bars_draw (&data, &picture.canvas);
    picture_check_labels (&picture);
    g_assert_cmpuint (picture.canvas.marks->len, ==, 4);
    a = mark_box (&picture, 0);
    c = mark_box (&picture, 2);
    d = mark_box (&picture, 3);
    /* From one zero line up and down, as long as the values. */
    g_assert_cmpfloat_with_epsilon (a.y + a.height, c.y + c.height, 1e-9);
    g_assert_cmpfloat_with_epsilon (d.y, c.y + c.height, 1e-9);
    g_assert_cmpfloat_with_epsilon (a.height / c.height, 21.5 / 12.0, 1e-9);
    g_assert_cmpfloat_with_epsilon (d.height / c.height, 4.5 / 12.0, 1e-9);
    g_assert_true (has_in_middle (&picture, 0, &picture.canvas.palette.ink));
    g_assert_false (has_in_middle (&picture, 1, &picture.canvas.palette.accent));
    picture_clear (&picture);
  }
}

static void
test_wide_numbers_of_bars (void)
{
  const FmBarsData data = { 3, { 1234.56, 1234.57, 1234.58 }, 2, FALSE };
  Picture picture;

  picture_init (&picture, 260, 130, FM_CHART_LIGHT, 2);
  fm_chart_bars_draw (&data, &picture.canvas);
  picture_check_labels (&picture);
  /* Every bar has its number and its letter. */
  g_assert_cmpuint (picture.canvas.labels->len, >=, 6);
  picture_clear (&picture);
}

/* Six tasters, three samples: sums lie between 6 and 18. */
static void
test_intervals (void)
{
  FmChartIntervalAxis axis = { .low_words = "better", .high_words = "worse" };
  const FmChartInterval rows[] = { { (char *)"One", 6, 6, 9, 12 },
                                   { (char *)"Two", 12, 9, 20, 12 },
                                   { (char *)"Three", NAN, NAN, NAN, NAN } };

  fm_chart_scale_init_ends (&axis.scale, 6, 18, 2, 10);
  PICTURE_FOREACH (scheme, scale)
  {
    Picture picture;
    const FmChartPalette *palette = &picture.canvas.palette;
    FmBox one, two;
    double right;

    picture_init (&picture, 400, 130, scheme, scale);
    fm_chart_intervals_draw (rows, G_N_ELEMENTS (rows), &axis, &picture.canvas);
    picture_check_labels (&picture);
    picture_check_marks (&picture, 3);
    one = mark_box (&picture, 0);
    two = mark_box (&picture, 1);
    right = picture.canvas.width - 16;
    g_assert_true (has_in_middle (&picture, 0, &palette->accent));
    g_assert_true (has_in_middle (&picture, 1, &palette->accent));
    /* Half way from 6 to 18. */
    g_assert_cmpfloat_with_epsilon (two.x + two.width / 2, (one.x + one.width / 2 + right) / 2,
                                    1e-6);
    /* The interval that goes on beyond the axis is drawn up to it, without an end. */
    g_assert_true (picture_has (&picture, right - 2, two.y + two.height / 2, &palette->accent));
    g_assert_false (picture_has (&picture, right - 0.5, two.y, &palette->accent));
    g_assert_cmpuint (picture_ink (&picture, &(FmBox){ right + 2, two.y, 14, two.height }), ==, 0);
    picture_clear (&picture);
  }
}

static void
test_fat_bar (void)
{
  const FmFatSegment segments[] = { { (char *)"Chuck", 60, 100 },
                                    { (char *)"Suet with a long name", 30, 50 },
                                    { (char *)"Heart", 10, 17 } };

  PICTURE_FOREACH (scheme, scale)
  {
    Picture picture;
    FmBox first, second;

    picture_init (&picture, 300, 34, scheme, scale);
    fm_fat_bar_draw (segments, G_N_ELEMENTS (segments), &picture.canvas);
    picture_check_labels (&picture);
    picture_check_marks (&picture, 3);
    first = mark_box (&picture, 0);
    second = mark_box (&picture, 1);
    g_assert_cmpfloat_with_epsilon (second.x, 180, 1e-9);
    /* Segments part by a strip of the ground, labels keep within theirs. */
    g_assert_true (picture_has (&picture, second.x - 1, 17, &picture.canvas.palette.ground));
    g_assert_true (fm_box_is_within (&g_array_index (picture.canvas.labels, FmBox, 0), &first));
    g_assert_true (fm_box_is_within (&g_array_index (picture.canvas.labels, FmBox, 1), &second));
    g_assert_cmpuint (picture.canvas.labels->len, ==, 2);
    picture_clear (&picture);
  }
}

static FmMapCurvesData *
new_curves (void)
{
  GPtrArray *curves = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_map_curve_free);
  GArray *dots = g_array_new (FALSE, FALSE, sizeof (FmMapCurveDot));

  for (guint i = 0; i < 2; i++) {
    FmMapCurve *curve = fm_map_curve_new (fm_chart_letter (i), "Chuck");

    for (guint j = 0; j <= 20; j++) {
      const double y = 5.0 + 0.1 * j + 0.05 * i;
      const FmMapCurvePoint point = { 2.0 * j, y, y - 0.5, y + 0.5 };

      g_array_append_val (curve->points, point);
    }
    g_ptr_array_add (curves, curve);
  }
  for (int i = 0; i < 3; i++)
    g_array_append_val (dots, ((FmMapCurveDot){ 20.0 + 0.2 * i, 5.5, i + 1 }));
  return fm_map_curves_data_new (curves, dots, "Share of Chuck, %", 1);
}

static void
test_curves (void)
{
  g_autoptr (FmMapCurvesData) data = new_curves ();

  PICTURE_FOREACH (scheme, scale)
  {
    Picture picture;

    picture_init (&picture, 400, 240, scheme, scale);
    fm_map_curves_draw (data, &picture.canvas);
    picture_check_labels (&picture);
    picture_check_marks (&picture, 13);
    /* Row 1 lies on the solid curve, clear of the dots: rows 10 to 12. */
    g_assert_true (has_in_middle (&picture, 1, &picture.canvas.palette.accent));
    g_assert_true (has_in_middle (&picture, 12, &picture.canvas.palette.ink));
    g_assert_cmpfloat_with_epsilon (
        mark_box (&picture, 2).x, (mark_box (&picture, 0).x + mark_box (&picture, 4).x) / 2, 1e-6);
    picture_clear (&picture);
  }
}

static void
test_readings (void)
{
  g_autoptr (GArray) readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  g_autoptr (GArray) estimate = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));

  for (guint i = 0; i < 5; i++)
    g_array_append_val (readings, ((FmCoreReading){ 120.0 * i, 5.0 + 17.0 * i }));
  for (guint i = 0; i <= 60; i++)
    g_array_append_val (estimate, ((FmCoreReading){ 10.0 * i, 5.0 + i }));
  PICTURE_FOREACH (scheme, scale)
  {
    for (guint fahrenheit = 0; fahrenheit < 2; fahrenheit++) {
      const FmReadingsData data = { readings, estimate, (gboolean)fahrenheit };
      Picture picture;

      picture_init (&picture, fahrenheit ? 220 : 480, 200, scheme, scale);
      fm_readings_chart_draw (&data, &picture.canvas);
      picture_check_labels (&picture);
      g_assert_cmpuint (picture.canvas.marks->len, ==, 13);
      g_assert_true (has_in_middle (&picture, 3, &picture.canvas.palette.accent));
      g_assert_cmpfloat_with_epsilon (mark_box (&picture, 2).x,
                                      (mark_box (&picture, 0).x + mark_box (&picture, 4).x) / 2,
                                      1e-6);
      picture_clear (&picture);
    }
  }
}

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
  map->specks = g_array_new (FALSE, FALSE, sizeof (FmMapSpeck));
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
  double x, y;

  picture_check_labels (picture);
  picture_check_marks (picture, map->placed->len);
  fm_map_plot_place (picture->canvas.width, picture->canvas.height, (FmMixPlanePoint){ 0.6, 0.2 },
                     &x, &y);
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

static void
test_map (void)
{
  FmMapPicture *map = new_map ();

  PICTURE_FOREACH (scheme, scale)
  {
    for (int width = 240; width <= 680; width += 220) {
      Picture picture;

      picture_init (&picture, width, fm_map_plot_height (width), scheme, scale);
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
  g_test_add_func ("/pictures/contrast", test_contrast);
  g_test_add_func ("/pictures/bars", test_bars);
  g_test_add_func ("/pictures/wide-numbers-of-bars", test_wide_numbers_of_bars);
  g_test_add_func ("/pictures/intervals", test_intervals);
  g_test_add_func ("/pictures/fat-bar", test_fat_bar);
  g_test_add_func ("/pictures/curves", test_curves);
  g_test_add_func ("/pictures/readings", test_readings);
  g_test_add_func ("/pictures/map", test_map);
  return g_test_run ();
}
