/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-intervals.c - values with their intervals, one a line */
#include "app/charts/fm-chart-intervals.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

#define SMALLEST_ROW_PX 28
#define ROW_GAP_PX 8
#define GAP_PX 8
#define DOT_PX 4.5
#define DIAMOND_PX 6
#define END_PX 5
#define MAX_TICKS 6
#define VALUES_PER_ROW 4
/* The labels never take more than this part of the width. */
#define LABEL_PART 0.4

struct _FmChartIntervals {
  FmChart parent_instance;

  GArray *rows; /* FmChartInterval */
  FmChartIntervalAxis axis;
};

G_DEFINE_FINAL_TYPE (FmChartIntervals, fm_chart_intervals, FM_TYPE_CHART)

typedef struct {
  FmChartCanvas *canvas;
  FmChartFrame frame;
  const FmChartScale *scale;
} Drawing;

static void
clear_row (gpointer data)
{
  g_free (((FmChartInterval *)data)->label);
}

static int
row_height (PangoContext *pango)
{
  return MAX (SMALLEST_ROW_PX, fm_chart_line_height (pango) + ROW_GAP_PX);
}

static double
to_x (const Drawing *self, double value)
{
  return fm_chart_scale_place (self->scale, value, self->frame.left, self->frame.right);
}

static gboolean
is_on_axis (const Drawing *self, double value)
{
  return value >= self->scale->min && value <= self->scale->max;
}

static void
draw_interval (const Drawing *self, const FmChartInterval *row, double y)
{
  const double ends[] = { row->low, row->high };

  cairo_set_line_width (self->canvas->cr, 2);
  fm_chart_canvas_line (self->canvas, to_x (self, row->low), y, to_x (self, row->high), y);
  for (guint i = 0; i < G_N_ELEMENTS (ends); i++)
    if (is_on_axis (self, ends[i]))
      fm_chart_canvas_line (self->canvas, to_x (self, ends[i]), y - END_PX, to_x (self, ends[i]),
                            y + END_PX);
}

static void
draw_expected (cairo_t *cr, double x, double y)
{
  cairo_set_line_width (cr, 1.5);
  cairo_new_path (cr);
  cairo_move_to (cr, x, y - DIAMOND_PX);
  cairo_line_to (cr, x + DIAMOND_PX, y);
  cairo_line_to (cr, x, y + DIAMOND_PX);
  cairo_line_to (cr, x - DIAMOND_PX, y);
  cairo_close_path (cr);
  cairo_stroke (cr);
}

static void
draw_row (const Drawing *self, const FmChartInterval *row, guint index)
{
  FmChartCanvas *canvas = self->canvas;
  const double y = (index + 0.5) * row_height (canvas->pango);
  const double x = isnan (row->value) ? self->frame.left + DOT_PX : to_x (self, row->value);

  fm_chart_canvas_text (canvas, row->label, 0, y, 0, (int)(self->frame.left - 2 * GAP_PX));
  if (!isnan (row->expected))
    draw_expected (canvas->cr, to_x (self, row->expected), y);
  fm_chart_canvas_set_colour (canvas, &canvas->palette.accent, 1);
  if (!isnan (row->low) && !isnan (row->high))
    draw_interval (self, row, y);
  fm_chart_canvas_mark (canvas, index, &(FmBox){ x - DOT_PX, y - DOT_PX, 2 * DOT_PX, 2 * DOT_PX });
  if (isnan (row->value)) {
    fm_chart_canvas_text (canvas, "?", x, y, 0.5, 0);
    return;
  }
  fm_chart_canvas_circle (canvas, x, y, DOT_PX);
  cairo_fill (canvas->cr);
}

static double
label_width (const FmChartInterval *rows, guint n_rows, FmChartCanvas *canvas)
{
  int widest = 0;

  for (guint i = 0; i < n_rows; i++) {
    int width;

    fm_chart_measure_text (canvas->pango, rows[i].label, &width, NULL);
    widest = MAX (widest, width);
  }
  return MIN (widest, floor (LABEL_PART * canvas->width));
}

void
fm_chart_intervals_draw (const FmChartInterval *rows,
                         guint n_rows,
                         const FmChartIntervalAxis *axis,
                         FmChartCanvas *canvas)
{
  const Drawing drawing = {
    .canvas = canvas,
    .frame = { .left = label_width (rows, n_rows, canvas) + 2 * GAP_PX,
               .right = canvas->width - 2 * GAP_PX,
               .bottom = (double)n_rows * row_height (canvas->pango) },
    .scale = &axis->scale,
  };
  const double words_y = drawing.frame.bottom + fm_chart_axis_height (canvas->pango) +
                         fm_chart_line_height (canvas->pango) / 2.0;
  const int half_px = (int)(drawing.frame.right - drawing.frame.left) / 2;

  if (half_px <= 0)
    return;
  fm_chart_canvas_x_axis (canvas, &drawing.frame, drawing.scale, TRUE);
  if (axis->low_words != NULL)
    fm_chart_canvas_text (canvas, axis->low_words, drawing.frame.left, words_y, 0, half_px);
  if (axis->high_words != NULL)
    fm_chart_canvas_text (canvas, axis->high_words, drawing.frame.right, words_y, 1, half_px);
  for (guint i = 0; i < n_rows; i++)
    draw_row (&drawing, &rows[i], i);
}

static void
draw (FmChart *chart, FmChartCanvas *canvas)
{
  const FmChartIntervals *self = FM_CHART_INTERVALS (chart);

  fm_chart_intervals_draw ((const FmChartInterval *)self->rows->data, self->rows->len, &self->axis,
                           canvas);
}

static void
get_size (FmChart *chart, GtkOrientation orientation, int *minimum, int *natural)
{
  const FmChartIntervals *self = FM_CHART_INTERVALS (chart);
  const gboolean has_words = self->axis.low_words != NULL || self->axis.high_words != NULL;
  PangoContext *pango = gtk_widget_get_pango_context (GTK_WIDGET (chart));
  const int height = row_height (pango) * (int)self->rows->len + fm_chart_axis_height (pango) +
                     (has_words ? fm_chart_line_height (pango) : 0);

  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 200 : height;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 480 : height;
}

static void
fm_chart_intervals_finalize (GObject *object)
{
  g_array_unref (FM_CHART_INTERVALS (object)->rows);
  G_OBJECT_CLASS (fm_chart_intervals_parent_class)->finalize (object);
}

static void
fm_chart_intervals_class_init (FmChartIntervalsClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_chart_intervals_finalize;
  FM_CHART_CLASS (klass)->draw = draw;
  FM_CHART_CLASS (klass)->get_size = get_size;
}

static void
fm_chart_intervals_init (FmChartIntervals *self)
{
  self->rows = g_array_new (FALSE, FALSE, sizeof (FmChartInterval));
  g_array_set_clear_func (self->rows, clear_row);
}

GtkWidget *
fm_chart_intervals_new (void)
{
  return g_object_new (FM_TYPE_CHART_INTERVALS, NULL);
}

static FmChartTable *
make_table (const char *title, int decimals, const FmChartInterval *rows, guint n_rows)
{
  const char *headings[] = { "", title, _ ("From"), _ ("To"), _ ("Expected"), NULL };
  FmChartTable *table = fm_chart_table_new (headings);

  for (guint i = 0; i < n_rows; i++) {
    const FmChartInterval *row = &rows[i];
    g_autofree char *value = fm_number_format (row->value, decimals);
    g_autofree char *low = fm_number_format (row->low, decimals);
    g_autofree char *high = fm_number_format (row->high, decimals);
    g_autofree char *expected = fm_number_format (row->expected, decimals);
    const char *cells[] = { row->label, value, low, high, expected, NULL };

    if (isnan (row->low) || isnan (row->high))
      /* Translators: what, then its value */
      fm_chart_table_add (table, g_strdup_printf (_ ("%s: %s"), row->label, value), cells);
    else
      fm_chart_table_add (
          table, g_strdup_printf (_ ("%s: %s, from %s to %s"), row->label, value, low, high),
          cells);
  }
  return table;
}

static void
scale_to_rows (FmChartScale *scale, const FmChartInterval *rows, guint n_rows)
{
  const guint n = n_rows * VALUES_PER_ROW;
  g_autofree double *values = g_new (double, MAX (n, 1));

  for (guint i = 0; i < n_rows; i++) {
    values[VALUES_PER_ROW * i] = rows[i].value;
    values[VALUES_PER_ROW * i + 1] = rows[i].low;
    values[VALUES_PER_ROW * i + 2] = rows[i].high;
    values[VALUES_PER_ROW * i + 3] = rows[i].expected;
  }
  fm_chart_scale_init (scale, values, n, MAX_TICKS);
}

void
fm_chart_intervals_set (FmChartIntervals *self,
                        const char *title,
                        int decimals,
                        const FmChartIntervalAxis *axis,
                        const FmChartInterval *rows,
                        guint n_rows)
{
  g_return_if_fail (FM_IS_CHART_INTERVALS (self));
  g_array_set_size (self->rows, 0);
  for (guint i = 0; i < n_rows; i++) {
    FmChartInterval row = rows[i];

    row.label = g_strdup (rows[i].label);
    g_array_append_val (self->rows, row);
  }
  self->axis = axis != NULL ? *axis : (FmChartIntervalAxis){ .low_words = NULL };
  if (self->axis.scale.n_ticks == 0)
    scale_to_rows (&self->axis.scale, rows, n_rows);
  fm_chart_say (FM_CHART (self), title, NULL, make_table (title, decimals, rows, n_rows));
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
