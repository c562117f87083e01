/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-plot-draw.c - draws a map's picture */
#include "app/map/fm-map-plot-draw.h"

#include <math.h>

#define MARK_PX 5.0
#define MARGIN_SIDE 16
#define MARGIN_LINE 30 /* above and below, for the names of the corners */
#define SMALLEST_SIDE 10
#define HALF_ROOT_3 0.866025403784
/* How many places along a line its name is tried at. */
#define N_TRIES 8

typedef struct {
  const FmMapPicture *picture;
  FmChartCanvas *canvas;
  cairo_t *cr; /* of the canvas */
} Drawing;

static double
side_of (double width, double height)
{
  return MAX (MIN (width - 2 * MARGIN_SIDE, (height - 2 * MARGIN_LINE) / HALF_ROOT_3),
              SMALLEST_SIDE);
}

int
fm_map_plot_height (int width)
{
  return (int)ceil ((width - 2 * MARGIN_SIDE) * HALF_ROOT_3) + 2 * MARGIN_LINE;
}

void
fm_map_plot_place (double width, double height, FmMixPlanePoint at, double *x, double *y)
{
  const double side = side_of (width, height);

  *x = (width - side) / 2.0 + at.x * side;
  *y = MARGIN_LINE + (HALF_ROOT_3 - at.y) * side;
}

static void
place (const Drawing *self, FmMixPlanePoint at, double *x, double *y)
{
  fm_map_plot_place (self->canvas->width, self->canvas->height, at, x, y);
}

static void
set_ink (const Drawing *self, double alpha)
{
  fm_chart_canvas_set_colour (self->canvas, &self->canvas->palette.ink, alpha);
}

static void
line_to (const Drawing *self, FmMixPlanePoint at)
{
  double x, y;

  place (self, at, &x, &y);
  cairo_line_to (self->cr, x, y);
}

static void
move_to (const Drawing *self, FmMixPlanePoint at)
{
  cairo_new_sub_path (self->cr);
  line_to (self, at);
}

static void
draw_triangle (const Drawing *self)
{
  static const FmMixPlanePoint corners[] = { { 0.5, HALF_ROOT_3 }, { 0, 0 }, { 1, 0 } };
  const int half = (int)self->canvas->width / 2;
  double x, top, bottom;

  set_ink (self, 0.5);
  cairo_set_line_width (self->cr, 1);
  cairo_new_path (self->cr);
  for (guint i = 0; i < 3; i++)
    line_to (self, corners[i]);
  cairo_close_path (self->cr);
  cairo_stroke (self->cr);
  place (self, corners[0], &x, &top);
  place (self, corners[1], &x, &bottom);
  fm_chart_canvas_text (self->canvas, self->picture->corner[0], half, top - MARGIN_LINE / 2.0, 0.5,
                        2 * half);
  fm_chart_canvas_text (self->canvas, self->picture->corner[1], 2, bottom + MARGIN_LINE / 2.0, 0,
                        half - 6);
  fm_chart_canvas_text (self->canvas, self->picture->corner[2], self->canvas->width - 2,
                        bottom + MARGIN_LINE / 2.0, 1, half - 6);
}

static void
draw_specks (const Drawing *self)
{
  cairo_set_line_width (self->cr, 1);
  for (guint i = 0; i < self->picture->specks->len; i++) {
    const FmMapSpeck *speck = &g_array_index (self->picture->specks, FmMapSpeck, i);
    double x, y;

    place (self, speck->at, &x, &y);
    set_ink (self, 0.45);
    cairo_new_path (self->cr);
    if (speck->sureness == FM_MAP_LESS_SURE) {
      cairo_arc (self->cr, x, y, 1.1, 0, 2 * G_PI);
      cairo_fill (self->cr);
      continue;
    }
    cairo_move_to (self->cr, x - 2.5, y - 2.5);
    cairo_line_to (self->cr, x + 2.5, y + 2.5);
    cairo_move_to (self->cr, x - 2.5, y + 2.5);
    cairo_line_to (self->cr, x + 2.5, y - 2.5);
    cairo_stroke (self->cr);
  }
}

static void
draw_outline (const Drawing *self)
{
  if (self->picture->outline->len == 0)
    return;
  set_ink (self, 0.9);
  cairo_set_line_width (self->cr, 2.5);
  cairo_new_path (self->cr);
  for (guint i = 0; i < self->picture->outline->len; i++)
    line_to (self, g_array_index (self->picture->outline, FmMixPlanePoint, i));
  cairo_close_path (self->cr);
  cairo_stroke (self->cr);
}

static void
stroke_line (const Drawing *self, const FmMapLine *line)
{
  cairo_new_path (self->cr);
  for (guint i = 0; i < line->segments->len; i++) {
    const FmMixSegment *segment = &g_array_index (line->segments, FmMixSegment, i);

    move_to (self, segment->from);
    line_to (self, segment->to);
  }
  cairo_stroke (self->cr);
}

static void
draw_contours (const Drawing *self)
{
  fm_chart_canvas_set_colour (self->canvas, &self->canvas->palette.accent, 1);
  cairo_set_line_width (self->cr, 1.5);
  for (guint i = 0; i < self->picture->contours->len; i++)
    stroke_line (self, g_ptr_array_index (self->picture->contours, i));
}

static void
draw_limits (const Drawing *self)
{
  static const double dashes[] = { 7, 4 };

  cairo_save (self->cr);
  set_ink (self, 0.8);
  cairo_set_line_width (self->cr, 1.2);
  cairo_set_dash (self->cr, dashes, G_N_ELEMENTS (dashes), 0);
  for (guint i = 0; i < self->picture->limits->len; i++)
    stroke_line (self, g_ptr_array_index (self->picture->limits, i));
  cairo_restore (self->cr);
}

static double
middle_x (gconstpointer segment)
{
  const FmMixSegment *self = segment;

  return (self->from.x + self->to.x) / 2.0;
}

static int
compare_to_left (gconstpointer a, gconstpointer b)
{
  return (middle_x (a) < middle_x (b)) - (middle_x (a) > middle_x (b));
}

/* On the line, as far right as there is room: numbers of neighbours then seldom meet. */
static void
name_contour (const Drawing *self, const FmMapLine *line)
{
  g_autoptr (GArray) segments = g_array_copy (line->segments);

  g_array_sort (segments, compare_to_left);
  for (guint i = 0; i < segments->len; i++) {
    const FmMixSegment *segment = &g_array_index (segments, FmMixSegment, i);
    const FmMixPlanePoint middle = { middle_x (segment), (segment->from.y + segment->to.y) / 2.0 };
    double x, y;

    place (self, middle, &x, &y);
    if (fm_chart_canvas_label_on (self->canvas, line->text, x, y))
      return;
  }
}

/* From its right end on, which lies outside the region where most of the marks are. */
static void
name_limit (const Drawing *self, const FmMapLine *line)
{
  const FmMixSegment *segment = &g_array_index (line->segments, FmMixSegment, 0);
  const gboolean to_right = segment->to.x > segment->from.x;
  const FmMixPlanePoint right = to_right ? segment->to : segment->from;
  const FmMixPlanePoint left = to_right ? segment->from : segment->to;

  for (guint i = 0; i <= N_TRIES; i++) {
    const double part = (double)i / N_TRIES;
    double x, y;

    place (self,
           (FmMixPlanePoint){ right.x + part * (left.x - right.x),
                              right.y + part * (left.y - right.y) },
           &x, &y);
    if (fm_chart_canvas_label (self->canvas, line->text, &(FmBox){ x, y, 0, 0 }))
      return;
  }
}

static void
star_path (cairo_t *cr, double x, double y)
{
  cairo_new_path (cr);
  for (int i = 0; i < 10; i++) {
    const double radius = i % 2 == 0 ? 1.9 * MARK_PX : 0.8 * MARK_PX;

    cairo_line_to (cr, x + radius * sin (i * G_PI / 5.0), y - radius * cos (i * G_PI / 5.0));
  }
  cairo_close_path (cr);
}

static void
diamond_path (cairo_t *cr, double x, double y)
{
  const double r = 1.5 * MARK_PX;

  cairo_new_path (cr);
  cairo_move_to (cr, x, y - r);
  cairo_line_to (cr, x + r, y);
  cairo_line_to (cr, x, y + r);
  cairo_line_to (cr, x - r, y);
  cairo_close_path (cr);
}

static void
fill_mark (const Drawing *self, gboolean solid)
{
  set_ink (self, 1);
  if (solid)
    cairo_fill_preserve (self->cr);
  else
    fm_chart_canvas_fill_ground (self->canvas);
  cairo_set_line_width (self->cr, 1.2);
  cairo_stroke (self->cr);
}

static const FmMapMark *
mark_of (const Drawing *self, const FmMapPlaced *placed)
{
  return &g_array_index (self->picture->marks, FmMapMark, placed->index);
}

static double
radius_of (FmMapMarkKind kind)
{
  switch (kind) {
  case FM_MAP_MARK_BEST:
    return 1.9 * MARK_PX;
  case FM_MAP_MARK_NEXT:
    return 1.5 * MARK_PX;
  case FM_MAP_MARK_UNKNOWN:
    return 1.6 * MARK_PX;
  case FM_MAP_MARK_VERSION:
    return MARK_PX;
  }
  g_assert_not_reached ();
}

static FmBox
box_of (const Drawing *self, const FmMapPlaced *placed)
{
  const double radius = radius_of (mark_of (self, placed)->kind);
  double x, y;

  place (self, placed->at, &x, &y);
  return (FmBox){ x - radius, y - radius, 2 * radius, 2 * radius };
}

static void
draw_mark (const Drawing *self, const FmMapPlaced *placed)
{
  const FmMapMarkKind kind = mark_of (self, placed)->kind;
  double x, y;

  place (self, placed->at, &x, &y);
  switch (kind) {
  case FM_MAP_MARK_BEST:
    star_path (self->cr, x, y);
    break;
  case FM_MAP_MARK_NEXT:
    diamond_path (self->cr, x, y);
    break;
  case FM_MAP_MARK_UNKNOWN:
    fm_chart_canvas_circle (self->canvas, x, y, radius_of (kind));
    fill_mark (self, FALSE);
    fm_chart_canvas_text (self->canvas, "?", x, y, 0.5, 0);
    return;
  case FM_MAP_MARK_VERSION:
    fm_chart_canvas_circle (self->canvas, x, y, placed->on_slice ? MARK_PX : 0.8 * MARK_PX);
    break;
  }
  fill_mark (self, placed->on_slice);
}

static void
draw_marks (const Drawing *self)
{
  for (guint i = 0; i < self->picture->placed->len; i++) {
    const FmMapPlaced *placed = &g_array_index (self->picture->placed, FmMapPlaced, i);
    const FmBox box = box_of (self, placed);

    draw_mark (self, placed);
    fm_chart_canvas_mark (self->canvas, i, &box);
    fm_chart_canvas_keep_clear (self->canvas, &box);
  }
}

static void
name_versions (const Drawing *self)
{
  for (guint i = 0; i < self->picture->placed->len; i++) {
    const FmMapPlaced *placed = &g_array_index (self->picture->placed, FmMapPlaced, i);
    const FmBox box = box_of (self, placed);
    g_autofree char *number = g_strdup_printf ("%d", mark_of (self, placed)->number);

    if (mark_of (self, placed)->kind == FM_MAP_MARK_VERSION)
      fm_chart_canvas_label (self->canvas, number, &box);
  }
}

void
fm_map_plot_draw (const FmMapPicture *picture, FmChartCanvas *canvas)
{
  const Drawing drawing = { .picture = picture, .canvas = canvas, .cr = canvas->cr };

  draw_specks (&drawing);
  draw_triangle (&drawing);
  draw_limits (&drawing);
  draw_contours (&drawing);
  draw_outline (&drawing);
  draw_marks (&drawing);
  name_versions (&drawing);
  for (guint i = 0; i < picture->limits->len; i++)
    name_limit (&drawing, g_ptr_array_index (picture->limits, i));
  for (guint i = 0; i < picture->contours->len; i++)
    name_contour (&drawing, g_ptr_array_index (picture->contours, i));
}
