/* fm-experiment-list.c - the log: filter, list and what is said when it is empty */
#include "app/experiments/fm-experiment-list.h"

#include <glib/gi18n-lib.h>

#include "app/experiments/fm-experiment-filter-bar.h"
#include "app/experiments/fm-experiment-log.h"
#include "app/experiments/fm-experiment-query.h"
#include "app/widgets/fm-widget.h"

struct _FmExperimentList {
  GtkWidget parent_instance;

  GtkWidget *box;
  FmExperimentFilterBar *filter_bar;
  GtkStack *stack;
  GtkListView *list_view;
  GtkSingleSelection *selection;
  GtkLabel *count_label;
  GtkLabel *failure_label;

  FmSession *session;
  FmExperimentLog *log;
  GHashTable *hidden;    /* ids (gint64*) */
  GCancellable *listing; /* ends when a newer list is asked for */
  gint64 wanted_id;      /* the row to be selected */
  gboolean selecting;    /* the selection changes by the program */
};

G_DEFINE_FINAL_TYPE (FmExperimentList, fm_experiment_list, GTK_TYPE_WIDGET)

enum {
  SELECTED,
  ACTIVATED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  GtkWidget *label = gtk_label_new (NULL);

  /* One label a row, a paragraph a line: each ends in dots by itself and all rows are alike. */
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_set_margin_start (label, 8);
  gtk_widget_set_margin_end (label, 8);
  gtk_widget_set_margin_top (label, 4);
  gtk_widget_set_margin_bottom (label, 4);
  gtk_list_item_set_child (list_item, label);
}

static void
show_item (GtkLabel *label, FmExperimentItem *item)
{
  g_autofree char *markup = fm_experiment_item_markup (item);

  gtk_label_set_markup (label, markup);
  /* The row is what a reader of the list stops at, so it says what the label shows. */
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_parent (GTK_WIDGET (label))),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, gtk_label_get_text (label), -1);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  GtkWidget *label = gtk_list_item_get_child (list_item);
  FmExperimentItem *item = gtk_list_item_get_item (list_item);

  g_signal_connect_object (item, "changed", G_CALLBACK (show_item), label, G_CONNECT_SWAPPED);
  show_item (GTK_LABEL (label), item);
}

static void
unbind_cb (GtkSignalListItemFactory *factory, GtkListItem *list_item)
{
  g_signal_handlers_disconnect_by_func (gtk_list_item_get_item (list_item), show_item,
                                        gtk_list_item_get_child (list_item));
}

static gint64
get_id_at (FmExperimentList *self, guint position)
{
  g_autoptr (FmExperimentItem) item = g_list_model_get_item (G_LIST_MODEL (self->log), position);

  return item != NULL ? fm_experiment_item_get_info (item)->id : 0;
}

static void
selected_cb (FmExperimentList *self)
{
  const gint64 id = get_id_at (self, gtk_single_selection_get_selected (self->selection));

  if (self->selecting || id == 0)
    return;
  self->wanted_id = id;
  g_signal_emit (self, signals[SELECTED], 0, id);
}

static void
activate_cb (FmExperimentList *self, guint position)
{
  const gint64 id = get_id_at (self, position);

  if (id != 0)
    g_signal_emit (self, signals[ACTIVATED], 0, id);
}

static void
drop_hidden (FmExperimentList *self, GPtrArray *rows)
{
  if (g_hash_table_size (self->hidden) == 0)
    return;
  for (guint i = rows->len; i > 0; i--) {
    const FmExperimentInfo *info = g_ptr_array_index (rows, i - 1);

    if (g_hash_table_contains (self->hidden, &info->id))
      g_ptr_array_remove_index (rows, i - 1);
  }
}

static void
show_count (FmExperimentList *self)
{
  const guint n = g_list_model_get_n_items (G_LIST_MODEL (self->log));
  const gboolean filtered = fm_experiment_filter_bar_is_filtering (self->filter_bar);
  g_autofree char *text = g_strdup_printf (ngettext ("%u experiment", "%u experiments", n), n);

  gtk_label_set_text (self->count_label, text);
  gtk_stack_set_visible_child_name (self->stack,
                                    n > 0 ? "list" : (filtered ? "no-match" : "empty"));
}

static void
select_wanted (FmExperimentList *self)
{
  const guint position = self->wanted_id != 0 ? fm_experiment_log_find (self->log, self->wanted_id)
                                              : GTK_INVALID_LIST_POSITION;

  self->selecting = TRUE;
  gtk_single_selection_set_selected (self->selection, position);
  self->selecting = FALSE;
  if (position != GTK_INVALID_LIST_POSITION)
    gtk_widget_activate_action (GTK_WIDGET (self->list_view), "list.scroll-to-item", "u", position);
}

static void
list_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmExperimentList) self = data;
  g_autoptr (GError) error = NULL;
  GPtrArray *rows = fm_experiment_query_list_finish (result, &error);

  if (self->list_view == NULL || g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED)) {
    g_clear_pointer (&rows, g_ptr_array_unref);
    return;
  }
  if (rows == NULL) {
    gtk_label_set_text (self->failure_label, error->message);
    gtk_stack_set_visible_child_name (self->stack, "failure");
    return;
  }
  drop_hidden (self, rows);
  self->selecting = TRUE;
  fm_experiment_log_set_rows (self->log, rows);
  self->selecting = FALSE;
  show_count (self);
  select_wanted (self);
}

static void
filter_changed_cb (FmExperimentList *self)
{
  fm_experiment_list_reload (self);
}

static void
reset_clicked_cb (FmExperimentList *self)
{
  fm_experiment_filter_bar_reset (self->filter_bar);
}

static void
fm_experiment_list_dispose (GObject *object)
{
  FmExperimentList *self = FM_EXPERIMENT_LIST (object);

  g_cancellable_cancel (self->listing);
  g_clear_object (&self->listing);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_EXPERIMENT_LIST);
  g_clear_object (&self->log);
  g_clear_object (&self->session);
  g_clear_pointer (&self->hidden, g_hash_table_unref);
  G_OBJECT_CLASS (fm_experiment_list_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmExperimentList, box);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentList, filter_bar);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentList, stack);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentList, list_view);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentList, selection);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentList, count_label);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentList, failure_label);
  gtk_widget_class_bind_template_callback (widget_class, setup_cb);
  gtk_widget_class_bind_template_callback (widget_class, bind_cb);
  gtk_widget_class_bind_template_callback (widget_class, unbind_cb);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, filter_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, reset_clicked_cb);
}

static void
fm_experiment_list_class_init (FmExperimentListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GType type = FM_TYPE_EXPERIMENT_LIST;

  G_OBJECT_CLASS (klass)->dispose = fm_experiment_list_dispose;
  g_type_ensure (FM_TYPE_EXPERIMENT_FILTER_BAR);
  signals[SELECTED] = g_signal_new ("selected", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                    G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[ACTIVATED] = g_signal_new ("activated", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                     G_TYPE_NONE, 1, G_TYPE_INT64);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-experiment-list.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_template (widget_class);
}

static void
fm_experiment_list_init (FmExperimentList *self)
{
  self->hidden = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  self->log = fm_experiment_log_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_single_selection_set_model (self->selection, G_LIST_MODEL (self->log));
}

void
fm_experiment_list_set_session (FmExperimentList *self, FmSession *session)
{
  g_return_if_fail (FM_IS_EXPERIMENT_LIST (self));
  if (g_set_object (&self->session, session))
    fm_experiment_list_reload (self);
}

void
fm_experiment_list_reload (FmExperimentList *self)
{
  FmNotebook *notebook = self->session != NULL ? fm_session_get_notebook (self->session) : NULL;
  FmExperimentFilter filter;

  g_cancellable_cancel (self->listing);
  g_clear_object (&self->listing);
  if (notebook == NULL) {
    fm_experiment_log_set_rows (self->log, NULL);
    show_count (self);
    return;
  }
  fm_experiment_filter_bar_get_filter (self->filter_bar, self->session, &filter);
  self->listing = g_cancellable_new ();
  fm_experiment_query_list_async (notebook, &filter, self->listing, list_done_cb,
                                  g_object_ref (self));
}

void
fm_experiment_list_shown_changed (FmExperimentList *self)
{
  if (fm_experiment_filter_bar_follows_shown (self->filter_bar))
    fm_experiment_list_reload (self);
}

void
fm_experiment_list_select (FmExperimentList *self, gint64 id)
{
  g_return_if_fail (FM_IS_EXPERIMENT_LIST (self));
  self->wanted_id = id;
  select_wanted (self);
}

void
fm_experiment_list_update (FmExperimentList *self, const FmExperiment *experiment)
{
  const guint position = fm_experiment_log_find (self->log, experiment->id);
  g_autoptr (FmExperimentItem) item = NULL;

  if (position == G_MAXUINT)
    return;
  item = g_list_model_get_item (G_LIST_MODEL (self->log), position);
  fm_experiment_item_update (item, experiment);
}

void
fm_experiment_list_set_hidden (FmExperimentList *self, gint64 id, gboolean hidden)
{
  if (hidden)
    g_hash_table_add (self->hidden, g_memdup2 (&id, sizeof id));
  else
    g_hash_table_remove (self->hidden, &id);
}

void
fm_experiment_list_set_single_click (FmExperimentList *self, gboolean single_click)
{
  gtk_list_view_set_single_click_activate (self->list_view, single_click);
}
