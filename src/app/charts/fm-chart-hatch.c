/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-hatch.c - eight fills that stay apart in print and for every kind of eye */
#include "app/charts/fm-chart-hatch.h"

#define HATCH_PX 5.0
#define DOT_PX 1.8

static const struct {
  gboolean solid, rising, falling, flat, upright, dotted;
} patterns[FM_CHART_N_HATCHES] = {
  { .solid = TRUE }, { .solid = FALSE },  { .rising = TRUE },  { .dotted = TRUE },
  { .flat = TRUE },  { .falling = TRUE }, { .upright = TRUE }, { .rising = TRUE, .falling = TRUE },
};

static void
draw_lines (cairo_t *cr, const FmBox *box, double dx, double dy)
{
  const double reach = box->width + box->height;

  for (double at = -reach; at < reach; at += HATCH_PX) {
    if (dx > 0.0)
      cairo_move_to (cr, box->x, box->y + at);
    else
      cairo_move_to (cr, box->x + at, box->y);
    cairo_rel_line_to (cr, dx * reach, dy * reach);
  }
  cairo_stroke (cr);
}

static void
draw_dots (cairo_t *cr, const FmBox *box)
{
  for (double y = box->y + 2.0; y < box->y + box->height; y += HATCH_PX)
    for (double x = box->x + 2.0; x < box->x + box->width; x += HATCH_PX)
      cairo_rectangle (cr, x, y, DOT_PX, DOT_PX);
  cairo_fill (cr);
}

void
fm_chart_hatch (FmChartCanvas *canvas, const FmBox *box, guint index)
{
  cairo_t *cr = canvas->cr;

  g_return_if_fail (index < FM_CHART_N_HATCHES);
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_rectangle (cr, box->x, box->y, box->width, box->height);
  cairo_clip (cr);
  cairo_set_line_width (cr, 1.2);
  if (patterns[index].solid)
    cairo_paint (cr);
  if (patterns[index].rising)
    draw_lines (cr, box, 1.0, -1.0);
  if (patterns[index].falling)
    draw_lines (cr, box, 1.0, 1.0);
  if (patterns[index].flat)
    draw_lines (cr, box, 1.0, 0.0);
  if (patterns[index].upright)
    draw_lines (cr, box, 0.0, 1.0);
  if (patterns[index].dotted)
    draw_dots (cr, box);
  cairo_restore (cr);
}
