/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* picture.h - a chart drawn into memory, and questions about what stands where
 *
 * Places are in pixels of the chart, whatever the scale of the picture.
 */
#pragma once

#include <math.h>

#include "app/charts/fm-chart-canvas.h"

typedef struct {
  cairo_surface_t *surface;
  FmChartCanvas canvas;
  int scale;
} Picture;

static inline void
picture_init (Picture *self, double width, double height, FmChartScheme scheme, int scale)
{
  cairo_t *cr;

  self->scale = scale;
  self->surface =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)width * scale, (int)height * scale);
  cairo_surface_set_device_scale (self->surface, scale, scale);
  cr = cairo_create (self->surface);
  fm_chart_canvas_init (&self->canvas, cr, NULL, width, height, scheme);
  fm_chart_canvas_paint_ground (&self->canvas);
  cairo_destroy (cr);
}

static inline void
picture_clear (Picture *self)
{
  fm_chart_canvas_clear (&self->canvas);
  cairo_surface_destroy (self->surface);
}

static inline GdkRGBA
picture_pixel (const Picture *self, double x, double y)
{
  const unsigned char *data;
  guint32 pixel;

  cairo_surface_flush (self->surface);
  data = cairo_image_surface_get_data (self->surface);
  g_assert_true (x >= 0 && x < self->canvas.width && y >= 0 && y < self->canvas.height);
  pixel = *(const guint32 *)(const void *)(data +
                                           (int)(y * self->scale) *
                                               cairo_image_surface_get_stride (self->surface) +
                                           4 * (int)(x * self->scale));
  return (GdkRGBA){ (float)(pixel >> 16 & 255) / 255, (float)(pixel >> 8 & 255) / 255,
                    (float)(pixel & 255) / 255, 1 };
}

static inline double
colour_distance (const GdkRGBA *a, const GdkRGBA *b)
{
  return MAX (fabs (a->red - b->red), MAX (fabs (a->green - b->green), fabs (a->blue - b->blue)));
}

/* TRUE when the pixel has that colour, but for rounding. */
static inline gboolean
picture_has (const Picture *self, double x, double y, const GdkRGBA *colour)
{
  const GdkRGBA pixel = picture_pixel (self, x, y);

  return colour_distance (&pixel, colour) < 0.02;
}

/* How many pixels of the box are not of the ground. */
static inline guint
picture_ink (const Picture *self, const FmBox *box)
{
  const double step = 1.0 / self->scale;
  guint n = 0;

  for (double y = MAX (box->y, 0); y < MIN (box->y + box->height, self->canvas.height); y += step)
    for (double x = MAX (box->x, 0); x < MIN (box->x + box->width, self->canvas.width); x += step)
      n += !picture_has (self, x, y, &self->canvas.palette.ground);
  return n;
}

/* Every text inside of the picture and clear of the others, and something drawn there. */
static inline void
picture_check_labels (const Picture *self)
{
  const FmBox room = { 0, 0, self->canvas.width, self->canvas.height };
  const GArray *labels = self->canvas.labels;

  for (guint i = 0; i < labels->len; i++) {
    const FmBox *label = &g_array_index (labels, FmBox, i);

    g_assert_true (fm_box_is_within (label, &room));
    g_assert_cmpuint (picture_ink (self, label), >, 0);
    for (guint j = i + 1; j < labels->len; j++)
      g_assert_false (fm_box_overlaps (label, &g_array_index (labels, FmBox, j)));
  }
}

/* Every mark inside of the picture, and something drawn there. */
static inline void
picture_check_marks (const Picture *self, guint n)
{
  const FmBox room = { 0, 0, self->canvas.width, self->canvas.height };

  g_assert_cmpuint (self->canvas.marks->len, ==, n);
  for (guint i = 0; i < n; i++) {
    const FmChartMark *mark = &g_array_index (self->canvas.marks, FmChartMark, i);

    g_assert_true (fm_box_is_within (&mark->box, &room));
    g_assert_cmpuint (picture_ink (self, &mark->box), >, 0);
  }
}

static inline FmBox
mark_box (const Picture *picture, guint row)
{
  for (guint i = 0; i < picture->canvas.marks->len; i++)
    if (g_array_index (picture->canvas.marks, FmChartMark, i).row == row)
      return g_array_index (picture->canvas.marks, FmChartMark, i).box;
  g_assert_not_reached ();
}

/* A thin line may run between two pixels. */
static inline gboolean
has_in_middle (const Picture *picture, guint row, const GdkRGBA *colour)
{
  const FmBox box = mark_box (picture, row);

  for (int i = -1; i <= 1; i++)
    if (picture_has (picture, box.x + box.width / 2, box.y + box.height / 2 + i, colour))
      return TRUE;
  return FALSE;
}

/* For each scheme, plain and at twice the pixels. */
#define PICTURE_FOREACH(scheme, scale)                                                             \
  for (FmChartScheme scheme = FM_CHART_LIGHT; scheme < FM_CHART_N_SCHEMES; scheme++)               \
    for (int scale = 1; scale <= 2; scale++)
