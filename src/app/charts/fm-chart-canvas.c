/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-canvas.c - what a chart is drawn on: a surface, its size, its colours and its letters */
#include "app/charts/fm-chart-canvas.h"

#include <math.h>

#include "core/base/fm-number.h"

#define GAP_PX 5.0
/* A ring around the mark stays clear of its label. */
#define LABEL_GAP_PX 6.0
#define TICK_GAP_PX 8.0
/* Between the ends of two texts. */
#define WORD_GAP_PX 3.0
#define RING_PX 4.0
#define RING_WIDTH_PX 3.0
#define SMALL_MARK_PX 48.0

/* The grounds and accents of libadwaita's own style sheets; ink and grid are ours. */
static const FmChartPalette palettes[FM_CHART_N_SCHEMES] = {
  [FM_CHART_LIGHT] = { { 0.98F, 0.98F, 0.98F, 1 },
                       { 0.18F, 0.18F, 0.18F, 1 },
                       { 0.82F, 0.82F, 0.82F, 1 },
                       { 0.11F, 0.44F, 0.85F, 1 },
                       { 94, -5, 25 },
                       { 62, -15, -25 } },
  [FM_CHART_DARK] = { { 0.14F, 0.14F, 0.14F, 1 },
                      { 0.96F, 0.96F, 0.96F, 1 },
                      { 0.33F, 0.33F, 0.33F, 1 },
                      { 0.47F, 0.68F, 0.93F, 1 },
                      { 20, 2, -20 },
                      { 46, -15, 25 } },
  [FM_CHART_LIGHT_CONTRAST] = { { 1, 1, 1, 1 },
                                { 0, 0, 0, 1 },
                                { 0.45F, 0.45F, 0.45F, 1 },
                                { 0.08F, 0.31F, 0.60F, 1 },
                                { 97, -3, 15 },
                                { 66, -15, -20 } },
  [FM_CHART_DARK_CONTRAST] = { { 0, 0, 0, 1 },
                               { 1, 1, 1, 1 },
                               { 0.60F, 0.60F, 0.60F, 1 },
                               { 0.60F, 0.80F, 1, 1 },
                               { 12, 0, -12 },
                               { 37, -12, 18 } },
};

void
fm_chart_canvas_init (FmChartCanvas *self,
                      cairo_t *cr,
                      PangoContext *pango,
                      double width,
                      double height,
                      FmChartScheme scheme)
{
  *self = (FmChartCanvas){
    .cr = cairo_reference (cr),
    .pango = pango != NULL ? g_object_ref (pango) : pango_cairo_create_context (cr),
    .palette = palettes[scheme],
    .width = width,
    .height = height,
    .labels = g_array_new (FALSE, FALSE, sizeof (FmBox)),
    .taken = g_array_new (FALSE, FALSE, sizeof (FmBox)),
    .marks = g_array_new (FALSE, FALSE, sizeof (FmChartMark)),
  };
}

void
fm_chart_canvas_clear (FmChartCanvas *self)
{
  g_clear_pointer (&self->cr, cairo_destroy);
  g_clear_object (&self->pango);
  g_clear_pointer (&self->labels, g_array_unref);
  g_clear_pointer (&self->taken, g_array_unref);
  g_clear_pointer (&self->marks, g_array_unref);
}

void
fm_chart_canvas_paint_ground (FmChartCanvas *self)
{
  fm_chart_canvas_set_colour (self, &self->palette.ground, 1);
  cairo_paint (self->cr);
}

void
fm_chart_canvas_set_colour (FmChartCanvas *self, const GdkRGBA *colour, double alpha)
{
  cairo_set_source_rgba (self->cr, colour->red, colour->green, colour->blue, alpha);
}

void
fm_chart_canvas_fill_ground (FmChartCanvas *self)
{
  cairo_save (self->cr);
  fm_chart_canvas_set_colour (self, &self->palette.ground, 1);
  if (self->see_through)
    cairo_set_operator (self->cr, CAIRO_OPERATOR_CLEAR);
  cairo_fill_preserve (self->cr);
  cairo_restore (self->cr);
}

void
fm_chart_canvas_circle (FmChartCanvas *self, double x, double y, double radius)
{
  cairo_new_path (self->cr);
  cairo_arc (self->cr, x, y, radius, 0, 2 * G_PI);
}

void
fm_chart_canvas_line (FmChartCanvas *self, double x1, double y1, double x2, double y2)
{
  cairo_new_path (self->cr);
  cairo_move_to (self->cr, x1, y1);
  cairo_line_to (self->cr, x2, y2);
  cairo_stroke (self->cr);
}

static PangoLayout *
layout_new (PangoContext *pango, const char *text)
{
  PangoLayout *layout = pango_layout_new (pango);
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();

  pango_layout_set_text (layout, text, -1);
  pango_attr_list_insert (attributes, pango_attr_scale_new (PANGO_SCALE_SMALL));
  pango_layout_set_attributes (layout, attributes);
  return layout;
}

void
fm_chart_measure_text (PangoContext *pango, const char *text, int *width, int *height)
{
  g_autoptr (PangoLayout) layout = layout_new (pango, text);

  pango_layout_get_pixel_size (layout, width, height);
}

int
fm_chart_line_height (PangoContext *pango)
{
  int height;

  fm_chart_measure_text (pango, "0", NULL, &height);
  return height;
}

FmBox
fm_chart_canvas_text_box (
    FmChartCanvas *self, const char *text, double x, double y, double align, int max_width)
{
  const FmBox room = { 0, 0, self->width, self->height };
  FmBox box;
  int width, height;

  fm_chart_measure_text (self->pango, text, &width, &height);
  if (max_width > 0)
    width = MIN (width, max_width);
  box = (FmBox){ x - align * width, y - height / 2.0, width, height };
  return fm_box_moved_into (&box, &room);
}

static void
draw_text (FmChartCanvas *self, const char *text, const FmBox *box)
{
  g_autoptr (PangoLayout) layout = layout_new (self->pango, text);
  int width;

  pango_layout_get_pixel_size (layout, &width, NULL);
  if (width > box->width) {
    pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
    pango_layout_set_width (layout, (int)(box->width * PANGO_SCALE));
  }
  fm_chart_canvas_set_colour (self, &self->palette.ink, 1);
  cairo_move_to (self->cr, box->x, box->y);
  pango_cairo_show_layout (self->cr, layout);
  /* An arc would be joined to where the text began. */
  cairo_new_path (self->cr);
  g_array_append_val (self->labels, *box);
  fm_chart_canvas_keep_clear (
      self, &(FmBox){ box->x - WORD_GAP_PX, box->y, box->width + 2 * WORD_GAP_PX, box->height });
}

void
fm_chart_canvas_text (
    FmChartCanvas *self, const char *text, double x, double y, double align, int max_width)
{
  const FmBox box = fm_chart_canvas_text_box (self, text, x, y, align, max_width);

  draw_text (self, text, &box);
}

gboolean
fm_chart_canvas_is_free (const FmChartCanvas *self, const FmBox *box)
{
  for (guint i = 0; i < self->taken->len; i++)
    if (fm_box_overlaps (box, &g_array_index (self->taken, FmBox, i)))
      return FALSE;
  return TRUE;
}

void
fm_chart_canvas_keep_clear (FmChartCanvas *self, const FmBox *box)
{
  g_array_append_val (self->taken, *box);
}

static void
draw_on_patch (FmChartCanvas *self, const char *text, const FmBox *box)
{
  cairo_new_path (self->cr);
  cairo_rectangle (self->cr, box->x - 1, box->y, box->width + 2, box->height);
  fm_chart_canvas_fill_ground (self);
  draw_text (self, text, box);
}

gboolean
fm_chart_canvas_label (FmChartCanvas *self, const char *text, const FmBox *mark)
{
  const FmBox room = { 0, 0, self->width, self->height };
  FmBox box = fm_chart_canvas_text_box (self, text, 0, 0, 0, 0);

  if (!fm_box_place_label (&box, mark, LABEL_GAP_PX, &room, (const FmBox *)self->taken->data,
                           self->taken->len))
    return FALSE;
  draw_on_patch (self, text, &box);
  return TRUE;
}

gboolean
fm_chart_canvas_label_on (FmChartCanvas *self, const char *text, double x, double y)
{
  const FmBox box = fm_chart_canvas_text_box (self, text, x, y, 0.5, 0);

  if (!fm_chart_canvas_is_free (self, &box))
    return FALSE;
  draw_on_patch (self, text, &box);
  return TRUE;
}

void
fm_chart_canvas_mark (FmChartCanvas *self, guint row, const FmBox *box)
{
  const FmChartMark mark = { row, *box };

  g_array_append_val (self->marks, mark);
}

/* All of it on the canvas, also around a mark that reaches from edge to edge. */
static FmBox
ring_around (const FmChartCanvas *self, const FmBox *mark)
{
  const double inset = RING_WIDTH_PX / 2;
  const FmBox ring = fm_box_grown (mark, RING_PX);
  const double left = MAX (ring.x, inset);
  const double top = MAX (ring.y, inset);

  return (FmBox){ left, top, MIN (ring.x + ring.width, self->width - inset) - left,
                  MIN (ring.y + ring.height, self->height - inset) - top };
}

void
fm_chart_canvas_ring (FmChartCanvas *self, const FmBox *mark)
{
  FmBox ring;
  double round_px;

  ring = ring_around (self, mark);
  round_px = MIN (ring.width, ring.height) / 2;
  /* A bar keeps its corners, a small mark gets a circle. */
  round_px = ring.width < SMALL_MARK_PX && ring.height < SMALL_MARK_PX ? round_px : RING_PX;
  cairo_new_path (self->cr);
  for (int i = 0; i < 4; i++) {
    const double x = i == 0 || i == 3 ? ring.x + ring.width - round_px : ring.x + round_px;
    const double y = i < 2 ? ring.y + ring.height - round_px : ring.y + round_px;

    cairo_arc (self->cr, x, y, round_px, i * G_PI / 2, (i + 1) * G_PI / 2);
  }
  cairo_close_path (self->cr);
  fm_chart_canvas_set_colour (self, &self->palette.accent, 1);
  cairo_set_line_width (self->cr, RING_WIDTH_PX);
  cairo_stroke (self->cr);
}

static char *
tick_text (const FmChartScale *scale, guint index)
{
  return fm_number_format (fm_chart_scale_tick (scale, index), scale->decimals);
}

double
fm_chart_axis_width (PangoContext *pango, const FmChartScale *scale)
{
  int widest = 0;

  for (guint i = 0; i < scale->n_ticks; i++) {
    g_autofree char *text = tick_text (scale, i);
    int width;

    fm_chart_measure_text (pango, text, &width, NULL);
    widest = MAX (widest, width);
  }
  return widest + 2 * GAP_PX;
}

int
fm_chart_axis_height (PangoContext *pango)
{
  return (int)TICK_GAP_PX + fm_chart_line_height (pango) + 1;
}

/* A length is measured from zero, so that its line is as strong as the marks. */
static void
set_grid (FmChartCanvas *self, const FmChartScale *scale, double tick)
{
  const gboolean is_zero = fabs (tick) < scale->step / 2.0;

  cairo_set_line_width (self->cr, 1);
  fm_chart_canvas_set_colour (self, is_zero ? &self->palette.ink : &self->palette.grid, 1);
}

void
fm_chart_canvas_y_axis (FmChartCanvas *self, const FmChartFrame *frame, const FmChartScale *scale)
{
  for (guint i = 0; i < scale->n_ticks; i++) {
    const double tick = fm_chart_scale_tick (scale, i);
    const double place = fm_chart_scale_place (scale, tick, frame->bottom, frame->top);
    const double y = floor (place) + 0.5;
    g_autofree char *text = tick_text (scale, i);
    const FmBox box = fm_chart_canvas_text_box (self, text, frame->left - GAP_PX, y, 1, 0);

    set_grid (self, scale, tick);
    fm_chart_canvas_line (self, frame->left, y, frame->right, y);
    if (fm_chart_canvas_is_free (self, &box))
      draw_text (self, text, &box);
  }
}

void
fm_chart_canvas_x_axis (FmChartCanvas *self,
                        const FmChartFrame *frame,
                        const FmChartScale *scale,
                        gboolean with_lines)
{
  for (guint i = 0; i < scale->n_ticks; i++) {
    const double tick = fm_chart_scale_tick (scale, i);
    const double x = floor (fm_chart_scale_place (scale, tick, frame->left, frame->right)) + 0.5;
    g_autofree char *text = tick_text (scale, i);
    FmBox box = fm_chart_canvas_text_box (self, text, x, 0, 0.5, 0);

    box.y = frame->bottom + TICK_GAP_PX;
    if (with_lines) {
      set_grid (self, scale, tick);
      fm_chart_canvas_line (self, x, frame->top, x, frame->bottom);
    }
    if (fm_chart_canvas_is_free (self, &box))
      draw_text (self, text, &box);
  }
}
