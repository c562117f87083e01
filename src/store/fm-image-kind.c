/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "store/fm-image-kind.h"

#include <string.h>

#include "store/fm-exif.h"
#include "store/fm-heif.h"
#include "store/fm-tiff.h"
#include "store/fm-webp.h"

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

/* The first segment with the mark of what the camera says; they all come ahead of coded data. */
static gssize
jpeg_exif (const guint8 *bytes, gsize size)
{
  gsize offset = 2;

  while (offset + 10 <= size && bytes[offset] == 0xff && bytes[offset + 1] != 0xda) {
    if (bytes[offset + 1] == 0xe1 && memcmp (bytes + offset + 4, "Exif\0", 6) == 0)
      return (gssize)(offset + 4);
    offset += 2 + ((gsize)bytes[offset + 2] << 8 | bytes[offset + 3]);
  }
  return -1;
}

static gboolean
png_begins (const guint8 *bytes, gsize size)
{
  return size >= 8 && memcmp (bytes, "\x89PNG\r\n\x1a\n", 8) == 0;
}

/* Where the body of the chunk of this name begins, in a chain of chunks; -1 when it is not there.
 */
static gssize
png_find (const guint8 *bytes, gsize size, const char *name)
{
  for (gsize offset = 8; offset + 12 <= size;) {
    guint32 length;
    memcpy (&length, bytes + offset, sizeof length);
    if (memcmp (bytes + offset + 4, name, 4) == 0)
      return (gssize)(offset + 8);
    offset += 12 + (gsize)GUINT32_FROM_BE (length);
  }
  return -1;
}

static gboolean
png_is_whole (const guint8 *bytes, gsize size)
{
  return png_find (bytes, size, "IEND") >= 0;
}

static gssize
png_exif (const guint8 *bytes, gsize size)
{
  return png_find (bytes, size, "eXIf");
}

/* All of it is the directory. */
static gssize
tiff_exif (const guint8 *bytes, gsize size)
{
  return 0;
}

static const FmImageKind kinds[] = {
  { .mime = "image/jpeg",
    .name = "JPEG",
    .begins = jpeg_begins,
    .is_whole = jpeg_is_whole,
    .exif = jpeg_exif,
    .scales = TRUE },
  { .mime = "image/png",
    .name = "PNG",
    .begins = png_begins,
    .is_whole = png_is_whole,
    .exif = png_exif,
    .fills_up = TRUE },
  { .mime = "image/tiff",
    .name = "TIFF",
    .begins = fm_tiff_begins,
    .is_whole = fm_tiff_is_whole,
    .exif = tiff_exif,
    .fills_up = TRUE },
  { .mime = "image/webp",
    .name = "WebP",
    .begins = fm_webp_begins,
    .is_whole = fm_webp_is_whole,
    .size = fm_webp_size,
    .exif = fm_webp_exif },
  { .mime = "image/heif",
    .name = "HEIC",
    .begins = fm_heif_begins,
    .is_whole = fm_heif_is_whole,
    .size = fm_heif_size,
    .exif = fm_heif_exif },
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

void
fm_image_kind_size (const FmImageKind *kind, GBytes *data, gint64 *width_px, gint64 *height_px)
{
  gsize size;
  const guint8 *bytes = g_bytes_get_data (data, &size);

  *width_px = *height_px = 0;
  if (kind->size != NULL)
    kind->size (bytes, size, width_px, height_px);
}

char *
fm_image_kind_taken (const FmImageKind *kind, GBytes *data)
{
  gsize size;
  const guint8 *bytes = g_bytes_get_data (data, &size);
  const gssize offset = kind->exif (bytes, size);

  return offset >= 0 && (gsize)offset < size ? fm_exif_taken (bytes + offset, size - (gsize)offset)
                                             : NULL;
}
