/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-charts.c - a strip of small charts for a comparison */
#include "app/compare/fm-compare-charts.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/charts/fm-chart-bars.h"
#include "app/widgets/fm-widget.h"

struct _FmCompareCharts {
  GtkWidget parent_instance;

  GtkBox *strip;
};

G_DEFINE_FINAL_TYPE (FmCompareCharts, fm_compare_charts, GTK_TYPE_WIDGET)

G_STATIC_ASSERT (FM_COMPARE_MAX_ITEMS <= FM_CHART_MAX_BARS);

static const char *const standard_keys[] = {
  "fat",
  "cook_loss",
  "rating",
  "cost_per_kg",
  "nutrient_protein",
  "nutrient_energy_kcal",
  "nutrient_saturated_fat",
};

static void
clear (FmCompareCharts *self)
{
  fm_widget_clear_box (self->strip);
}

/* The reference itself differs by nothing, where its value is known. */
static double
drawn_value (const FmCompareRow *row, guint column, int reference)
{
  if (reference >= 0 && (guint)reference == column)
    return isnan (row->values[column]) ? NAN : 0.0;
  return fm_compare_row_value (row, column, reference);
}

static gboolean
any_known (const double *values, guint n)
{
  for (guint i = 0; i < n; i++)
    if (!isnan (values[i]))
      return TRUE;
  return FALSE;
}

/* "A = Pan patty, version 6": what the letters below the bars stand for. */
static char *
describe_letters (const char *const *names, guint n)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, "%s%s = %s", i > 0 ? "   " : "", fm_chart_letter (i), names[i]);
  return g_string_free (text, FALSE);
}

static GtkWidget *
make_chart (const char *title,
            const FmCompareRow *row,
            const FmComparison *comparison,
            const FmBarsData *data)
{
  const char *names[FM_COMPARE_MAX_ITEMS];
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *heading = gtk_label_new (title);
  GtkWidget *bars = fm_chart_bars_new ();
  g_autofree char *letters = NULL;

  for (guint i = 0; i < data->n; i++)
    names[i] = fm_comparison_item (comparison, i)->title;
  letters = describe_letters (names, data->n);
  fm_chart_bars_set (FM_CHART_BARS (bars), title, row->unit, names, data);
  fm_chart_set_subject (FM_CHART (bars), _ ("Comparison"));
  fm_chart_set_legend (FM_CHART (bars), letters);
  gtk_label_set_xalign (GTK_LABEL (heading), 0.0f);
  gtk_label_set_ellipsize (GTK_LABEL (heading), PANGO_ELLIPSIZE_MIDDLE);
  gtk_label_set_max_width_chars (GTK_LABEL (heading), 20);
  gtk_widget_set_tooltip_text (heading, title);
  gtk_widget_add_css_class (heading, "caption-heading");
  gtk_box_append (GTK_BOX (box), heading);
  gtk_box_append (GTK_BOX (box), bars);
  return box;
}

static void
add_chart (FmCompareCharts *self,
           const FmComparison *comparison,
           const char *key,
           int reference,
           gboolean even_if_unknown)
{
  const FmCompareRow *row = fm_comparison_find_row (comparison, key);
  FmBarsData data = { .n = fm_comparison_n_items (comparison), .with_sign = reference >= 0 };
  g_autofree char *title = NULL;

  if (row == NULL)
    return;
  data.decimals = row->decimals;
  for (guint i = 0; i < data.n; i++)
    data.values[i] = drawn_value (row, i, reference);
  if (!even_if_unknown && !any_known (data.values, data.n))
    return;
  title = row->unit[0] != '\0' ? g_strdup_printf ("%s, %s", row->name, row->unit)
                               : g_strdup (row->name);
  gtk_box_append (self->strip, make_chart (title, row, comparison, &data));
}

static void
fm_compare_charts_dispose (GObject *object)
{
  FmCompareCharts *self = FM_COMPARE_CHARTS (object);
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (fm_compare_charts_parent_class)->dispose (object);
}

static void
fm_compare_charts_class_init (FmCompareChartsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_compare_charts_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
fm_compare_charts_init (FmCompareCharts *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->strip = GTK_BOX (gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18));
  gtk_widget_set_margin_start (GTK_WIDGET (self->strip), 12);
  gtk_widget_set_margin_end (GTK_WIDGET (self->strip), 12);
  gtk_widget_set_margin_bottom (GTK_WIDGET (self->strip), 12);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_AUTOMATIC,
                                  GTK_POLICY_NEVER);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (self->strip));
  gtk_widget_set_parent (scroller, GTK_WIDGET (self));
}

void
fm_compare_charts_show (FmCompareCharts *self,
                        const FmComparison *comparison,
                        int reference,
                        const char *first_key)
{
  clear (self);
  if (comparison == NULL)
    return;
  if (first_key != NULL)
    add_chart (self, comparison, first_key, reference, TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (standard_keys); i++)
    if (g_strcmp0 (standard_keys[i], first_key) != 0)
      add_chart (self, comparison, standard_keys[i], reference, FALSE);
}
