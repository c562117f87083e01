/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-series.c - one value of each version, or of each date, as dots */
#include "app/charts/fm-chart-series.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-date.h"
#include "core/base/fm-number.h"

#define DOT_PX 4.0
#define END_PX 4.0
#define MARGIN_TOP 14
#define MARGIN_END 14
/* Between the ends of the frame and the first and last dot. */
#define INSET_PX 20.0
#define TICK_GAP_PX 8.0
#define MAX_TICKS 6
#define VALUES_PER_POINT 3

struct _FmChartSeries {
  FmChart parent_instance;

  FmSeriesAxis axis; /* without its title */
  GArray *points;    /* FmSeriesPoint */
};

G_DEFINE_FINAL_TYPE (FmChartSeries, fm_chart_series, FM_TYPE_CHART)

typedef struct {
  const FmSeriesAxis *axis;
  const FmSeriesPoint *points;
  guint n_points;
  FmChartCanvas *canvas;
  FmChartFrame frame;
  FmChartScale scale;
  double first; /* ends of what lies along the bottom */
  double last;
} Drawing;

static double
along (const FmSeriesAxis *axis, const FmSeriesPoint *point)
{
  return axis->over_time ? (double)point->time_s : point->version_number;
}

static char *
along_text (const FmSeriesAxis *axis, const FmSeriesPoint *point)
{
  return axis->over_time ? fm_date_text (point->time_s)
                         : g_strdup_printf ("%d", point->version_number);
}

static void
make_scale (Drawing *self)
{
  double low = INFINITY, high = -INFINITY;

  for (guint i = 0; i < self->n_points; i++) {
    const FmSeriesPoint *point = &self->points[i];

    /* fmin and fmax take the number when the other is NaN */
    low = fmin (low, fmin (point->value, point->low));
    high = fmax (high, fmax (point->value, point->high));
  }
  if (!isnan (self->axis->least) && !isnan (self->axis->most))
    fm_chart_scale_init_ends (&self->scale, self->axis->least, self->axis->most,
                              (guint)(self->axis->most - self->axis->least), MAX_TICKS);
  else
    fm_chart_scale_init_between (&self->scale, isfinite (low) ? low : 0, isfinite (high) ? high : 1,
                                 MAX_TICKS);
}

static double
to_x (const Drawing *self, const FmSeriesPoint *point)
{
  const double left = self->frame.left + INSET_PX;
  const double right = self->frame.right - INSET_PX;

  if (self->last <= self->first)
    return (left + right) / 2;
  return left +
         (along (self->axis, point) - self->first) / (self->last - self->first) * (right - left);
}

static double
to_y (const Drawing *self, double value)
{
  return fm_chart_scale_place (&self->scale, value, self->frame.bottom, self->frame.top);
}

static FmBox
box_of (const Drawing *self, const FmSeriesPoint *point)
{
  return (FmBox){ to_x (self, point) - DOT_PX, to_y (self, point->value) - DOT_PX, 2 * DOT_PX,
                  2 * DOT_PX };
}

static void
draw_range (const Drawing *self, const FmSeriesPoint *point)
{
  const double x = to_x (self, point);
  const double ends[] = { point->low, point->high };

  if (isnan (point->low) || isnan (point->high))
    return;
  cairo_set_line_width (self->canvas->cr, 1.5);
  fm_chart_canvas_line (self->canvas, x, to_y (self, point->low), x, to_y (self, point->high));
  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    fm_chart_canvas_line (self->canvas, x - END_PX, to_y (self, ends[i]), x + END_PX,
                          to_y (self, ends[i]));
}

static void
draw_points (const Drawing *self)
{
  for (guint i = 0; i < self->n_points; i++) {
    const FmBox box = box_of (self, &self->points[i]);

    fm_chart_canvas_set_colour (self->canvas, &self->canvas->palette.accent, 1);
    draw_range (self, &self->points[i]);
    fm_chart_canvas_circle (self->canvas, box.x + DOT_PX, box.y + DOT_PX, DOT_PX);
    cairo_fill (self->canvas->cr);
    fm_chart_canvas_mark (self->canvas, i, &box);
    fm_chart_canvas_keep_clear (self->canvas, &box);
  }
}

/* Over time the number of the version, else the value. */
static void
name_points (const Drawing *self)
{
  for (guint i = 0; i < self->n_points; i++) {
    const FmSeriesPoint *point = &self->points[i];
    const FmBox box = box_of (self, point);
    g_autofree char *text = self->axis->over_time
                                ? g_strdup_printf ("%d", point->version_number)
                                : fm_number_format (point->value, self->axis->decimals);

    fm_chart_canvas_label (self->canvas, text, &box);
  }
}

static void
name_along (const Drawing *self, const FmSeriesPoint *point)
{
  const double line = fm_chart_line_height (self->canvas->pango);
  g_autofree char *text = along_text (self->axis, point);
  const double y = self->frame.bottom + TICK_GAP_PX + line / 2;
  const FmBox box = fm_chart_canvas_text_box (self->canvas, text, to_x (self, point), y, 0.5, 0);

  if (fm_chart_canvas_is_free (self->canvas, &box))
    fm_chart_canvas_text (self->canvas, text, to_x (self, point), y, 0.5, 0);
}

/* The ends first: those between as they have room. */
static void
name_ends (const Drawing *self)
{
  if (self->n_points == 0)
    return;
  name_along (self, &self->points[0]);
  name_along (self, &self->points[self->n_points - 1]);
  for (guint i = 1; i + 1 < self->n_points; i++)
    name_along (self, &self->points[i]);
}

void
fm_chart_series_draw (const FmSeriesAxis *axis,
                      const FmSeriesPoint *points,
                      guint n_points,
                      FmChartCanvas *canvas)
{
  Drawing drawing = { .axis = axis,
                      .points = points,
                      .n_points = n_points,
                      .canvas = canvas,
                      .first = INFINITY,
                      .last = -INFINITY };
  FmChartFrame *frame = &drawing.frame;

  for (guint i = 0; i < n_points; i++) {
    drawing.first = MIN (drawing.first, along (axis, &points[i]));
    drawing.last = MAX (drawing.last, along (axis, &points[i]));
  }
  make_scale (&drawing);
  frame->left = fm_chart_axis_width (canvas->pango, &drawing.scale);
  frame->right = canvas->width - MARGIN_END;
  frame->top = MARGIN_TOP;
  frame->bottom =
      canvas->height - fm_chart_axis_height (canvas->pango) - fm_chart_line_height (canvas->pango);
  if (frame->right <= frame->left + 2 * INSET_PX || frame->bottom <= frame->top)
    return;
  fm_chart_canvas_y_axis (canvas, frame, &drawing.scale);
  fm_chart_canvas_text (
      canvas, axis->over_time ? _ ("Date; the number beside a dot is the version") : _ ("Version"),
      frame->left, canvas->height - fm_chart_line_height (canvas->pango) / 2.0, 0,
      (int)(frame->right - frame->left));
  draw_points (&drawing);
  name_ends (&drawing);
  name_points (&drawing);
}

static void
draw (FmChart *chart, FmChartCanvas *canvas)
{
  const FmChartSeries *self = FM_CHART_SERIES (chart);

  fm_chart_series_draw (&self->axis, (const FmSeriesPoint *)self->points->data, self->points->len,
                        canvas);
}

static void
get_size (FmChart *chart, GtkOrientation orientation, int *minimum, int *natural)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 220 : 170;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 480 : 190;
}

static void
fm_chart_series_finalize (GObject *object)
{
  g_array_unref (FM_CHART_SERIES (object)->points);
  G_OBJECT_CLASS (fm_chart_series_parent_class)->finalize (object);
}

static void
fm_chart_series_class_init (FmChartSeriesClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_chart_series_finalize;
  FM_CHART_CLASS (klass)->draw = draw;
  FM_CHART_CLASS (klass)->get_size = get_size;
}

static void
fm_chart_series_init (FmChartSeries *self)
{
  self->points = g_array_new (FALSE, FALSE, sizeof (FmSeriesPoint));
}

GtkWidget *
fm_chart_series_new (void)
{
  return g_object_new (FM_TYPE_CHART_SERIES, NULL);
}

static void
add_row (FmChartTable *table, const FmSeriesAxis *axis, const FmSeriesPoint *point)
{
  g_autofree char *version = g_strdup_printf (_ ("Version %d"), point->version_number);
  g_autofree char *date = fm_date_text (point->time_s);
  g_autofree char *value = fm_number_format (point->value, axis->decimals);
  g_autofree char *low = fm_number_format (point->low, axis->decimals);
  g_autofree char *high = fm_number_format (point->high, axis->decimals);
  const char *cells[] = { version, date, value, low, high, NULL };

  if (isnan (point->low))
    /* Translators: "Version 3", a date, a value. */
    fm_chart_table_add (table, g_strdup_printf (_ ("%s, %s: %s"), version, date, value), cells);
  else
    fm_chart_table_add (
        table,
        /* Translators: "Version 3", a date, a mean, the least and the most of its values. */
        g_strdup_printf (_ ("%s, %s: %s, from %s to %s"), version, date, value, low, high), cells);
}

static FmChartTable *
make_table (const FmSeriesAxis *axis, const FmSeriesPoint *points, guint n_points)
{
  const char *headings[] = { _ ("Version"), _ ("Date"), axis->title, _ ("From"), _ ("To"), NULL };
  FmChartTable *table = n_points > 0 ? fm_chart_table_new (headings) : NULL;

  for (guint i = 0; i < n_points; i++)
    add_row (table, axis, &points[i]);
  return table;
}

void
fm_chart_series_set (FmChartSeries *self,
                     const FmSeriesAxis *axis,
                     const FmSeriesPoint *points,
                     guint n_points)
{
  g_return_if_fail (FM_IS_CHART_SERIES (self));
  self->axis = *axis;
  self->axis.title = NULL;
  g_array_set_size (self->points, 0);
  if (n_points > 0)
    g_array_append_vals (self->points, points, n_points);
  fm_chart_say (FM_CHART (self), axis->title, NULL, make_table (axis, points, n_points));
}
