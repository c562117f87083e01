/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-listing.c - the photos of an experiment with their thumbnails, read in a thread */
#include "app/photos/fm-photo-listing.h"

#include "store/fm-image.h"

static void
unref_texture (gpointer texture)
{
  g_clear_object (&texture);
}

GdkTexture *
fm_photo_listing_thumbnail (FmNotebook *notebook, gint64 photo_id, GCancellable *cancellable)
{
  g_autoptr (GBytes) bytes = fm_photos_thumbnail (notebook, photo_id, NULL);
  g_autoptr (GdkPixbuf) pixbuf =
      bytes != NULL ? fm_image_decode (bytes, &fm_image_thumbnail_limits, cancellable, NULL) : NULL;

  return pixbuf != NULL ? gdk_texture_new_for_pixbuf (pixbuf) : NULL;
}

void
fm_photo_listing_free (gpointer data)
{
  FmPhotoListing *listing = data;

  g_clear_pointer (&listing->photos, g_ptr_array_unref);
  g_clear_pointer (&listing->thumbnails, g_ptr_array_unref);
  g_free (listing);
}

gpointer
fm_photo_listing_read (FmNotebook *notebook,
                       gpointer experiment_id,
                       GCancellable *cancellable,
                       GError **error)
{
  g_autoptr (FmPhotoListing) listing = g_new0 (FmPhotoListing, 1);

  listing->thumbnails = g_ptr_array_new_with_free_func (unref_texture);
  listing->photos = fm_photos_list (notebook, *(gint64 *)experiment_id, error);
  if (listing->photos == NULL)
    return NULL;
  for (guint i = 0; i < listing->photos->len && !g_cancellable_is_cancelled (cancellable); i++) {
    const FmPhotoInfo *info = g_ptr_array_index (listing->photos, i);

    g_ptr_array_add (listing->thumbnails,
                     fm_photo_listing_thumbnail (notebook, info->id, cancellable));
  }
  return g_steal_pointer (&listing);
}
