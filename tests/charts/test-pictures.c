/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-pictures.c - what stands where in the drawn charts, in every palette and at twice the pixels
 */
#include "app/charts/fm-chart-bars.h"
#include "app/charts/fm-chart-intervals.h"
#include "app/charts/fm-chart-series.h"
#include "app/charts/fm-fat-bar.h"
#include "app/charts/fm-map-curves.h"
#include "app/charts/fm-readings-chart.h"

#include "tests/charts/picture.h"

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

/* Of the ink on a shade. */
static double
contrast_on (const FmChartPalette *palette, const FmLab *shade)
{
  const FmColour colour = fm_colour_from_lab (shade);
  const GdkRGBA ground = { (float)colour.red, (float)colour.green, (float)colour.blue, 1 };

  return contrast (&palette->ink, &ground);
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
    g_assert_cmpfloat (contrast_on (palette, &palette->low), >=, high ? 7.0 : 4.5);
    g_assert_cmpfloat (contrast_on (palette, &palette->high), >=, high ? 7.0 : 4.5);
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

/* Versions by number, one with a range; then many dates close together. */
static void
test_series (void)
{
  const FmSeriesAxis losses = { .title = "Cook loss", .decimals = 1, .least = NAN, .most = NAN };
  const FmSeriesAxis ratings = { .title = "Rating", .over_time = TRUE, .least = 1, .most = 10 };
  const FmSeriesPoint by_version[] = { { 1, 0, 24, NAN, NAN },
                                       { 3, 0, 28, 26, 31 },
                                       { 5, 0, 26, NAN, NAN } };
  FmSeriesPoint by_date[20];

  for (int i = 0; i < 20; i++)
    by_date[i] = (FmSeriesPoint){ i + 1, 1700000000 + 86400 * (i / 2), 1 + i % 10, NAN, NAN };
  PICTURE_FOREACH (scheme, scale)
  {
    Picture picture;
    FmBox first, second, third;

    picture_init (&picture, 300, 180, scheme, scale);
    fm_chart_series_draw (&losses, by_version, 3, &picture.canvas);
    picture_check_labels (&picture);
    picture_check_marks (&picture, 3);
    first = mark_box (&picture, 0);
    second = mark_box (&picture, 1);
    third = mark_box (&picture, 2);
    g_assert_cmpfloat_with_epsilon (second.x, (first.x + third.x) / 2, 1e-6);
    g_assert_cmpfloat (second.y, <, third.y);
    /* The range reaches beyond its dot, the others have none; no line joins two dots. */
    g_assert_cmpuint (picture_ink (&picture, &(FmBox){ second.x + 2, second.y - 12, 4, 8 }), >, 0);
    g_assert_true (has_in_middle (&picture, 0, &picture.canvas.palette.accent));
    g_assert_cmpfloat (first.y - third.y, >, 2 * third.height);
    for (double part = 0.3; part < 0.8; part += 0.1)
      g_assert_false (picture_has (&picture, third.x + part * (second.x - third.x),
                                   third.y + part * (second.y - third.y) + third.height / 2,
                                   &picture.canvas.palette.accent));
    picture_clear (&picture);
    picture_init (&picture, 240, 170, scheme, scale);
    fm_chart_series_draw (&ratings, by_date, 20, &picture.canvas);
    picture_check_labels (&picture);
    picture_check_marks (&picture, 20);
    picture_clear (&picture);
    picture_init (&picture, 240, 170, scheme, scale);
    fm_chart_series_draw (&ratings, by_date, 1, &picture.canvas);
    picture_check_labels (&picture);
    picture_check_marks (&picture, 1);
    picture_clear (&picture);
  }
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
  g_test_add_func ("/pictures/series", test_series);
  return g_test_run ();
}
