/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-plot-draw.c - draws a map's picture */
#include "app/map/fm-map-plot-draw.h"

#include <math.h>

#include "app/map/fm-map-shade.h"
#include "core/base/fm-number.h"

#define MARK_PX 5.0
#define POINT_PX 9.0
#define HALF_ROOT_3 0.866025403784
/* How many places along a line its name is tried at. */
#define N_TRIES 8
#define MAX_SHARES 5

typedef struct {
  const FmMapPicture *picture;
  FmChartCanvas *canvas;
  cairo_t *cr; /* of the canvas */
  FmMapFrame frame;
} Drawing;

static const FmMixPlanePoint corners[] = { { 0.5, HALF_ROOT_3 }, { 0, 0 }, { 1, 0 } };

static void
place (const Drawing *self, FmMixPlanePoint at, double *x, double *y)
{
  fm_map_frame_place (&self->frame, at, x, y);
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
  set_ink (self, 0.5);
  cairo_set_line_width (self->cr, 1);
  cairo_new_path (self->cr);
  for (guint i = 0; i < 3; i++)
    line_to (self, corners[i]);
  cairo_close_path (self->cr);
  cairo_stroke (self->cr);
}

/* "Chuck 76 %" where that corner is in sight, else "Chuck" with an arrow to where it lies. */
static char *
corner_text (const Drawing *self, guint corner)
{
  static const char *const arrows[] = { "↑", "↙", "↘" };

  if (fm_map_frame_shows (&self->frame, corners[corner]))
    return g_strdup (self->picture->corner[corner]);
  if (corner == 1)
    return g_strdup_printf ("%s %s", arrows[corner], self->picture->name[corner]);
  return g_strdup_printf ("%s %s", self->picture->name[corner], arrows[corner]);
}

static void
name_corners (const Drawing *self)
{
  const double width = self->canvas->width;
  const double top = self->frame.room.y / 2;
  const double bottom = self->canvas->height - top;
  const int half = (int)width / 2;
  g_autofree char *first = corner_text (self, 0);
  g_autofree char *second = corner_text (self, 1);
  g_autofree char *third = corner_text (self, 2);
  double x = width / 2;
  double y;

  if (fm_map_frame_shows (&self->frame, corners[0]))
    place (self, corners[0], &x, &y);
  fm_chart_canvas_text (self->canvas, first, x, top, 0.5, 2 * half);
  fm_chart_canvas_text (self->canvas, second, 2, bottom, 0, half - 6);
  fm_chart_canvas_text (self->canvas, third, width - 2, bottom, 1, half - 6);
}

/* The line on which the component of @corner has the part @u of the triangle. */
static FmMixSegment
line_of_part (guint corner, double u)
{
  double from[3] = { 0 }, to[3] = { 0 };

  from[corner] = to[corner] = u;
  from[(corner + 1) % 3] = to[(corner + 2) % 3] = 1 - u;
  return (FmMixSegment){ u, fm_mix_slice_to_plane (from), fm_mix_slice_to_plane (to) };
}

/* Round shares of a component that lie in sight. */
static FmChartScale
shares_in_sight (const Drawing *self, guint corner)
{
  const FmBox *room = &self->frame.room;
  const FmMixSlice *slice = &self->picture->slice;
  const double least = slice->corner[slice->component[corner]];
  double low = 1, high = 0;
  FmChartScale scale;

  for (int i = 0; i < 4; i++) {
    const FmMixPlanePoint at = fm_map_frame_back (&self->frame, room->x + (i % 2) * room->width,
                                                  room->y + (i / 2) * room->height);
    double u[3];

    fm_mix_slice_from_plane (at, u);
    low = MIN (low, CLAMP (u[corner], 0, 1));
    high = MAX (high, CLAMP (u[corner], 0, 1));
  }
  fm_chart_scale_init_between (&scale, 100 * (least + slice->span * low),
                               100 * (least + slice->span * high), MAX_SHARES);
  return scale;
}

static gboolean
part_of_share (const Drawing *self, guint corner, double share_pct, double *u)
{
  const FmMixSlice *slice = &self->picture->slice;

  *u = (share_pct / 100 - slice->corner[slice->component[corner]]) / slice->span;
  return *u > 0.01 && *u < 0.99;
}

/* Where the region is near, the corners are out of sight: lines of round shares say where one is.
 */
static void
draw_shares (const Drawing *self)
{
  fm_chart_canvas_set_colour (self->canvas, &self->canvas->palette.grid, 1);
  cairo_set_line_width (self->cr, 1);
  cairo_new_path (self->cr);
  for (guint corner = 0; corner < 3; corner++) {
    const FmChartScale scale = shares_in_sight (self, corner);

    for (guint i = 0; i < scale.n_ticks; i++) {
      double u;

      if (!part_of_share (self, corner, fm_chart_scale_tick (&scale, i), &u))
        continue;
      const FmMixSegment line = line_of_part (corner, u);

      move_to (self, line.from);
      line_to (self, line.to);
    }
  }
  cairo_stroke (self->cr);
}

/* At one end of the line, as far out as it is in sight. */
static void
name_share (const Drawing *self, guint corner, double share_pct, int decimals)
{
  g_autofree char *share = fm_number_format_unit (share_pct, decimals, "%");
  g_autofree char *text = g_strdup_printf ("%s %s", share, self->picture->name[corner]);
  double u;

  if (!part_of_share (self, corner, share_pct, &u))
    return;
  const FmMixSegment line = line_of_part (corner, u);
  for (guint i = 0; i <= 2 * N_TRIES; i++) {
    const double part = (double)i / (2 * N_TRIES);
    const FmMixPlanePoint at = { line.to.x + part * (line.from.x - line.to.x),
                                 line.to.y + part * (line.from.y - line.to.y) };
    double x, y;

    place (self, at, &x, &y);
    if (fm_map_frame_shows (&self->frame, at) &&
        fm_chart_canvas_label_on (self->canvas, text, x, y))
      return;
  }
}

static void
name_shares (const Drawing *self)
{
  for (guint corner = 0; corner < 3; corner++) {
    const FmChartScale scale = shares_in_sight (self, corner);

    for (guint i = 0; i < scale.n_ticks; i++)
      name_share (self, corner, fm_chart_scale_tick (&scale, i), scale.decimals);
  }
}

static void
draw_outline (const Drawing *self)
{
  if (self->picture->outline->len == 0)
    return;
  set_ink (self, 0.9);
  cairo_set_line_width (self->cr, 2.5);
  fm_map_shade_region (self->picture, &self->frame, self->canvas);
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
  set_ink (self, 0.85);
  cairo_set_line_width (self->cr, 1.3);
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
    if (fm_map_frame_shows (&self->frame, middle) &&
        fm_chart_canvas_label_on (self->canvas, line->text, x, y))
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
    const FmMixPlanePoint at = { right.x + part * (left.x - right.x),
                                 right.y + part * (left.y - right.y) };
    double x, y;

    place (self, at, &x, &y);
    if (fm_map_frame_shows (&self->frame, at) &&
        fm_chart_canvas_label (self->canvas, line->text, &(FmBox){ x, y, 0, 0 }))
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

/* What lies in the plane: cut off where it leaves the room, so that no line runs through a name. */
static void
draw_plane (const Drawing *self)
{
  const FmBox room = fm_box_grown (&self->frame.room, 2 * MARK_PX);

  cairo_save (self->cr);
  cairo_new_path (self->cr);
  cairo_rectangle (self->cr, room.x, room.y, room.width, room.height);
  cairo_clip (self->cr);
  if (self->picture->outline->len > 0 && self->picture->name[0] != NULL)
    draw_shares (self);
  fm_map_shade_draw (self->picture, &self->frame, self->canvas);
  fm_map_shade_hatch (self->picture, &self->frame, self->canvas);
  draw_triangle (self);
  draw_limits (self);
  draw_contours (self);
  draw_outline (self);
  cairo_restore (self->cr);
}

void
fm_map_plot_draw (const FmMapPicture *picture, FmChartCanvas *canvas)
{
  Drawing drawing = { .picture = picture, .canvas = canvas, .cr = canvas->cr };

  fm_map_frame_init (&drawing.frame, picture, canvas->width, canvas->height);
  draw_plane (&drawing);
  name_corners (&drawing);
  draw_marks (&drawing);
  fm_map_shade_key (picture, &drawing.frame, canvas);
  name_versions (&drawing);
  for (guint i = 0; i < picture->limits->len; i++)
    name_limit (&drawing, g_ptr_array_index (picture->limits, i));
  for (guint i = 0; i < picture->contours->len; i++)
    name_contour (&drawing, g_ptr_array_index (picture->contours, i));
  if (picture->outline->len > 0 && picture->name[0] != NULL)
    name_shares (&drawing);
}

void
fm_map_plot_draw_point (const FmMapPicture *picture, FmMixPlanePoint at, FmChartCanvas *canvas)
{
  FmMapFrame frame;
  double x, y;

  fm_map_frame_init (&frame, picture, canvas->width, canvas->height);
  fm_map_frame_place (&frame, at, &x, &y);
  fm_chart_canvas_set_colour (canvas, &canvas->palette.ground, 1);
  for (int stroke = 0; stroke < 2; stroke++) {
    cairo_set_line_width (canvas->cr, stroke == 0 ? 5 : 2);
    fm_chart_canvas_line (canvas, x - POINT_PX, y, x + POINT_PX, y);
    fm_chart_canvas_line (canvas, x, y - POINT_PX, x, y + POINT_PX);
    fm_chart_canvas_set_colour (canvas, &canvas->palette.ink, 1);
  }
}
