/* fm-readings-chart.c - core temperature over time as a small curve */
#include "app/charts/fm-readings-chart.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/charts/fm-chart-text.h"
#include "app/session/fm-temperature-unit.h"
#include "core/base/fm-number.h"

/* USDA FSIS, Safe minimum internal temperature chart: ground meat, consumers. */
#define FIGURE_C 71.1
#define MARGIN_START 44
#define MARGIN_END 12
#define MARGIN_TOP 12
#define MARGIN_BOTTOM 34
#define N_TICKS 4

struct _FmReadingsChart {
  GtkWidget parent_instance;

  GArray *readings;
  GArray *estimate; /* FmCoreReading; empty = none */
  FmTemperatureUnit *units;
};

G_DEFINE_FINAL_TYPE (FmReadingsChart, fm_readings_chart, GTK_TYPE_WIDGET)

/* Shown values to pixels. */
typedef struct {
  double time_max_min;
  double time_step;
  double temp_min;
  double temp_max;
  double temp_step;
  double width;
  double height;
} Scale;

/* 1, 2 or 5 times a power of ten, so that about N_TICKS steps cover @span. */
static double
nice_step (double span)
{
  const double raw = span / N_TICKS;
  const double magnitude = pow (10, floor (log10 (raw)));
  const double ratio = raw / magnitude;

  if (ratio <= 1)
    return magnitude;
  if (ratio <= 2)
    return 2 * magnitude;
  return ratio <= 5 ? 5 * magnitude : 10 * magnitude;
}

static void
widen (const GArray *curve, double *last_s, double *low_c, double *high_c)
{
  for (guint i = 0; i < curve->len; i++) {
    const FmCoreReading *point = &g_array_index (curve, FmCoreReading, i);

    *last_s = MAX (*last_s, point->time_s);
    *low_c = MIN (*low_c, point->temp_c);
    *high_c = MAX (*high_c, point->temp_c);
  }
}

static void
scale_init (Scale *scale, FmReadingsChart *self, double width, double height)
{
  double last_s = 60;
  double low_c = 20;
  double high_c = FIGURE_C + 5;

  widen (self->readings, &last_s, &low_c, &high_c);
  widen (self->estimate, &last_s, &low_c, &high_c);
  scale->time_step = nice_step (last_s / 60.0);
  scale->time_max_min = ceil (last_s / 60.0 / scale->time_step) * scale->time_step;
  scale->temp_min = fm_temperature_unit_to_shown (self->units, low_c);
  scale->temp_max = fm_temperature_unit_to_shown (self->units, high_c);
  scale->temp_step = nice_step (scale->temp_max - scale->temp_min);
  scale->temp_min = floor (scale->temp_min / scale->temp_step) * scale->temp_step;
  scale->temp_max = ceil (scale->temp_max / scale->temp_step) * scale->temp_step;
  scale->width = width;
  scale->height = height;
}

static double
to_x (const Scale *scale, double minutes)
{
  return MARGIN_START + minutes / scale->time_max_min * (scale->width - MARGIN_START - MARGIN_END);
}

static double
to_y (const Scale *scale, double temp)
{
  const double part = (temp - scale->temp_min) / (scale->temp_max - scale->temp_min);

  return scale->height - MARGIN_BOTTOM - part * (scale->height - MARGIN_TOP - MARGIN_BOTTOM);
}

static void
draw_axes (FmReadingsChart *self, cairo_t *cr, const Scale *scale, const GdkRGBA *colour)
{
  const double right = scale->width - MARGIN_END;
  const double bottom = scale->height - MARGIN_BOTTOM;
  g_autofree char *unit = NULL;

  cairo_set_line_width (cr, 1);
  for (double temp = scale->temp_min; temp <= scale->temp_max + 1e-9; temp += scale->temp_step) {
    g_autofree char *label = fm_number_format (temp, 0);
    const double y = floor (to_y (scale, temp)) + 0.5;

    cairo_set_source_rgba (cr, colour->red, colour->green, colour->blue, 0.2);
    cairo_move_to (cr, MARGIN_START, y);
    cairo_line_to (cr, right, y);
    cairo_stroke (cr);
    gdk_cairo_set_source_rgba (cr, colour);
    fm_chart_text_draw (GTK_WIDGET (self), cr, label, MARGIN_START - 6, y, 1, 0);
  }
  for (double time = 0; time <= scale->time_max_min + 1e-9; time += scale->time_step) {
    g_autofree char *label = fm_number_to_edit (time, 1);

    fm_chart_text_draw (GTK_WIDGET (self), cr, label, to_x (scale, time), bottom + 9, 0.5, 0);
  }
  unit = g_strdup_printf (_ ("Core %s over minutes"), fm_temperature_unit_symbol (self->units));
  fm_chart_text_draw (GTK_WIDGET (self), cr, unit, MARGIN_START, scale->height - 8, 0, 0);
}

static void
draw_figure (FmReadingsChart *self, cairo_t *cr, const Scale *scale, const GdkRGBA *colour)
{
  const double dashes[] = { 6, 4 };
  const double temp = fm_temperature_unit_to_shown (self->units, FIGURE_C);
  const double y = floor (to_y (scale, temp)) + 0.5;
  const gboolean fahrenheit = fm_temperature_unit_get_fahrenheit (self->units);
  g_autofree char *number = fm_number_format (temp, fahrenheit ? 0 : 1);
  g_autofree char *label =
      g_strdup_printf ("USDA FSIS %s %s", number, fm_temperature_unit_symbol (self->units));

  gdk_cairo_set_source_rgba (cr, colour);
  cairo_save (cr);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_move_to (cr, MARGIN_START, y);
  cairo_line_to (cr, scale->width - MARGIN_END, y);
  cairo_stroke (cr);
  cairo_restore (cr);
  fm_chart_text_draw (GTK_WIDGET (self), cr, label, MARGIN_START + 4, y - 9, 0, 0);
}

static void
draw_curve (FmReadingsChart *self, cairo_t *cr, const Scale *scale, const GdkRGBA *colour)
{
  gdk_cairo_set_source_rgba (cr, colour);
  cairo_set_line_width (cr, 2);
  cairo_new_path (cr);
  for (guint pass = 0; pass < 2; pass++) {
    for (guint i = 0; i < self->readings->len; i++) {
      const FmCoreReading *reading = &g_array_index (self->readings, FmCoreReading, i);
      const double x = to_x (scale, reading->time_s / 60.0);
      const double y = to_y (scale, fm_temperature_unit_to_shown (self->units, reading->temp_c));

      if (pass == 0) {
        cairo_line_to (cr, x, y);
      } else {
        cairo_arc (cr, x, y, 3.5, 0, 2 * G_PI);
        cairo_fill (cr);
      }
    }
    if (pass == 0)
      cairo_stroke (cr);
  }
}

/* Dots in a row, without marks: told from the measured curve without its colour. */
static void
draw_estimate (FmReadingsChart *self, cairo_t *cr, const Scale *scale, const GdkRGBA *colour)
{
  const double dots[] = { 2, 4 };

  if (self->estimate->len == 0)
    return;
  gdk_cairo_set_source_rgba (cr, colour);
  cairo_save (cr);
  cairo_set_line_width (cr, 2);
  cairo_set_dash (cr, dots, G_N_ELEMENTS (dots), 0);
  cairo_new_path (cr);
  for (guint i = 0; i < self->estimate->len; i++) {
    const FmCoreReading *point = &g_array_index (self->estimate, FmCoreReading, i);

    cairo_line_to (cr, to_x (scale, point->time_s / 60.0),
                   to_y (scale, fm_temperature_unit_to_shown (self->units, point->temp_c)));
  }
  cairo_stroke (cr);
  cairo_restore (cr);
  fm_chart_text_draw (GTK_WIDGET (self), cr, _ ("● measured   ┈ estimate"),
                      scale->width - MARGIN_END, scale->height - 8, 1, 0);
}

static void
fm_readings_chart_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmReadingsChart *self = FM_READINGS_CHART (widget);
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  const int width = gtk_widget_get_width (widget);
  const int height = gtk_widget_get_height (widget);
  cairo_t *cr;
  GdkRGBA text_colour;
  GdkRGBA line_colour;
  Scale scale;

  if (width <= MARGIN_START + MARGIN_END || height <= MARGIN_TOP + MARGIN_BOTTOM)
    return;
  gtk_style_context_get_color (style, &text_colour);
  if (!gtk_style_context_lookup_color (style, "accent_color", &line_colour))
    line_colour = text_colour;
  scale_init (&scale, self, width, height);
  cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  draw_axes (self, cr, &scale, &text_colour);
  draw_figure (self, cr, &scale, &text_colour);
  draw_estimate (self, cr, &scale, &text_colour);
  draw_curve (self, cr, &scale, &line_colour);
  cairo_destroy (cr);
}

static void
fm_readings_chart_measure (GtkWidget *widget,
                           GtkOrientation orientation,
                           int for_size,
                           int *minimum,
                           int *natural,
                           int *minimum_baseline,
                           int *natural_baseline)
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
  const char *unit = fm_temperature_unit_symbol (self->units);
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
  from = fm_number_format_unit (fm_temperature_unit_to_shown (self->units, first->temp_c), 1, unit);
  to = fm_number_format_unit (fm_temperature_unit_to_shown (self->units, last->temp_c), 1, unit);
  peak = fm_number_format_unit (fm_temperature_unit_to_shown (self->units, peak_c), 1, unit);
  minutes = fm_number_format ((last->time_s - first->time_s) / 60.0, 1);
  return g_strdup_printf (ngettext ("%u reading: from %s to %s in %s minutes, highest %s.",
                                    "%u readings: from %s to %s in %s minutes, highest %s.", n),
                          n, from, to, minutes, peak);
}

static char *
describe (FmReadingsChart *self)
{
  const char *unit = fm_temperature_unit_symbol (self->units);
  g_autofree char *readings = describe_readings (self);
  g_autofree char *from = NULL;
  g_autofree char *peak = NULL;
  g_autofree char *minutes = NULL;
  const FmCoreReading *highest;

  if (self->estimate->len == 0)
    return g_steal_pointer (&readings);
  highest = &g_array_index (self->estimate, FmCoreReading, 0);
  from =
      fm_number_format_unit (fm_temperature_unit_to_shown (self->units, highest->temp_c), 1, unit);
  for (guint i = 1; i < self->estimate->len; i++) {
    const FmCoreReading *point = &g_array_index (self->estimate, FmCoreReading, i);

    if (point->temp_c > highest->temp_c)
      highest = point;
  }
  peak =
      fm_number_format_unit (fm_temperature_unit_to_shown (self->units, highest->temp_c), 1, unit);
  minutes = fm_number_format (highest->time_s / 60.0, 1);
  return g_strdup_printf (_ ("Estimate, dotted: from %s, highest %s after %s minutes. Measured, "
                             "line with marks: %s"),
                          from, peak, minutes, readings);
}

static void
update (FmReadingsChart *self)
{
  g_autofree char *description = describe (self);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  self->estimate->len > 0
                                      ? _ ("Curve of the core temperature, measured and estimated")
                                      : _ ("Curve of the core temperature"),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description, -1);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), description);
  gtk_widget_queue_draw (GTK_WIDGET (self));
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
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = fm_readings_chart_finalize;
  widget_class->snapshot = fm_readings_chart_snapshot;
  widget_class->measure = fm_readings_chart_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
fm_readings_chart_init (FmReadingsChart *self)
{
  self->readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  self->estimate = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  self->units = fm_temperature_unit_get_default ();
  g_signal_connect_object (self->units, "notify::fahrenheit", G_CALLBACK (update), self,
                           G_CONNECT_SWAPPED);
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
