/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-curves.c - predicted values along lines through a map */
#include "app/charts/fm-map-curves.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

#define MARGIN_END 22
#define MARGIN_TOP 12
#define DOT_PX 4
#define MAX_TICKS 6
/* A curve is walked along and tabled in so many steps. */
#define N_STOPS 5

struct _FmMapCurves {
  FmChart parent_instance;

  FmMapCurvesData *data; /* (nullable) */
};

G_DEFINE_FINAL_TYPE (FmMapCurves, fm_map_curves, FM_TYPE_CHART)

typedef struct {
  FmChartCanvas *canvas;
  FmChartFrame frame;
  FmChartScale x_scale;
  FmChartScale y_scale;
} Drawing;

static const FmMapCurve *
get_curve (const FmMapCurvesData *data, guint index)
{
  return g_ptr_array_index (data->curves, index);
}

static const FmMapCurvePoint *
get_point (const FmMapCurve *curve, guint index)
{
  return &g_array_index (curve->points, FmMapCurvePoint, index);
}

static guint
n_dots (const FmMapCurvesData *data)
{
  return data->dots != NULL ? data->dots->len : 0;
}

/* Index of the point at @stop of N_STOPS, from the first to the last. */
static guint
stop_index (const FmMapCurve *curve, guint stop)
{
  return stop * (curve->points->len - 1) / (N_STOPS - 1);
}

static double
place_x (const Drawing *self, double x)
{
  return fm_chart_scale_place (&self->x_scale, x, self->frame.left, self->frame.right);
}

static double
place_y (const Drawing *self, double y)
{
  return fm_chart_scale_place (&self->y_scale, y, self->frame.bottom, self->frame.top);
}

static void
widen (double value, double *low, double *high)
{
  if (isfinite (value)) {
    *low = MIN (*low, value);
    *high = MAX (*high, value);
  }
}

static void
make_scales (Drawing *self, const FmMapCurvesData *data)
{
  double x_low = INFINITY, x_high = -INFINITY, y_low = INFINITY, y_high = -INFINITY;

  for (guint i = 0; i < data->curves->len; i++) {
    const FmMapCurve *curve = get_curve (data, i);

    for (guint j = 0; j < curve->points->len; j++) {
      const FmMapCurvePoint *point = get_point (curve, j);

      widen (point->x, &x_low, &x_high);
      widen (point->mean, &y_low, &y_high);
      widen (point->low, &y_low, &y_high);
      widen (point->high, &y_low, &y_high);
    }
  }
  for (guint i = 0; i < n_dots (data); i++) {
    widen (g_array_index (data->dots, FmMapCurveDot, i).x, &x_low, &x_high);
    widen (g_array_index (data->dots, FmMapCurveDot, i).y, &y_low, &y_high);
  }
  fm_chart_scale_init_between (&self->x_scale, isfinite (x_low) ? x_low : 0,
                               isfinite (x_high) ? x_high : 1, MAX_TICKS);
  fm_chart_scale_init_between (&self->y_scale, isfinite (y_low) ? y_low : 0,
                               isfinite (y_high) ? y_high : 1, MAX_TICKS);
}

static void
draw_interval (const Drawing *self, const FmMapCurve *curve)
{
  const guint n = curve->points->len;
  cairo_t *cr = self->canvas->cr;

  if (n == 0 || isnan (get_point (curve, 0)->low))
    return;
  cairo_new_path (cr);
  for (guint i = 0; i < 2 * n; i++) {
    const FmMapCurvePoint *point = get_point (curve, i < n ? i : 2 * n - 1 - i);

    cairo_line_to (cr, place_x (self, point->x), place_y (self, i < n ? point->low : point->high));
  }
  cairo_close_path (cr);
  fm_chart_canvas_set_colour (self->canvas, &self->canvas->palette.ink, 0.12);
  cairo_fill (cr);
}

static void
draw_curve (const Drawing *self, const FmMapCurve *curve, guint index)
{
  static const double dashes[][4] = {
    { 1, 0, 1, 0 },  { 8, 4, 8, 4 },   { 2, 3, 2, 3 },
    { 10, 3, 2, 3 }, { 14, 4, 14, 4 }, { 5, 2, 1, 2 },
  };
  cairo_t *cr = self->canvas->cr;

  cairo_save (cr);
  fm_chart_canvas_set_colour (self->canvas, &self->canvas->palette.accent, 1);
  cairo_set_line_width (cr, 2);
  cairo_set_dash (cr, dashes[index % G_N_ELEMENTS (dashes)], index == 0 ? 0 : 4, 0);
  cairo_new_path (cr);
  for (guint i = 0; i < curve->points->len; i++) {
    const FmMapCurvePoint *point = get_point (curve, i);

    cairo_line_to (cr, place_x (self, point->x), place_y (self, point->mean));
  }
  cairo_stroke (cr);
  cairo_restore (cr);
}

static FmBox
box_around (const Drawing *self, double x, double y)
{
  return (FmBox){ place_x (self, x) - DOT_PX, place_y (self, y) - DOT_PX, 2 * DOT_PX, 2 * DOT_PX };
}

/* Returns the number of the next row. */
static guint
mark_curve (const Drawing *self, const FmMapCurve *curve, guint row)
{
  if (curve->points->len == 0)
    return row;
  for (guint stop = 0; stop < N_STOPS; stop++) {
    const FmMapCurvePoint *point = get_point (curve, stop_index (curve, stop));
    const FmBox box = box_around (self, point->x, point->mean);

    fm_chart_canvas_mark (self->canvas, row + stop, &box);
    if (stop == N_STOPS - 1)
      fm_chart_canvas_label (self->canvas, curve->letter, &box);
  }
  return row + N_STOPS;
}

static void
draw_dot (const Drawing *self, const FmMapCurveDot *dot, guint row)
{
  const FmBox box = box_around (self, dot->x, dot->y);

  fm_chart_canvas_set_colour (self->canvas, &self->canvas->palette.ink, 1);
  fm_chart_canvas_circle (self->canvas, place_x (self, dot->x), place_y (self, dot->y), DOT_PX);
  cairo_fill (self->canvas->cr);
  fm_chart_canvas_mark (self->canvas, row, &box);
}

static void
draw_dots (const Drawing *self, const FmMapCurvesData *data, guint row)
{
  for (guint i = 0; i < n_dots (data); i++)
    draw_dot (self, &g_array_index (data->dots, FmMapCurveDot, i), row + i);
  for (guint i = 0; i < n_dots (data); i++) {
    const FmMapCurveDot *dot = &g_array_index (data->dots, FmMapCurveDot, i);
    const FmBox box = box_around (self, dot->x, dot->y);
    g_autofree char *number = g_strdup_printf ("%d", dot->number);

    fm_chart_canvas_label (self->canvas, number, &box);
  }
}

void
fm_map_curves_draw (const FmMapCurvesData *data, FmChartCanvas *canvas)
{
  Drawing drawing = { .canvas = canvas };
  FmChartFrame *frame = &drawing.frame;
  guint row = 0;

  make_scales (&drawing, data);
  frame->left = fm_chart_axis_width (canvas->pango, &drawing.y_scale);
  frame->right = canvas->width - MARGIN_END;
  frame->top = MARGIN_TOP;
  frame->bottom =
      canvas->height - fm_chart_axis_height (canvas->pango) - fm_chart_line_height (canvas->pango);
  if (frame->right <= frame->left || frame->bottom <= frame->top)
    return;
  fm_chart_canvas_y_axis (canvas, frame, &drawing.y_scale);
  fm_chart_canvas_x_axis (canvas, frame, &drawing.x_scale, FALSE);
  fm_chart_canvas_text (canvas, data->x_title, frame->left,
                        canvas->height - fm_chart_line_height (canvas->pango) / 2.0, 0,
                        (int)(frame->right - frame->left));
  for (guint i = 0; i < data->curves->len; i++)
    draw_interval (&drawing, get_curve (data, i));
  for (guint i = 0; i < data->curves->len; i++)
    draw_curve (&drawing, get_curve (data, i), i);
  for (guint i = 0; i < data->curves->len; i++)
    row = mark_curve (&drawing, get_curve (data, i), row);
  draw_dots (&drawing, data, row);
}

static void
draw (FmChart *chart, FmChartCanvas *canvas)
{
  fm_map_curves_draw (FM_MAP_CURVES (chart)->data, canvas);
}

static void
get_size (FmChart *chart, GtkOrientation orientation, int *minimum, int *natural)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 220 : 200;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 560 : 240;
}

static void
fm_map_curves_finalize (GObject *object)
{
  g_clear_pointer (&FM_MAP_CURVES (object)->data, fm_map_curves_data_free);
  G_OBJECT_CLASS (fm_map_curves_parent_class)->finalize (object);
}

static void
fm_map_curves_class_init (FmMapCurvesClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_map_curves_finalize;
  FM_CHART_CLASS (klass)->draw = draw;
  FM_CHART_CLASS (klass)->get_size = get_size;
}

static void
fm_map_curves_init (FmMapCurves *self)
{
}

FmMapCurve *
fm_map_curve_new (const char *letter, const char *name)
{
  FmMapCurve *self = g_new0 (FmMapCurve, 1);

  self->letter = g_strdup (letter);
  self->name = g_strdup (name);
  self->points = g_array_new (FALSE, FALSE, sizeof (FmMapCurvePoint));
  return self;
}

void
fm_map_curve_free (FmMapCurve *self)
{
  g_free (self->letter);
  g_free (self->name);
  g_array_unref (self->points);
  g_free (self);
}

FmMapCurvesData *
fm_map_curves_data_new (GPtrArray *curves, GArray *dots, const char *x_title, int decimals)
{
  FmMapCurvesData *self = g_new0 (FmMapCurvesData, 1);

  self->curves = curves;
  self->dots = dots;
  self->x_title = g_strdup (x_title);
  self->decimals = decimals;
  return self;
}

void
fm_map_curves_data_free (FmMapCurvesData *self)
{
  g_ptr_array_unref (self->curves);
  g_clear_pointer (&self->dots, g_array_unref);
  g_free (self->x_title);
  g_free (self);
}

static void
add_point (FmChartTable *table,
           const FmMapCurvesData *data,
           const char *name,
           const FmMapCurvePoint *point)
{
  g_autofree char *x = fm_number_format (point->x, 1);
  g_autofree char *mean = fm_number_format (point->mean, data->decimals);
  g_autofree char *low = fm_number_format (point->low, data->decimals);
  g_autofree char *high = fm_number_format (point->high, data->decimals);
  const char *cells[] = { name, x, mean, low, high, NULL };

  if (isnan (point->low))
    fm_chart_table_add (
        table,
        /* Translators: a curve, what is drawn along the axis, a number there, the value. */
        g_strdup_printf (_ ("%s, %s: %s: predicted %s"), name, data->x_title, x, mean), cells);
  else
    fm_chart_table_add (table,
                        g_strdup_printf (_ ("%s, %s: %s: predicted %s, from %s to %s"), name,
                                         data->x_title, x, mean, low, high),
                        cells);
}

static void
add_dot (FmChartTable *table, const FmMapCurvesData *data, const FmMapCurveDot *dot)
{
  g_autofree char *name = g_strdup_printf (_ ("Version %d"), dot->number);
  g_autofree char *x = fm_number_format (dot->x, 1);
  g_autofree char *y = fm_number_format (dot->y, data->decimals);
  const char *cells[] = { name, x, y, "", "", NULL };

  fm_chart_table_add (
      table, g_strdup_printf (_ ("%s, %s: %s: measured %s"), name, data->x_title, x, y), cells);
}

static FmChartTable *
make_table (const FmMapCurvesData *data)
{
  const char *headings[] = { _ ("Curve"),     data->x_title, _ ("Value"),
                             _ ("95 % from"), _ ("to"),      NULL };
  FmChartTable *table = fm_chart_table_new (headings);

  for (guint i = 0; i < data->curves->len; i++) {
    const FmMapCurve *curve = get_curve (data, i);

    for (guint stop = 0; curve->points->len > 0 && stop < N_STOPS; stop++)
      add_point (table, data, curve->name, get_point (curve, stop_index (curve, stop)));
  }
  for (guint i = 0; i < n_dots (data); i++)
    add_dot (table, data, &g_array_index (data->dots, FmMapCurveDot, i));
  return table;
}

void
fm_map_curves_take (FmMapCurves *self,
                    FmMapCurvesData *data,
                    const char *label,
                    const char *description)
{
  g_return_if_fail (FM_IS_MAP_CURVES (self));
  g_clear_pointer (&self->data, fm_map_curves_data_free);
  self->data = data;
  fm_chart_say (FM_CHART (self), label, description, make_table (data));
}

double
fm_map_curves_get_picked_x (FmMapCurves *self)
{
  const int picked = fm_chart_get_picked (FM_CHART (self));
  guint row = (guint)MAX (picked, 0);

  g_return_val_if_fail (FM_IS_MAP_CURVES (self), (double)NAN);
  if (picked < 0 || self->data == NULL)
    return (double)NAN;
  for (guint i = 0; i < self->data->curves->len; i++) {
    const FmMapCurve *curve = get_curve (self->data, i);

    if (curve->points->len == 0)
      continue;
    if (row < N_STOPS)
      return get_point (curve, stop_index (curve, row))->x;
    row -= N_STOPS;
  }
  return g_array_index (self->data->dots, FmMapCurveDot, row).x;
}
