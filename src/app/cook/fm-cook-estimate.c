/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-estimate.c - an estimated cook as a curve over the readings, in words and as a table */
#include "app/cook/fm-cook-estimate.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-text-grid.h"
#include "app/session/fm-notebook-settings.h"
#include "app/charts/fm-readings-chart.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

#define N_TABLE_STEPS 12

struct _FmCookEstimate {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkLabel *result_label;
  FmReadingsChart *chart;
  GtkExpander *table_expander;
  GtkGrid *table_grid;

  GArray *readings; /* FmCoreReading */
  GArray *curve;    /* FmCoreReading; empty = no estimate */
  double target_c;
  double to_target_s; /* NaN = never */
  double off_centre_c;
  double peak_s;
  double peak_centre_c;
  double evaporated_pct;
  double thickness_mm;
  double diameter_mm;
  double mass_g;
};

G_DEFINE_FINAL_TYPE (FmCookEstimate, fm_cook_estimate, GTK_TYPE_WIDGET)

static char *
format_temp (double temp_c)
{

  return fm_notebook_text (FM_MEASURE_TEMPERATURE, temp_c, 1);
}

static char *
format_time (double time_s)
{
  const int seconds = (int)lround (time_s);

  return g_strdup_printf ("%d:%02d", seconds / 60, seconds % 60);
}

static void
append_target (FmCookEstimate *self, GString *text)
{
  g_autofree char *target = format_temp (self->target_c);
  g_autofree char *time = NULL;

  if (isnan (self->target_c))
    return;
  if (isnan (self->to_target_s)) {
    g_string_append_printf (text, _ ("By the estimate the core does not come to %s."), target);
  } else {
    time = format_time (self->to_target_s);
    /* Translators: temperature, then minutes and seconds. */
    g_string_append_printf (text, _ ("By the estimate the core is at %s after %s min:s."), target,
                            time);
  }
  g_string_append_c (text, ' ');
}

static void
append_course (FmCookEstimate *self, GString *text)
{
  g_autofree char *off = format_temp (self->off_centre_c);
  g_autofree char *peak = format_temp (self->peak_centre_c);
  g_autofree char *peak_time = format_time (self->peak_s);
  g_autofree char *boiled = fm_number_format_unit (self->evaporated_pct, 1, "%");
  g_autofree char *mass = fm_notebook_text (FM_MEASURE_MASS, self->mass_g, 0);
  g_autofree char *diameter = fm_number_format_unit (self->diameter_mm, 0, "mm");
  g_autofree char *thickness = fm_number_format_unit (self->thickness_mm, 1, "mm");

  g_string_append_printf (text,
                          _ ("Taken off at %s; highest %s after %s min:s, rest included. Water "
                             "boiled off: %s of the raw mass. Patty: %s, %s wide, %s thick."),
                          off, peak, peak_time, boiled, mass, diameter, thickness);
}

static double
curve_at (const GArray *curve, double time_s)
{
  for (guint i = 1; i < curve->len; i++) {
    const FmCoreReading *before = &g_array_index (curve, FmCoreReading, i - 1);
    const FmCoreReading *after = before + 1;

    if (time_s >= before->time_s && time_s <= after->time_s)
      return before->temp_c + (after->temp_c - before->temp_c) * (time_s - before->time_s) /
                                  MAX (after->time_s - before->time_s, 1e-9);
  }
  return NAN;
}

static double
reading_at (const GArray *readings, double time_s)
{
  for (guint i = 0; i < readings->len; i++) {
    const FmCoreReading *reading = &g_array_index (readings, FmCoreReading, i);

    if (fabs (reading->time_s - time_s) < 0.5)
      return reading->temp_c;
  }
  return NAN;
}

static int
compare_times (gconstpointer a, gconstpointer b)
{
  const double time_a = *(const double *)a;
  const double time_b = *(const double *)b;

  return (time_a > time_b) - (time_a < time_b);
}

/* Even steps through the estimate, and each reading's own time. */
static GArray *
table_times (FmCookEstimate *self)
{
  const double end_s = g_array_index (self->curve, FmCoreReading, self->curve->len - 1).time_s;
  const double step_s = fmax (30.0, ceil (end_s / N_TABLE_STEPS / 30.0) * 30.0);
  GArray *times = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i < self->readings->len; i++)
    g_array_append_val (times, g_array_index (self->readings, FmCoreReading, i).time_s);
  for (double time_s = 0; time_s <= end_s; time_s += step_s)
    if (isnan (reading_at (self->readings, time_s)))
      g_array_append_val (times, time_s);
  g_array_sort (times, compare_times);
  return times;
}

static void
fill_table (FmCookEstimate *self)
{
  const char *headings[] = { _ ("Time, min:s"), _ ("Estimate"), _ ("Measured") };
  g_autoptr (GArray) times = table_times (self);

  fm_text_grid_add_row (self->table_grid, headings, G_N_ELEMENTS (headings), TRUE);
  for (guint i = 0; i < times->len; i++) {
    const double time_s = g_array_index (times, double, i);
    g_autofree char *time = format_time (time_s);
    g_autofree char *estimate = format_temp (curve_at (self->curve, time_s));
    g_autofree char *measured = format_temp (reading_at (self->readings, time_s));
    const char *texts[] = { time, estimate, measured };

    fm_text_grid_add_row (self->table_grid, texts, G_N_ELEMENTS (texts), FALSE);
  }
}

static void
update (FmCookEstimate *self)
{
  const gboolean has_curve = self->curve->len > 0;
  g_autoptr (GString) text = g_string_new (NULL);

  fm_readings_chart_set_readings (self->chart, self->readings);
  fm_readings_chart_set_estimate (self->chart, self->curve);
  gtk_widget_set_visible (GTK_WIDGET (self->chart), has_curve);
  gtk_widget_set_visible (GTK_WIDGET (self->result_label), has_curve);
  gtk_widget_set_visible (GTK_WIDGET (self->table_expander), has_curve);
  fm_text_grid_clear (self->table_grid);
  if (!has_curve)
    return;
  append_target (self, text);
  append_course (self, text);
  gtk_label_set_text (self->result_label, text->str);
  if (gtk_expander_get_expanded (self->table_expander))
    fill_table (self);
}

static void
expanded_cb (FmCookEstimate *self)
{
  update (self);
}

static void
fm_cook_estimate_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_COOK_ESTIMATE);
  G_OBJECT_CLASS (fm_cook_estimate_parent_class)->dispose (object);
}

static void
fm_cook_estimate_finalize (GObject *object)
{
  g_array_unref (FM_COOK_ESTIMATE (object)->readings);
  g_array_unref (FM_COOK_ESTIMATE (object)->curve);
  G_OBJECT_CLASS (fm_cook_estimate_parent_class)->finalize (object);
}

static void
fm_cook_estimate_class_init (FmCookEstimateClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_cook_estimate_dispose;
  G_OBJECT_CLASS (klass)->finalize = fm_cook_estimate_finalize;
  g_type_ensure (FM_TYPE_READINGS_CHART);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/cook/fm-cook-estimate.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmCookEstimate, box);
  gtk_widget_class_bind_template_child (widget_class, FmCookEstimate, result_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookEstimate, chart);
  gtk_widget_class_bind_template_child (widget_class, FmCookEstimate, table_expander);
  gtk_widget_class_bind_template_child (widget_class, FmCookEstimate, table_grid);
  gtk_widget_class_bind_template_callback (widget_class, expanded_cb);
}

static void
fm_cook_estimate_init (FmCookEstimate *self)
{
  self->readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  self->curve = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_object (fm_notebook_settings_get_default (), "changed", G_CALLBACK (update),
                           self, G_CONNECT_SWAPPED);
}

void
fm_cook_estimate_set_readings (FmCookEstimate *self, const GArray *readings)
{
  g_return_if_fail (FM_IS_COOK_ESTIMATE (self));
  g_array_set_size (self->readings, 0);
  if (readings->len > 0)
    g_array_append_vals (self->readings, readings->data, readings->len);
  update (self);
}

void
fm_cook_estimate_set_result (FmCookEstimate *self, const FmHeatResult *result, double target_c)
{
  g_return_if_fail (FM_IS_COOK_ESTIMATE (self));
  g_array_set_size (self->curve, 0);
  for (guint i = 0; result != NULL && i < result->n; i++) {
    const FmCoreReading point = { result->time_s[i], result->centre_c[i] };

    g_array_append_val (self->curve, point);
  }
  if (result != NULL) {
    self->target_c = target_c;
    self->to_target_s = isnan (target_c) ? NAN : fm_heat_time_to (result, target_c);
    self->off_centre_c = result->off_centre_c;
    self->peak_s = result->peak_s;
    self->peak_centre_c = result->peak_centre_c;
    self->evaporated_pct = result->evaporated_pct;
    self->mass_g = result->mass_g;
    self->diameter_mm = result->diameter_mm;
    self->thickness_mm = result->thickness_mm;
  }
  update (self);
}
