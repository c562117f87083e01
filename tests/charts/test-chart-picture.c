/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-chart-picture.c - a chart as a file */
#include "app/charts/fm-chart-picture.h"

#include "tests/charts/picture.h"

#define SUBJECT "Pan patty, version 7"

static void
draw_cb (gpointer data, FmChartCanvas *canvas)
{
  guint *n_drawn = data;

  (*n_drawn)++;
  g_assert_false (canvas->see_through);
  fm_chart_canvas_set_colour (canvas, &canvas->palette.accent, 1);
  cairo_rectangle (canvas->cr, 100, 50, 100, 20);
  cairo_fill (canvas->cr);
}

static GBytes *
make (FmChartFormat format, const char *legend)
{
  guint n_drawn = 0;
  const FmChartPicture picture = { .title = "Rank sums",
                                   .legend = legend,
                                   .subject = SUBJECT,
                                   .width = 400,
                                   .height = 120,
                                   .draw = draw_cb,
                                   .data = &n_drawn };
  g_autoptr (GError) error = NULL;
  GBytes *bytes = fm_chart_picture_make (&picture, format, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (n_drawn, ==, 1);
  return bytes;
}

static gboolean
starts_with (GBytes *bytes, const char *text)
{
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);

  return size > strlen (text) && memcmp (data, text, strlen (text)) == 0;
}

typedef struct {
  GBytes *bytes;
  gsize at;
} Reader;

static cairo_status_t
read_cb (void *closure, unsigned char *data, unsigned int length)
{
  Reader *reader = closure;

  memcpy (data, (const char *)g_bytes_get_data (reader->bytes, NULL) + reader->at, length);
  reader->at += length;
  return CAIRO_STATUS_SUCCESS;
}

static Picture
read_png (GBytes *bytes)
{
  Reader reader = { bytes, 0 };
  Picture picture = { .surface = cairo_image_surface_create_from_png_stream (read_cb, &reader),
                      .scale = 3 };
  cairo_t *cr = cairo_create (picture.surface);

  fm_chart_canvas_init (&picture.canvas, cr, NULL,
                        cairo_image_surface_get_width (picture.surface) / 3.0,
                        cairo_image_surface_get_height (picture.surface) / 3.0, FM_CHART_LIGHT);
  cairo_destroy (cr);
  return picture;
}

static void
test_png (void)
{
  g_autoptr (GBytes) bytes = make (FM_CHART_PNG, NULL);
  Picture picture = read_png (bytes);
  const double below = picture.canvas.height - 45;

  g_assert_cmpint (cairo_surface_status (picture.surface), ==, CAIRO_STATUS_SUCCESS);
  g_assert_cmpfloat (picture.canvas.width, ==, 432);
  /* The title above, the chart, the blend and version below; nothing in the margins. */
  g_assert_cmpuint (picture_ink (&picture, &(FmBox){ 16, 16, 100, 20 }), >, 0);
  g_assert_cmpuint (picture_ink (&picture, &(FmBox){ 116, 80, 100, 40 }), >, 1000);
  g_assert_cmpuint (picture_ink (&picture, &(FmBox){ 16, below, 150, 30 }), >, 0);
  g_assert_cmpuint (picture_ink (&picture, &(FmBox){ 0, 0, 432, 14 }), ==, 0);
  g_assert_cmpuint (picture_ink (&picture, &(FmBox){ 0, 0, 14, picture.canvas.height }), ==, 0);
  picture_clear (&picture);
}

/* Words that do not fit into a line make the picture higher, never wider. */
static void
test_long_legend (void)
{
  g_autoptr (GBytes) one = make (FM_CHART_PNG, "A = Pan patty");
  g_autoptr (GBytes) many =
      make (FM_CHART_PNG, "A = Pan patty with a long name, version 6   B = Pan patty with a long "
                          "name, version 7   C = Lean shop patty, version 12");
  Picture small = read_png (one);
  Picture large = read_png (many);

  g_assert_cmpfloat (small.canvas.width, ==, large.canvas.width);
  g_assert_cmpfloat (small.canvas.height, <, large.canvas.height);
  picture_clear (&small);
  picture_clear (&large);
}

static void
test_vectors (void)
{
  g_autoptr (GBytes) svg = make (FM_CHART_SVG, NULL);
  g_autoptr (GBytes) pdf = make (FM_CHART_PDF, NULL);

  g_assert_true (starts_with (svg, "<?xml"));
  g_assert_nonnull (
      g_strstr_len (g_bytes_get_data (svg, NULL), (gssize)g_bytes_get_size (svg), "width=\"432\""));
  g_assert_true (starts_with (pdf, "%PDF-"));
}

static void
test_too_large (void)
{
  guint n_drawn = 0;
  const FmChartPicture picture = {
    .title = "T", .width = 1e6, .height = 1e6, .draw = draw_cb, .data = &n_drawn
  };
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_chart_picture_make (&picture, FM_CHART_PNG, &error));
  g_assert_nonnull (error);
}

static void
test_names (void)
{
  g_autofree char *name = fm_chart_picture_name ("Fat, g/100 g", SUBJECT, FM_CHART_SVG);
  FmChartFormat format = FM_CHART_SVG;

  g_assert_cmpstr (name, ==, "Pan patty, version 7 - Fat, g-100 g.svg");
  g_assert_true (fm_chart_format_of_name ("a.b.PNG", &format));
  g_assert_cmpint (format, ==, FM_CHART_PNG);
  g_assert_false (fm_chart_format_of_name ("a.txt", &format));
  g_assert_false (fm_chart_format_of_name ("svg", &format));
  g_assert_cmpint (format, ==, FM_CHART_PNG);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chart-picture/png", test_png);
  g_test_add_func ("/chart-picture/long-legend", test_long_legend);
  g_test_add_func ("/chart-picture/vectors", test_vectors);
  g_test_add_func ("/chart-picture/too-large", test_too_large);
  g_test_add_func ("/chart-picture/names", test_names);
  return g_test_run ();
}
