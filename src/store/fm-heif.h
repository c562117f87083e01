/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-heif.h - a HEIF (HEIC, AVIF) as bytes (inside the store only)
 *
 * Sources of the layout: ISO/IEC 14496-12 clause 4 (boxes), ISO/IEC 23008-12 clauses 6 and 10.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

gboolean fm_heif_begins (const guint8 *bytes, gsize size);
/** Whether all its boxes are there, and a picture among them. */
gboolean fm_heif_is_whole (const guint8 *bytes, gsize size);
/** The largest size that is stated of any picture in it; 0 where none is. */
void fm_heif_size (const guint8 *bytes, gsize size, gint64 *width_px, gint64 *height_px);
/** Where what the camera says begins; -1 when it says nothing. */
gssize fm_heif_exif (const guint8 *bytes, gsize size);

G_END_DECLS
