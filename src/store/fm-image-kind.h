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

/* Sources of the layouts: ISO/IEC 10918-1 annex B (JPEG), ISO/IEC 15948 clause 5 (PNG), TIFF 6.0
 * section 2. */

#define FM_IMAGE_MAX_SCANS 100 /* of a JPEG; each may touch all pixels again. Common practice */
#define FM_IMAGE_MAX_DIRECTORIES 64 /* of a TIFF; only the first is shown. Common practice */

typedef struct {
  const char *mime;
  /* Whether the first bytes are those of this kind. */
  gboolean (*begins) (const guint8 *bytes, gsize size);
  /* Whether all parts are there and none asks for more memory or work than pixels can explain. */
  gboolean (*is_whole) (const guint8 *bytes, gsize size);
  gboolean scales; /* the decoder makes a smaller picture with less work */
} FmImageKind;

/** Returns: (nullable): the kind by the first bytes; NULL for every other */
const FmImageKind *fm_image_kind_of (GBytes *data);
gboolean fm_image_kind_is_whole (const FmImageKind *kind, GBytes *data);

G_END_DECLS
