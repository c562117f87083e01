/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-webp.h - a WebP as bytes (inside the store only)
 *
 * Source of the layout: RFC 9649, sections 2 and 3.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

gboolean fm_webp_begins (const guint8 *bytes, gsize size);
/** Whether all its chunks are there, and a picture among them. */
gboolean fm_webp_is_whole (const guint8 *bytes, gsize size);
/** The largest size that any chunk states; 0 where none does. */
void fm_webp_size (const guint8 *bytes, gsize size, gint64 *width_px, gint64 *height_px);
/** Where what the camera says begins; -1 when it says nothing. */
gssize fm_webp_exif (const guint8 *bytes, gsize size);

G_END_DECLS
