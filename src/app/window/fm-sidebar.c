/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-sidebar.c - the notebook's blends, each with its draft and versions as a small tree */
#include "app/window/fm-sidebar.h"

#include "app/widgets/fm-widget.h"

#include "app/window/fm-sidebar-row.h"
#include "app/blends/fm-version-list.h"
#include "app/widgets/fm-one-stop.h"

#define MANY_ROWS 60 /* from here on only the shown blend starts open */

struct _FmSidebar {
  GtkWidget parent_instance;

  GtkWidget *header;
  GtkEditable *search_entry;
  GtkStack *stack;
  GtkListView *list_view;

  FmSession *session;
  FmVersionList *list;
  GtkFilterListModel *blends; /* of the list, that the search finds */
  GtkFilter *blend_filter;
  GtkFilter *version_filter; /* shared by the lists of all blends */
  GtkTreeListModel *tree;
  GtkSingleSelection *selection;
  char *needle;       /* casefolded search text, NULL = none */
  gboolean fresh;     /* another notebook: choose what starts open */
  gboolean following; /* the selection follows the session, not the other way round */
  gboolean folded;
};

G_DEFINE_FINAL_TYPE (FmSidebar, fm_sidebar, GTK_TYPE_WIDGET)

enum {
  PICKED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static gboolean
any_child_matches (FmSidebar *self, FmVersionTreeItem *blend)
{
  GListModel *children = G_LIST_MODEL (fm_version_tree_item_get_children (blend));
  gboolean matches = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (children) && !matches; i++) {
    g_autoptr (FmVersionTreeItem) child = g_list_model_get_item (children, i);

    matches = fm_version_tree_item_matches (child, self->needle);
  }
  return matches;
}

static gboolean
blend_matches (gpointer item, gpointer user_data)
{
  FmSidebar *self = user_data;

  return self->needle == NULL || fm_version_tree_item_matches (item, self->needle) ||
         any_child_matches (self, item);
}

static gboolean
version_matches (gpointer item, gpointer user_data)
{
  FmSidebar *self = user_data;
  FmVersionTreeItem *blend;

  if (self->needle == NULL || fm_version_tree_item_matches (item, self->needle))
    return TRUE;
  blend = fm_version_list_find_blend (self->list, fm_version_tree_item_get_blend_id (item));
  return blend != NULL && fm_version_tree_item_matches (blend, self->needle);
}

static GListModel *
children_of (gpointer item, gpointer user_data)
{
  FmSidebar *self = user_data;
  GListStore *children = fm_version_tree_item_get_children (item);

  if (children == NULL)
    return NULL;
  return G_LIST_MODEL (gtk_filter_list_model_new (g_object_ref (G_LIST_MODEL (children)),
                                                  g_object_ref (self->version_filter)));
}

static GtkTreeListRow *
row_at (FmSidebar *self, guint position)
{
  return g_list_model_get_item (G_LIST_MODEL (self->tree), position);
}

static void
expand_rows (FmSidebar *self, gint64 only_blend_id)
{
  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->tree)); i++) {
    g_autoptr (GtkTreeListRow) row = row_at (self, i);
    g_autoptr (FmVersionTreeItem) item = gtk_tree_list_row_get_item (row);

    if (only_blend_id == 0 || fm_version_tree_item_get_blend_id (item) == only_blend_id)
      gtk_tree_list_row_set_expanded (row, TRUE);
  }
}

static gboolean
is_shown (FmSidebar *self, FmVersionTreeItem *item)
{
  return fm_version_tree_item_get_kind (item) != FM_VERSION_TREE_BLEND &&
         fm_version_tree_item_get_blend_id (item) == fm_session_get_blend_id (self->session) &&
         fm_version_tree_item_get_version_id (item) == fm_session_get_version_id (self->session);
}

/* A collapsed blend stands for what is shown of it. */
static void
select_shown (FmSidebar *self)
{
  guint position = GTK_INVALID_LIST_POSITION;

  for (guint i = 0; i < g_list_model_get_n_items (G_LIST_MODEL (self->tree)); i++) {
    g_autoptr (GtkTreeListRow) row = row_at (self, i);
    g_autoptr (FmVersionTreeItem) item = gtk_tree_list_row_get_item (row);

    if (is_shown (self, item))
      position = i;
  }
  self->following = TRUE;
  gtk_single_selection_set_selected (self->selection, position);
  self->following = FALSE;
}

static void
shown_changed_cb (FmSidebar *self)
{
  if (fm_session_get_blend_id (self->session) != 0)
    expand_rows (self, fm_session_get_blend_id (self->session));
  select_shown (self);
}

static void
show_item (FmSidebar *self, FmVersionTreeItem *item)
{
  gint64 version_id = fm_version_tree_item_get_version_id (item);

  if (is_shown (self, item))
    return;
  if (version_id != 0)
    fm_session_show_version (self->session, version_id);
  else
    fm_session_show_blend (self->session, fm_version_tree_item_get_blend_id (item));
}

static void
selected_cb (FmSidebar *self)
{
  GtkTreeListRow *row = gtk_single_selection_get_selected_item (self->selection);
  g_autoptr (FmVersionTreeItem) item = NULL;

  /* In a narrow window the pointer selects as it passes, so only activation counts there. */
  if (self->following || self->folded || row == NULL)
    return;
  item = gtk_tree_list_row_get_item (row);
  if (fm_version_tree_item_get_kind (item) != FM_VERSION_TREE_BLEND)
    show_item (self, item);
}

/* FALSE when the blend is open already. */
static gboolean
open_blend (FmSidebar *self, GtkTreeListRow *row)
{
  g_autoptr (FmVersionTreeItem) item = gtk_tree_list_row_get_item (row);
  const gint64 blend_id = fm_version_tree_item_get_blend_id (item);

  if (blend_id == fm_session_get_blend_id (self->session))
    return FALSE;
  gtk_tree_list_row_set_expanded (row, TRUE);
  fm_session_show_blend (self->session, blend_id);
  return TRUE;
}

/* One click opens a blend; a version or a draft is chosen by being selected. */
static void
row_clicked_cb (GtkListItem *list_item, int n_press, double x, double y, GtkGesture *gesture)
{
  GtkWidget *widget = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (gesture));
  FmSidebar *self = FM_SIDEBAR (gtk_widget_get_ancestor (widget, FM_TYPE_SIDEBAR));
  GtkTreeListRow *row = gtk_list_item_get_item (list_item);
  g_autoptr (FmVersionTreeItem) item = row != NULL ? gtk_tree_list_row_get_item (row) : NULL;

  if (item != NULL && n_press == 1 && !self->folded &&
      fm_version_tree_item_get_kind (item) == FM_VERSION_TREE_BLEND)
    open_blend (self, row);
}

static void
activate_cb (FmSidebar *self, guint position)
{
  g_autoptr (GtkTreeListRow) row = row_at (self, position);
  g_autoptr (FmVersionTreeItem) item = gtk_tree_list_row_get_item (row);

  if (fm_version_tree_item_get_kind (item) == FM_VERSION_TREE_BLEND) {
    if (!open_blend (self, row))
      gtk_tree_list_row_set_expanded (row, !gtk_tree_list_row_get_expanded (row));
    return;
  }
  show_item (self, item);
  g_signal_emit (self, signals[PICKED], 0);
}

static void
update_stack (FmSidebar *self)
{
  gboolean empty = g_list_model_get_n_items (G_LIST_MODEL (self->tree)) == 0;
  const char *name = "list";

  if (empty)
    name = self->needle != NULL ? "no-match" : "empty";
  gtk_stack_set_visible_child_name (self->stack, name);
}

static void
search_changed_cb (FmSidebar *self)
{
  g_autofree char *text = g_strdup (gtk_editable_get_text (self->search_entry));

  g_clear_pointer (&self->needle, g_free);
  if (*g_strstrip (text) != '\0')
    self->needle = g_utf8_casefold (text, -1);
  fm_widget_set_class (GTK_WIDGET (self->list_view), "fm-searching", self->needle != NULL);
  self->following = TRUE; /* rows that the filter takes away are not choices */
  gtk_filter_changed (self->version_filter, GTK_FILTER_CHANGE_DIFFERENT);
  gtk_filter_changed (self->blend_filter, GTK_FILTER_CHANGE_DIFFERENT);
  if (self->needle != NULL)
    expand_rows (self, 0);
  self->following = FALSE;
  select_shown (self);
  update_stack (self);
}

static guint
count_rows (GListModel *blends)
{
  guint n_rows = 0;

  for (guint i = 0; i < g_list_model_get_n_items (blends); i++) {
    g_autoptr (FmVersionTreeItem) blend = g_list_model_get_item (blends, i);
    GListStore *children = fm_version_tree_item_get_children (blend);

    n_rows += 1 + g_list_model_get_n_items (G_LIST_MODEL (children));
  }
  return n_rows;
}

static void
updated_cb (FmSidebar *self)
{
  const gboolean is_read = fm_version_list_is_read (self->list);

  if (!is_read && fm_session_get_notebook (self->session) != NULL)
    return;
  self->following = TRUE;
  gtk_filter_changed (self->blend_filter, GTK_FILTER_CHANGE_DIFFERENT);
  if (self->fresh && count_rows (fm_version_list_get_blends (self->list)) < MANY_ROWS)
    expand_rows (self, 0);
  self->fresh = FALSE;
  self->following = FALSE;
  shown_changed_cb (self);
  update_stack (self);
}

/* Until the list is read, nothing is said of it. */
static void
notebook_changed_cb (FmSidebar *self)
{
  self->fresh = TRUE;
  gtk_editable_set_text (self->search_entry, "");
  if (fm_session_get_notebook (self->session) != NULL)
    gtk_stack_set_visible_child_name (self->stack, "list");
  else
    update_stack (self);
}

static void
row_setup_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  GtkWidget *row = fm_sidebar_row_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  g_signal_connect_object (click, "released", G_CALLBACK (row_clicked_cb), list_item,
                           G_CONNECT_SWAPPED);
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (click));
  gtk_list_item_set_child (list_item, row);
}

static void
row_bind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  fm_sidebar_row_set_row (FM_SIDEBAR_ROW (gtk_list_item_get_child (list_item)),
                          gtk_list_item_get_item (list_item));
}

static void
row_unbind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  fm_sidebar_row_set_row (FM_SIDEBAR_ROW (gtk_list_item_get_child (list_item)), NULL);
}

static void
fm_sidebar_dispose (GObject *object)
{
  FmSidebar *self = FM_SIDEBAR (object);

  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_SIDEBAR);
  g_clear_object (&self->selection);
  g_clear_object (&self->tree);
  g_clear_object (&self->blends);
  g_clear_object (&self->list);
  g_clear_object (&self->blend_filter);
  g_clear_object (&self->version_filter);
  g_clear_pointer (&self->needle, g_free);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_sidebar_parent_class)->dispose (object);
}

static void
fm_sidebar_class_init (FmSidebarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_sidebar_dispose;
  signals[PICKED] = g_signal_new ("picked", FM_TYPE_SIDEBAR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
  g_type_ensure (FM_TYPE_ONE_STOP);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/window/fm-sidebar.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmSidebar, header);
  gtk_widget_class_bind_template_child (widget_class, FmSidebar, search_entry);
  gtk_widget_class_bind_template_child (widget_class, FmSidebar, stack);
  gtk_widget_class_bind_template_child (widget_class, FmSidebar, list_view);
  gtk_widget_class_bind_template_callback (widget_class, search_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_setup_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_bind_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_unbind_cb);
}

static void
make_models (FmSidebar *self)
{
  GtkFilterListModel *filtered;

  self->blend_filter = GTK_FILTER (gtk_custom_filter_new (blend_matches, self, NULL));
  self->version_filter = GTK_FILTER (gtk_custom_filter_new (version_matches, self, NULL));
  filtered = gtk_filter_list_model_new (NULL, g_object_ref (self->blend_filter));
  self->blends = g_object_ref (filtered);
  self->tree =
      gtk_tree_list_model_new (G_LIST_MODEL (filtered), FALSE, FALSE, children_of, self, NULL);
  self->selection = gtk_single_selection_new (NULL);
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  gtk_single_selection_set_can_unselect (self->selection, TRUE);
  gtk_single_selection_set_model (self->selection, G_LIST_MODEL (self->tree));
  g_signal_connect_object (self->selection, "notify::selected-item", G_CALLBACK (selected_cb), self,
                           G_CONNECT_SWAPPED);
}

static void
fm_sidebar_init (FmSidebar *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  make_models (self);
  gtk_list_view_set_model (self->list_view, GTK_SELECTION_MODEL (self->selection));
}

void
fm_sidebar_set_session (FmSidebar *self, FmSession *session)
{
  g_return_if_fail (self->session == NULL);
  self->session = g_object_ref (session);
  self->list = fm_version_list_of (session);
  gtk_filter_list_model_set_model (self->blends, fm_version_list_get_blends (self->list));
  g_signal_connect_object (self->list, "updated", G_CALLBACK (updated_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed::notebook", G_CALLBACK (notebook_changed_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed::shown", G_CALLBACK (shown_changed_cb), self,
                           G_CONNECT_SWAPPED);
}

void
fm_sidebar_set_folded (FmSidebar *self, gboolean folded)
{
  self->folded = folded;
  gtk_list_view_set_single_click_activate (self->list_view, folded);
  g_object_set (self->header, "show-end-title-buttons", folded, NULL);
}
