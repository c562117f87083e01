/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-traces.c - how a prediction changes with each component, from the middle of the map */
#include "app/map/fm-map-traces.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-text-grid.h"
#include "app/charts/fm-map-curves.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-chart-scale.h"
#include "core/base/fm-number.h"

#define N_POINTS 25
#define TABLE_EVERY 6

struct _FmMapTraces {
  GtkWidget parent_instance;

  GtkBox *box;
  GtkLabel *title_label;
  GtkLabel *basis_label;
  FmMapCurves *curves;
  GtkLabel *legend_label;
  GtkExpander *table_expander;
  GtkGrid *grid;
};

G_DEFINE_FINAL_TYPE (FmMapTraces, fm_map_traces, GTK_TYPE_WIDGET)

/* Trace of one component; no points where the limits leave it no room. */
static FmMapCurve *
trace_new (const FmMapFit *fit, const char *const *names, guint component)
{
  FmMapCurve *curve = fm_map_curve_new (fm_chart_letter (component), names[component]);
  g_autoptr (FmMixPoints) points =
      fm_mix_trace (&fit->region, fit->reference, component, N_POINTS, NULL);

  for (guint i = 0; points != NULL && i < points->n; i++) {
    const double *x = fm_mix_points_get (points, i);
    FmMixPrediction prediction;
    FmMapCurvePoint point = { .low = NAN, .high = NAN };

    fm_mix_predict (fit->fit, x, &prediction);
    point.x = 100.0 * (x[component] - fit->reference[component]);
    point.mean = prediction.mean;
    g_array_append_val (curve->points, point);
  }
  return curve;
}

static void
add_rows (FmMapTraces *self, const FmMapFit *fit, const char *const *names, guint component)
{
  const int decimals = fm_map_response_decimals (fit->response);
  g_autofree char *unit = NULL;
  const FmMixResponse wording = fm_map_fit_wording (fit->response, &unit);
  g_autoptr (FmMixPoints) points =
      fm_mix_trace (&fit->region, fit->reference, component, N_POINTS, NULL);

  for (guint i = 0; points != NULL && i < points->n; i += TABLE_EVERY) {
    const double *x = fm_mix_points_get (points, i);
    FmMixPrediction prediction;

    fm_mix_predict_within (fit->fit, x, &wording, &prediction);
    g_autofree char *share = fm_number_format_unit (100.0 * x[component], 1, "%");
    g_autofree char *mean = fm_number_format (prediction.mean, decimals);
    g_autofree char *low = fm_number_format (prediction.low, decimals);
    g_autofree char *high = fm_number_format (prediction.high, decimals);
    const char *texts[] = { names[component], share, mean, low, high };

    fm_text_grid_add_row (self->grid, texts, G_N_ELEMENTS (texts), FALSE);
  }
}

static void
fill_table (FmMapTraces *self, const FmMapFit *fit, const char *const *names)
{
  const char *headings[] = { _ ("Component"), _ ("Share"), _ ("Predicted"),
                             _ ("95 % of the mean, from"), _ ("to") };

  fm_text_grid_clear (self->grid);
  fm_text_grid_add_row (self->grid, headings, G_N_ELEMENTS (headings), TRUE);
  for (guint i = 0; i < fit->region.q; i++)
    add_rows (self, fit, names, i);
}

/* "A Chuck: from 5.2 to 6.9" by component, one in a line. */
static char *
legend_text (const GPtrArray *curves, const char *const *names, int decimals)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < curves->len; i++) {
    const FmMapCurve *curve = g_ptr_array_index (curves, i);

    if (i > 0)
      g_string_append_c (text, '\n');
    if (curve->points->len == 0) {
      g_string_append_printf (text, _ ("%s %s: the limits leave it no room."), curve->letter,
                              names[i]);
      continue;
    }
    const FmMapCurvePoint *first = &g_array_index (curve->points, FmMapCurvePoint, 0);
    const FmMapCurvePoint *last =
        &g_array_index (curve->points, FmMapCurvePoint, curve->points->len - 1);
    g_autofree char *from = fm_number_format (first->mean, decimals);
    g_autofree char *to = fm_number_format (last->mean, decimals);

    /* Translators: letter and name of a component, two predicted values. */
    g_string_append_printf (text, _ ("%s %s: %s at its least, %s at its most"), curve->letter,
                            names[i], from, to);
  }
  return g_string_free (text, FALSE);
}

static void
show_traces (FmMapTraces *self, FmMapDocument *document, const FmMapFit *fit)
{
  const char *const *names = fm_map_document_get_short_names (document);
  GPtrArray *curves = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_map_curve_free);
  g_autofree char *shares = fm_map_document_shares_text (document, fit->reference);
  g_autofree char *legend = NULL;
  g_autofree char *basis = NULL;
  g_autofree char *label = NULL;

  for (guint i = 0; i < fit->region.q; i++)
    g_ptr_array_add (curves, trace_new (fit, names, i));
  legend = legend_text (curves, names, fm_map_response_decimals (fit->response));
  /* Translators: "liking"; shares of a blend. */
  basis = g_strdup_printf (_ ("Predicted %s as one component grows from the middle of the map (%s) "
                              "and the others keep their proportions (Cox direction)."),
                           fm_map_fit_word (fit->response), shares);
  label = g_strdup_printf (_ ("Traces of %s"), fm_map_fit_word (fit->response));
  fm_widget_set_label (self->basis_label, basis);
  fm_widget_set_label (self->legend_label, legend);
  fm_map_curves_take (self->curves,
                      fm_map_curves_data_new (curves, NULL, _ ("Change of its share, points"),
                                              fm_map_response_decimals (fit->response)),
                      label, legend);
  fm_chart_set_legend (FM_CHART (self->curves), legend);
  fill_table (self, fit, names);
}

static void
fm_map_traces_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_MAP_TRACES);
  G_OBJECT_CLASS (fm_map_traces_parent_class)->dispose (object);
}

static void
fm_map_traces_class_init (FmMapTracesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_traces_dispose;
  g_type_ensure (FM_TYPE_MAP_CURVES);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-traces.ui");
  gtk_widget_class_bind_template_child (widget_class, FmMapTraces, box);
  gtk_widget_class_bind_template_child (widget_class, FmMapTraces, title_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapTraces, basis_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapTraces, curves);
  gtk_widget_class_bind_template_child (widget_class, FmMapTraces, legend_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapTraces, table_expander);
  gtk_widget_class_bind_template_child (widget_class, FmMapTraces, grid);
}

static void
fm_map_traces_init (FmMapTraces *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

void
fm_map_traces_show (FmMapTraces *self, FmMapDocument *document, const FmMapFit *fit)
{
  const gboolean has_traces = fit != NULL && fit->predicts;

  g_return_if_fail (FM_IS_MAP_TRACES (self));
  gtk_widget_set_visible (GTK_WIDGET (self), has_traces);
  if (has_traces)
    show_traces (self, document, fit);
}
