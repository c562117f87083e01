/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-page-row.c - one version or the draft in the tree of the versions page */
#include "app/versions/fm-versions-page-row.h"

#include "app/versions/fm-version-tree-graph.h"
#include "app/widgets/fm-widget.h"

struct _FmVersionsPageRow {
  GtkWidget parent_instance;

  FmVersionTreeGraph *graph;
  GtkLabel *title_label;
  GtkLabel *detail_label;

  FmVersionTreeItem *item;
  gulong changed_id;
};

G_DEFINE_FINAL_TYPE (FmVersionsPageRow, fm_versions_page_row, GTK_TYPE_WIDGET)

static void
update (FmVersionsPageRow *self)
{
  GtkWidget *list_item = gtk_widget_get_parent (GTK_WIDGET (self));
  const FmVersionTreePlace *place;
  guint n_lanes;

  gtk_label_set_text (self->title_label, fm_version_tree_item_get_title (self->item));
  gtk_label_set_text (self->detail_label, fm_version_tree_item_get_detail (self->item));
  if (list_item != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (list_item), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                    fm_version_tree_item_get_spoken (self->item), -1);
  place = fm_version_tree_item_get_place (self->item, &n_lanes);
  fm_version_tree_graph_set_place (self->graph, place, n_lanes,
                                   fm_version_tree_item_get_kind (self->item) ==
                                       FM_VERSION_TREE_DRAFT);
}

static void
clear_item (FmVersionsPageRow *self)
{
  if (self->item != NULL)
    g_clear_signal_handler (&self->changed_id, self->item);
  g_clear_object (&self->item);
}

static void
fm_versions_page_row_dispose (GObject *object)
{
  FmVersionsPageRow *self = FM_VERSIONS_PAGE_ROW (object);

  clear_item (self);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_VERSIONS_PAGE_ROW);
  G_OBJECT_CLASS (fm_versions_page_row_parent_class)->dispose (object);
}

static void
fm_versions_page_row_class_init (FmVersionsPageRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_versions_page_row_dispose;
  g_type_ensure (FM_TYPE_VERSION_TREE_GRAPH);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/versions/fm-versions-page-row.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageRow, graph);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageRow, title_label);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageRow, detail_label);
}

static void
fm_versions_page_row_init (FmVersionsPageRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fm_versions_page_row_new (void)
{
  return g_object_new (FM_TYPE_VERSIONS_PAGE_ROW, NULL);
}

void
fm_versions_page_row_set_item (FmVersionsPageRow *self, FmVersionTreeItem *item)
{
  clear_item (self);
  if (item == NULL)
    return;
  self->item = g_object_ref (item);
  self->changed_id = g_signal_connect_swapped (item, "changed", G_CALLBACK (update), self);
  update (self);
}
