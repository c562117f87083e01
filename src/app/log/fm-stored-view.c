/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-stored-view.c - one record as a page, every change saved as it is made */
#include "app/log/fm-stored-view.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-undo-keys.h"
#include "app/widgets/fm-widget.h"

typedef struct {
  GtkBox *content_box;
  GtkLabel *altered_label;
  GtkLabel *status_label;
  GtkWidget *remove_button;

  FmStoredDocument *document;
  GSignalGroup *signals;
  char *restored; /* (nullable) what undo or redo did last; gone with the next change */
  GtkWidget *root;
  gulong focus_handler;
} FmStoredViewPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (FmStoredView, fm_stored_view, GTK_TYPE_WIDGET)

enum {
  PROP_CONTENT = 1,
  PROP_REMOVE_TEXT,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

enum {
  REMOVE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static FmStoredViewPrivate *
get_private (FmStoredView *self)
{
  return fm_stored_view_get_instance_private (self);
}

static void
set_status (FmStoredView *self, const char *text, gboolean failed)
{
  GtkLabel *label = get_private (self)->status_label;

  gtk_label_set_text (label, text);
  gtk_widget_set_tooltip_text (GTK_WIDGET (label), failed ? text : NULL);
  fm_widget_set_class (GTK_WIDGET (label), "error", failed);
}

/* Below the record, whose changed field may be out of sight. */
static void
say_saved (FmStoredView *self, const char *text)
{
  const char *restored = get_private (self)->restored;
  g_autofree char *whole =
      restored != NULL ? g_strdup_printf ("%s – %s", restored, text) : g_strdup (text);

  set_status (self, whole, FALSE);
}

static void
document_changed_cb (FmStoredView *self)
{
  g_clear_pointer (&get_private (self)->restored, g_free);
  if (FM_STORED_VIEW_GET_CLASS (self)->changed != NULL)
    FM_STORED_VIEW_GET_CLASS (self)->changed (self);
  set_status (self, _ ("Saving…"), FALSE);
}

static void
document_saved_cb (FmStoredView *self)
{
  say_saved (self, _ ("All changes saved"));
}

static void
document_restored_cb (FmStoredView *self, const char *text)
{
  get_private (self)->restored = g_strdup (text);
  if (FM_STORED_VIEW_GET_CLASS (self)->restored != NULL)
    FM_STORED_VIEW_GET_CLASS (self)->restored (self);
  say_saved (self, _ ("Saving…"));
}

/* A run of typing is one step as long as the focus stays where it is. */
static void
focus_moved_cb (FmStoredView *self)
{
  if (get_private (self)->document != NULL)
    fm_stored_document_seal (get_private (self)->document);
}

static void
document_failed_cb (FmStoredView *self, const char *message)
{
  FmStoredDocument *document = get_private (self)->document;
  g_autofree char *text = NULL;

  /* What has lost its file is not tried again. */
  if (fm_notebook_is_lost (fm_stored_document_get_notebook (document)))
    text = g_strdup (message);
  else
    text = g_strdup_printf (_ ("Not saved yet, trying again: %s"), message);
  set_status (self, text, TRUE);
}

static void
document_altered_cb (FmStoredView *self)
{
  FmStoredViewPrivate *priv = get_private (self);
  const gboolean is_altered = fm_stored_document_is_altered (priv->document);
  g_autofree char *what = is_altered ? fm_stored_document_describe (priv->document) : NULL;
  /* TRANSLATORS: %s is a record with its name, like: Experiment “Sunday”. */
  g_autofree char *text =
      is_altered ? g_strdup_printf (_ ("%s was changed outside the program, or damaged, since it "
                                       "was saved. Compare it with a backup before you rely on it. "
                                       "What you change in it keeps the rest as it is now."),
                                    what)
                 : NULL;

  gtk_label_set_text (priv->altered_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (priv->altered_label), is_altered);
}

static void
remove_clicked_cb (FmStoredView *self)
{
  g_signal_emit (self, signals[REMOVE], 0);
}

static void
leave_document (FmStoredView *self)
{
  FmStoredViewPrivate *priv = get_private (self);

  if (priv->document == NULL)
    return;
  g_signal_group_set_target (priv->signals, NULL);
  fm_stored_document_flush (priv->document);
  g_clear_object (&priv->document);
  g_clear_pointer (&priv->restored, g_free);
}

static void
fm_stored_view_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FmStoredViewPrivate *priv = get_private (FM_STORED_VIEW (object));

  switch (id) {
  case PROP_CONTENT:
    gtk_box_append (priv->content_box, g_value_get_object (value));
    break;
  case PROP_REMOVE_TEXT:
    gtk_widget_set_tooltip_text (priv->remove_button, g_value_get_string (value));
    gtk_accessible_update_property (GTK_ACCESSIBLE (priv->remove_button),
                                    GTK_ACCESSIBLE_PROPERTY_LABEL, g_value_get_string (value), -1);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  }
}

static void
fm_stored_view_root (GtkWidget *widget)
{
  FmStoredViewPrivate *priv = get_private (FM_STORED_VIEW (widget));

  GTK_WIDGET_CLASS (fm_stored_view_parent_class)->root (widget);
  priv->root = GTK_WIDGET (gtk_widget_get_root (widget));
  if (GTK_IS_WINDOW (priv->root))
    priv->focus_handler = g_signal_connect_swapped (priv->root, "notify::focus-widget",
                                                    G_CALLBACK (focus_moved_cb), widget);
}

static void
fm_stored_view_unroot (GtkWidget *widget)
{
  FmStoredViewPrivate *priv = get_private (FM_STORED_VIEW (widget));

  g_clear_signal_handler (&priv->focus_handler, priv->root);
  priv->root = NULL;
  GTK_WIDGET_CLASS (fm_stored_view_parent_class)->unroot (widget);
}

static void
fm_stored_view_dispose (GObject *object)
{
  FmStoredView *self = FM_STORED_VIEW (object);

  leave_document (self);
  fm_widget_drop_children (GTK_WIDGET (self));
  g_clear_object (&get_private (self)->signals);
  G_OBJECT_CLASS (fm_stored_view_parent_class)->dispose (object);
}

static void
fm_stored_view_class_init (FmStoredViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->set_property = fm_stored_view_set_property;
  object_class->dispose = fm_stored_view_dispose;
  widget_class->root = fm_stored_view_root;
  widget_class->unroot = fm_stored_view_unroot;
  props[PROP_CONTENT] = g_param_spec_object ("content", NULL, NULL, GTK_TYPE_WIDGET,
                                             G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_REMOVE_TEXT] = g_param_spec_string ("remove-text", NULL, NULL, NULL,
                                                 G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[REMOVE] = g_signal_new ("remove", FM_TYPE_STORED_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/log/fm-stored-view.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child_private (widget_class, FmStoredView, content_box);
  gtk_widget_class_bind_template_child_private (widget_class, FmStoredView, altered_label);
  gtk_widget_class_bind_template_child_private (widget_class, FmStoredView, status_label);
  gtk_widget_class_bind_template_child_private (widget_class, FmStoredView, remove_button);
  gtk_widget_class_bind_template_callback (widget_class, remove_clicked_cb);
}

static void
fm_stored_view_init (FmStoredView *self)
{
  GSignalGroup *group = g_signal_group_new (FM_TYPE_STORED_DOCUMENT);

  get_private (self)->signals = group;
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_group_connect_swapped (group, "changed", G_CALLBACK (document_changed_cb), self);
  fm_undo_keys_install (GTK_WIDGET (self));
  g_signal_group_connect_swapped (group, "restored", G_CALLBACK (document_restored_cb), self);
  g_signal_group_connect_swapped (group, "saved", G_CALLBACK (document_saved_cb), self);
  g_signal_group_connect_swapped (group, "save-failed", G_CALLBACK (document_failed_cb), self);
  g_signal_group_connect_swapped (group, "altered", G_CALLBACK (document_altered_cb), self);
}

void
fm_stored_view_set_document (FmStoredView *self, FmStoredDocument *document)
{
  FmStoredViewPrivate *priv;
  const gboolean editable = document != NULL && fm_stored_document_is_editable (document);

  g_return_if_fail (FM_IS_STORED_VIEW (self));
  priv = get_private (self);
  leave_document (self);
  g_set_object (&priv->document, document);
  FM_STORED_VIEW_GET_CLASS (self)->show (self);
  if (document == NULL)
    return;
  g_signal_group_set_target (priv->signals, document);
  document_altered_cb (self);
  gtk_widget_set_sensitive (priv->remove_button, editable);
  set_status (self,
              editable ? _ ("Changes are saved as you make them") : _ ("Open for reading only"),
              FALSE);
}

gpointer
fm_stored_view_get_document (FmStoredView *self)
{
  g_return_val_if_fail (FM_IS_STORED_VIEW (self), NULL);
  return get_private (self)->document;
}

gpointer
fm_stored_view_get_content (FmStoredView *self)
{
  return fm_stored_document_get_content (fm_stored_view_get_document (self));
}

void
fm_stored_view_say_failure (FmStoredView *self, const char *text)
{
  g_return_if_fail (FM_IS_STORED_VIEW (self));
  set_status (self, text, TRUE);
}
