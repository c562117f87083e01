/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-bars.c - a small bar chart, told apart by pattern and letter, not by colour */
#include "app/charts/fm-chart-bars.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/charts/fm-chart-hatch.h"
#include "core/base/fm-number.h"

#define MAX_TICKS 4
#define MIN_SLOT_PX 38.0
#define PLOT_HEIGHT_PX 92
#define GAP_PX 4.0

struct _FmChartBars {
  FmChart parent_instance;

  FmBarsData data;
};

G_DEFINE_FINAL_TYPE (FmChartBars, fm_chart_bars, FM_TYPE_CHART)

G_STATIC_ASSERT (FM_CHART_MAX_BARS <= FM_CHART_N_HATCHES);

static FmChartScale
make_scale (const FmBarsData *data)
{
  FmChartScale scale;

  fm_chart_scale_init (&scale, data->values, data->n, MAX_TICKS);
  return scale;
}

static char *
value_text (const FmBarsData *data, guint index)
{
  const double value = data->values[index];
  g_autofree char *number = NULL;

  if (!isfinite (value))
    return g_strdup ("?");
  number = fm_number_format (value, data->decimals);
  return data->with_sign && value > 0.0 ? g_strconcat ("+", number, NULL)
                                        : g_steal_pointer (&number);
}

static void
draw_bar (const FmBarsData *data,
          FmChartCanvas *canvas,
          const FmChartFrame *frame,
          const FmChartScale *scale,
          guint index)
{
  const double value = isfinite (data->values[index]) ? data->values[index] : 0.0;
  const double zero_y = fm_chart_scale_place (scale, 0.0, frame->bottom, frame->top);
  const double value_y = fm_chart_scale_place (scale, value, frame->bottom, frame->top);
  const double line = fm_chart_line_height (canvas->pango);
  FmBox bar = { .y = MIN (zero_y, value_y), .height = fabs (value_y - zero_y) };
  g_autofree char *text = value_text (data, index);
  double middle;

  fm_chart_bar_slot (index, data->n, frame->right - frame->left, &bar.x, &bar.width);
  bar.x += frame->left;
  middle = bar.x + bar.width / 2.0;
  fm_chart_canvas_set_colour (canvas, &canvas->palette.ink, 1);
  if (bar.height > 0.0) {
    fm_chart_hatch (canvas, &bar, index);
    cairo_set_line_width (canvas->cr, 1.5);
    cairo_rectangle (canvas->cr, bar.x, bar.y, bar.width, bar.height);
    cairo_stroke (canvas->cr);
  }
  fm_chart_canvas_label_on (canvas, text, middle,
                            value_y + (value < 0.0 ? line : -line) / 2.0 - 1.0);
  fm_chart_canvas_text (canvas, fm_chart_letter (index), middle, canvas->height - line / 2.0, 0.5,
                        0);
  fm_chart_canvas_mark (canvas, index, &bar);
}

void
fm_chart_bars_draw (const FmBarsData *data, FmChartCanvas *canvas)
{
  const FmChartScale scale = make_scale (data);
  const double line = fm_chart_line_height (canvas->pango);
  /* Room for the number above the tallest bar, and for numbers below zero and the letters. */
  const FmChartFrame frame = {
    .left = fm_chart_axis_width (canvas->pango, &scale),
    .right = canvas->width,
    .top = line + 2.0,
    .bottom = canvas->height - line - 2.0 - (scale.min < 0.0 ? line : 0.0),
  };

  fm_chart_canvas_y_axis (canvas, &frame, &scale);
  for (guint i = 0; i < data->n; i++)
    draw_bar (data, canvas, &frame, &scale, i);
}

static void
draw (FmChart *chart, FmChartCanvas *canvas)
{
  fm_chart_bars_draw (&FM_CHART_BARS (chart)->data, canvas);
}

/* Numbers of neighbours stay apart. */
static double
slot_width (const FmBarsData *data, PangoContext *pango)
{
  double widest = MIN_SLOT_PX;

  for (guint i = 0; i < data->n; i++) {
    g_autofree char *text = value_text (data, i);
    int width;

    fm_chart_measure_text (pango, text, &width, NULL);
    widest = MAX (widest, width + GAP_PX);
  }
  return widest;
}

static void
get_size (FmChart *chart, GtkOrientation orientation, int *minimum, int *natural)
{
  const FmBarsData *data = &FM_CHART_BARS (chart)->data;
  const FmChartScale scale = make_scale (data);
  PangoContext *pango = gtk_widget_get_pango_context (GTK_WIDGET (chart));

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = (int)ceil (fm_chart_axis_width (pango, &scale) +
                          slot_width (data, pango) * MAX (data->n, 2));
  else
    *minimum = PLOT_HEIGHT_PX + 2 * fm_chart_line_height (pango);
  *natural = *minimum;
}

static void
fm_chart_bars_class_init (FmChartBarsClass *klass)
{
  FM_CHART_CLASS (klass)->draw = draw;
  FM_CHART_CLASS (klass)->get_size = get_size;
}

static void
fm_chart_bars_init (FmChartBars *self)
{
}

GtkWidget *
fm_chart_bars_new (void)
{
  return g_object_new (FM_TYPE_CHART_BARS, NULL);
}

static FmChartTable *
make_table (const FmBarsData *data, const char *title, const char *unit, const char *const *names)
{
  const char *headings[] = { _ ("Bar"), _ ("Name"), title, NULL };
  FmChartTable *table = fm_chart_table_new (headings);

  for (guint i = 0; i < data->n; i++) {
    g_autofree char *value = isfinite (data->values[i])
                                 ? fm_number_format_unit (data->values[i], data->decimals, unit)
                                 : g_strdup (_ ("not known"));
    const char *cells[] = { fm_chart_letter (i), names[i], value, NULL };

    fm_chart_table_add (table, g_strdup_printf ("%s, %s: %s", cells[0], names[i], value), cells);
  }
  return table;
}

void
fm_chart_bars_set (FmChartBars *self,
                   const char *title,
                   const char *unit,
                   const char *const *names,
                   const FmBarsData *data)
{
  g_autofree char *description =
      fm_chart_describe (names, data->values, data->n, data->decimals, unit);

  g_return_if_fail (FM_IS_CHART_BARS (self));
  g_return_if_fail (data->n <= FM_CHART_MAX_BARS);
  self->data = *data;
  fm_chart_say (FM_CHART (self), title, description, make_table (data, title, unit, names));
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
