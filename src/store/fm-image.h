/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-image.h - looks at a photo's bytes without trusting them (inside the store only) */
#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/** What is known of a photo before it is stored. */
typedef struct {
  char *mime;
  int width_px;      /* after orientation */
  int height_px;     /* after orientation */
  int orientation;   /* EXIF 1-8; 1 when the file says nothing */
  GBytes *thumbnail; /* JPEG, upright, at most FM_PHOTO_THUMB_PX on each side */
} FmImage;

/**
 * Reads the size from the header first and refuses what is too large, so that no memory is spent
 * on an image bomb; then decodes all of it once, so that a cut-off file is found now and not when
 * it is looked at years later.
 *
 * Returns: (transfer full): NULL with FM_STORE_ERROR_BAD_IMAGE, or G_IO_ERROR_CANCELLED
 */
FmImage *fm_image_inspect (GBytes *data, GCancellable *cancellable, GError **error);
void fm_image_free (FmImage *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmImage, fm_image_free)

G_END_DECLS
