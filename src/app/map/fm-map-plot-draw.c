/* fm-map-plot-draw.c - draws a map's picture */
#include "app/map/fm-map-plot-draw.h"

#include <math.h>

#include "app/charts/fm-chart-text.h"

#define MARK_PX 5.0

typedef struct {
  GtkWidget *widget;
  cairo_t *cr;
  const FmMapPicture *picture;
  const FmMapFrame *frame;
  GdkRGBA ink;
  GdkRGBA accent;
  GdkRGBA paper;
} Drawing;

void
fm_map_frame_place (const FmMapFrame *self, FmMixPlanePoint at, double *x, double *y)
{
  *x = self->left + at.x * self->side;
  *y = self->bottom - at.y * self->side;
}

static void
set_ink (const Drawing *self, const GdkRGBA *colour, double alpha)
{
  cairo_set_source_rgba (self->cr, colour->red, colour->green, colour->blue, alpha);
}

static void
line_to (const Drawing *self, FmMixPlanePoint at)
{
  double x, y;

  fm_map_frame_place (self->frame, at, &x, &y);
  cairo_line_to (self->cr, x, y);
}

static void
move_to (const Drawing *self, FmMixPlanePoint at)
{
  cairo_new_sub_path (self->cr);
  line_to (self, at);
}

/* Text on a patch of the background, so that lines do not run through it; kept in the widget. */
static void
draw_label (const Drawing *self, const char *text, double x, double y, double align)
{
  const int room = gtk_widget_get_width (self->widget);
  int width, height;

  fm_chart_text_size (self->widget, text, &width, &height);
  x = CLAMP (x, align * width + 1, MAX (room - (1 - align) * width - 1, align * width + 1));
  set_ink (self, &self->paper, 0.85);
  cairo_rectangle (self->cr, x - align * width - 1, y - height / 2.0, width + 2, height);
  cairo_fill (self->cr);
  set_ink (self, &self->ink, 1);
  fm_chart_text_draw (self->widget, self->cr, text, x, y, align, room);
}

static void
draw_triangle (const Drawing *self)
{
  static const FmMixPlanePoint corners[] = { { 0.5, 0.866025403784 }, { 0, 0 }, { 1, 0 } };
  const FmMapFrame *frame = self->frame;
  const int half = gtk_widget_get_width (self->widget) / 2;
  int height;

  set_ink (self, &self->ink, 0.5);
  cairo_set_line_width (self->cr, 1);
  cairo_new_path (self->cr);
  for (guint i = 0; i < 3; i++)
    line_to (self, corners[i]);
  cairo_close_path (self->cr);
  cairo_stroke (self->cr);
  fm_chart_text_size (self->widget, "0", NULL, &height);
  set_ink (self, &self->ink, 1);
  fm_chart_text_draw (self->widget, self->cr, self->picture->corner[0],
                      frame->left + frame->side / 2.0,
                      frame->bottom - 0.866 * frame->side - height / 2.0 - 4, 0.5, 2 * half);
  fm_chart_text_draw (self->widget, self->cr, self->picture->corner[1], 2,
                      frame->bottom + height / 2.0 + 6, 0, half - 6);
  fm_chart_text_draw (self->widget, self->cr, self->picture->corner[2], 2 * half - 2,
                      frame->bottom + height / 2.0 + 6, 1, half - 6);
}

static void
draw_specks (const Drawing *self)
{
  cairo_set_line_width (self->cr, 1);
  for (guint i = 0; i < self->picture->specks->len; i++) {
    const FmMapSpeck *speck = &g_array_index (self->picture->specks, FmMapSpeck, i);
    double x, y;

    fm_map_frame_place (self->frame, speck->at, &x, &y);
    set_ink (self, &self->ink, 0.45);
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
  set_ink (self, &self->ink, 0.9);
  cairo_set_line_width (self->cr, 2.5);
  cairo_new_path (self->cr);
  for (guint i = 0; i < self->picture->outline->len; i++)
    line_to (self, g_array_index (self->picture->outline, FmMixPlanePoint, i));
  cairo_close_path (self->cr);
  cairo_stroke (self->cr);
}

/* The middle of the piece that lies furthest right: labels of neighbours then seldom meet. */
static gboolean
label_place (const FmMapLine *line, FmMixPlanePoint *at)
{
  at->x = -INFINITY;
  for (guint i = 0; i < line->segments->len; i++) {
    const FmMixSegment *segment = &g_array_index (line->segments, FmMixSegment, i);
    const double x = (segment->from.x + segment->to.x) / 2.0;

    if (x > at->x)
      *at = (FmMixPlanePoint){ x, (segment->from.y + segment->to.y) / 2.0 };
  }
  return isfinite (at->x);
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
  set_ink (self, &self->accent, 1);
  cairo_set_line_width (self->cr, 1.5);
  for (guint i = 0; i < self->picture->contours->len; i++)
    stroke_line (self, g_ptr_array_index (self->picture->contours, i));
  for (guint i = 0; i < self->picture->contours->len; i++) {
    const FmMapLine *line = g_ptr_array_index (self->picture->contours, i);
    FmMixPlanePoint at;
    double x, y;

    if (!label_place (line, &at))
      continue;
    fm_map_frame_place (self->frame, at, &x, &y);
    draw_label (self, line->text, x, y, 0.5);
  }
}

/* Named at its right end, which lies outside the region where most of the marks are. */
static void
draw_limits (const Drawing *self)
{
  const double dashes[] = { 7, 4 };

  for (guint i = 0; i < self->picture->limits->len; i++) {
    const FmMapLine *line = g_ptr_array_index (self->picture->limits, i);
    const FmMixSegment *segment = &g_array_index (line->segments, FmMixSegment, 0);
    const gboolean to_right = segment->to.x > segment->from.x;
    double x, y;

    cairo_save (self->cr);
    set_ink (self, &self->ink, 0.8);
    cairo_set_line_width (self->cr, 1.2);
    cairo_set_dash (self->cr, dashes, G_N_ELEMENTS (dashes), 0);
    stroke_line (self, line);
    cairo_restore (self->cr);
    fm_map_frame_place (self->frame, to_right ? segment->to : segment->from, &x, &y);
    draw_label (self, line->text, x + 6, y, 0);
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
circle_path (cairo_t *cr, double x, double y, double radius)
{
  cairo_new_path (cr);
  cairo_arc (cr, x, y, radius, 0, 2 * G_PI);
}

static void
fill_mark (const Drawing *self, gboolean solid)
{
  set_ink (self, solid ? &self->ink : &self->paper, 1);
  cairo_fill_preserve (self->cr);
  set_ink (self, solid ? &self->paper : &self->ink, 1);
  cairo_set_line_width (self->cr, 1.2);
  cairo_stroke (self->cr);
}

static void
draw_version (const Drawing *self, const FmMapMark *mark, gboolean on_slice, double x, double y)
{
  g_autofree char *number = g_strdup_printf ("%d", mark->number);

  draw_label (self, number, x + MARK_PX + 4, y - MARK_PX - 4, 0);
  circle_path (self->cr, x, y, on_slice ? MARK_PX : 0.8 * MARK_PX);
  fill_mark (self, on_slice);
}

static void
draw_mark (const Drawing *self, const FmMapPlaced *placed)
{
  const FmMapMark *mark = &g_array_index (self->picture->marks, FmMapMark, placed->index);
  double x, y;

  fm_map_frame_place (self->frame, placed->at, &x, &y);
  switch (mark->kind) {
  case FM_MAP_MARK_BEST:
    star_path (self->cr, x, y);
    fill_mark (self, placed->on_slice);
    break;
  case FM_MAP_MARK_NEXT:
    diamond_path (self->cr, x, y);
    fill_mark (self, placed->on_slice);
    break;
  case FM_MAP_MARK_UNKNOWN:
    circle_path (self->cr, x, y, 1.6 * MARK_PX);
    fill_mark (self, FALSE);
    set_ink (self, &self->ink, 1);
    fm_chart_text_draw (self->widget, self->cr, "?", x, y, 0.5, 0);
    break;
  case FM_MAP_MARK_VERSION:
  default:
    draw_version (self, mark, placed->on_slice, x, y);
    break;
  }
}

static void
draw_ring (const Drawing *self, int picked)
{
  double x, y;

  if (picked < 0 || picked >= (int)self->picture->placed->len)
    return;
  fm_map_frame_place (self->frame, g_array_index (self->picture->placed, FmMapPlaced, picked).at,
                      &x, &y);
  set_ink (self, &self->accent, 1);
  cairo_set_line_width (self->cr, 3);
  circle_path (self->cr, x, y, 2.6 * MARK_PX);
  cairo_stroke (self->cr);
}

void
fm_map_plot_draw (GtkWidget *widget,
                  cairo_t *cr,
                  const FmMapPicture *picture,
                  const FmMapFrame *frame,
                  int picked)
{
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  Drawing drawing = { .widget = widget, .cr = cr, .picture = picture, .frame = frame };

  gtk_style_context_get_color (style, &drawing.ink);
  drawing.ink.alpha = 1;
  if (!gtk_style_context_lookup_color (style, "accent_color", &drawing.accent))
    drawing.accent = drawing.ink;
  if (!gtk_style_context_lookup_color (style, "window_bg_color", &drawing.paper))
    drawing.paper = (GdkRGBA){ 1, 1, 1, 1 };
  draw_specks (&drawing);
  draw_triangle (&drawing);
  draw_limits (&drawing);
  draw_contours (&drawing);
  draw_outline (&drawing);
  for (guint i = 0; i < picture->placed->len; i++)
    draw_mark (&drawing, &g_array_index (picture->placed, FmMapPlaced, i));
  draw_ring (&drawing, picked);
}
