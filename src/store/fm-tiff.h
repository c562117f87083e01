/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tiff.h - a TIFF as bytes: its directories, which photos of other kinds carry too (inside the
 * store only)
 *
 * Source of the layout: TIFF 6.0, section 2. Nothing here trusts an offset or a count.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct {
  const guint8 *bytes;
  gsize size;
  gboolean big_endian;
} FmTiff;

#define FM_TIFF_ENTRY_BYTES 12
#define FM_TIFF_MAX_DIRECTORIES 64 /* only the first is shown. Common practice */

gboolean fm_tiff_begins (const guint8 *bytes, gsize size);
/** @bytes must begin as a TIFF does. */
FmTiff fm_tiff_over (const guint8 *bytes, gsize size);
/** Where the first directory lies. */
guint64 fm_tiff_first (const FmTiff *self);
/** The number of @n_bytes at @offset; 0 outside of the file. */
guint64 fm_tiff_number (const FmTiff *self, guint64 offset, guint n_bytes);
/** The first value of an entry, of a short or a long. */
guint64 fm_tiff_value (const FmTiff *self, guint64 entry);
/** The entry of a directory with this tag; 0 when there is none. */
guint64 fm_tiff_find (const FmTiff *self, guint64 directory, guint64 tag);
/** Whether its decoder would ask for no more memory or work than pixels can explain. */
gboolean fm_tiff_is_whole (const guint8 *bytes, gsize size);

G_END_DECLS
