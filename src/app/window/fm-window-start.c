/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-start.c - which notebook the program starts with, and the ways in when there is none */
#include <glib/gi18n-lib.h>

#include "app/session/fm-preferences.h"
#include "app/window/fm-window-open.h"
#include "app/window/fm-window-private.h"

static void
tell_gone (FmWindow *self, const char *path)
{
  g_autofree char *text = g_strdup_printf (
      _ ("The notebook %s is not there any more. Open it from where it is now, if it was moved."),
      path);
  g_autoptr (GError) error = g_error_new_literal (FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND, text);

  fm_session_failure (self->session, error);
}

static void
show_start (FmWindow *self)
{
  self->loading = FALSE;
  fm_window_update_content (self);
}

void
fm_window_open_last (FmWindow *self)
{
  g_autofree char *last = g_settings_get_string (fm_preferences_get (), "last-notebook");
  g_autofree char *first = fm_window_first_path ();

  if (*last != '\0' && g_file_test (last, G_FILE_TEST_EXISTS)) {
    fm_window_open_path (self, last);
    return;
  }
  if (*last != '\0')
    tell_gone (self, last);
  if (g_file_test (first, G_FILE_TEST_EXISTS)) {
    fm_window_open_path (self, first);
    return;
  }
  self->is_first_start = *last == '\0';
  show_start (self);
}

/* Where an empty notebook will lie; what lies there already is not the empty one. */
static void
fill_empty_way (GtkBuilder *builder)
{
  g_autofree char *first = fm_window_first_path ();
  g_autofree char *shown = g_filename_display_name (first);
  g_autofree char *text = NULL;

  if (g_file_test (first, G_FILE_TEST_EXISTS)) {
    gtk_label_set_text (GTK_LABEL (gtk_builder_get_object (builder, "empty_way_text")),
                        _ ("You choose where the file will lie. Changes are saved as you go."));
    gtk_actionable_set_action_name (GTK_ACTIONABLE (gtk_builder_get_object (builder, "empty_way")),
                                    "win.new");
    return;
  }
  /* TRANSLATORS: %s is the path of a file. */
  text = g_strdup_printf (_ ("It will lie in %s. Changes are saved as you go."), shown);
  gtk_label_set_text (GTK_LABEL (gtk_builder_get_object (builder, "empty_way_text")), text);
}

void
fm_window_fill_start (FmWindow *self, GtkBuilder *builder)
{
  fill_empty_way (builder);
  if (self->is_first_start)
    adw_status_page_set_title (
        ADW_STATUS_PAGE (gtk_builder_get_object (builder, "no_notebook_page")),
        _ ("Welcome to Forcemeat"));
  /* The keyboard begins where the page asks something. */
  gtk_widget_grab_focus (GTK_WIDGET (gtk_builder_get_object (builder, "demo_way")));
}
