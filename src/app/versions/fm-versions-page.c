/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-page.c - the tree of versions, reasons and differences */
#include "app/versions/fm-versions-page.h"

#include <glib/gi18n-lib.h>

#include <adwaita.h>

#include "app/documents/fm-serving-choice.h"
#include "app/label/fm-label-window.h"
#include "app/session/fm-notebook-settings.h"
#include "app/session/fm-store-task.h"
#include "app/blends/fm-version-list.h"
#include "app/versions/fm-versions-page-detail.h"
#include "app/versions/fm-versions-page-row.h"
#include "app/widgets/fm-one-stop.h"
#include "app/widgets/fm-widget.h"

#define DRAFT_DELAY_MS 500 /* after the last keystroke and its autosave */

struct _FmVersionsPage {
  FmPage parent_instance;

  AdwLeaflet *leaflet;
  GtkListView *list_view;
  FmVersionsPageDetail *detail;

  FmVersionList *list;   /* (nullable) */
  GSignalGroup *signals; /* of the list */
  GtkSingleSelection *selection;
  GCancellable *comparing;
  guint draft_timer_id;
  gboolean following; /* the selection follows the session, not the other way round */
};

G_DEFINE_FINAL_TYPE (FmVersionsPage, fm_versions_page, FM_TYPE_PAGE)

typedef struct {
  gint64 blend_id;
  gint64 version_id;
  char *currency;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  g_free (order->currency);
  g_free (order);
}

static gpointer
read_diff (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;

  return fm_versions_page_diff_read (notebook, order->blend_id, order->version_id, order->currency,
                                     error);
}

static void
compared_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmVersionsPage *self = FM_VERSIONS_PAGE (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmVersionsPageDiff) diff = fm_store_task_finish (result, &error);

  if (g_task_get_cancellable (G_TASK (result)) != self->comparing)
    return;
  g_clear_object (&self->comparing);
  if (diff == NULL)
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
  fm_versions_page_detail_set_diff (self->detail, diff);
}

static void
stop_comparing (FmVersionsPage *self)
{
  g_cancellable_cancel (self->comparing);
  g_clear_object (&self->comparing);
}

static void
compare_selected (FmVersionsPage *self)
{
  FmVersionTreeItem *item = gtk_single_selection_get_selected_item (self->selection);
  Order *order;

  stop_comparing (self);
  if (item == NULL || fm_page_get_notebook (FM_PAGE (self)) == NULL) {
    fm_versions_page_detail_set_diff (self->detail, NULL);
    return;
  }
  order = g_new0 (Order, 1);
  order->blend_id = fm_version_tree_item_get_blend_id (item);
  order->version_id = fm_version_tree_item_get_version_id (item);
  order->currency = g_strdup (fm_notebook_units ()->currency);
  self->comparing = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_page_get_notebook (FM_PAGE (self)),
      .run = read_diff,
      .free_result = (GDestroyNotify)fm_versions_page_diff_free,
      .data = order,
      .free_data = order_free,
      .cancellable = self->comparing,
      .done = compared_cb,
  });
}

/* What is looked at here is what header, sidebar and nutrition panel tell of. In a narrow window
 * the pointer selects as it passes, so only activation counts there. */
static void
show_selected (FmVersionsPage *self)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));
  FmVersionTreeItem *item = gtk_single_selection_get_selected_item (self->selection);
  const gint64 version_id = item != NULL ? fm_version_tree_item_get_version_id (item) : 0;

  if (item == NULL || version_id == fm_session_get_version_id (session))
    return;
  if (version_id != 0)
    fm_session_show_version (session, version_id);
  else
    fm_session_show_draft (session);
}

static void
selected_cb (FmVersionsPage *self)
{
  compare_selected (self);
  if (!self->following && gtk_widget_get_mapped (GTK_WIDGET (self)) &&
      !adw_leaflet_get_folded (self->leaflet))
    show_selected (self);
}

static void
select_version (FmVersionsPage *self, gint64 version_id)
{
  GListModel *versions = G_LIST_MODEL (self->selection);

  self->following = TRUE;
  for (guint i = 0; i < g_list_model_get_n_items (versions); i++) {
    g_autoptr (FmVersionTreeItem) item = g_list_model_get_item (versions, i);

    if (fm_version_tree_item_get_version_id (item) == version_id)
      gtk_single_selection_set_selected (self->selection, i);
  }
  self->following = FALSE;
}

/* TRUE when the rows are those of another blend now. */
static gboolean
list_blend (FmVersionsPage *self)
{
  const gint64 blend_id = fm_session_get_blend_id (fm_page_get_session (FM_PAGE (self)));
  FmVersionTreeItem *blend = fm_version_list_find_blend (self->list, blend_id);
  GListStore *versions = blend != NULL ? fm_version_tree_item_get_children (blend) : NULL;

  if (gtk_single_selection_get_model (self->selection) == G_LIST_MODEL (versions))
    return FALSE;
  self->following = TRUE;
  gtk_single_selection_set_model (self->selection, G_LIST_MODEL (versions));
  self->following = FALSE;
  return TRUE;
}

static void
show_course (FmVersionsPage *self)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));

  fm_versions_course_show (fm_versions_page_detail_get_course (self->detail),
                           fm_session_get_notebook (session), fm_session_get_blend_id (session),
                           fm_session_get_blend_name (session));
}

static void
shown_changed_cb (FmVersionsPage *self)
{
  show_course (self);
  list_blend (self);
  select_version (self, fm_session_get_version_id (fm_page_get_session (FM_PAGE (self))));
}

static void
updated_cb (FmVersionsPage *self, gint64 blend_id)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));

  if (blend_id == 0 || blend_id == fm_session_get_blend_id (session))
    show_course (self);
  if (list_blend (self))
    select_version (self, fm_session_get_version_id (session));
  else if (blend_id == 0 || blend_id == fm_session_get_blend_id (session))
    compare_selected (self);
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
      g_list_model_get_item (G_LIST_MODEL (self->selection), position);

  if (!adw_leaflet_get_folded (self->leaflet)) {
    show_version (self, fm_version_tree_item_get_version_id (item));
    return;
  }
  show_selected (self);
  adw_leaflet_set_visible_child_name (self->leaflet, "detail");
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
label_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_label_window_present (widget, fm_page_get_session (FM_PAGE (widget)),
                           g_variant_get_int64 (parameter));
}

static void
serving_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_serving_choice_present (widget, fm_page_get_session (FM_PAGE (widget)),
                             g_variant_get_int64 (parameter));
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

static const char *
fm_versions_page_tell_no_document (FmPage *page)
{
  return _ ("Versions are frozen: there is nothing to undo on this page");
}

static void
fm_versions_page_show_session (FmPage *page)
{
  FmVersionsPage *self = FM_VERSIONS_PAGE (page);

  g_clear_object (&self->list);
  self->list = fm_version_list_of (fm_page_get_session (page));
  g_signal_group_set_target (self->signals, self->list);
  shown_changed_cb (self);
}

static void
fm_versions_page_dispose (GObject *object)
{
  FmVersionsPage *self = FM_VERSIONS_PAGE (object);

  stop_comparing (self);
  g_clear_handle_id (&self->draft_timer_id, g_source_remove);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_VERSIONS_PAGE);
  g_clear_object (&self->selection);
  g_clear_object (&self->signals);
  g_clear_object (&self->list);
  G_OBJECT_CLASS (fm_versions_page_parent_class)->dispose (object);
}

static void
fm_versions_page_class_init (FmVersionsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_versions_page_dispose;
  FM_PAGE_CLASS (klass)->show_session = fm_versions_page_show_session;
  FM_PAGE_CLASS (klass)->tell_no_document = fm_versions_page_tell_no_document;
  g_type_ensure (FM_TYPE_VERSIONS_PAGE_DETAIL);
  g_type_ensure (FM_TYPE_ONE_STOP);
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
  gtk_widget_class_install_action (widget_class, "versions.label", "x", label_action);
  gtk_widget_class_install_action (widget_class, "versions.serving", "x", serving_action);
  gtk_widget_class_install_action (widget_class, "versions.back", NULL, back_action);
}

static void
fm_versions_page_init (FmVersionsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->signals = g_signal_group_new (FM_TYPE_VERSION_LIST);
  g_signal_group_connect_swapped (self->signals, "updated", G_CALLBACK (updated_cb), self);
  self->selection = gtk_single_selection_new (NULL);
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (selected_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_list_view_set_model (self->list_view, GTK_SELECTION_MODEL (self->selection));
  fm_page_listen (FM_PAGE (self), "changed::shown", G_CALLBACK (shown_changed_cb));
  fm_page_listen (FM_PAGE (self), "changed::formula", G_CALLBACK (formula_changed_cb));
}
