/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-image-kind.h - the kinds of image that are decoded at all (inside the store only)
 *
 * What is not in this list meets no decoder, whatever decoders a machine has: a drawing format
 * could refer to other files or unfold without end.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Sources of the layouts: ISO/IEC 10918-1 annex B (JPEG), ISO/IEC 15948 clause 5 (PNG); Exif 2.3,
 * 4.7.2 and the PNG extensions 1.5, eXIf, for what the camera says in them. */

#define FM_IMAGE_MAX_SCANS 100 /* of a JPEG; each may touch all pixels again. Common practice */

typedef struct {
  const char *mime;
  const char *name; /* as people call it */
  /* Whether the first bytes are those of this kind. */
  gboolean (*begins) (const guint8 *bytes, gsize size);
  /* Whether all parts are there and none asks for more memory or work than pixels can explain. */
  gboolean (*is_whole) (const guint8 *bytes, gsize size);
  /* (nullable): the size that the file states, where its decoder tells it only when it is done. */
  void (*size) (const guint8 *bytes, gsize size, gint64 *width_px, gint64 *height_px);
  /* Where what the camera says begins; -1 when it says nothing. */
  gssize (*exif) (const guint8 *bytes, gsize size);
  gboolean scales;   /* the decoder makes a smaller picture with less work */
  gboolean fills_up; /* the decoder takes a cut-off file for a whole one, with rows missing */
} FmImageKind;

/** Returns: (nullable): the kind by the first bytes; NULL for every other */
const FmImageKind *fm_image_kind_of (GBytes *data);
gboolean fm_image_kind_is_whole (const FmImageKind *kind, GBytes *data);
/** The size that the file states; 0 where the decoder tells it ahead of any pixel. */
void
fm_image_kind_size (const FmImageKind *kind, GBytes *data, gint64 *width_px, gint64 *height_px);
/** As fm_exif_taken() */
char *fm_image_kind_taken (const FmImageKind *kind, GBytes *data);

G_END_DECLS
