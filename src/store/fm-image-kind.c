/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "store/fm-image-kind.h"

#include <string.h>

#include "store/fm-experiments.h"

#define TIFF_ENTRY_BYTES 12
#define MAX_SAMPLE_BYTES 64 /* of one pixel of a TIFF: eight samples of eight bytes */

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

typedef struct {
  const guint8 *bytes;
  gsize size;
  gboolean big_endian;
} Tiff;

static gboolean
jpeg_begins (const guint8 *bytes, gsize size)
{
  return size >= 3 && memcmp (bytes, "\xff\xd8\xff", 3) == 0;
}

/* Markers that stand alone, within coded data too: restarts, and the 0 behind a coded 0xff. */
static gboolean
jpeg_stands_alone (guint8 marker)
{
  return marker <= 0x01 || (marker >= 0xd0 && marker <= 0xd8);
}

/* The PNG and JPEG decoders take a cut-off file for a whole one, filling up with grey, so follow
 * the parts of the file to the mark of its end. JPEG: marked segments, which state their length,
 * and coded data up to the next marker. Bytes behind the end are common (phones put a film
 * there). */
static gboolean
jpeg_is_whole (const guint8 *bytes, gsize size)
{
  guint n_scans = 0;

  for (gsize offset = 0; offset + 1 < size;) {
    guint8 marker = bytes[offset + 1];
    if (bytes[offset] != 0xff || marker == 0xff) {
      offset++;
      continue;
    }
    if (marker == 0xd9)
      return TRUE;
    if (marker == 0xda && ++n_scans > FM_IMAGE_MAX_SCANS)
      return FALSE;
    offset += 2;
    if (!jpeg_stands_alone (marker) && offset + 1 < size)
      offset += (gsize)bytes[offset] << 8 | bytes[offset + 1];
  }
  return FALSE;
}

static gboolean
png_begins (const guint8 *bytes, gsize size)
{
  return size >= 8 && memcmp (bytes, "\x89PNG\r\n\x1a\n", 8) == 0;
}

/* A chain of chunks. */
static gboolean
png_is_whole (const guint8 *bytes, gsize size)
{
  for (gsize offset = 8; offset + 12 <= size;) {
    guint32 length;
    memcpy (&length, bytes + offset, sizeof length);
    if (memcmp (bytes + offset + 4, "IEND", 4) == 0)
      return TRUE;
    offset += 12 + (gsize)GUINT32_FROM_BE (length);
  }
  return FALSE;
}

static gboolean
tiff_begins (const guint8 *bytes, gsize size)
{
  return size >= 8 && (memcmp (bytes, "II*\0", 4) == 0 || memcmp (bytes, "MM\0*", 4) == 0);
}

/* The number of @n_bytes at @offset; 0 outside of the file. */
static guint64
tiff_number (const Tiff *tiff, guint64 offset, guint n_bytes)
{
  guint64 value = 0;

  if (offset > tiff->size || tiff->size - offset < n_bytes)
    return 0;
  for (guint i = 0; i < n_bytes; i++) {
    const guint at = tiff->big_endian ? i : n_bytes - 1 - i;
    value = value << 8 | tiff->bytes[offset + at];
  }
  return value;
}

static guint64 *
tiff_field (TiffPixels *pixels, guint64 tag)
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
static guint64
tiff_value (const Tiff *tiff, guint64 entry)
{
  const guint64 type = tiff_number (tiff, entry + 2, 2);
  const guint64 count = tiff_number (tiff, entry + 4, 4);
  const guint n_bytes = type == 3 ? 2 : 4;
  const gboolean inside = count * n_bytes <= 4;

  return tiff_number (tiff, inside ? entry + 8 : tiff_number (tiff, entry + 8, 4), n_bytes);
}

static void
tiff_read_pixels (const Tiff *tiff, guint64 directory, TiffPixels *pixels)
{
  const guint64 n_entries = tiff_number (tiff, directory, 2);

  for (guint64 i = 0; i < n_entries; i++) {
    const guint64 entry = directory + 2 + i * TIFF_ENTRY_BYTES;
    guint64 *field = tiff_field (pixels, tiff_number (tiff, entry, 2));

    if (field != NULL)
      *field = tiff_value (tiff, entry);
  }
}

/* None, fax, LZW, JPEG, deflate and PackBits; the others are rare in photos and ill tried. */
static gboolean
tiff_compression_is_known (guint64 compression)
{
  static const guint64 known[] = { 0, 1, 2, 3, 4, 5, 7, 8, 32773, 32946 };

  for (gsize i = 0; i < G_N_ELEMENTS (known); i++)
    if (known[i] == compression)
      return TRUE;
  return FALSE;
}

/* A decoder takes room for a whole strip or tile, which may be larger than the picture. */
static gboolean
tiff_parts_are_small (const TiffPixels *pixels)
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
static gboolean
tiff_is_whole (const guint8 *bytes, gsize size)
{
  const Tiff tiff = { bytes, size, bytes[0] == 'M' };
  TiffPixels pixels = { 0 };
  guint64 directory = tiff_number (&tiff, 4, 4);
  guint n_directories = 0;

  tiff_read_pixels (&tiff, directory, &pixels);
  while (directory != 0 && ++n_directories <= FM_IMAGE_MAX_DIRECTORIES)
    directory = tiff_number (
        &tiff, directory + 2 + tiff_number (&tiff, directory, 2) * TIFF_ENTRY_BYTES, 4);
  return n_directories <= FM_IMAGE_MAX_DIRECTORIES &&
         tiff_compression_is_known (pixels.compression) && tiff_parts_are_small (&pixels);
}

static const FmImageKind kinds[] = {
  { "image/jpeg", jpeg_begins, jpeg_is_whole, TRUE },
  { "image/png", png_begins, png_is_whole, FALSE },
  { "image/tiff", tiff_begins, tiff_is_whole, FALSE },
};

const FmImageKind *
fm_image_kind_of (GBytes *data)
{
  gsize size;
  const guint8 *bytes = g_bytes_get_data (data, &size);

  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (kinds[i].begins (bytes, size))
      return &kinds[i];
  return NULL;
}

gboolean
fm_image_kind_is_whole (const FmImageKind *kind, GBytes *data)
{
  gsize size;
  const guint8 *bytes = g_bytes_get_data (data, &size);

  return kind->is_whole (bytes, size);
}
