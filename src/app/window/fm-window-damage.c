/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-damage.c - what to do with a notebook that is damaged, and what came of it */
#include <glib/gi18n-lib.h>

#include "app/window/fm-window-open.h"
#include "app/window/fm-window-private.h"

static void
response_cb (AdwMessageDialog *dialog, const char *response, FmWindow *self)
{
  const char *path = g_object_get_data (G_OBJECT (dialog), "path");

  if (g_str_equal (response, "read"))
    fm_window_read_damaged (self, path);
  else if (g_str_equal (response, "recover"))
    fm_window_recover (self, path);
}

void
fm_window_offer_recovery (FmWindow *self, const char *path, const char *reason)
{
  GtkWidget *widget =
      adw_message_dialog_new (GTK_WINDOW (self), _ ("This Notebook Is Damaged"), NULL);
  AdwMessageDialog *dialog = ADW_MESSAGE_DIALOG (widget);

  adw_message_dialog_format_body (
      dialog,
      /* TRANSLATORS: %s says what is wrong. */
      _ ("%s\n\nA backup or a saved copy is best. Without one, what can be read can be put into a "
         "new notebook beside it; this file stays as it is."),
      reason);
  adw_message_dialog_add_responses (dialog, "cancel", _ ("Cancel"), "read", _ ("Open for Reading"),
                                    "recover", _ ("Recover What Can Be Read"), NULL);
  adw_message_dialog_set_default_response (dialog, "recover");
  adw_message_dialog_set_close_response (dialog, "cancel");
  g_object_set_data_full (G_OBJECT (dialog), "path", g_strdup (path), g_free);
  g_signal_connect_object (dialog, "response", G_CALLBACK (response_cb), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
fm_window_tell_recovered (FmWindow *self, const char *path, const char *report)
{
  g_autofree char *name = g_filename_display_basename (path);
  /* TRANSLATORS: %s is the name of a file. */
  g_autofree char *heading = g_strdup_printf (_ ("Recovered as %s"), name);
  GtkWidget *dialog = adw_message_dialog_new (GTK_WINDOW (self), NULL, report);

  adw_message_dialog_set_heading (ADW_MESSAGE_DIALOG (dialog), heading);
  adw_message_dialog_add_response (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Close"));
  gtk_window_present (GTK_WINDOW (dialog));
}
