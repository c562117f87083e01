/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-import.c - photos into the notebook, two at a time in threads */
#include "app/photos/fm-photo-import.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>

typedef struct {
  GObject *owner; /* not owned: the task holds it */
  gint64 experiment_id;
  GPtrArray *sources;
  FmPhotoImportProgress progress;
  FmNotebook *notebook; /* of the task, while it runs */
  GCancellable *cancellable;
  GMutex lock; /* of what follows */
  guint n_begun;
  guint n_done;
  guint n_added;
  GPtrArray *messages;
} Import;

/* The import under way, for those who want to leave. Of the main thread. */
static Import *running;

typedef struct {
  GObject *owner; /* lives as long as the task, which comes after all its steps */
  FmPhotoImportProgress progress;
  guint n_done;
  guint n_total;
} Step;

static void
import_free (Import *import)
{
  g_ptr_array_unref (import->sources);
  g_ptr_array_unref (import->messages);
  g_mutex_clear (&import->lock);
  if (running == import)
    running = NULL;
  g_free (import);
}

static gboolean
step_cb (gpointer data)
{
  const Step *step = data;

  step->progress (step->owner, step->n_done, step->n_total);
  return G_SOURCE_REMOVE;
}

static void
report_step (Import *import)
{
  guint n_done;

  g_mutex_lock (&import->lock);
  n_done = import->n_done;
  g_mutex_unlock (&import->lock);
  const Step step = { import->owner, import->progress, n_done, import->sources->len };

  g_main_context_invoke_full (NULL, G_PRIORITY_DEFAULT, step_cb, g_memdup2 (&step, sizeof step),
                              g_free);
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
                         _ ("This is not a file with a photo. Choose a file that a camera made."));
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

  g_mutex_lock (&import->lock);
  g_ptr_array_add (import->messages, g_strdup_printf ("%s: %s", name, error->message));
  g_mutex_unlock (&import->lock);
}

static void
import_one (Import *import, GObject *source)
{
  g_autoptr (GError) failure = NULL;
  g_autoptr (GBytes) bytes = read_source (source, import->cancellable, &failure);
  const gboolean added =
      bytes != NULL && fm_photos_add (import->notebook, import->experiment_id, bytes, NULL,
                                      import->cancellable, &failure) != 0;

  if (failure != NULL && !g_error_matches (failure, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    add_message (import, source, failure);
  g_mutex_lock (&import->lock);
  import->n_added += added;
  import->n_done++;
  g_mutex_unlock (&import->lock);
}

/* The next source, until there is none or the user cancels. */
static GObject *
take_source (Import *import)
{
  GObject *source = NULL;

  if (g_cancellable_is_cancelled (import->cancellable))
    return NULL;
  g_mutex_lock (&import->lock);
  if (import->n_begun < import->sources->len)
    source = g_ptr_array_index (import->sources, import->n_begun++);
  g_mutex_unlock (&import->lock);
  return source;
}

static gpointer
import_some (gpointer data)
{
  Import *import = data;
  GObject *source;

  while ((source = take_source (import)) != NULL) {
    report_step (import);
    import_one (import, source);
  }
  return NULL;
}

/* While one photo is decoded the other is written; more at a time would only take memory. */
static gpointer
import_all (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  Import *import = data;
  GThread *second;

  import->notebook = notebook;
  import->cancellable = cancellable;
  second = import->sources->len > 1 ? g_thread_new ("photo", import_some, import) : NULL;
  import_some (import);
  if (second != NULL)
    g_thread_join (second);
  return import;
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
  Import *import = g_new0 (Import, 1);

  import->owner = owner;
  import->experiment_id = experiment_id;
  import->sources = g_ptr_array_ref (sources);
  import->progress = progress;
  import->messages = g_ptr_array_new_with_free_func (g_free);
  g_mutex_init (&import->lock);
  running = import;
  fm_store_task (&(FmStoreTask){
      .owner = owner,
      .notebook = notebook,
      .run = import_all,
      .data = import,
      .free_data = (GDestroyNotify)import_free,
      .cancellable = cancellable,
      .finishes = TRUE, /* what was added before a cancel stays and has to be told */
      .done = callback,
      .user_data = data,
  });
}

GStrv
fm_photo_import_finish (GAsyncResult *result, guint *n_added, gboolean *cancelled)
{
  const Import *import = fm_store_task_finish (result, NULL);
  GCancellable *cancellable = g_task_get_cancellable (G_TASK (result));
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  *n_added = import->n_added;
  *cancelled = g_cancellable_is_cancelled (cancellable);
  for (guint i = 0; i < import->messages->len; i++)
    g_strv_builder_add (builder, g_ptr_array_index (import->messages, i));
  return g_strv_builder_end (builder);
}

gboolean
fm_photo_import_is_running (guint *n_added, guint *n_total)
{
  gboolean is_running;

  if (running == NULL)
    return FALSE;
  g_mutex_lock (&running->lock);
  *n_added = running->n_added;
  *n_total = running->sources->len;
  is_running = running->n_done < running->sources->len;
  g_mutex_unlock (&running->lock);
  return is_running;
}
