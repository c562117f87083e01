/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-log-list.c - a log at the left of its page: what narrows it, the rows, what an empty one says
 */
#include "app/log/fm-log-list.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-one-stop.h"
#include "app/widgets/fm-widget.h"

#define PICTURE_PX 40

typedef struct {
  GtkBox *header_box;
  GtkStack *stack;
  GtkLabel *empty_label;
  GtkLabel *no_match_label;
  GtkListView *list_view;
  GtkSingleSelection *selection;
  GtkLabel *count_label;
  GtkLabel *failure_label;

  FmLogModel *model;
  gint64 wanted_id; /* the row to be selected */
} FmLogListPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (FmLogList, fm_log_list, GTK_TYPE_WIDGET)

enum {
  PROP_HEADER = 1,
  PROP_LIST_NAME,
  PROP_EMPTY_TEXT,
  PROP_NO_MATCH_TEXT,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

enum {
  SELECTED,
  ACTIVATED,
  QUERY_CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static FmLogListPrivate *
get_private (FmLogList *self)
{
  return fm_log_list_get_instance_private (self);
}

/* The words of a row, and behind them its picture where rows have one. */
static GtkWidget *
find_label (GtkWidget *child)
{
  return GTK_IS_LABEL (child) ? child : gtk_widget_get_first_child (child);
}

static GtkWidget *
lay_out (GtkWidget *label)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *image =
      g_object_new (GTK_TYPE_IMAGE, "accessible-role", GTK_ACCESSIBLE_ROLE_PRESENTATION, NULL);

  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_margin_end (label, 4);
  gtk_image_set_pixel_size (GTK_IMAGE (image), PICTURE_PX);
  gtk_widget_set_margin_end (image, 6);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), image);
  return box;
}

static void
setup_cb (FmLogList *self, GtkListItem *list_item)
{
  GtkWidget *label = gtk_label_new (NULL);

  /* One label a row, so that all of it is read at one stop. */
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  if (FM_LOG_LIST_GET_CLASS (self)->wraps) {
    gtk_label_set_wrap (GTK_LABEL (label), TRUE);
    gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  } else {
    gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  }
  gtk_widget_set_margin_start (label, 8);
  gtk_widget_set_margin_end (label, 8);
  gtk_widget_set_margin_top (label, 4);
  gtk_widget_set_margin_bottom (label, 4);
  gtk_list_item_set_child (
      list_item, FM_LOG_LIST_GET_CLASS (self)->show_picture != NULL ? lay_out (label) : label);
}

/* A row that could not be read says so under what was read before. */
static char *
row_markup (FmLogListClass *klass, FmLogRow *row)
{
  g_autofree char *markup = klass->markup (fm_log_row_get_info (row));
  const char *failure = fm_log_row_get_failure (row);
  g_autofree char *text = NULL;

  if (failure == NULL)
    return g_steal_pointer (&markup);
  text = g_markup_printf_escaped (_ ("Changed, but not read: %s"), failure);
  return g_strdup_printf ("%s\n<small>%s</small>", markup, text);
}

/* @row: (nullable): NULL when the row is let go */
static void
show_picture (FmLogList *self, GtkWidget *child, FmLogRow *row)
{
  FmLogListClass *klass = FM_LOG_LIST_GET_CLASS (self);

  if (klass->show_picture != NULL)
    klass->show_picture (self, row != NULL ? fm_log_row_get_info (row) : NULL,
                         GTK_IMAGE (gtk_widget_get_last_child (child)));
}

static void
show_row (GtkWidget *child, FmLogRow *row)
{
  GtkWidget *list = gtk_widget_get_ancestor (child, FM_TYPE_LOG_LIST);
  GtkLabel *label = GTK_LABEL (find_label (child));
  g_autofree char *markup = NULL;
  g_autofree char *spoken = NULL;

  if (list == NULL || fm_log_row_get_info (row) == NULL)
    return;
  markup = row_markup (FM_LOG_LIST_GET_CLASS (list), row);
  gtk_label_set_markup (label, markup);
  spoken = g_strdelimit (g_strdup (gtk_label_get_text (label)), "\n", ' ');
  /* The row is what a reader of the list stops at, so it says what the label shows. */
  gtk_accessible_update_property (GTK_ACCESSIBLE (gtk_widget_get_parent (child)),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  show_picture (FM_LOG_LIST (list), child, row);
}

static void
bind_cb (FmLogList *self, GtkListItem *list_item)
{
  GtkWidget *child = gtk_list_item_get_child (list_item);
  FmLogRow *row = gtk_list_item_get_item (list_item);

  g_signal_connect_object (row, "changed", G_CALLBACK (show_row), child, G_CONNECT_SWAPPED);
  show_row (child, row);
}

static void
unbind_cb (FmLogList *self, GtkListItem *list_item)
{
  GtkWidget *child = gtk_list_item_get_child (list_item);

  g_signal_handlers_disconnect_by_func (gtk_list_item_get_item (list_item), show_row, child);
  show_picture (self, child, NULL);
}

static gint64
get_id_at (FmLogList *self, guint position)
{
  gconstpointer info = fm_log_model_get_info (get_private (self)->model, position);

  return info != NULL ? fm_log_info_id (info) : 0;
}

static void
selected_cb (FmLogList *self)
{
  FmLogListPrivate *priv = get_private (self);
  gint64 id;

  if (priv->model == NULL)
    return;
  id = get_id_at (self, gtk_single_selection_get_selected (priv->selection));
  /* Rows that come and go move the selection without choosing another record. */
  if (id == 0 || id == priv->wanted_id)
    return;
  priv->wanted_id = id;
  g_signal_emit (self, signals[SELECTED], 0, id);
}

static void
activate_cb (FmLogList *self, guint position)
{
  const gint64 id = get_id_at (self, position);

  if (id != 0)
    g_signal_emit (self, signals[ACTIVATED], 0, id);
}

static void
show_count (FmLogList *self)
{
  FmLogListPrivate *priv = get_private (self);
  FmLogListClass *klass = FM_LOG_LIST_GET_CLASS (self);
  const guint n = fm_log_model_get_n (priv->model);
  const gboolean filtering = klass->is_filtering != NULL && klass->is_filtering (self);
  g_autofree char *text = klass->count_text (n);

  gtk_label_set_text (priv->count_label, text);
  gtk_stack_set_visible_child_name (priv->stack,
                                    n > 0 ? "list" : (filtering ? "no-match" : "empty"));
}

static void
select_wanted (FmLogList *self)
{
  FmLogListPrivate *priv = get_private (self);
  const guint position = priv->wanted_id != 0 ? fm_log_model_find (priv->model, priv->wanted_id)
                                              : GTK_INVALID_LIST_POSITION;

  if (gtk_single_selection_get_selected (priv->selection) == position)
    return;
  gtk_single_selection_set_selected (priv->selection, position);
  if (position != GTK_INVALID_LIST_POSITION)
    gtk_widget_activate_action (GTK_WIDGET (priv->list_view), "list.scroll-to-item", "u", position);
}

static void
updated_cb (FmLogList *self)
{
  show_count (self);
  select_wanted (self);
}

static void
failed_cb (FmLogList *self, const char *message)
{
  FmLogListPrivate *priv = get_private (self);

  gtk_label_set_text (priv->failure_label, message);
  gtk_stack_set_visible_child_name (priv->stack, "failure");
}

static void
reset_clicked_cb (FmLogList *self)
{
  FM_LOG_LIST_GET_CLASS (self)->reset_filter (self);
}

static void
fm_log_list_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FmLogListPrivate *priv = get_private (FM_LOG_LIST (object));

  switch (id) {
  case PROP_HEADER:
    gtk_box_append (priv->header_box, g_value_get_object (value));
    break;
  case PROP_LIST_NAME:
    gtk_accessible_update_property (GTK_ACCESSIBLE (priv->list_view), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                    g_value_get_string (value), -1);
    break;
  case PROP_EMPTY_TEXT:
    gtk_label_set_text (priv->empty_label, g_value_get_string (value));
    break;
  case PROP_NO_MATCH_TEXT:
    gtk_label_set_text (priv->no_match_label, g_value_get_string (value));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  }
}

static void
fm_log_list_dispose (GObject *object)
{
  FmLogList *self = FM_LOG_LIST (object);
  FmLogListPrivate *priv = get_private (self);

  if (priv->model != NULL)
    g_signal_handlers_disconnect_by_data (priv->model, self);
  fm_widget_drop_children (GTK_WIDGET (self));
  g_clear_object (&priv->model);
  G_OBJECT_CLASS (fm_log_list_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child_private (widget_class, FmLogList, header_box);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogList, stack);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogList, empty_label);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogList, no_match_label);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogList, list_view);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogList, selection);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogList, count_label);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogList, failure_label);
  gtk_widget_class_bind_template_callback (widget_class, setup_cb);
  gtk_widget_class_bind_template_callback (widget_class, bind_cb);
  gtk_widget_class_bind_template_callback (widget_class, unbind_cb);
  gtk_widget_class_bind_template_callback (widget_class, selected_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, reset_clicked_cb);
}

static GParamSpec *
text_spec (const char *name)
{
  return g_param_spec_string (name, NULL, NULL, NULL, G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
}

static void
fm_log_list_class_init (FmLogListClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GType type = FM_TYPE_LOG_LIST;

  object_class->set_property = fm_log_list_set_property;
  object_class->dispose = fm_log_list_dispose;
  props[PROP_HEADER] = g_param_spec_object ("header", NULL, NULL, GTK_TYPE_WIDGET,
                                            G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_LIST_NAME] = text_spec ("list-name");
  props[PROP_EMPTY_TEXT] = text_spec ("empty-text");
  props[PROP_NO_MATCH_TEXT] = text_spec ("no-match-text");
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[SELECTED] = g_signal_new ("selected", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                    G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[ACTIVATED] = g_signal_new ("activated", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                     G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[QUERY_CHANGED] =
      g_signal_new ("query-changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (FM_TYPE_ONE_STOP);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/log/fm-log-list.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_template (widget_class);
}

static void
fm_log_list_init (FmLogList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_log_list_set_model (FmLogList *self, FmLogModel *model)
{
  FmLogListPrivate *priv;

  g_return_if_fail (FM_IS_LOG_LIST (self));
  priv = get_private (self);
  g_return_if_fail (priv->model == NULL);
  priv->model = g_object_ref (model);
  gtk_single_selection_set_model (priv->selection, G_LIST_MODEL (model));
  g_signal_connect_swapped (model, "updated", G_CALLBACK (updated_cb), self);
  g_signal_connect_swapped (model, "failed", G_CALLBACK (failed_cb), self);
}

gpointer
fm_log_list_query (FmLogList *self, FmSession *session)
{
  return FM_LOG_LIST_GET_CLASS (self)->query (self, session);
}

void
fm_log_list_query_changed (FmLogList *self)
{
  g_signal_emit (self, signals[QUERY_CHANGED], 0);
}

void
fm_log_list_select (FmLogList *self, gint64 id)
{
  g_return_if_fail (FM_IS_LOG_LIST (self));
  get_private (self)->wanted_id = id;
  select_wanted (self);
}

void
fm_log_list_set_single_click (FmLogList *self, gboolean single_click)
{
  gtk_list_view_set_single_click_activate (get_private (self)->list_view, single_click);
}
