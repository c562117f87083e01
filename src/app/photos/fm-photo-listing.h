/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-listing.h - the photos of an experiment with their thumbnails, read in a thread */
#pragma once

#include <gdk/gdk.h>

#include "store/fm-experiments.h"

G_BEGIN_DECLS

typedef struct {
  GPtrArray *photos;     /* FmPhotoInfo */
  GPtrArray *thumbnails; /* GdkTexture or NULL, by photo */
} FmPhotoListing;

void fm_photo_listing_free (gpointer listing);
/** In a thread. NULL when there is none that can be shown. Returns: (transfer full). */
GdkTexture *
fm_photo_listing_thumbnail (FmNotebook *notebook, gint64 photo_id, GCancellable *cancellable);
/** As of FmStoreFunc. @experiment_id: gint64*. Returns: (transfer full): FmPhotoListing */
gpointer fm_photo_listing_read (FmNotebook *notebook,
                                gpointer experiment_id,
                                GCancellable *cancellable,
                                GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmPhotoListing, fm_photo_listing_free)

G_END_DECLS
