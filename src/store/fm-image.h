/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-image.h - the one place that decodes an image, new or stored, without trusting its bytes */
#pragma once

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <gio/gio.h>

G_BEGIN_DECLS

/** What may be decoded, and how large the outcome is. */
typedef struct {
  gsize max_bytes;
  gint64 max_pixels; /* refused from here on, before any pixel takes memory */
  int max_edge_px;   /* scaled down to this */
} FmImageLimits;

/* A photo as it is shown. A larger edge would not fit into a texture of common graphics hardware.
 */
extern const FmImageLimits fm_image_photo_limits;
/* A thumbnail as the notebook keeps it. */
extern const FmImageLimits fm_image_thumbnail_limits;

/** What is known of a photo before it is stored. */
typedef struct {
  const char *mime;
  int width_px;      /* after orientation */
  int height_px;     /* after orientation */
  int orientation;   /* EXIF 1-8; 1 when the file says nothing */
  char *taken;       /* (nullable): "YYYY-MM-DD HH:MM:SS" by the camera's clock */
  GBytes *thumbnail; /* JPEG, upright, at most FM_PHOTO_THUMB_PX on each side */
} FmImage;

/**
 * Decodes all of it, so that a cut-off file is found now and not when it is looked at years later.
 * Memory for the pixels is taken only once the header has stated an acceptable size: at most about
 * eight bytes for a pixel, ten for a JPEG that is coded in several passes.
 *
 * Returns: (transfer full): NULL with FM_STORE_ERROR_BAD_IMAGE, or G_IO_ERROR_CANCELLED
 */
FmImage *fm_image_inspect (GBytes *data, GCancellable *cancellable, GError **error);
void fm_image_free (FmImage *self);

/**
 * Decodes an image of the notebook, upright and scaled down to the limits.
 *
 * Returns: (transfer full): NULL with an error like those of fm_image_inspect()
 */
GdkPixbuf *fm_image_decode (GBytes *data,
                            const FmImageLimits *limits,
                            GCancellable *cancellable,
                            GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmImage, fm_image_free)

G_END_DECLS
