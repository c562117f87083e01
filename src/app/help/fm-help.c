/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-help.c - opens the manual: in the desktop's reader, else in our own */
#include "app/help/fm-help.h"

#include "app/help/fm-help-window.h"

typedef struct {
  GtkWindow *parent;
  char *page;
} Asked;

static void
asked_free (Asked *self)
{
  g_object_unref (self->parent);
  g_free (self->page);
  g_free (self);
}

static void
launched_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Asked *asked = user_data;

  if (!g_app_info_launch_uris_finish (G_APP_INFO (source), result, NULL))
    fm_help_window_show (asked->parent, asked->page);
  asked_free (asked);
}

/* The desktop looks only where manuals are installed. */
static GAppInfo *
find_reader (void)
{
  return g_getenv ("FORCEMEAT_HELP_DIR") != NULL ? NULL
                                                 : g_app_info_get_default_for_uri_scheme ("help");
}

void
fm_help_show (GtkWindow *parent, const char *page)
{
  g_autoptr (GAppInfo) reader = find_reader ();
  g_autofree char *uri = g_strconcat ("help:forcemeat/", page, NULL);
  GList uris = { .data = uri };
  Asked *asked;

  if (reader == NULL) {
    fm_help_window_show (parent, page);
    return;
  }
  asked = g_new0 (Asked, 1);
  asked->parent = g_object_ref (parent);
  asked->page = g_strdup (page);
  g_app_info_launch_uris_async (reader, &uris,
                                G_APP_LAUNCH_CONTEXT (gdk_display_get_app_launch_context (
                                    gtk_widget_get_display (GTK_WIDGET (parent)))),
                                NULL, launched_cb, asked);
}
