/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-reason.c - what is gone on with only for a reason or a name, which is kept */
#include "app/tastings/fm-tasting-reason.h"

#define MAX_LENGTH 500

static void
reason_changed_cb (GtkWidget *entry, AdwMessageDialog *dialog)
{
  adw_message_dialog_set_response_enabled (dialog, "go", fm_tasting_reason_is_given (entry));
}

GtkWidget *
fm_tasting_reason_entry_new (const char *what)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), what);
  gtk_entry_set_max_length (GTK_ENTRY (entry), MAX_LENGTH);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, what, -1);
  return entry;
}

gboolean
fm_tasting_reason_is_given (GtkWidget *entry)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry))));

  return *text != '\0';
}

AdwMessageDialog *
fm_tasting_reason_dialog_new (GtkWidget *parent,
                              const char *heading,
                              const char *body,
                              const char *keep,
                              const char *go,
                              const char *what)
{
  GtkRoot *root = gtk_widget_get_root (parent);
  AdwMessageDialog *dialog =
      ADW_MESSAGE_DIALOG (adw_message_dialog_new (GTK_WINDOW (root), heading, body));
  GtkWidget *entry = fm_tasting_reason_entry_new (what);

  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  adw_message_dialog_set_extra_child (dialog, entry);
  adw_message_dialog_add_responses (dialog, "cancel", keep, "go", go, NULL);
  adw_message_dialog_set_response_enabled (dialog, "go", FALSE);
  adw_message_dialog_set_default_response (dialog, "go");
  adw_message_dialog_set_close_response (dialog, "cancel");
  g_signal_connect_object (entry, "changed", G_CALLBACK (reason_changed_cb), dialog, 0);
  return dialog;
}

const char *
fm_tasting_reason_dialog_get (AdwMessageDialog *dialog)
{
  return gtk_editable_get_text (GTK_EDITABLE (adw_message_dialog_get_extra_child (dialog)));
}
