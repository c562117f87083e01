/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-log-page.c - records of one kind: the list at the left, the open one at the right */
#include "app/log/fm-log-page.h"

#include <adwaita.h>

#include "app/widgets/fm-widget.h"

typedef struct {
  AdwLeaflet *leaflet;
  AdwBin *list_bin;
  AdwBin *view_bin;
  GtkWidget *back_bar;
  GtkWidget *back_button;
  AdwButtonContent *back_content;
  GtkStack *detail_stack;
  GtkLabel *none_label;

  FmLogList *list;
  FmStoredView *view;
} FmLogPagePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (FmLogPage, fm_log_page, FM_TYPE_RECORDS_PAGE)

enum {
  PROP_LIST = 1,
  PROP_VIEW,
  PROP_BACK_LABEL,
  PROP_BACK_SPOKEN,
  PROP_NONE_TEXT,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static FmLogPagePrivate *
get_private (FmLogPage *self)
{
  return fm_log_page_get_instance_private (self);
}

static void
selected_cb (FmLogPage *self, gint64 id)
{
  /* In a narrow window arrows only move in the list; Enter or a click goes to the page. */
  if (!adw_leaflet_get_folded (get_private (self)->leaflet))
    fm_records_page_open (FM_RECORDS_PAGE (self), id);
}

static void
activated_cb (FmLogPage *self, gint64 id)
{
  fm_records_page_open (FM_RECORDS_PAGE (self), id);
  adw_leaflet_navigate (get_private (self)->leaflet, ADW_NAVIGATION_DIRECTION_FORWARD);
}

static void
query_changed_cb (FmLogPage *self)
{
  if (fm_page_get_session (FM_PAGE (self)) != NULL)
    fm_records_page_query_changed (FM_RECORDS_PAGE (self));
}

static void
remove_cb (FmLogPage *self)
{
  fm_records_page_remove (FM_RECORDS_PAGE (self), GTK_WIDGET (get_private (self)->leaflet));
}

static void
open_first (FmLogPage *self)
{
  FmRecordsPage *page = FM_RECORDS_PAGE (self);
  gconstpointer first = fm_log_model_get_info (fm_records_page_get_model (page), 0);

  if (!FM_LOG_PAGE_GET_CLASS (self)->opens_first || first == NULL ||
      fm_records_page_get_open_id (page) != 0 ||
      adw_leaflet_get_folded (get_private (self)->leaflet))
    return;
  fm_log_list_select (get_private (self)->list, fm_log_info_id (first));
  fm_records_page_open (page, fm_log_info_id (first));
}

static void
back_clicked_cb (FmLogPage *self)
{
  adw_leaflet_navigate (get_private (self)->leaflet, ADW_NAVIGATION_DIRECTION_BACK);
}

/* What is edited is on screen now, or is not any more. */
static void
visible_cb (FmLogPage *self)
{
  g_object_notify (G_OBJECT (self), "document");
}

static void
folded_cb (FmLogPage *self)
{
  FmLogPagePrivate *priv = get_private (self);
  const gboolean folded = adw_leaflet_get_folded (priv->leaflet);

  visible_cb (self);
  gtk_widget_set_visible (priv->back_bar, folded);
  if (priv->list == NULL)
    return;
  fm_log_list_set_single_click (priv->list, folded);
  /* A list that is folded away hands its focus, and with it the selection, to another row. */
  if (!folded)
    fm_log_list_select (priv->list, fm_records_page_get_open_id (FM_RECORDS_PAGE (self)));
  open_first (self);
}

static void
take_list (FmLogPage *self, FmLogList *list)
{
  FmLogPagePrivate *priv = get_private (self);

  priv->list = list;
  adw_bin_set_child (priv->list_bin, GTK_WIDGET (list));
  fm_log_list_set_model (list, fm_records_page_get_model (FM_RECORDS_PAGE (self)));
  g_signal_connect_object (fm_records_page_get_model (FM_RECORDS_PAGE (self)), "updated",
                           G_CALLBACK (open_first), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (list, "selected", G_CALLBACK (selected_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (list, "activated", G_CALLBACK (activated_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (list, "query-changed", G_CALLBACK (query_changed_cb), self,
                           G_CONNECT_SWAPPED);
}

static void
take_view (FmLogPage *self, FmStoredView *view)
{
  FmLogPagePrivate *priv = get_private (self);

  priv->view = view;
  adw_bin_set_child (priv->view_bin, GTK_WIDGET (view));
  g_signal_connect_object (view, "remove", G_CALLBACK (remove_cb), self, G_CONNECT_SWAPPED);
}

static gpointer
fm_log_page_query (FmRecordsPage *page)
{
  return fm_log_list_query (get_private (FM_LOG_PAGE (page))->list,
                            fm_page_get_session (FM_PAGE (page)));
}

static void
fm_log_page_show (FmRecordsPage *page, FmStoredDocument *document)
{
  FmLogPage *self = FM_LOG_PAGE (page);
  FmLogPagePrivate *priv = get_private (self);

  if (FM_LOG_PAGE_GET_CLASS (self)->prepare != NULL)
    FM_LOG_PAGE_GET_CLASS (self)->prepare (self, document);
  fm_stored_view_set_document (priv->view, document);
  gtk_stack_set_visible_child_name (priv->detail_stack, document != NULL ? "record" : "none");
}

static void
fm_log_page_select (FmRecordsPage *page, gint64 id)
{
  fm_log_list_select (get_private (FM_LOG_PAGE (page))->list, id);
}

static void
fm_log_page_go (FmRecordsPage *page, gboolean to_record)
{
  adw_leaflet_navigate (get_private (FM_LOG_PAGE (page))->leaflet,
                        to_record ? ADW_NAVIGATION_DIRECTION_FORWARD
                                  : ADW_NAVIGATION_DIRECTION_BACK);
}

static void
fm_log_page_update_actions (FmRecordsPage *page)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (page), FM_LOG_PAGE_GET_CLASS (page)->new_action,
                                 fm_page_is_writable (FM_PAGE (page)));
}

static void
fm_log_page_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FmLogPage *self = FM_LOG_PAGE (object);
  FmLogPagePrivate *priv = get_private (self);

  switch (id) {
  case PROP_LIST:
    take_list (self, g_value_get_object (value));
    break;
  case PROP_VIEW:
    take_view (self, g_value_get_object (value));
    break;
  case PROP_BACK_LABEL:
    adw_button_content_set_label (priv->back_content, g_value_get_string (value));
    break;
  case PROP_BACK_SPOKEN:
    gtk_accessible_update_property (GTK_ACCESSIBLE (priv->back_button),
                                    GTK_ACCESSIBLE_PROPERTY_LABEL, g_value_get_string (value), -1);
    break;
  case PROP_NONE_TEXT:
    gtk_label_set_text (priv->none_label, g_value_get_string (value));
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  }
}

static void
fm_log_page_dispose (GObject *object)
{
  FmLogPagePrivate *priv = get_private (FM_LOG_PAGE (object));

  priv->list = NULL;
  priv->view = NULL;
  fm_widget_drop_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (fm_log_page_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child_private (widget_class, FmLogPage, leaflet);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogPage, list_bin);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogPage, view_bin);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogPage, back_bar);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogPage, back_button);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogPage, back_content);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogPage, detail_stack);
  gtk_widget_class_bind_template_child_private (widget_class, FmLogPage, none_label);
  gtk_widget_class_bind_template_callback (widget_class, back_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, folded_cb);
  gtk_widget_class_bind_template_callback (widget_class, visible_cb);
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags flags = G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS;

  props[PROP_LIST] = g_param_spec_object ("list", NULL, NULL, FM_TYPE_LOG_LIST, flags);
  props[PROP_VIEW] = g_param_spec_object ("view", NULL, NULL, FM_TYPE_STORED_VIEW, flags);
  props[PROP_BACK_LABEL] = g_param_spec_string ("back-label", NULL, NULL, NULL, flags);
  props[PROP_BACK_SPOKEN] = g_param_spec_string ("back-spoken", NULL, NULL, NULL, flags);
  props[PROP_NONE_TEXT] = g_param_spec_string ("none-text", NULL, NULL, NULL, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
fm_log_page_class_init (FmLogPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  FmRecordsPageClass *records_class = FM_RECORDS_PAGE_CLASS (klass);

  object_class->set_property = fm_log_page_set_property;
  object_class->dispose = fm_log_page_dispose;
  records_class->query = fm_log_page_query;
  records_class->show = fm_log_page_show;
  records_class->select = fm_log_page_select;
  records_class->go = fm_log_page_go;
  records_class->update_actions = fm_log_page_update_actions;
  install_properties (object_class);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/log/fm-log-page.ui");
  bind_template (widget_class);
}

static void
fm_log_page_init (FmLogPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

gboolean
fm_log_page_shows_record (FmLogPage *self)
{
  FmLogPagePrivate *priv;

  g_return_val_if_fail (FM_IS_LOG_PAGE (self), FALSE);
  priv = get_private (self);
  return priv->view == NULL || !adw_leaflet_get_folded (priv->leaflet) ||
         gtk_widget_is_ancestor (GTK_WIDGET (priv->view),
                                 adw_leaflet_get_visible_child (priv->leaflet));
}
