/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-thumbnails.h - thumbnails of many photos, each read in a thread when it comes into view
 *
 * What was read is kept, up to a few hundred pictures as small as a row shows them.
 */
#pragma once

#include <gtk/gtk.h>

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

#define FM_TYPE_PHOTO_THUMBNAILS (fm_photo_thumbnails_get_type ())
G_DECLARE_FINAL_TYPE (FmPhotoThumbnails, fm_photo_thumbnails, FM, PHOTO_THUMBNAILS, GObject)

FmPhotoThumbnails *fm_photo_thumbnails_new (void);
/** @notebook: (nullable): where photos are read from now on */
void fm_photo_thumbnails_set_notebook (FmPhotoThumbnails *self, FmNotebook *notebook);
/** Shows a photo in @image now or when it is read, unless it shows another one by then; 0 shows
 * none. */
void fm_photo_thumbnails_show (FmPhotoThumbnails *self, gint64 photo_id, GtkImage *image);

G_END_DECLS
