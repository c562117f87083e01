/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-sidebar-row.c - one row of the sidebar: a blend with its menu, a draft or a version */
#include "app/window/fm-sidebar-row.h"

#include <glib/gi18n-lib.h>

#include "app/versions/fm-version-tree-graph.h"
#include "app/widgets/fm-widget.h"

struct _FmSidebarRow {
  GtkWidget parent_instance;

  GtkTreeExpander *expander;
  FmVersionTreeGraph *graph;
  GtkLabel *title_label;
  GtkLabel *detail_label;
  GtkMenuButton *menu_button;

  FmVersionTreeItem *item;
  gulong changed_id;
};

G_DEFINE_FINAL_TYPE (FmSidebarRow, fm_sidebar_row, GTK_TYPE_WIDGET)

static GMenuModel *
blend_menu (FmVersionTreeItem *item)
{
  GMenu *menu = g_menu_new ();
  GVariant *target = g_variant_ref_sink (g_variant_new (
      "(xs)", fm_version_tree_item_get_blend_id (item), fm_version_tree_item_get_title (item)));
  g_autoptr (GMenuItem) rename = g_menu_item_new (_ ("_Rename…"), NULL);
  g_autoptr (GMenuItem) remove = g_menu_item_new (_ ("Re_move…"), NULL);

  g_menu_item_set_action_and_target_value (rename, "win.rename-blend", target);
  g_menu_item_set_action_and_target_value (remove, "win.remove-blend", target);
  g_menu_append_item (menu, rename);
  g_menu_append_item (menu, remove);
  g_variant_unref (target);
  return G_MENU_MODEL (menu);
}

static void
update_menu (FmSidebarRow *self)
{
  g_autoptr (GMenuModel) menu = blend_menu (self->item);
  g_autofree char *label =
      g_strdup_printf (_ ("Menu of %s"), fm_version_tree_item_get_title (self->item));

  gtk_menu_button_set_menu_model (self->menu_button, menu);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->menu_button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  label, -1);
}

static void
update (FmSidebarRow *self)
{
  gboolean is_blend = fm_version_tree_item_get_kind (self->item) == FM_VERSION_TREE_BLEND;
  gboolean is_draft = fm_version_tree_item_get_kind (self->item) == FM_VERSION_TREE_DRAFT;
  GtkWidget *list_item = gtk_widget_get_parent (GTK_WIDGET (self));
  const FmVersionTreePlace *place;
  guint n_lanes;

  gtk_label_set_text (self->title_label, fm_version_tree_item_get_title (self->item));
  gtk_label_set_text (self->detail_label, fm_version_tree_item_get_detail (self->item));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), fm_version_tree_item_get_spoken (self->item));
  if (list_item != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (list_item), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                    fm_version_tree_item_get_spoken (self->item), -1);
  /* The keyboard focus of the row is at its expander. */
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->expander), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  fm_version_tree_item_get_spoken (self->item), -1);
  gtk_widget_set_visible (GTK_WIDGET (self->graph), !is_blend);
  gtk_widget_set_visible (GTK_WIDGET (self->menu_button), is_blend);
  if (is_blend) {
    gtk_widget_add_css_class (GTK_WIDGET (self->title_label), "heading");
    update_menu (self);
    return;
  }
  gtk_widget_remove_css_class (GTK_WIDGET (self->title_label), "heading");
  place = fm_version_tree_item_get_place (self->item, &n_lanes);
  fm_version_tree_graph_set_place (self->graph, place, n_lanes, is_draft);
}

static void
clear_item (FmSidebarRow *self)
{
  if (self->item != NULL)
    g_clear_signal_handler (&self->changed_id, self->item);
  g_clear_object (&self->item);
}

static void
fm_sidebar_row_dispose (GObject *object)
{
  FmSidebarRow *self = FM_SIDEBAR_ROW (object);

  clear_item (self);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_SIDEBAR_ROW);
  G_OBJECT_CLASS (fm_sidebar_row_parent_class)->dispose (object);
}

static void
fm_sidebar_row_class_init (FmSidebarRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_sidebar_row_dispose;
  g_type_ensure (FM_TYPE_VERSION_TREE_GRAPH);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/window/fm-sidebar-row.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmSidebarRow, expander);
  gtk_widget_class_bind_template_child (widget_class, FmSidebarRow, graph);
  gtk_widget_class_bind_template_child (widget_class, FmSidebarRow, title_label);
  gtk_widget_class_bind_template_child (widget_class, FmSidebarRow, detail_label);
  gtk_widget_class_bind_template_child (widget_class, FmSidebarRow, menu_button);
}

static void
fm_sidebar_row_init (FmSidebarRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fm_sidebar_row_new (void)
{
  return g_object_new (FM_TYPE_SIDEBAR_ROW, NULL);
}

void
fm_sidebar_row_set_row (FmSidebarRow *self, GtkTreeListRow *tree_row)
{
  clear_item (self);
  gtk_tree_expander_set_list_row (self->expander, tree_row);
  if (tree_row == NULL)
    return;
  self->item = gtk_tree_list_row_get_item (tree_row);
  self->changed_id = g_signal_connect_swapped (self->item, "changed", G_CALLBACK (update), self);
  update (self);
}
