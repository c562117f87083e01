/* fm-photo-import.c - photos into the notebook, one after another in a thread */
#include "app/photos/fm-photo-import.h"

#include <glib/gi18n-lib.h>

typedef struct {
  FmNotebook *notebook;
  gint64 experiment_id;
  GPtrArray *sources;
  FmPhotoImportProgress progress;
  guint n_added;
  GPtrArray *messages;
} Import;

typedef struct {
  GTask *task;
  guint n_done;
} Step;

static void
import_free (Import *import)
{
  fm_notebook_unref (import->notebook);
  g_ptr_array_unref (import->sources);
  g_ptr_array_unref (import->messages);
  g_free (import);
}

static gboolean
step_cb (gpointer data)
{
  Step *step = data;
  Import *import = g_task_get_task_data (step->task);

  import->progress (g_task_get_source_object (step->task), step->n_done, import->sources->len);
  return G_SOURCE_REMOVE;
}

static void
step_free (gpointer data)
{
  Step *step = data;

  g_object_unref (step->task);
  g_free (step);
}

static void
report_step (GTask *task, guint n_done)
{
  Step *step = g_new0 (Step, 1);

  step->task = g_object_ref (task);
  step->n_done = n_done;
  g_main_context_invoke_full (g_task_get_context (task), G_PRIORITY_DEFAULT, step_cb, step,
                              step_free);
}

/* Looks before it reads: a folder, a device or a huge file is refused with a reason. */
static GBytes *
read_file (GFile *file, GCancellable *cancellable, GError **error)
{
  g_autoptr (GFileInfo) info =
      g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_TYPE "," G_FILE_ATTRIBUTE_STANDARD_SIZE,
                         G_FILE_QUERY_INFO_NONE, cancellable, error);

  if (info == NULL)
    return NULL;
  if (g_file_info_get_file_type (info) != G_FILE_TYPE_REGULAR) {
    g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_NOT_REGULAR_FILE,
                         _ ("This is not a file with a photo. Choose a JPEG or PNG file."));
    return NULL;
  }
  if (g_file_info_get_size (info) > FM_PHOTO_MAX_BYTES) {
    g_autofree char *size = g_format_size ((guint64)g_file_info_get_size (info));
    g_autofree char *limit = g_format_size (FM_PHOTO_MAX_BYTES);

    g_set_error (error, G_IO_ERROR, G_IO_ERROR_NO_SPACE,
                 _ ("The file has %s; a photo may have %s. Export a smaller copy and add that."),
                 size, limit);
    return NULL;
  }
  return g_file_load_bytes (file, cancellable, NULL, error);
}

static GBytes *
read_source (GObject *source, GCancellable *cancellable, GError **error)
{
  if (G_IS_FILE (source))
    return read_file (G_FILE (source), cancellable, error);
  return gdk_texture_save_to_png_bytes (GDK_TEXTURE (source));
}

static char *
name_source (GObject *source)
{
  g_autofree char *name = NULL;

  if (!G_IS_FILE (source))
    return g_strdup (_ ("Pasted picture"));
  name = g_file_get_basename (G_FILE (source));
  return name != NULL ? g_filename_display_name (name) : g_strdup (_ ("File"));
}

static void
add_message (Import *import, GObject *source, const GError *error)
{
  g_autofree char *name = name_source (source);

  g_ptr_array_add (import->messages, g_strdup_printf ("%s: %s", name, error->message));
}

static void
import_thread (GTask *task, gpointer owner, gpointer data, GCancellable *cancellable)
{
  Import *import = data;

  for (guint i = 0; i < import->sources->len; i++) {
    GObject *source = g_ptr_array_index (import->sources, i);
    g_autoptr (GError) error = NULL;
    g_autoptr (GBytes) bytes = NULL;

    if (g_cancellable_is_cancelled (cancellable))
      break;
    report_step (task, i);
    bytes = read_source (source, cancellable, &error);
    if (bytes != NULL && fm_photos_add (import->notebook, import->experiment_id, bytes, NULL,
                                        cancellable, &error) != 0)
      import->n_added++;
    else if (error != NULL && !g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
      add_message (import, source, error);
  }
  g_task_return_boolean (task, TRUE);
}

void
fm_photo_import_async (GObject *owner,
                       FmNotebook *notebook,
                       gint64 experiment_id,
                       GPtrArray *sources,
                       GCancellable *cancellable,
                       FmPhotoImportProgress progress,
                       GAsyncReadyCallback callback,
                       gpointer data)
{
  g_autoptr (GTask) task = g_task_new (owner, cancellable, callback, data);
  Import *import = g_new0 (Import, 1);

  import->notebook = fm_notebook_ref (notebook);
  import->experiment_id = experiment_id;
  import->sources = g_ptr_array_ref (sources);
  import->progress = progress;
  import->messages = g_ptr_array_new_with_free_func (g_free);
  g_task_set_source_tag (task, fm_photo_import_async);
  /* What was added before a cancel stays and has to be told. */
  g_task_set_check_cancellable (task, FALSE);
  g_task_set_task_data (task, import, (GDestroyNotify)import_free);
  g_task_run_in_thread (task, import_thread);
}

GStrv
fm_photo_import_finish (GAsyncResult *result, guint *n_added, gboolean *cancelled)
{
  Import *import = g_task_get_task_data (G_TASK (result));
  GCancellable *cancellable = g_task_get_cancellable (G_TASK (result));
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  g_task_propagate_boolean (G_TASK (result), NULL);
  *n_added = import->n_added;
  *cancelled = g_cancellable_is_cancelled (cancellable);
  for (guint i = 0; i < import->messages->len; i++)
    g_strv_builder_add (builder, g_ptr_array_index (import->messages, i));
  return g_strv_builder_end (builder);
}
