/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-slices.c - a fitted map as a picture: a triangle of three components or a curve of two */
#include "app/map/fm-map-slices.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-accessible.h"
#include "app/charts/fm-map-curves.h"
#include "app/map/fm-map-plot.h"
#include "app/widgets/fm-derivation-window.h"
#include "app/widgets/fm-number-entry.h"
#include "app/widgets/fm-page.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"
#include "core/base/fm-number.h"
#include "core/mixture/fm-mix-derivation.h"

#define N_CURVE 41
/* As Ctrl+1. */
#define FORMULA_PAGE 1

struct _FmMapSlices {
  GtkWidget parent_instance;

  GtkBox *box;
  GtkBox *slice_box;
  GtkDropDown *three_drop_down;
  GtkBox *held_box;
  GtkLabel *problem_label;
  FmMapPlot *plot;
  FmMapCurves *curve;
  GtkLabel *picked_label;
  GtkButton *why_button;
  GtkLabel *legend_label;
  GtkExpander *table_expander;
  GtkGrid *grid;

  FmMapDocument *document;
  const FmMapFit *fit; /* (nullable) (not owned) */
  char *components;    /* the names that the choices were made for */
  GArray *threes;      /* guint[3] each: the choices of the drop-down */
  double held[FM_MIX_MAX_COMPONENTS];
  gboolean filling;
};

G_DEFINE_FINAL_TYPE (FmMapSlices, fm_map_slices, GTK_TYPE_WIDGET)

typedef struct {
  guint component[3];
} Three;

static const Three *
chosen_three (FmMapSlices *self)
{
  const guint selected = gtk_drop_down_get_selected (self->three_drop_down);

  return &g_array_index (self->threes, Three, selected < self->threes->len ? selected : 0);
}

static gboolean
is_of_three (const Three *three, guint component)
{
  return three->component[0] == component || three->component[1] == component ||
         three->component[2] == component;
}

static void
show_problem (FmMapSlices *self, const char *problem)
{
  fm_widget_set_label (self->problem_label, problem != NULL ? problem : "");
  gtk_widget_set_visible (GTK_WIDGET (self->problem_label), problem != NULL);
}

static void
draw_triangle (FmMapSlices *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *legend = NULL;
  FmMixSlice slice;

  if (!fm_mix_slice_init (&slice, self->fit->region.q, chosen_three (self)->component, self->held,
                          &self->fit->region, &error)) {
    show_problem (self, error->message);
    gtk_widget_set_visible (GTK_WIDGET (self->plot), FALSE);
    fm_map_plot_drop (self->plot);
    return;
  }
  show_problem (self, NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->plot), TRUE);
  fm_map_plot_take (self->plot, self->document,
                    fm_map_picture_new (self->document, self->fit, &slice));
  legend = fm_map_picture_legend (fm_map_plot_get_picture (self->plot));
  fm_widget_set_label (self->legend_label, legend);
  fm_chart_set_legend (FM_CHART (self->plot), legend);
}

static void
held_changed_cb (FmNumberEntry *entry, double value, FmMapSlices *self)
{
  const guint component = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (entry), "component"));

  self->held[component] = value / 100.0;
  if (self->fit != NULL)
    draw_triangle (self);
}

static void
add_held_entry (FmMapSlices *self, const char *name, guint component)
{
  /* Translators: name of a component. */
  g_autofree char *what = g_strdup_printf (_ ("%s held at"), name);
  GtkWidget *entry = fm_number_entry_new (what, 0, 100, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *label = gtk_label_new (what);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_MIDDLE);
  gtk_widget_add_css_class (label, "caption");
  fm_number_entry_set_unit (FM_NUMBER_ENTRY (entry), "%");
  fm_number_entry_load_value (FM_NUMBER_ENTRY (entry), round (1000.0 * self->held[component]) / 10);
  g_object_set_data (G_OBJECT (entry), "component", GUINT_TO_POINTER (component));
  g_signal_connect_object (entry, "value-changed", G_CALLBACK (held_changed_cb), self, 0);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), entry);
  gtk_box_append (self->held_box, box);
}

/* One entry for each component that is not of the three. */
static void
fill_held (FmMapSlices *self)
{
  const char *const *names = fm_map_document_get_short_names (self->document);
  const Three *three = chosen_three (self);

  fm_widget_clear_box (self->held_box);
  for (guint i = 0; i < self->fit->region.q; i++)
    if (!is_of_three (three, i))
      add_held_entry (self, names[i], i);
}

static void
three_cb (FmMapSlices *self)
{
  if (self->filling || self->fit == NULL || self->threes->len == 0)
    return;
  fill_held (self);
  draw_triangle (self);
}

/* All ways to take three of the components; the first three first. */
static void
fill_threes (FmMapSlices *self)
{
  const char *const *names = fm_map_document_get_short_names (self->document);
  const guint q = self->fit->region.q;
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  g_array_set_size (self->threes, 0);
  for (guint i = 0; i < q; i++)
    for (guint j = i + 1; j < q; j++)
      for (guint k = j + 1; k < q; k++) {
        const Three three = { { i, j, k } };
        g_autofree char *text = g_strdup_printf ("%s, %s, %s", names[i], names[j], names[k]);

        g_array_append_val (self->threes, three);
        gtk_string_list_append (list, text);
      }
  self->filling = TRUE;
  gtk_drop_down_set_model (self->three_drop_down, G_LIST_MODEL (list));
  self->filling = FALSE;
}

/* The choices stay as they are while the components do. */
static void
prepare_slices (FmMapSlices *self)
{
  g_autofree char *components =
      g_strjoinv ("\n", (char **)fm_map_document_get_short_names (self->document));

  if (g_strcmp0 (components, self->components) == 0)
    return;
  g_free (self->components);
  self->components = g_steal_pointer (&components);
  for (guint i = 0; i < self->fit->region.q; i++)
    self->held[i] = self->fit->predicts ? self->fit->best.x[i] : self->fit->reference[i];
  fill_threes (self);
  fill_held (self);
}

static GArray *
dots_of (const GArray *marks)
{
  GArray *dots = g_array_new (FALSE, FALSE, sizeof (FmMapCurveDot));

  for (guint i = 0; i < marks->len; i++) {
    const FmMapMark *mark = &g_array_index (marks, FmMapMark, i);
    const FmMapCurveDot dot = { 100.0 * mark->x[0], mark->measured, mark->number };

    if (mark->kind == FM_MAP_MARK_VERSION)
      g_array_append_val (dots, dot);
  }
  return dots;
}

static char *
curve_description (FmMapSlices *self, const GArray *marks)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < marks->len; i++) {
    const FmMapMark *mark = &g_array_index (marks, FmMapMark, i);
    g_autofree char *one = fm_map_mark_text (mark, self->document, self->fit->response);

    if (mark->kind != FM_MAP_MARK_VERSION)
      g_string_append_printf (text, "%s ", one);
  }
  g_string_append (text, _ ("All points stand in the table below."));
  return g_string_free (text, FALSE);
}

/* The mean and its interval along the share of the first component, within the region. */
static FmMapCurve *
curve_new (const FmMapFit *fit)
{
  FmMapCurve *curve = fm_map_curve_new ("", _ ("Prediction"));
  g_autofree char *unit = NULL;
  const FmMixResponse wording = fm_map_fit_wording (fit->response, &unit);
  g_autoptr (FmMixPoints) points =
      fit->predicts ? fm_mix_trace (&fit->region, fit->reference, 0, N_CURVE, NULL) : NULL;

  for (guint i = 0; points != NULL && i < points->n; i++) {
    const double *x = fm_mix_points_get (points, i);
    FmMixPrediction prediction;

    fm_mix_predict_within (fit->fit, x, &wording, &prediction);
    const FmMapCurvePoint point = { 100.0 * x[0], prediction.mean, prediction.low,
                                    prediction.high };
    g_array_append_val (curve->points, point);
  }
  return curve;
}

static void
draw_curve (FmMapSlices *self, const GArray *marks)
{
  const char *const *names = fm_map_document_get_short_names (self->document);
  GPtrArray *curves = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_map_curve_free);
  g_autofree char *description = curve_description (self, marks);
  g_autofree char *title = g_strdup_printf (_ ("Share of %s, %%"), names[0]);

  g_ptr_array_add (curves, curve_new (self->fit));
  fm_map_curves_take (self->curve,
                      fm_map_curves_data_new (curves, dots_of (marks), title,
                                              fm_map_response_decimals (self->fit->response)),
                      _ ("Map of two components"), description);
  fm_widget_set_label (self->legend_label,
                       self->fit->predicts
                           ? _ ("Line: predicted mean; band: its 95 % interval; ● measured mean of "
                                "a version, with its number.")
                           : _ ("● measured mean of a version, with its number."));
}

static void
fill_table (FmMapSlices *self, const GArray *marks)
{
  g_autoptr (FmChartTable) table = fm_map_marks_table_new ();

  for (guint i = 0; i < marks->len; i++)
    fm_map_mark_add_row (&g_array_index (marks, FmMapMark, i), self->document, self->fit->response,
                         table);
  fm_chart_table_fill (table, self->grid);
}

static void
show_map (FmMapSlices *self)
{
  const guint q = self->fit->region.q;
  g_autoptr (GArray) marks = fm_map_marks_new (self->document, self->fit);

  gtk_widget_set_visible (GTK_WIDGET (self->slice_box), q > 3);
  gtk_widget_set_visible (GTK_WIDGET (self->plot), q >= 3);
  gtk_widget_set_visible (GTK_WIDGET (self->picked_label), q >= 3);
  gtk_widget_set_visible (GTK_WIDGET (self->curve), q == 2);
  show_problem (self, NULL);
  fill_table (self, marks);
  if (q == 2) {
    fm_map_plot_drop (self->plot);
    draw_curve (self, marks);
    return;
  }
  prepare_slices (self);
  draw_triangle (self);
}

/* The blend that was asked, or picked. */
static gboolean
asked_blend (FmMapSlices *self, double *x)
{
  double share;

  if (self->fit == NULL)
    return FALSE;
  if (self->fit->region.q != 2)
    return fm_map_plot_get_asked (self->plot, x);
  share = fm_map_curves_get_picked_x (self->curve) / 100.0;
  x[0] = share;
  x[1] = 1.0 - share;
  return !isnan (share);
}

static void
update_why (FmMapSlices *self)
{
  double x[FM_MIX_MAX_COMPONENTS];

  gtk_widget_set_sensitive (GTK_WIDGET (self->why_button), asked_blend (self, x));
}

static void
picked_cb (FmMapSlices *self)
{
  g_autofree char *text = NULL;

  g_object_get (self->plot, "picked", &text, NULL);
  fm_widget_set_label (self->picked_label,
                       text != NULL ? text
                                    : _ ("Arrow keys or a click ask the model at a point. Page Up "
                                         "and Page Down go from mark to mark; Enter opens "
                                         "the version of a mark."));
  update_why (self);
}

/* Where the map does not predict, what was measured is all that there is. */
static void
why_cb (FmMapSlices *self)
{
  double x[FM_MIX_MAX_COMPONENTS];
  g_autofree char *unit = NULL, *text = NULL, *shares = NULL;

  if (!asked_blend (self, x))
    return;
  const FmMixResponse wording = fm_map_fit_wording (self->fit->response, &unit);
  shares = fm_map_document_shares_text (self->document, x);
  text = self->fit->predicts
             ? fm_mix_derivation (self->fit->fit, self->fit->data, x,
                                  fm_map_document_get_short_names (self->document), &wording)
             : fm_mix_measured (self->fit->data, x, &wording);
  fm_derivation_window_show (GTK_WIDGET (self), shares, text);
}

static void
open_version_cb (FmMapSlices *self, gint64 version_id)
{
  GtkWidget *page = gtk_widget_get_ancestor (GTK_WIDGET (self), FM_TYPE_PAGE);

  if (page == NULL || fm_page_get_session (FM_PAGE (page)) == NULL)
    return;
  fm_session_show_version (fm_page_get_session (FM_PAGE (page)), version_id);
  gtk_widget_activate_action (GTK_WIDGET (self), "win.page", "i", FORMULA_PAGE);
}

static void
fm_map_slices_dispose (GObject *object)
{
  FmMapSlices *self = FM_MAP_SLICES (object);

  self->fit = NULL;
  g_clear_object (&self->document);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_MAP_SLICES);
  G_OBJECT_CLASS (fm_map_slices_parent_class)->dispose (object);
}

static void
fm_map_slices_finalize (GObject *object)
{
  g_array_unref (FM_MAP_SLICES (object)->threes);
  g_free (FM_MAP_SLICES (object)->components);
  G_OBJECT_CLASS (fm_map_slices_parent_class)->finalize (object);
}

static void
fm_map_slices_class_init (FmMapSlicesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_map_slices_dispose;
  G_OBJECT_CLASS (klass)->finalize = fm_map_slices_finalize;
  g_type_ensure (FM_TYPE_MAP_PLOT);
  g_type_ensure (FM_TYPE_MAP_CURVES);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/map/fm-map-slices.ui");
  gtk_widget_class_bind_template_child (widget_class, FmMapSlices, box);
  gtk_widget_class_bind_template_child (widget_class, FmMapSlices, slice_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapSlices, three_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmMapSlices, held_box);
  gtk_widget_class_bind_template_child (widget_class, FmMapSlices, problem_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapSlices, plot);
  gtk_widget_class_bind_template_child (widget_class, FmMapSlices, curve);
  gtk_widget_class_bind_template_child (widget_class, FmMapSlices, picked_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapSlices, why_button);
  gtk_widget_class_bind_template_child (widget_class, FmMapSlices, legend_label);
  gtk_widget_class_bind_template_child (widget_class, FmMapSlices, table_expander);
  gtk_widget_class_bind_template_child (widget_class, FmMapSlices, grid);
  gtk_widget_class_bind_template_callback (widget_class, three_cb);
  gtk_widget_class_bind_template_callback (widget_class, picked_cb);
  gtk_widget_class_bind_template_callback (widget_class, open_version_cb);
  gtk_widget_class_bind_template_callback (widget_class, update_why);
  gtk_widget_class_bind_template_callback (widget_class, why_cb);
}

static void
fm_map_slices_init (FmMapSlices *self)
{
  self->threes = g_array_new (FALSE, FALSE, sizeof (Three));
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_accessible_name_drop_down (self->three_drop_down, _ ("Corners of the triangle"));
  fm_widget_ellipsize_drop_down (self->three_drop_down);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

void
fm_map_slices_show (FmMapSlices *self, FmMapDocument *document, const FmMapFit *fit)
{
  g_return_if_fail (FM_IS_MAP_SLICES (self));
  g_set_object (&self->document, document);
  self->fit = fit != NULL && fit->fit != NULL ? fit : NULL;
  gtk_widget_set_visible (GTK_WIDGET (self), self->fit != NULL);
  if (self->fit != NULL)
    show_map (self);
  else
    fm_map_plot_drop (self->plot);
}
