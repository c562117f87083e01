/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-leave.c - nothing that was typed is left behind without a question */
#include <glib/gi18n-lib.h>

#include "app/photos/fm-photo-import.h"
#include "app/window/fm-window-private.h"

typedef struct {
  FmWindowFunc go_on;
  gpointer data;
  GDestroyNotify free_data;
} Leaving;

static void
leaving_free (gpointer data, GClosure *closure)
{
  Leaving *leaving = data;

  if (leaving->free_data != NULL)
    leaving->free_data (leaving->data);
  g_free (leaving);
}

static void
response_cb (AdwMessageDialog *dialog, const char *response, Leaving *leaving)
{
  GtkWindow *window = gtk_window_get_transient_for (GTK_WINDOW (dialog));
  FmWindow *self = FM_WINDOW (window);

  if (g_str_equal (response, "copy")) {
    gtk_widget_activate_action (GTK_WIDGET (self), "win.save-copy", NULL);
  } else if (g_str_equal (response, "leave")) {
    fm_documents_give_up (fm_session_get_documents (self->session));
    self->gives_up = TRUE;
    leaving->go_on (self, leaving->data);
    self->gives_up = FALSE;
  }
}

/* A notebook whose last name was deleted ends with the window. */
static gboolean
ends_with_window (FmWindow *self)
{
  const FmNotebookPlace *place = fm_session_get_place (self->session);

  return place != NULL && !place->has_name;
}

/* NULL while no photos are being added. */
static char *
describe_import (void)
{
  guint n_added;
  guint n_total;

  if (!fm_photo_import_is_running (&n_added, &n_total))
    return NULL;
  /* TRANSLATORS: Both are numbers. */
  return g_strdup_printf (
      _ ("%u of %u photos are in the notebook. The others are not added when you "
         "go on now."),
      n_added, n_total);
}

static gboolean
would_lose_words (FmWindow *self)
{
  return ends_with_window (self) ||
         !fm_documents_is_kept (fm_session_get_documents (self->session));
}

gboolean
fm_window_would_lose (FmWindow *self)
{
  if (self->gives_up)
    return FALSE;
  fm_session_look_for_file (self->session);
  fm_session_flush (self->session);
  g_autofree char *import = describe_import ();

  return import != NULL || would_lose_words (self);
}

static void
format_body (FmWindow *self, AdwMessageDialog *dialog)
{
  g_autofree char *unsaved = fm_documents_describe (fm_session_get_documents (self->session));
  g_autofree char *place = fm_window_describe_place (self);

  if (place == NULL)
    adw_message_dialog_format_body (
        dialog,
        _ ("These changes are not on the disk yet:\n\n%s\n\nKeep the window open and free some "
           "space, "
           "or save a copy of the notebook, with these changes, in another folder."),
        unsaved);
  else if (*unsaved == '\0')
    adw_message_dialog_set_body (dialog, place);
  else
    adw_message_dialog_format_body (dialog, _ ("%s\n\nThese changes were never saved:\n\n%s"),
                                    place, unsaved);
}

static GtkWidget *
ask_about_words (FmWindow *self, const char *leave_label)
{
  const gboolean is_lost = fm_session_get_place (self->session) != NULL;
  GtkWidget *dialog = adw_message_dialog_new (
      GTK_WINDOW (self),
      is_lost ? _ ("The Notebook Has Lost Its File") : _ ("Some Changes Could Not Be Saved"), NULL);

  format_body (self, ADW_MESSAGE_DIALOG (dialog));
  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "keep", _ ("Keep Open"), "copy",
                                    is_lost ? _ ("Save Elsewhere…") : _ ("Save a Copy…"), "leave",
                                    leave_label, NULL);
  return dialog;
}

static GtkWidget *
ask_about_import (FmWindow *self, const char *leave_label)
{
  g_autofree char *import = describe_import ();
  GtkWidget *dialog =
      adw_message_dialog_new (GTK_WINDOW (self), _ ("Photos Are Still Being Added"), import);

  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "keep", _ ("Keep Open"), "leave",
                                    leave_label, NULL);
  return dialog;
}

void
fm_window_ask_before_loss (FmWindow *self,
                           const char *leave_label,
                           FmWindowFunc go_on,
                           gpointer data,
                           GDestroyNotify free_data)
{
  GtkWidget *widget = would_lose_words (self) ? ask_about_words (self, leave_label)
                                              : ask_about_import (self, leave_label);
  AdwMessageDialog *dialog = ADW_MESSAGE_DIALOG (widget);
  Leaving *leaving = g_new0 (Leaving, 1);

  leaving->go_on = go_on;
  leaving->data = data;
  leaving->free_data = free_data;
  adw_message_dialog_set_response_appearance (dialog, "leave", ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_default_response (dialog, "keep");
  adw_message_dialog_set_close_response (dialog, "keep");
  g_signal_connect_data (dialog, "response", G_CALLBACK (response_cb), leaving, leaving_free, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}
