/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-thumbnails.c - thumbnails of many photos, each read in a thread when it comes into view
 */
#include "app/photos/fm-photo-thumbnails.h"

#include "app/session/fm-store-task.h"
#include "store/fm-experiments.h"
#include "store/fm-image.h"

#define EDGE_PX 96 /* twice as large as a row shows it */
#define MAX_KEPT 400
#define LOADING "fm-photo-loading" /* of an image: GCancellable of what it waits for */

struct _FmPhotoThumbnails {
  GObject parent_instance;

  FmNotebook *notebook;
  GHashTable *kept; /* photo id (gint64) -> GdkTexture */
  GQueue order;     /* gint64*, of the keys, the oldest first */
};

G_DEFINE_FINAL_TYPE (FmPhotoThumbnails, fm_photo_thumbnails, G_TYPE_OBJECT)

static gpointer
read_small (FmNotebook *notebook, gpointer photo_id, GCancellable *cancellable, GError **error)
{
  const FmImageLimits limits = { fm_image_thumbnail_limits.max_bytes,
                                 fm_image_thumbnail_limits.max_pixels, EDGE_PX };
  g_autoptr (GBytes) bytes = fm_photos_thumbnail (notebook, *(gint64 *)photo_id, error);
  g_autoptr (GdkPixbuf) pixbuf =
      bytes != NULL ? fm_image_decode (bytes, &limits, cancellable, error) : NULL;

  return pixbuf != NULL ? gdk_texture_new_for_pixbuf (pixbuf) : NULL;
}

static void
keep (FmPhotoThumbnails *self, gint64 photo_id, GdkTexture *texture)
{
  gint64 *key;

  if (g_hash_table_contains (self->kept, &photo_id))
    return;
  if (g_queue_get_length (&self->order) >= MAX_KEPT)
    g_hash_table_remove (self->kept, g_queue_pop_head (&self->order));
  key = g_memdup2 (&photo_id, sizeof photo_id);
  g_queue_push_tail (&self->order, key);
  g_hash_table_insert (self->kept, key, g_object_ref (texture));
}

/* A photo that cannot be read leaves its row as it is: the gallery says why. */
static void
read_cb (GObject *source, GAsyncResult *result, gpointer image)
{
  FmPhotoThumbnails *self = FM_PHOTO_THUMBNAILS (source);
  const gint64 photo_id = *(gint64 *)fm_store_task_data (result);
  GCancellable *cancellable = g_task_get_cancellable (G_TASK (result));
  g_autoptr (GdkTexture) texture = fm_store_task_finish (result, NULL);

  if (texture != NULL) {
    keep (self, photo_id, texture);
    if (g_object_get_data (image, LOADING) == cancellable)
      gtk_image_set_from_paintable (image, GDK_PAINTABLE (texture));
  }
  g_object_unref (image);
}

static void
cancel (gpointer cancellable)
{
  g_cancellable_cancel (cancellable);
  g_object_unref (cancellable);
}

static void
forget (FmPhotoThumbnails *self)
{
  g_queue_clear (&self->order);
  g_hash_table_remove_all (self->kept);
}

static void
fm_photo_thumbnails_finalize (GObject *object)
{
  FmPhotoThumbnails *self = FM_PHOTO_THUMBNAILS (object);

  forget (self);
  g_hash_table_unref (self->kept);
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  G_OBJECT_CLASS (fm_photo_thumbnails_parent_class)->finalize (object);
}

static void
fm_photo_thumbnails_class_init (FmPhotoThumbnailsClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_photo_thumbnails_finalize;
}

static void
fm_photo_thumbnails_init (FmPhotoThumbnails *self)
{
  self->kept = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_object_unref);
  g_queue_init (&self->order);
}

FmPhotoThumbnails *
fm_photo_thumbnails_new (void)
{
  return g_object_new (FM_TYPE_PHOTO_THUMBNAILS, NULL);
}

void
fm_photo_thumbnails_set_notebook (FmPhotoThumbnails *self, FmNotebook *notebook)
{
  g_return_if_fail (FM_IS_PHOTO_THUMBNAILS (self));
  if (self->notebook == notebook)
    return;
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  self->notebook = notebook != NULL ? fm_notebook_ref (notebook) : NULL;
  forget (self);
}

void
fm_photo_thumbnails_show (FmPhotoThumbnails *self, gint64 photo_id, GtkImage *image)
{
  GdkTexture *texture;
  GCancellable *loading;

  g_return_if_fail (FM_IS_PHOTO_THUMBNAILS (self));
  /* A row that is scrolled past is not waited for. */
  g_object_set_data (G_OBJECT (image), LOADING, NULL);
  texture = photo_id != 0 ? g_hash_table_lookup (self->kept, &photo_id) : NULL;
  gtk_image_set_from_paintable (image, GDK_PAINTABLE (texture));
  if (texture != NULL || photo_id == 0 || self->notebook == NULL)
    return;
  loading = g_cancellable_new ();
  g_object_set_data_full (G_OBJECT (image), LOADING, loading, cancel);
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = self->notebook,
      .run = read_small,
      .free_result = g_object_unref,
      .data = g_memdup2 (&photo_id, sizeof photo_id),
      .free_data = g_free,
      .cancellable = loading,
      .done = read_cb,
      .user_data = g_object_ref (image),
  });
}
