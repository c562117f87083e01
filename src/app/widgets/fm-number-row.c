/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-number-row.c - number entries at the end of a row that has a title */
#include "app/widgets/fm-number-row.h"

#include <adwaita.h>

#include "app/widgets/fm-widget.h"

#define SUBTITLE_KEY "fm-own-subtitle"

static void
show_message (AdwActionRow *row, GParamSpec *pspec, FmNumberEntry *entry)
{
  const char *message = fm_number_entry_get_message (entry);
  const char *own = g_object_get_data (G_OBJECT (row), SUBTITLE_KEY);

  if (own == NULL) {
    g_object_set_data_full (G_OBJECT (row), SUBTITLE_KEY,
                            g_strdup (adw_action_row_get_subtitle (row)), g_free);
    own = g_object_get_data (G_OBJECT (row), SUBTITLE_KEY);
  }
  adw_action_row_set_subtitle (row, message != NULL ? message : own != NULL ? own : "");
  fm_widget_set_class (GTK_WIDGET (row), "error", !fm_number_entry_is_valid (entry));
}

void
fm_number_row_tell_errors (FmNumberEntry *entry)
{
  GtkWidget *row = gtk_widget_get_ancestor (GTK_WIDGET (entry), ADW_TYPE_ACTION_ROW);

  g_return_if_fail (row != NULL);
  /* Messages repeat what was typed, which is no markup. */
  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (row), 0);
  g_object_set (entry, "inline-message", FALSE, NULL);
  g_signal_connect_object (entry, "notify::message", G_CALLBACK (show_message), row,
                           G_CONNECT_SWAPPED);
}

const char *
fm_number_row_bad_text (FmNumberEntry *const *entries, guint n_entries)
{
  for (guint i = 0; i < n_entries; i++)
    if (!fm_number_entry_is_valid (entries[i]))
      return fm_number_entry_get_message (entries[i]);
  return NULL;
}
