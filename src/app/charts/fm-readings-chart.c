/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-readings-chart.c - core temperature over time as a small curve */
#include "app/charts/fm-readings-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "core/base/fm-number.h"
#include "core/base/fm-units.h"

/* USDA FSIS, Safe minimum internal temperature chart: ground meat, consumers. */
#define FIGURE_C 71.1
#define MARGIN_END 12
#define MARGIN_TOP 12
#define DOT_PX 3.5
#define GAP_PX 8
#define MAX_TICKS 6
/* An estimate is walked along and tabled in so many steps. */
#define N_STOPS 8

struct _FmReadingsChart {
  FmChart parent_instance;

  GArray *readings; /* FmCoreReading */
  GArray *estimate; /* FmCoreReading; empty = none */
};

G_DEFINE_FINAL_TYPE (FmReadingsChart, fm_readings_chart, FM_TYPE_CHART)

typedef struct {
  const FmReadingsData *data;
  FmChartCanvas *canvas;
  FmChartFrame frame;
  FmChartScale minutes;
  FmChartScale temp; /* in the unit shown */
} Drawing;

static const FmCoreReading *
get_point (const GArray *curve, guint index)
{
  return &g_array_index (curve, FmCoreReading, index);
}

/* Index of the point at @stop of N_STOPS, from the first to the last. */
static guint
stop_index (const GArray *curve, guint stop)
{
  return stop * (curve->len - 1) / (N_STOPS - 1);
}

static double
to_shown (const FmReadingsData *data, double temp_c)
{
  return data->fahrenheit ? fm_celsius_to_fahrenheit (temp_c) : temp_c;
}

static const char *
symbol (const FmReadingsData *data)
{
  return data->fahrenheit ? "°F" : "°C";
}

static double
to_x (const Drawing *self, double time_s)
{
  return fm_chart_scale_place (&self->minutes, time_s / 60.0, self->frame.left, self->frame.right);
}

static double
to_y (const Drawing *self, double temp_c)
{
  return fm_chart_scale_place (&self->temp, to_shown (self->data, temp_c), self->frame.bottom,
                               self->frame.top);
}

static void
widen (const GArray *curve, double *last_s, double *low_c, double *high_c)
{
  for (guint i = 0; i < curve->len; i++) {
    const FmCoreReading *point = get_point (curve, i);

    *last_s = MAX (*last_s, point->time_s);
    *low_c = MIN (*low_c, point->temp_c);
    *high_c = MAX (*high_c, point->temp_c);
  }
}

static void
make_scales (Drawing *self)
{
  double last_s = 60;
  double low_c = 20;
  double high_c = FIGURE_C + 5;

  widen (self->data->readings, &last_s, &low_c, &high_c);
  widen (self->data->estimate, &last_s, &low_c, &high_c);
  fm_chart_scale_init_between (&self->minutes, 0, last_s / 60.0, MAX_TICKS);
  fm_chart_scale_init_between (&self->temp, to_shown (self->data, low_c),
                               to_shown (self->data, high_c), MAX_TICKS);
}

static void
draw_figure (const Drawing *self)
{
  static const double dashes[] = { 6, 4 };
  FmChartCanvas *canvas = self->canvas;
  const double y = floor (to_y (self, FIGURE_C)) + 0.5;
  g_autofree char *number =
      fm_number_format (to_shown (self->data, FIGURE_C), self->data->fahrenheit ? 0 : 1);
  g_autofree char *label = g_strdup_printf ("USDA FSIS %s %s", number, symbol (self->data));

  fm_chart_canvas_set_colour (canvas, &canvas->palette.ink, 1);
  cairo_save (canvas->cr);
  cairo_set_line_width (canvas->cr, 1);
  cairo_set_dash (canvas->cr, dashes, G_N_ELEMENTS (dashes), 0);
  fm_chart_canvas_line (canvas, self->frame.left, y, self->frame.right, y);
  cairo_restore (canvas->cr);
  fm_chart_canvas_text (canvas, label, self->frame.left + GAP_PX / 2.0, y - 9, 0, 0);
}

static void
stroke_curve (const Drawing *self, const GArray *curve)
{
  cairo_set_line_width (self->canvas->cr, 2);
  cairo_new_path (self->canvas->cr);
  for (guint i = 0; i < curve->len; i++)
    cairo_line_to (self->canvas->cr, to_x (self, get_point (curve, i)->time_s),
                   to_y (self, get_point (curve, i)->temp_c));
  cairo_stroke (self->canvas->cr);
}

static void
mark (const Drawing *self, const FmCoreReading *point, guint row)
{
  const double x = to_x (self, point->time_s);
  const double y = to_y (self, point->temp_c);

  fm_chart_canvas_mark (self->canvas, row,
                        &(FmBox){ x - DOT_PX, y - DOT_PX, 2 * DOT_PX, 2 * DOT_PX });
}

static void
draw_readings (const Drawing *self)
{
  const GArray *readings = self->data->readings;

  fm_chart_canvas_set_colour (self->canvas, &self->canvas->palette.accent, 1);
  stroke_curve (self, readings);
  for (guint i = 0; i < readings->len; i++) {
    const FmCoreReading *reading = get_point (readings, i);

    fm_chart_canvas_circle (self->canvas, to_x (self, reading->time_s),
                            to_y (self, reading->temp_c), DOT_PX);
    cairo_fill (self->canvas->cr);
    mark (self, reading, i);
  }
}

/* Dots in a row, without marks: told from the measured curve without its colour. */
static void
draw_estimate (const Drawing *self)
{
  static const double dots[] = { 2, 4 };
  const GArray *estimate = self->data->estimate;

  fm_chart_canvas_set_colour (self->canvas, &self->canvas->palette.ink, 1);
  cairo_save (self->canvas->cr);
  cairo_set_dash (self->canvas->cr, dots, G_N_ELEMENTS (dots), 0);
  stroke_curve (self, estimate);
  cairo_restore (self->canvas->cr);
  for (guint stop = 0; estimate->len > 0 && stop < N_STOPS; stop++)
    mark (self, get_point (estimate, stop_index (estimate, stop)),
          self->data->readings->len + stop);
}

/* What the axes and the lines are; the legend first where both have no room. */
static void
draw_words (const Drawing *self)
{
  const double y = self->canvas->height - fm_chart_line_height (self->canvas->pango) / 2.0;
  const char *legend = _ ("● measured   ┈ estimate");
  g_autofree char *unit = g_strdup_printf (_ ("Core %s over minutes"), symbol (self->data));
  int room_px = (int)(self->frame.right - self->frame.left);
  int legend_px;

  if (self->data->estimate->len > 0) {
    fm_chart_measure_text (self->canvas->pango, legend, &legend_px, NULL);
    fm_chart_canvas_text (self->canvas, legend, self->frame.right, y, 1, room_px);
    room_px -= legend_px + GAP_PX;
  }
  if (room_px > 4 * GAP_PX)
    fm_chart_canvas_text (self->canvas, unit, self->frame.left, y, 0, room_px);
}

void
fm_readings_chart_draw (const FmReadingsData *data, FmChartCanvas *canvas)
{
  Drawing drawing = { .data = data, .canvas = canvas };
  FmChartFrame *frame = &drawing.frame;

  make_scales (&drawing);
  frame->left = fm_chart_axis_width (canvas->pango, &drawing.temp);
  frame->right = canvas->width - MARGIN_END;
  frame->top = MARGIN_TOP;
  frame->bottom =
      canvas->height - fm_chart_axis_height (canvas->pango) - fm_chart_line_height (canvas->pango);
  if (frame->right <= frame->left || frame->bottom <= frame->top)
    return;
  fm_chart_canvas_y_axis (canvas, frame, &drawing.temp);
  fm_chart_canvas_x_axis (canvas, frame, &drawing.minutes, FALSE);
  draw_words (&drawing);
  draw_figure (&drawing);
  draw_estimate (&drawing);
  draw_readings (&drawing);
}

static FmReadingsData
get_data (FmReadingsChart *self)
{
  return (FmReadingsData){ self->readings, self->estimate, fm_notebook_units ()->fahrenheit };
}

static void
draw (FmChart *chart, FmChartCanvas *canvas)
{
  const FmReadingsData data = get_data (FM_READINGS_CHART (chart));

  fm_readings_chart_draw (&data, canvas);
}

static void
get_size (FmChart *chart, GtkOrientation orientation, int *minimum, int *natural)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 200 : 180;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 480 : 200;
}

static char *
describe_readings (FmReadingsChart *self)
{
  const guint n = self->readings->len;
  const FmCoreReading *first;
  const FmCoreReading *last;
  double peak_c = -G_MAXDOUBLE;
  g_autofree char *from = NULL;
  g_autofree char *to = NULL;
  g_autofree char *peak = NULL;
  g_autofree char *minutes = NULL;

  if (n == 0)
    return g_strdup (_ ("No readings yet."));
  first = &g_array_index (self->readings, FmCoreReading, 0);
  last = &g_array_index (self->readings, FmCoreReading, n - 1);
  for (guint i = 0; i < n; i++)
    peak_c = MAX (peak_c, g_array_index (self->readings, FmCoreReading, i).temp_c);
  from = fm_notebook_text (FM_MEASURE_TEMPERATURE, first->temp_c, 1);
  to = fm_notebook_text (FM_MEASURE_TEMPERATURE, last->temp_c, 1);
  peak = fm_notebook_text (FM_MEASURE_TEMPERATURE, peak_c, 1);
  minutes = fm_number_format ((last->time_s - first->time_s) / 60.0, 1);
  return g_strdup_printf (ngettext ("%u reading: from %s to %s in %s minutes, highest %s.",
                                    "%u readings: from %s to %s in %s minutes, highest %s.", n),
                          n, from, to, minutes, peak);
}

static char *
describe (FmReadingsChart *self)
{
  g_autofree char *readings = describe_readings (self);
  g_autofree char *from = NULL;
  g_autofree char *peak = NULL;
  g_autofree char *minutes = NULL;
  const FmCoreReading *highest;

  if (self->estimate->len == 0)
    return g_steal_pointer (&readings);
  highest = &g_array_index (self->estimate, FmCoreReading, 0);
  from = fm_notebook_text (FM_MEASURE_TEMPERATURE, highest->temp_c, 1);
  for (guint i = 1; i < self->estimate->len; i++) {
    const FmCoreReading *point = &g_array_index (self->estimate, FmCoreReading, i);

    if (point->temp_c > highest->temp_c)
      highest = point;
  }
  peak = fm_notebook_text (FM_MEASURE_TEMPERATURE, highest->temp_c, 1);
  minutes = fm_number_format (highest->time_s / 60.0, 1);
  return g_strdup_printf (_ ("Estimate, dotted: from %s, highest %s after %s minutes. Measured, "
                             "line with marks: %s"),
                          from, peak, minutes, readings);
}

static void
add_row (FmChartTable *table, const FmReadingsData *data, const char *what, const FmCoreReading *at)
{
  g_autofree char *time = fm_number_format (at->time_s / 60.0, 1);
  g_autofree char *temp = fm_number_format_unit (to_shown (data, at->temp_c), 1, symbol (data));
  const char *cells[] = { what, time, temp, NULL };

  /* Translators: "Measured", minutes, a temperature. */
  fm_chart_table_add (table, g_strdup_printf (_ ("%s after %s minutes: %s"), what, time, temp),
                      cells);
}

static FmChartTable *
make_table (const FmReadingsData *data)
{
  const char *headings[] = { "", _ ("Minutes"), _ ("Core"), NULL };
  FmChartTable *table = fm_chart_table_new (headings);

  for (guint i = 0; i < data->readings->len; i++)
    add_row (table, data, _ ("Measured"), get_point (data->readings, i));
  for (guint stop = 0; data->estimate->len > 0 && stop < N_STOPS; stop++)
    add_row (table, data, _ ("Estimate"),
             get_point (data->estimate, stop_index (data->estimate, stop)));
  return table;
}

static void
update (FmReadingsChart *self)
{
  const FmReadingsData data = get_data (self);
  g_autofree char *description = describe (self);

  fm_chart_say (FM_CHART (self),
                self->estimate->len > 0
                    ? _ ("Curve of the core temperature, measured and estimated")
                    : _ ("Curve of the core temperature"),
                description, make_table (&data));
}

static void
fm_readings_chart_finalize (GObject *object)
{
  g_array_unref (FM_READINGS_CHART (object)->readings);
  g_array_unref (FM_READINGS_CHART (object)->estimate);
  G_OBJECT_CLASS (fm_readings_chart_parent_class)->finalize (object);
}

static void
fm_readings_chart_class_init (FmReadingsChartClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_readings_chart_finalize;
  FM_CHART_CLASS (klass)->draw = draw;
  FM_CHART_CLASS (klass)->get_size = get_size;
}

static void
fm_readings_chart_init (FmReadingsChart *self)
{
  self->readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  self->estimate = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  g_signal_connect_object (fm_notebook_settings_get_default (), "changed", G_CALLBACK (update),
                           self, G_CONNECT_SWAPPED);
  update (self);
}

static void
copy_curve (GArray *to, const GArray *from)
{
  g_array_set_size (to, 0);
  if (from != NULL && from->len > 0)
    g_array_append_vals (to, from->data, from->len);
}

void
fm_readings_chart_set_readings (FmReadingsChart *self, const GArray *readings)
{
  g_return_if_fail (FM_IS_READINGS_CHART (self));
  copy_curve (self->readings, readings);
  update (self);
}

void
fm_readings_chart_set_estimate (FmReadingsChart *self, const GArray *estimate)
{
  g_return_if_fail (FM_IS_READINGS_CHART (self));
  copy_curve (self->estimate, estimate);
  update (self);
}
