/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-table-window.c - the numbers behind a picture, to read and to copy */
#include "app/charts/fm-chart-table-window.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-widget.h"

struct _FmChartTableWindow {
  AdwWindow parent_instance;

  GtkLabel *title_label;
  GtkLabel *subject_label;
  GtkButton *copy_button;
  GtkColumnView *view;

  FmChartTable *table; /* (nullable) */
};

G_DEFINE_FINAL_TYPE (FmChartTableWindow, fm_chart_table_window, ADW_TYPE_WINDOW)

static void
copy_cb (FmChartTableWindow *self)
{
  g_autofree char *text = fm_chart_table_to_text (self->table);

  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), text);
  gtk_button_set_label (self->copy_button, _ ("Copied"));
}

static guint
column_of (gpointer factory)
{
  return GPOINTER_TO_UINT (g_object_get_data (factory, "column"));
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column_of (factory) == 0 ? 0.0f : 1.0f);
  gtk_widget_add_css_class (label, "numeric");
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, FmChartTableWindow *self)
{
  const FmChartRow *row = fm_chart_table_row (self->table, gtk_list_item_get_position (item));

  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), row->cells[column_of (factory)]);
}

static void
add_column (FmChartTableWindow *self, guint index)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkColumnViewColumn *column = gtk_column_view_column_new (self->table->headings[index], factory);

  g_object_set_data (G_OBJECT (factory), "column", GUINT_TO_POINTER (index));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), self);
  gtk_column_view_column_set_expand (column, index == 0);
  gtk_column_view_column_set_resizable (column, TRUE);
  gtk_column_view_append_column (self->view, column);
  g_object_unref (column);
}

static void
fill (FmChartTableWindow *self)
{
  GtkStringList *sentences = gtk_string_list_new (NULL);

  for (guint i = 0; i < self->table->rows->len; i++)
    gtk_string_list_append (sentences, fm_chart_table_row (self->table, i)->sentence);
  for (guint i = 0; self->table->headings[i] != NULL; i++)
    add_column (self, i);
  gtk_column_view_set_model (
      self->view, GTK_SELECTION_MODEL (gtk_single_selection_new (G_LIST_MODEL (sentences))));
}

static void
fm_chart_table_window_dispose (GObject *object)
{
  FmChartTableWindow *self = FM_CHART_TABLE_WINDOW (object);

  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_CHART_TABLE_WINDOW);
  g_clear_pointer (&self->table, fm_chart_table_free);
  G_OBJECT_CLASS (fm_chart_table_window_parent_class)->dispose (object);
}

static void
fm_chart_table_window_class_init (FmChartTableWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_chart_table_window_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/charts/fm-chart-table-window.ui");
  gtk_widget_class_bind_template_child (widget_class, FmChartTableWindow, title_label);
  gtk_widget_class_bind_template_child (widget_class, FmChartTableWindow, subject_label);
  gtk_widget_class_bind_template_child (widget_class, FmChartTableWindow, copy_button);
  gtk_widget_class_bind_template_child (widget_class, FmChartTableWindow, view);
  gtk_widget_class_bind_template_callback (widget_class, copy_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fm_chart_table_window_init (FmChartTableWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_chart_table_window_show (GtkWidget *parent,
                            const char *title,
                            const char *subject,
                            const FmChartTable *table)
{
  FmChartTableWindow *self = g_object_new (FM_TYPE_CHART_TABLE_WINDOW, "transient-for",
                                           gtk_widget_get_root (parent), NULL);

  self->table = fm_chart_table_copy (table);
  fm_widget_set_label (self->title_label, title);
  fm_widget_set_label (self->subject_label, subject != NULL ? subject : "");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL, title,
                                  -1);
  fill (self);
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->view));
}
