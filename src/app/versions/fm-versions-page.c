/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-page.c - the tree of versions, reasons and differences */
#include "app/versions/fm-versions-page.h"

#include <adwaita.h>

#include "app/session/fm-notebook-settings.h"
#include "app/versions/fm-version-tree-item.h"
#include "app/versions/fm-versions-page-detail.h"
#include "app/versions/fm-versions-page-row.h"
#include "app/widgets/fm-widget.h"

#define DRAFT_DELAY_MS 500 /* after the last keystroke and its autosave */

struct _FmVersionsPage {
  FmPage parent_instance;

  AdwLeaflet *leaflet;
  GtkListView *list_view;
  FmVersionsPageDetail *detail;

  GListStore *versions; /* FmVersionTreeItem */
  GtkSingleSelection *selection;
  GCancellable *reading;
  GCancellable *comparing;
  guint draft_timer_id;
};

G_DEFINE_FINAL_TYPE (FmVersionsPage, fm_versions_page, FM_TYPE_PAGE)

typedef struct {
  FmNotebook *notebook;
  gint64 blend_id;
  gint64 version_id;
  char *currency;
} Order;

static Order *
order_new (FmVersionsPage *self, gint64 version_id)
{
  Order *order = g_new0 (Order, 1);

  order->notebook = fm_notebook_ref (fm_page_get_notebook (FM_PAGE (self)));
  order->blend_id = fm_session_get_blend_id (fm_page_get_session (FM_PAGE (self)));
  order->version_id = version_id;
  order->currency = g_strdup (fm_notebook_units ()->currency);
  return order;
}

static void
order_free (Order *order)
{
  fm_notebook_unref (order->notebook);
  g_free (order->currency);
  g_free (order);
}

static void
start_reading (FmVersionsPage *self,
               GCancellable **cancellable,
               gint64 version_id,
               GTaskThreadFunc func,
               GAsyncReadyCallback callback)
{
  g_autoptr (GTask) task = NULL;

  g_cancellable_cancel (*cancellable);
  g_clear_object (cancellable);
  *cancellable = g_cancellable_new ();
  task = g_task_new (self, *cancellable, callback, NULL);
  g_task_set_task_data (task, order_new (self, version_id), (GDestroyNotify)order_free);
  g_task_run_in_thread (task, func);
}

static void
compare_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Order *order = data;
  GError *error = NULL;
  FmVersionsPageDiff *diff = fm_versions_page_diff_read (
      order->notebook, order->blend_id, order->version_id, order->currency, &error);

  if (diff != NULL)
    g_task_return_pointer (task, diff, (GDestroyNotify)fm_versions_page_diff_free);
  else
    g_task_return_error (task, error);
}

static void
compared_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmVersionsPage *self = FM_VERSIONS_PAGE (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmVersionsPageDiff) diff = g_task_propagate_pointer (G_TASK (result), &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) ||
      fm_page_get_session (FM_PAGE (self)) == NULL)
    return;
  if (diff == NULL)
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
  fm_versions_page_detail_set_diff (self->detail, diff);
}

static void
compare_selected (FmVersionsPage *self)
{
  FmVersionTreeItem *item = gtk_single_selection_get_selected_item (self->selection);

  if (item == NULL || fm_page_get_notebook (FM_PAGE (self)) == NULL) {
    fm_versions_page_detail_set_diff (self->detail, NULL);
    return;
  }
  start_reading (self, &self->comparing, fm_version_tree_item_get_version_id (item), compare_thread,
                 compared_cb);
}

static void
select_version (FmVersionsPage *self, gint64 version_id)
{
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->versions)); i++) {
    g_autoptr (FmVersionTreeItem) item = g_list_model_get_item (G_LIST_MODEL (self->versions), i);

    if (fm_version_tree_item_get_version_id (item) == version_id)
      gtk_single_selection_set_selected (self->selection, i);
  }
}

static void
read_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Order *order = data;
  GError *error = NULL;
  FmVersionTreeBlend *blend = fm_version_tree_read_blend (order->notebook, order->blend_id, &error);

  if (blend != NULL)
    g_task_return_pointer (task, blend, (GDestroyNotify)fm_version_tree_blend_free);
  else
    g_task_return_error (task, error);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmVersionsPage *self = FM_VERSIONS_PAGE (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmVersionTreeBlend) blend = g_task_propagate_pointer (G_TASK (result), &error);
  gboolean was_empty = g_list_model_get_n_items (G_LIST_MODEL (self->versions)) == 0;

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) ||
      fm_page_get_session (FM_PAGE (self)) == NULL)
    return;
  if (blend == NULL) {
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
    return;
  }
  fm_version_tree_update_versions (self->versions, blend);
  if (was_empty)
    select_version (self, fm_session_get_version_id (fm_page_get_session (FM_PAGE (self))));
  compare_selected (self);
}

static void
reload_cb (FmVersionsPage *self)
{
  if (fm_session_get_blend_id (fm_page_get_session (FM_PAGE (self))) == 0) {
    g_cancellable_cancel (self->reading);
    g_list_store_remove_all (self->versions);
    return;
  }
  start_reading (self, &self->reading, 0, read_thread, read_cb);
}

static void
notebook_changed_cb (FmVersionsPage *self)
{
  g_list_store_remove_all (self->versions);
  reload_cb (self);
}

static void
shown_changed_cb (FmVersionsPage *self)
{
  g_autoptr (FmVersionTreeItem) first = g_list_model_get_item (G_LIST_MODEL (self->versions), 0);

  if (first == NULL || fm_version_tree_item_get_blend_id (first) !=
                           fm_session_get_blend_id (fm_page_get_session (FM_PAGE (self))))
    notebook_changed_cb (self);
  select_version (self, fm_session_get_version_id (fm_page_get_session (FM_PAGE (self))));
}

static gboolean
draft_timer_cb (gpointer user_data)
{
  FmVersionsPage *self = user_data;

  self->draft_timer_id = 0;
  compare_selected (self);
  return G_SOURCE_REMOVE;
}

static void
formula_changed_cb (FmVersionsPage *self)
{
  FmVersionTreeItem *item = gtk_single_selection_get_selected_item (self->selection);

  if (item == NULL || fm_version_tree_item_get_kind (item) != FM_VERSION_TREE_DRAFT)
    return;
  g_clear_handle_id (&self->draft_timer_id, g_source_remove);
  self->draft_timer_id = g_timeout_add (DRAFT_DELAY_MS, draft_timer_cb, self);
}

static void
show_version (FmVersionsPage *self, gint64 version_id)
{
  fm_session_show_version (fm_page_get_session (FM_PAGE (self)), version_id);
  gtk_widget_activate_action (GTK_WIDGET (self), "win.page", "i", 1);
}

static void
activate_cb (FmVersionsPage *self, guint position)
{
  g_autoptr (FmVersionTreeItem) item =
      g_list_model_get_item (G_LIST_MODEL (self->versions), position);

  if (adw_leaflet_get_folded (self->leaflet))
    adw_leaflet_set_visible_child_name (self->leaflet, "detail");
  else
    show_version (self, fm_version_tree_item_get_version_id (item));
}

static void
folded_cb (FmVersionsPage *self)
{
  gboolean folded = adw_leaflet_get_folded (self->leaflet);

  fm_versions_page_detail_set_folded (self->detail, folded);
  gtk_list_view_set_single_click_activate (self->list_view, folded);
  adw_leaflet_set_visible_child_name (self->leaflet, "tree");
}

static void
open_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_version (FM_VERSIONS_PAGE (widget), g_variant_get_int64 (parameter));
}

static void
back_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  adw_leaflet_set_visible_child_name (FM_VERSIONS_PAGE (widget)->leaflet, "tree");
}

static void
row_setup_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  gtk_list_item_set_child (list_item, fm_versions_page_row_new ());
}

static void
row_bind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  fm_versions_page_row_set_item (FM_VERSIONS_PAGE_ROW (gtk_list_item_get_child (list_item)),
                                 gtk_list_item_get_item (list_item));
}

static void
row_unbind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  fm_versions_page_row_set_item (FM_VERSIONS_PAGE_ROW (gtk_list_item_get_child (list_item)), NULL);
}

static void
fm_versions_page_show_session (FmPage *page)
{
  reload_cb (FM_VERSIONS_PAGE (page));
}

static void
fm_versions_page_dispose (GObject *object)
{
  FmVersionsPage *self = FM_VERSIONS_PAGE (object);

  g_cancellable_cancel (self->reading);
  g_cancellable_cancel (self->comparing);
  g_clear_object (&self->reading);
  g_clear_object (&self->comparing);
  g_clear_handle_id (&self->draft_timer_id, g_source_remove);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_VERSIONS_PAGE);
  g_clear_object (&self->selection);
  g_clear_object (&self->versions);
  G_OBJECT_CLASS (fm_versions_page_parent_class)->dispose (object);
}

static void
fm_versions_page_class_init (FmVersionsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_versions_page_dispose;
  FM_PAGE_CLASS (klass)->show_session = fm_versions_page_show_session;
  g_type_ensure (FM_TYPE_VERSIONS_PAGE_DETAIL);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/versions/fm-versions-page.ui");
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPage, leaflet);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPage, list_view);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPage, detail);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, folded_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_setup_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_bind_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_unbind_cb);
  gtk_widget_class_install_action (widget_class, "versions.open", "x", open_action);
  gtk_widget_class_install_action (widget_class, "versions.back", NULL, back_action);
}

static void
listen (FmPage *page)
{
  fm_page_listen (page, "changed::notebook", G_CALLBACK (notebook_changed_cb));
  fm_page_listen (page, "changed::blend", G_CALLBACK (reload_cb));
  fm_page_listen (page, "changed::draft", G_CALLBACK (reload_cb));
  fm_page_listen (page, "changed::version", G_CALLBACK (reload_cb));
  fm_page_listen (page, "changed::experiment", G_CALLBACK (reload_cb));
  fm_page_listen (page, "changed::tasting", G_CALLBACK (reload_cb));
  fm_page_listen (page, "changed::shown", G_CALLBACK (shown_changed_cb));
  fm_page_listen (page, "changed::formula", G_CALLBACK (formula_changed_cb));
}

static void
fm_versions_page_init (FmVersionsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->versions = g_list_store_new (FM_TYPE_VERSION_TREE_ITEM);
  self->selection = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->versions)));
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (compare_selected),
                           self, G_CONNECT_SWAPPED);
  gtk_list_view_set_model (self->list_view, GTK_SELECTION_MODEL (self->selection));
  listen (FM_PAGE (self));
}
