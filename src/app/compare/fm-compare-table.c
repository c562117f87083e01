/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-table.c - the numbers of a comparison, one column per item */
#include "app/compare/fm-compare-table.h"

#include <glib/gi18n-lib.h>

#include "app/compare/fm-compare-line.h"
#include "app/compare/fm-compare-span.h"
#include "app/widgets/fm-one-stop.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-chart-scale.h"

#define TEXT_LINES 6
#define NAME_LINES 2
#define HEAD_LINES 3
#define PHOTO_HEIGHT_PX 96

struct _FmCompareTable {
  GtkWidget parent_instance;

  GtkColumnView *view;
  FmCompareSpan *span;
  GListStore *lines;
  const FmCompareShown *shown;
  FmCompareTableLook look;
};

G_DEFINE_FINAL_TYPE (FmCompareTable, fm_compare_table, GTK_TYPE_WIDGET)

enum {
  ROW_ACTIVATED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static gboolean
is_photos (const FmCompareRow *row)
{
  return row != NULL && g_str_equal (row->key, FM_COMPARE_PHOTOS_KEY);
}

/* A row that can be drawn, or whose photos can be looked at. */
static gboolean
does_something (const FmCompareRow *row)
{
  return row != NULL && (row->texts == NULL || is_photos (row));
}

static void
setup_name_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_lines (GTK_LABEL (label), NAME_LINES);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_list_item_set_child (list_item, label);
}

static void
setup_value_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, "numeric");
  gtk_box_append (GTK_BOX (box), label);
  gtk_list_item_set_child (list_item, box);
}

static void
bind_name_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer user_data)
{
  FmCompareTable *self = FM_COMPARE_TABLE (user_data);
  FmCompareLine *line = gtk_list_item_get_item (list_item);
  GtkWidget *label = gtk_list_item_get_child (list_item);
  g_autofree char *text = fm_compare_line_name (line, self->shown->comparison);
  gboolean is_heading = fm_compare_line_get_kind (line) == FM_COMPARE_LINE_HEADING;

  gtk_label_set_text (GTK_LABEL (label), text);
  gtk_widget_set_tooltip_text (label, text);
  fm_widget_set_class (label, "caption-heading", is_heading);
  gtk_list_item_set_activatable (list_item, does_something (fm_compare_line_get_row (line)));
}

/* Above the words of the cell; what stood there before goes. */
static void
show_photo (FmCompareTable *self, GtkWidget *box, const FmCompareRow *row, guint column)
{
  GdkTexture *texture =
      is_photos (row) ? g_ptr_array_index (self->shown->thumbnails, column) : NULL;
  GtkWidget *first = gtk_widget_get_first_child (box);
  GtkWidget *picture;
  g_autofree char *name = NULL;

  if (GTK_IS_PICTURE (first))
    gtk_box_remove (GTK_BOX (box), first);
  if (texture == NULL)
    return;
  picture = gtk_picture_new_for_paintable (GDK_PAINTABLE (texture));
  name = g_strdup_printf (_ ("Photo of %s"),
                          fm_comparison_item (self->shown->comparison, column)->title);
  gtk_picture_set_alternative_text (GTK_PICTURE (picture), name);
  gtk_widget_set_size_request (picture, -1, PHOTO_HEIGHT_PX);
  gtk_widget_set_halign (picture, GTK_ALIGN_START);
  gtk_box_prepend (GTK_BOX (box), picture);
}

static void
bind_value_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item, gpointer user_data)
{
  FmCompareTable *self = FM_COMPARE_TABLE (user_data);
  guint column = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (factory), "column"));
  FmCompareLine *line = gtk_list_item_get_item (list_item);
  GtkWidget *box = gtk_list_item_get_child (list_item);
  GtkWidget *label = gtk_widget_get_last_child (box);
  g_autofree char *text =
      fm_compare_line_cell (line, self->shown->comparison, column, self->look.reference);
  const FmCompareRow *row = fm_compare_line_get_row (line);
  gboolean is_number = row != NULL && row->texts == NULL;

  show_photo (self, box, row, column);
  gtk_label_set_text (GTK_LABEL (label), text);
  gtk_widget_set_tooltip_text (box, is_photos (row) ? _ ("Activate the row to look at the photos")
                                    : is_number     ? NULL
                                                    : text);
  gtk_label_set_wrap (GTK_LABEL (label), !is_number);
  gtk_label_set_lines (GTK_LABEL (label), is_number ? 1 : TEXT_LINES);
  gtk_label_set_xalign (GTK_LABEL (label), is_number ? 1.0f : 0.0f);
  fm_widget_set_class (label, "dim-label", g_str_has_prefix (text, "—"));
}

static void
activate_cb (GtkColumnView *view, guint position, gpointer user_data)
{
  FmCompareTable *self = FM_COMPARE_TABLE (user_data);
  g_autoptr (FmCompareLine) line = g_list_model_get_item (G_LIST_MODEL (self->lines), position);
  const FmCompareRow *row = line != NULL ? fm_compare_line_get_row (line) : NULL;

  if (does_something (row))
    g_signal_emit (self, signals[ROW_ACTIVATED], 0, row->key);
}

static void
add_column (FmCompareTable *self, const char *title, GtkListItemFactory *factory)
{
  g_autoptr (GtkColumnViewColumn) column = gtk_column_view_column_new (title, factory);

  gtk_column_view_append_column (self->view, column);
}

static void
add_name_column (FmCompareTable *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();

  g_signal_connect (factory, "setup", G_CALLBACK (setup_name_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_name_cb), self);
  add_column (self, _ ("Quantity"), factory);
}

static char *
column_title (FmCompareTable *self, guint index)
{
  const char *letter = fm_chart_letter (index);
  const char *name = fm_comparison_item (self->shown->comparison, index)->short_title;

  if ((int)index == self->look.reference)
    /* TRANSLATORS: "A · reference · Pan patty, version 3": heads a column */
    return g_strdup_printf (_ ("%s · reference · %s"), letter, name);
  return g_strdup_printf ("%s · %s", letter, name);
}

static void
add_value_column (FmCompareTable *self, guint index)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autofree char *title = column_title (self, index);

  g_object_set_data (G_OBJECT (factory), "column", GUINT_TO_POINTER (index));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_value_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_value_cb), self);
  add_column (self, title, factory);
}

/* The heads have no property for it: names wrap, so that blend and version stay readable. */
static void
wrap_heads (GtkWidget *widget)
{
  if (GTK_IS_LABEL (widget)) {
    gtk_label_set_wrap (GTK_LABEL (widget), TRUE);
    gtk_label_set_lines (GTK_LABEL (widget), HEAD_LINES);
    gtk_label_set_ellipsize (GTK_LABEL (widget), PANGO_ELLIPSIZE_END);
    gtk_label_set_xalign (GTK_LABEL (widget), 0.0f);
    gtk_widget_set_tooltip_text (widget, gtk_label_get_text (GTK_LABEL (widget)));
    return;
  }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    wrap_heads (child);
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
  self->span = fm_compare_span_new (self->view);
  gtk_widget_set_parent (fm_one_stop_new (GTK_WIDGET (self->span)), GTK_WIDGET (self));
}

const FmCompareRow *
fm_compare_table_get_row (FmCompareTable *self)
{
  GtkSelectionModel *model = gtk_column_view_get_model (self->view);
  FmCompareLine *line = gtk_single_selection_get_selected_item (GTK_SINGLE_SELECTION (model));

  return line != NULL ? fm_compare_line_get_row (line) : NULL;
}

void
fm_compare_table_show (FmCompareTable *self,
                       const FmCompareShown *shown,
                       const FmCompareTableLook *look)
{
  g_autoptr (GPtrArray) lines = NULL;

  g_list_store_remove_all (self->lines);
  remove_value_columns (self);
  self->shown = shown;
  if (shown == NULL)
    return;
  self->look = *look;
  for (guint i = 0; i < fm_comparison_n_items (shown->comparison); i++)
    add_value_column (self, i);
  wrap_heads (gtk_widget_get_first_child (GTK_WIDGET (self->view)));
  fm_compare_span_fit (self->span);
  lines = fm_compare_lines (shown->comparison, look->only_differing);
  g_list_store_splice (self->lines, 0, 0, lines->pdata, lines->len);
}
