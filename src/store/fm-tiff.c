/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tiff.c - a TIFF as bytes */
#include "store/fm-tiff.h"

#include <string.h>

#include "store/fm-experiments.h"

#define MAX_SAMPLE_BYTES 64 /* of one pixel: eight samples of eight bytes */

/* What the first directory of a TIFF says of its pixels. */
typedef struct {
  guint64 width_px;
  guint64 height_px;
  guint64 bits;
  guint64 samples;
  guint64 strip_rows;
  guint64 tile_width_px;
  guint64 tile_height_px;
  guint64 compression;
} TiffPixels;

gboolean
fm_tiff_begins (const guint8 *bytes, gsize size)
{
  return size >= 8 && (memcmp (bytes, "II*\0", 4) == 0 || memcmp (bytes, "MM\0*", 4) == 0);
}

FmTiff
fm_tiff_over (const guint8 *bytes, gsize size)
{
  return (FmTiff){ bytes, size, bytes[0] == 'M' };
}

guint64
fm_tiff_number (const FmTiff *self, guint64 offset, guint n_bytes)
{
  guint64 value = 0;

  if (offset > self->size || self->size - offset < n_bytes)
    return 0;
  for (guint i = 0; i < n_bytes; i++) {
    const guint at = self->big_endian ? i : n_bytes - 1 - i;
    value = value << 8 | self->bytes[offset + at];
  }
  return value;
}

guint64
fm_tiff_first (const FmTiff *self)
{
  return fm_tiff_number (self, 4, 4);
}

guint64
fm_tiff_find (const FmTiff *self, guint64 directory, guint64 tag)
{
  const guint64 n_entries = fm_tiff_number (self, directory, 2);

  for (guint64 i = 0; i < n_entries; i++) {
    const guint64 entry = directory + 2 + i * FM_TIFF_ENTRY_BYTES;

    if (fm_tiff_number (self, entry, 2) == tag)
      return entry;
  }
  return 0;
}

static guint64 *
pixels_field (TiffPixels *pixels, guint64 tag)
{
  switch (tag) {
  case 256:
    return &pixels->width_px;
  case 257:
    return &pixels->height_px;
  case 258:
    return &pixels->bits;
  case 259:
    return &pixels->compression;
  case 277:
    return &pixels->samples;
  case 278:
    return &pixels->strip_rows;
  case 322:
    return &pixels->tile_width_px;
  case 323:
    return &pixels->tile_height_px;
  default:
    return NULL;
  }
}

/* The first value of an entry: a short (3) or a long (4), in the entry itself when all its values
 * fit there. */
guint64
fm_tiff_value (const FmTiff *self, guint64 entry)
{
  const guint64 type = fm_tiff_number (self, entry + 2, 2);
  const guint64 count = fm_tiff_number (self, entry + 4, 4);
  const guint n_bytes = type == 3 ? 2 : 4;
  const gboolean inside = count * n_bytes <= 4;

  return fm_tiff_number (self, inside ? entry + 8 : fm_tiff_number (self, entry + 8, 4), n_bytes);
}

static void
read_pixels (const FmTiff *self, guint64 directory, TiffPixels *pixels)
{
  const guint64 n_entries = fm_tiff_number (self, directory, 2);

  for (guint64 i = 0; i < n_entries; i++) {
    const guint64 entry = directory + 2 + i * FM_TIFF_ENTRY_BYTES;
    guint64 *field = pixels_field (pixels, fm_tiff_number (self, entry, 2));

    if (field != NULL)
      *field = fm_tiff_value (self, entry);
  }
}

/* None, fax, LZW, JPEG, deflate and PackBits; the others are rare in photos and ill tried. */
static gboolean
compression_is_known (guint64 compression)
{
  static const guint64 known[] = { 0, 1, 2, 3, 4, 5, 7, 8, 32773, 32946 };

  for (gsize i = 0; i < G_N_ELEMENTS (known); i++)
    if (known[i] == compression)
      return TRUE;
  return FALSE;
}

/* A decoder takes room for a whole strip or tile, which may be larger than the picture. */
static gboolean
parts_are_small (const TiffPixels *pixels)
{
  const gboolean tiled = pixels->tile_width_px > 0 || pixels->tile_height_px > 0;
  const guint64 width_px = tiled ? pixels->tile_width_px : pixels->width_px;
  const guint64 rows = tiled                    ? pixels->tile_height_px
                       : pixels->strip_rows > 0 ? MIN (pixels->strip_rows, pixels->height_px)
                                                : pixels->height_px;
  const guint64 sample_bytes = (MAX (1, pixels->bits) + 7) / 8 * MAX (1, pixels->samples);

  return sample_bytes <= MAX_SAMPLE_BYTES && width_px <= FM_PHOTO_MAX_PIXELS &&
         rows <= FM_PHOTO_MAX_PIXELS && width_px * rows * sample_bytes <= 4 * FM_PHOTO_MAX_PIXELS;
}

/* A chain of directories, which may run in a circle. */
gboolean
fm_tiff_is_whole (const guint8 *bytes, gsize size)
{
  const FmTiff tiff = fm_tiff_over (bytes, size);
  TiffPixels pixels = { 0 };
  guint64 directory = fm_tiff_first (&tiff);
  guint n_directories = 0;

  read_pixels (&tiff, directory, &pixels);
  while (directory != 0 && ++n_directories <= FM_TIFF_MAX_DIRECTORIES)
    directory = fm_tiff_number (
        &tiff, directory + 2 + fm_tiff_number (&tiff, directory, 2) * FM_TIFF_ENTRY_BYTES, 4);
  return n_directories <= FM_TIFF_MAX_DIRECTORIES && compression_is_known (pixels.compression) &&
         parts_are_small (&pixels);
}
