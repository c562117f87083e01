/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-table.c - the numbers of a comparison, one column per item */
#include "app/compare/fm-compare-table.h"

#include <glib/gi18n-lib.h>

#include "app/compare/fm-compare-line.h"
#include "app/widgets/fm-one-stop.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-chart-scale.h"

#define NAME_WIDTH_PX 210
#define CELL_WIDTH_PX 128
/* A narrow window still shows two items beside the names. */
#define NARROW_WINDOW_PX 500
#define NARROW_NAME_WIDTH_PX 140
#define NARROW_CELL_WIDTH_PX 104
#define TITLE_LINES 4

struct _FmCompareTable {
  GtkWidget parent_instance;

  GtkColumnView *view;
  GListStore *lines;
  const FmComparison *comparison;
  int reference;
};

G_DEFINE_FINAL_TYPE (FmCompareTable, fm_compare_table, GTK_TYPE_WIDGET)

enum {
  ROW_ACTIVATED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
setup_cell (GtkListItem *list_item, float xalign)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_MIDDLE);
  gtk_list_item_set_child (list_item, label);
}

static void
setup_name_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  setup_cell (list_item, 0.0f);
}

static void
setup_value_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  setup_cell (list_item, 1.0f);
  gtk_widget_add_css_class (gtk_list_item_get_child (list_item), "numeric");
}

static void
bind_name_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer user_data)
{
  FmCompareTable *self = FM_COMPARE_TABLE (user_data);
  FmCompareLine *line = gtk_list_item_get_item (list_item);
  GtkWidget *label = gtk_list_item_get_child (list_item);
  g_autofree char *text = fm_compare_line_name (line, self->comparison);
  const FmCompareRow *row = fm_compare_line_get_row (line);
  gboolean is_heading = fm_compare_line_get_kind (line) == FM_COMPARE_LINE_HEADING;

  gtk_label_set_text (GTK_LABEL (label), text);
  gtk_widget_set_tooltip_text (label, text);
  fm_widget_set_class (label, "caption-heading", is_heading);
  gtk_list_item_set_activatable (list_item, row != NULL && row->texts == NULL);
}

static void
bind_value_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer user_data)
{
  FmCompareTable *self = FM_COMPARE_TABLE (user_data);
  guint column = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (factory), "column"));
  FmCompareLine *line = gtk_list_item_get_item (list_item);
  GtkWidget *label = gtk_list_item_get_child (list_item);
  g_autofree char *text = fm_compare_line_cell (line, self->comparison, column, self->reference);
  const FmCompareRow *row = fm_compare_line_get_row (line);
  gboolean is_number = row != NULL && row->texts == NULL;

  gtk_label_set_text (GTK_LABEL (label), text);
  gtk_widget_set_tooltip_text (label, is_number ? NULL : text);
  gtk_label_set_wrap (GTK_LABEL (label), !is_number);
  gtk_label_set_lines (GTK_LABEL (label), is_number ? 1 : TITLE_LINES);
  gtk_label_set_xalign (GTK_LABEL (label), is_number ? 1.0f : 0.0f);
  fm_widget_set_class (label, "dim-label", g_str_has_prefix (text, "—"));
}

static void
activate_cb (GtkColumnView *view, guint position, gpointer user_data)
{
  FmCompareTable *self = FM_COMPARE_TABLE (user_data);
  g_autoptr (FmCompareLine) line = g_list_model_get_item (G_LIST_MODEL (self->lines), position);
  const FmCompareRow *row = line != NULL ? fm_compare_line_get_row (line) : NULL;

  if (row != NULL && row->texts == NULL)
    g_signal_emit (self, signals[ROW_ACTIVATED], 0, row->key);
}

static void
add_name_column (FmCompareTable *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) column = NULL;

  g_signal_connect (factory, "setup", G_CALLBACK (setup_name_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_name_cb), self);
  column = gtk_column_view_column_new (_ ("Quantity"), factory);
  gtk_column_view_column_set_fixed_width (column, NAME_WIDTH_PX);
  gtk_column_view_column_set_resizable (column, TRUE);
  gtk_column_view_append_column (self->view, column);
}

static char *
column_title (FmCompareTable *self, guint index)
{
  const char *letter = fm_chart_letter (index);

  if ((int)index == self->reference)
    return g_strdup_printf (_ ("%s · reference"), letter);
  return g_strdup_printf ("%s · %s", letter,
                          fm_comparison_item (self->comparison, index)->short_title);
}

static gboolean
is_narrow (FmCompareTable *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  return root != NULL && gtk_widget_get_width (GTK_WIDGET (root)) < NARROW_WINDOW_PX;
}

static void
add_value_column (FmCompareTable *self, guint index)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autofree char *title = column_title (self, index);
  g_autoptr (GtkColumnViewColumn) column = NULL;

  g_object_set_data (G_OBJECT (factory), "column", GUINT_TO_POINTER (index));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_value_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_value_cb), self);
  column = gtk_column_view_column_new (title, factory);
  gtk_column_view_column_set_fixed_width (column,
                                          is_narrow (self) ? NARROW_CELL_WIDTH_PX : CELL_WIDTH_PX);
  gtk_column_view_column_set_resizable (column, TRUE);
  gtk_column_view_append_column (self->view, column);
}

static void
remove_value_columns (FmCompareTable *self)
{
  GListModel *columns = gtk_column_view_get_columns (self->view);

  while (g_list_model_get_n_items (columns) > 1) {
    g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, 1);

    gtk_column_view_remove_column (self->view, column);
  }
}

static void
fm_compare_table_dispose (GObject *object)
{
  FmCompareTable *self = FM_COMPARE_TABLE (object);
  GtkWidget *child;

  if (self->lines != NULL)
    g_list_store_remove_all (self->lines);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_object (&self->lines);
  G_OBJECT_CLASS (fm_compare_table_parent_class)->dispose (object);
}

static void
fm_compare_table_class_init (FmCompareTableClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_compare_table_dispose;
  signals[ROW_ACTIVATED] =
      g_signal_new ("row-activated", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                    NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
fm_compare_table_init (FmCompareTable *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkSingleSelection *selection;

  self->lines = g_list_store_new (FM_TYPE_COMPARE_LINE);
  selection = gtk_single_selection_new (G_LIST_MODEL (g_object_ref (self->lines)));
  self->view = GTK_COLUMN_VIEW (gtk_column_view_new (GTK_SELECTION_MODEL (selection)));
  gtk_column_view_set_show_column_separators (self->view, TRUE);
  gtk_widget_add_css_class (GTK_WIDGET (self->view), "data-table");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Comparison"), -1);
  /* The focus goes to the list inside, which a screen reader would call by its type. */
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (gtk_widget_get_last_child (GTK_WIDGET (self->view))),
      GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Comparison"), -1);
  g_signal_connect (self->view, "activate", G_CALLBACK (activate_cb), self);
  add_name_column (self);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (self->view));
  gtk_widget_set_parent (fm_one_stop_new (scroller), GTK_WIDGET (self));
}

const FmCompareRow *
fm_compare_table_get_row (FmCompareTable *self)
{
  GtkSelectionModel *model = gtk_column_view_get_model (self->view);
  FmCompareLine *line = gtk_single_selection_get_selected_item (GTK_SINGLE_SELECTION (model));

  return line != NULL ? fm_compare_line_get_row (line) : NULL;
}

void
fm_compare_table_show (FmCompareTable *self, const FmComparison *comparison, int reference)
{
  g_autoptr (GPtrArray) lines = NULL;
  g_autoptr (GtkColumnViewColumn) name_column = NULL;
  GListModel *columns;

  g_list_store_remove_all (self->lines);
  remove_value_columns (self);
  self->comparison = comparison;
  self->reference = reference;
  if (comparison == NULL)
    return;
  for (guint i = 0; i < fm_comparison_n_items (comparison); i++)
    add_value_column (self, i);
  columns = gtk_column_view_get_columns (self->view);
  name_column = g_list_model_get_item (columns, 0);
  gtk_column_view_column_set_fixed_width (name_column,
                                          is_narrow (self) ? NARROW_NAME_WIDTH_PX : NAME_WIDTH_PX);
  lines = fm_compare_lines (comparison);
  g_list_store_splice (self->lines, 0, 0, lines->pdata, lines->len);
}
