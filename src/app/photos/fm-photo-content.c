/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-content.c - a photo for another program */
#include "app/photos/fm-photo-content.h"

#include <glib/gstdio.h>
#include <string.h>

#include "app/photos/fm-photo-text.h"
#include "app/session/fm-store-task.h"

#define FILES "text/uri-list" /* RFC 2483, section 5 */

struct _FmPhotoContent {
  GdkContentProvider parent_instance;

  FmNotebook *notebook;
  gint64 photo_id;
  char *mime;
  char *file_name;
};

G_DEFINE_FINAL_TYPE (FmPhotoContent, fm_photo_content, GDK_TYPE_CONTENT_PROVIDER)

/* What was made for other programs, each file in a folder of its own. */
static GMutex lock;
static GPtrArray *made;

typedef struct {
  gint64 photo_id;
  char *file_name; /* (nullable): make a file of this name, and hand out where it lies */
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  g_free (order->file_name);
  g_free (order);
}

static void
remember (const char *path)
{
  g_mutex_lock (&lock);
  if (made == NULL)
    made = g_ptr_array_new_with_free_func (g_free);
  g_ptr_array_add (made, g_strdup (path));
  g_mutex_unlock (&lock);
}

static GBytes *
to_file (GBytes *photo, const char *file_name, GError **error)
{
  g_autofree char *folder = g_dir_make_tmp ("forcemeat-XXXXXX", error);
  g_autofree char *path = folder != NULL ? g_build_filename (folder, file_name, NULL) : NULL;
  g_autofree char *uri = NULL;
  char *line;

  if (folder == NULL)
    return NULL;
  remember (path);
  if (!g_file_set_contents (path, g_bytes_get_data (photo, NULL), (gssize)g_bytes_get_size (photo),
                            error))
    return NULL;
  uri = g_filename_to_uri (path, NULL, error);
  if (uri == NULL)
    return NULL;
  line = g_strconcat (uri, "\r\n", NULL);
  return g_bytes_new_take (line, strlen (line));
}

static gpointer
hand_out (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;
  g_autoptr (GBytes) photo = fm_photos_original (notebook, order->photo_id, error);

  if (photo == NULL || order->file_name == NULL)
    return g_steal_pointer (&photo);
  return to_file (photo, order->file_name, error);
}

static void
written_cb (GObject *stream, GAsyncResult *result, gpointer data)
{
  g_autoptr (GTask) task = data;
  GError *error = NULL;

  if (g_output_stream_write_all_finish (G_OUTPUT_STREAM (stream), result, NULL, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
handed_out_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  GTask *task = data;
  GError *error = NULL;
  GBytes *bytes = fm_store_task_finish (result, &error);

  if (bytes == NULL) {
    g_task_return_error (task, error);
    g_object_unref (task);
    return;
  }
  g_object_set_data_full (G_OBJECT (task), "bytes", bytes, (GDestroyNotify)g_bytes_unref);
  g_output_stream_write_all_async (g_task_get_task_data (task), g_bytes_get_data (bytes, NULL),
                                   g_bytes_get_size (bytes), g_task_get_priority (task),
                                   g_task_get_cancellable (task), written_cb, task);
}

static GdkContentFormats *
fm_photo_content_ref_formats (GdkContentProvider *provider)
{
  GdkContentFormatsBuilder *builder = gdk_content_formats_builder_new ();

  gdk_content_formats_builder_add_mime_type (builder, FILES);
  gdk_content_formats_builder_add_mime_type (builder, FM_PHOTO_CONTENT (provider)->mime);
  return gdk_content_formats_builder_free_to_formats (builder);
}

static void
fm_photo_content_write_async (GdkContentProvider *provider,
                              const char *mime,
                              GOutputStream *stream,
                              int priority,
                              GCancellable *cancellable,
                              GAsyncReadyCallback callback,
                              gpointer data)
{
  FmPhotoContent *self = FM_PHOTO_CONTENT (provider);
  GTask *task = g_task_new (self, cancellable, callback, data);
  Order *order = g_new0 (Order, 1);

  g_task_set_priority (task, priority);
  g_task_set_task_data (task, g_object_ref (stream), g_object_unref);
  order->photo_id = self->photo_id;
  order->file_name = g_str_equal (mime, FILES) ? g_strdup (self->file_name) : NULL;
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = self->notebook,
      .run = hand_out,
      .free_result = (GDestroyNotify)g_bytes_unref,
      .data = order,
      .free_data = order_free,
      .cancellable = cancellable,
      .done = handed_out_cb,
      .user_data = task,
  });
}

static gboolean
fm_photo_content_write_finish (GdkContentProvider *provider, GAsyncResult *result, GError **error)
{
  return g_task_propagate_boolean (G_TASK (result), error);
}

static void
fm_photo_content_finalize (GObject *object)
{
  FmPhotoContent *self = FM_PHOTO_CONTENT (object);

  g_clear_pointer (&self->notebook, fm_notebook_unref);
  g_free (self->mime);
  g_free (self->file_name);
  G_OBJECT_CLASS (fm_photo_content_parent_class)->finalize (object);
}

static void
fm_photo_content_class_init (FmPhotoContentClass *klass)
{
  GdkContentProviderClass *provider_class = GDK_CONTENT_PROVIDER_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = fm_photo_content_finalize;
  provider_class->ref_formats = fm_photo_content_ref_formats;
  provider_class->write_mime_type_async = fm_photo_content_write_async;
  provider_class->write_mime_type_finish = fm_photo_content_write_finish;
}

static void
fm_photo_content_init (FmPhotoContent *self)
{
}

GdkContentProvider *
fm_photo_content_new (FmNotebook *notebook, const FmPhotoInfo *info)
{
  FmPhotoContent *self = g_object_new (FM_TYPE_PHOTO_CONTENT, NULL);

  self->notebook = fm_notebook_ref (notebook);
  self->photo_id = info->id;
  self->mime = g_strdup (info->mime);
  self->file_name = fm_photo_text_file_name (info);
  return GDK_CONTENT_PROVIDER (self);
}

void
fm_photo_content_clean_up (void)
{
  g_mutex_lock (&lock);
  for (guint i = 0; made != NULL && i < made->len; i++) {
    g_autofree char *folder = g_path_get_dirname (g_ptr_array_index (made, i));

    g_unlink (g_ptr_array_index (made, i));
    g_rmdir (folder);
  }
  g_clear_pointer (&made, g_ptr_array_unref);
  g_mutex_unlock (&lock);
}
