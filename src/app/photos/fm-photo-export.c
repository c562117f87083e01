/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-export.c - the original file of a photo, saved under a name of the user's choice */
#include "app/photos/fm-photo-export.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>

#include "app/photos/fm-photo-text.h"

typedef struct {
  gint64 photo_id;
  GFile *file;
  FmPhotoExportFailed failed;
} Export;

static void
export_free (Export *export)
{
  g_clear_object (&export->file);
  g_free (export);
}

static gpointer
export_original (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Export *export = data;
  g_autoptr (GBytes) bytes = fm_photos_original (notebook, export->photo_id, error);

  if (bytes == NULL)
    return NULL;
  return GINT_TO_POINTER (g_file_replace_contents (export->file, g_bytes_get_data (bytes, NULL),
                                                   g_bytes_get_size (bytes), NULL, FALSE,
                                                   G_FILE_CREATE_NONE, NULL, cancellable, error));
}

static void
export_done_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  const Export *export = fm_store_task_data (result);
  g_autoptr (GError) error = NULL;

  if (fm_store_task_finish (result, &error) == NULL)
    export->failed (GTK_WIDGET (owner), error);
}

static void
response_cb (GtkNativeDialog *chooser, int response, GTask *task)
{
  Export *export = fm_store_task_data (G_ASYNC_RESULT (task));

  if (response == GTK_RESPONSE_ACCEPT) {
    export->file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
    fm_store_task_start (task);
  } else {
    g_task_return_pointer (task, export, NULL);
    g_object_unref (task);
  }
  g_object_unref (chooser);
}

void
fm_photo_export (GtkWidget *owner,
                 FmNotebook *notebook,
                 const FmPhotoInfo *info,
                 FmPhotoExportFailed failed)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (owner));
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (
      _ ("Save Photo"), window, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), _ ("_Cancel"));
  GTask *task;
  Export *export = g_new0 (Export, 1);
  g_autofree char *name = fm_photo_text_file_name (info);

  export->photo_id = info->id;
  export->failed = failed;
  task = fm_store_task_new (&(FmStoreTask){
      .owner = owner,
      .notebook = notebook,
      .run = export_original,
      .data = export,
      .free_data = (GDestroyNotify)export_free,
      .done = export_done_cb,
  });
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  /* The chooser and the task live until the answer. */
  g_signal_connect (chooser, "response", G_CALLBACK (response_cb), task);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}
