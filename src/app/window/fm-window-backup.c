/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-backup.c - a backup of each day, kept in the background */
#include <glib/gi18n-lib.h>

#include "app/session/fm-store-task.h"
#include "app/session/fm-writer.h"
#include "app/window/fm-window-private.h"
#include "store/fm-backup.h"

static gpointer
keep (FmNotebook *none, gpointer notebook, GCancellable *cancellable, GError **error)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  GDate today;
  gboolean ok;

  g_date_clear (&today, 1);
  g_date_set_dmy (&today, (GDateDay)g_date_time_get_day_of_month (now),
                  (GDateMonth)g_date_time_get_month (now), (GDateYear)g_date_time_get_year (now));
  ok = fm_backup_keep (notebook, &today, cancellable, error);
  fm_writer_release_notebook (notebook);
  return GINT_TO_POINTER (ok);
}

static void
kept_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmWindow *self = FM_WINDOW (source);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  fm_store_task_finish (result, &error);
  if (error == NULL || self->session == NULL ||
      g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  text = g_strdup_printf (_ ("No backup of today was kept: %s"), error->message);
  fm_session_message (self->session, text);
}

void
fm_window_begin_backup (FmWindow *self, FmNotebook *notebook)
{
  fm_window_end_backup (self);
  self->backing_up = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .run = keep,
      .data = fm_writer_hold_notebook (notebook),
      .cancellable = self->backing_up,
      .finishes = TRUE,
      .done = kept_cb,
  });
}

void
fm_window_end_backup (FmWindow *self)
{
  if (self->backing_up != NULL)
    g_cancellable_cancel (self->backing_up);
  g_clear_object (&self->backing_up);
}

static void
backups_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmWindow *self = FM_WINDOW (widget);
  g_autofree char *folder =
      fm_backup_folder (fm_notebook_path (fm_session_get_notebook (self->session)));
  g_autofree char *shown = g_filename_display_name (folder);
  g_autofree char *uri = g_filename_to_uri (folder, NULL, NULL);
  g_autofree char *text = NULL;

  if (g_file_test (folder, G_FILE_TEST_IS_DIR)) {
    text = g_strdup_printf (_ ("Backups are kept in %s"), shown);
    g_app_info_launch_default_for_uri_async (uri, NULL, NULL, NULL, NULL);
  } else {
    text = g_strdup_printf (_ ("There is no backup yet. One is kept of each day on which the "
                               "notebook is opened, in %s"),
                            shown);
  }
  fm_session_message (self->session, text);
}

void
fm_window_install_backup_action (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "win.backups", NULL, backups_action);
}
