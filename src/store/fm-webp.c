/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-webp.c - a WebP as bytes: a chain of chunks */
#include "store/fm-webp.h"

#include <string.h>

#define FIRST_CHUNK 12
#define HEAD_BYTES 8
#define SIZED_BYTES 10 /* that the size of a picture takes at most */

static guint32
read_number (const guint8 *bytes, guint n_bytes)
{
  guint32 value = 0;

  for (guint i = n_bytes; i > 0; i--)
    value = value << 8 | bytes[i - 1];
  return value;
}

static gboolean
is_chunk (const guint8 *chunk, const char *name)
{
  return memcmp (chunk, name, 4) == 0;
}

/* Chunks have an even length, with a byte behind an odd one. */
static gsize
next_chunk (const guint8 *bytes, gsize offset)
{
  const gsize length = read_number (bytes + offset + 4, 4);

  return offset + HEAD_BYTES + length + (length & 1);
}

static gboolean
has_chunk (gsize size, gsize offset)
{
  return offset < size && size - offset >= HEAD_BYTES;
}

gboolean
fm_webp_begins (const guint8 *bytes, gsize size)
{
  return size >= FIRST_CHUNK && is_chunk (bytes, "RIFF") && is_chunk (bytes + 8, "WEBP");
}

static gboolean
is_picture (const guint8 *chunk)
{
  return is_chunk (chunk, "VP8 ") || is_chunk (chunk, "VP8L");
}

gboolean
fm_webp_is_whole (const guint8 *bytes, gsize size)
{
  const gsize end = HEAD_BYTES + (gsize)read_number (bytes + 4, 4);
  gboolean has_picture = FALSE;

  if (end > size)
    return FALSE;
  for (gsize offset = FIRST_CHUNK; has_chunk (end, offset); offset = next_chunk (bytes, offset)) {
    if (read_number (bytes + offset + 4, 4) > end - offset - HEAD_BYTES)
      return FALSE;
    has_picture = has_picture || is_picture (bytes + offset);
  }
  return has_picture;
}

/* 14 bits each in a picture; 24 bits each, less one, of the sheet that pictures lie on. */
static void
read_size (const guint8 *chunk, gint64 *width_px, gint64 *height_px)
{
  const guint8 *body = chunk + HEAD_BYTES;
  guint32 both;

  if (is_chunk (chunk, "VP8X")) {
    *width_px = (gint64)read_number (body + 4, 3) + 1;
    *height_px = (gint64)read_number (body + 7, 3) + 1;
  } else if (is_chunk (chunk, "VP8L")) {
    both = read_number (body + 1, 4);
    *width_px = (gint64)(both & 0x3fff) + 1;
    *height_px = (gint64)(both >> 14 & 0x3fff) + 1;
  } else if (is_chunk (chunk, "VP8 ")) {
    *width_px = read_number (body + 6, 2) & 0x3fff;
    *height_px = read_number (body + 8, 2) & 0x3fff;
  }
}

void
fm_webp_size (const guint8 *bytes, gsize size, gint64 *width_px, gint64 *height_px)
{
  for (gsize offset = FIRST_CHUNK; has_chunk (size, offset); offset = next_chunk (bytes, offset)) {
    gint64 width = 0, height = 0;

    if (size - offset >= HEAD_BYTES + SIZED_BYTES)
      read_size (bytes + offset, &width, &height);
    *width_px = MAX (*width_px, width);
    *height_px = MAX (*height_px, height);
  }
}

gssize
fm_webp_exif (const guint8 *bytes, gsize size)
{
  for (gsize offset = FIRST_CHUNK; has_chunk (size, offset); offset = next_chunk (bytes, offset))
    if (is_chunk (bytes + offset, "EXIF"))
      return (gssize)(offset + HEAD_BYTES);
  return -1;
}
