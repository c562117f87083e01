/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-page.c - what shows a session: a page of the window, or its panel */
#include "app/widgets/fm-page.h"

#include <glib/gi18n-lib.h>

typedef struct {
  FmSession *session;
  FmStoredDocument *document;
  GSignalGroup *signals;
} FmPagePrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (FmPage, fm_page, GTK_TYPE_WIDGET)

enum {
  PROP_SESSION = 1,
  PROP_DOCUMENT,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static FmPagePrivate *
get_private (FmPage *self)
{
  return fm_page_get_instance_private (self);
}

static void
fm_page_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_SESSION)
    g_value_set_object (value, fm_page_get_session (FM_PAGE (object)));
  else if (id == PROP_DOCUMENT)
    g_value_set_object (value, fm_page_get_document (FM_PAGE (object)));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fm_page_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_SESSION)
    fm_page_set_session (FM_PAGE (object), g_value_get_object (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fm_page_dispose (GObject *object)
{
  FmPagePrivate *priv = get_private (FM_PAGE (object));

  if (priv->signals != NULL)
    g_signal_group_set_target (priv->signals, NULL);
  g_clear_object (&priv->signals);
  g_clear_object (&priv->session);
  g_clear_object (&priv->document);
  G_OBJECT_CLASS (fm_page_parent_class)->dispose (object);
}

static void
fm_page_class_init (FmPageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = fm_page_get_property;
  object_class->set_property = fm_page_set_property;
  object_class->dispose = fm_page_dispose;
  props[PROP_SESSION] =
      g_param_spec_object ("session", NULL, NULL, FM_TYPE_SESSION,
                           G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  props[PROP_DOCUMENT] =
      g_param_spec_object ("document", NULL, NULL, FM_TYPE_STORED_DOCUMENT,
                           G_PARAM_READABLE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
fm_page_init (FmPage *self)
{
  get_private (self)->signals = g_signal_group_new (FM_TYPE_SESSION);
}

FmSession *
fm_page_get_session (FmPage *self)
{
  g_return_val_if_fail (FM_IS_PAGE (self), NULL);
  return get_private (self)->session;
}

void
fm_page_set_session (FmPage *self, FmSession *session)
{
  FmPagePrivate *priv;

  g_return_if_fail (FM_IS_PAGE (self));
  priv = get_private (self);
  if (!g_set_object (&priv->session, session))
    return;
  g_signal_group_set_target (priv->signals, session);
  if (session != NULL)
    FM_PAGE_GET_CLASS (self)->show_session (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_SESSION]);
}

FmStoredDocument *
fm_page_get_document (FmPage *self)
{
  g_return_val_if_fail (FM_IS_PAGE (self), NULL);
  return get_private (self)->document;
}

void
fm_page_set_document (FmPage *self, FmStoredDocument *document)
{
  g_return_if_fail (FM_IS_PAGE (self));
  if (g_set_object (&get_private (self)->document, document))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_DOCUMENT]);
}

const char *
fm_page_tell_no_document (FmPage *self)
{
  if (FM_PAGE_GET_CLASS (self)->tell_no_document != NULL)
    return FM_PAGE_GET_CLASS (self)->tell_no_document (self);
  return _ ("Nothing is edited on this page");
}

FmNotebook *
fm_page_get_notebook (FmPage *self)
{
  FmSession *session = fm_page_get_session (self);

  return session != NULL ? fm_session_get_notebook (session) : NULL;
}

gboolean
fm_page_is_writable (FmPage *self)
{
  FmNotebook *notebook = fm_page_get_notebook (self);

  return notebook != NULL && !fm_notebook_is_read_only (notebook);
}

void
fm_page_listen (FmPage *self, const char *signal, GCallback callback)
{
  g_return_if_fail (FM_IS_PAGE (self));
  g_signal_group_connect_swapped (get_private (self)->signals, signal, callback, self);
}

void
fm_page_say (GtkWidget *self, const char *text, gboolean failed)
{
  FmSession *session = fm_page_get_session (FM_PAGE (self));
  g_autoptr (GError) error = NULL;

  if (session == NULL || text[0] == '\0')
    return;
  if (!failed) {
    fm_session_message (session, text);
    return;
  }
  error = g_error_new_literal (G_IO_ERROR, G_IO_ERROR_FAILED, text);
  fm_session_failure (session, error);
}
