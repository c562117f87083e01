/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-canvas.h - what a chart is drawn on: a surface, its size, its colours and its letters
 *
 * Needs no window: the same drawing goes to the screen, to a file and to a test. A canvas keeps
 * the place of every text and of every mark, so that labels keep clear of each other and a
 * pointer finds what it is at. Lengths in pixels, y grows downwards.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/base/fm-box.h"
#include "core/base/fm-chart-scale.h"
#include "core/base/fm-colour-ramp.h"

G_BEGIN_DECLS

typedef enum {
  FM_CHART_LIGHT,
  FM_CHART_DARK,
  FM_CHART_LIGHT_CONTRAST,
  FM_CHART_DARK_CONTRAST,
} FmChartScheme;

#define FM_CHART_N_SCHEMES (FM_CHART_DARK_CONTRAST + 1)

typedef struct {
  GdkRGBA ground; /* what the chart stands on */
  GdkRGBA ink;    /* text and most marks */
  GdkRGBA grid;   /* lines that only guide the eye */
  GdkRGBA accent; /* values and curves */
  FmLab low;      /* ends of the ramp of shades: the ground is nearer to the low one */
  FmLab high;
} FmChartPalette;

/** Place of one row of the chart's table. */
typedef struct {
  guint row;
  FmBox box;
} FmChartMark;

typedef struct {
  cairo_t *cr;
  PangoContext *pango;
  FmChartPalette palette;
  double width;
  double height;
  gboolean see_through; /* the ground belongs to something below and shows through */
  GArray *labels;       /* FmBox of every text drawn */
  GArray *taken;        /* FmBox that a label has to keep clear of: those and more */
  GArray *marks;        /* FmChartMark */
} FmChartCanvas;

/** Where values lie on a canvas. */
typedef struct {
  double left;
  double right;
  double top;
  double bottom;
} FmChartFrame;

/** @cr: (transfer none); @pango: (nullable): the letters of a widget; the system's without. */
void fm_chart_canvas_init (FmChartCanvas *self,
                           cairo_t *cr,
                           PangoContext *pango,
                           double width,
                           double height,
                           FmChartScheme scheme);
void fm_chart_canvas_clear (FmChartCanvas *self);
/** Paints all of it in the colour of the ground. */
void fm_chart_canvas_paint_ground (FmChartCanvas *self);

void fm_chart_canvas_set_colour (FmChartCanvas *self, const GdkRGBA *colour, double alpha);
/** Fills the path with the ground, which may show through; the path stays. */
void fm_chart_canvas_fill_ground (FmChartCanvas *self);
/** A path of its own: nothing joins it to what was drawn before. */
void fm_chart_canvas_circle (FmChartCanvas *self, double x, double y, double radius);
void fm_chart_canvas_line (FmChartCanvas *self, double x1, double y1, double x2, double y2);

/** Size of small text, in pixels; @width and @height may be NULL. */
void fm_chart_measure_text (PangoContext *pango, const char *text, int *width, int *height);
/** Height of a line of it. */
int fm_chart_line_height (PangoContext *pango);
/**
 * fm_chart_canvas_text:
 * @align: 0 = @x is the left edge, 0.5 = the middle, 1 = the right edge
 * @y: the middle of the line
 * @max_width: dots at the end beyond that, 0 = no limit
 *
 * Draws small text in ink; moved where it would leave the canvas. No current point is left.
 */
void fm_chart_canvas_text (
    FmChartCanvas *self, const char *text, double x, double y, double align, int max_width);
/** Where fm_chart_canvas_text() would draw it. */
FmBox fm_chart_canvas_text_box (
    FmChartCanvas *self, const char *text, double x, double y, double align, int max_width);
/** No label is to stand in @box. */
void fm_chart_canvas_keep_clear (FmChartCanvas *self, const FmBox *box);
/** TRUE while nothing in @box has to be kept clear of. */
gboolean fm_chart_canvas_is_free (const FmChartCanvas *self, const FmBox *box);
/** Names a mark on a patch of the ground, beside it where there is room; FALSE when there is none
 * and nothing was drawn. */
gboolean fm_chart_canvas_label (FmChartCanvas *self, const char *text, const FmBox *mark);
/** The same with its middle at that place and nowhere else. */
gboolean fm_chart_canvas_label_on (FmChartCanvas *self, const char *text, double x, double y);

/** Says where row @row of the chart's table is drawn. */
void fm_chart_canvas_mark (FmChartCanvas *self, guint row, const FmBox *box);

/** A ring around the mark that is picked. */
void fm_chart_canvas_ring (FmChartCanvas *self, const FmBox *mark);

/** Lines across the frame at the ticks, a stronger one at zero, and the numbers at the left. */
void
fm_chart_canvas_y_axis (FmChartCanvas *self, const FmChartFrame *frame, const FmChartScale *scale);
/** The numbers below the frame, as many as have room; @with_lines: and lines up from them. */
void fm_chart_canvas_x_axis (FmChartCanvas *self,
                             const FmChartFrame *frame,
                             const FmChartScale *scale,
                             gboolean with_lines);
/** Width that the numbers of an upright axis take, with their gap. */
double fm_chart_axis_width (PangoContext *pango, const FmChartScale *scale);
/** Height that the numbers below a frame take, with their gap. */
int fm_chart_axis_height (PangoContext *pango);

G_END_DECLS
