/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-heif.c - a HEIF as bytes: boxes in boxes */
#include "store/fm-heif.h"

#include <string.h>

#define HEAD_BYTES 8
#define LONG_HEAD_BYTES 16
#define FULL_BYTES 4 /* edition and flags, ahead of what some boxes hold */

/* From @start up to, not including, @end. */
typedef struct {
  gsize start;
  gsize end;
} Span;

static guint64
read_number (const guint8 *bytes, guint n_bytes)
{
  guint64 value = 0;

  for (guint i = 0; i < n_bytes; i++)
    value = value << 8 | bytes[i];
  return value;
}

/* The next box of @rest, which goes on behind it. FALSE when there is none, or it is cut off. */
static gboolean
next_box (const guint8 *bytes, Span *rest, const guint8 **type, Span *body)
{
  const gsize room = rest->end - rest->start;
  gsize head = HEAD_BYTES;
  guint64 length;

  if (room < HEAD_BYTES)
    return FALSE;
  length = read_number (bytes + rest->start, 4);
  if (length == 1 && room >= LONG_HEAD_BYTES) {
    head = LONG_HEAD_BYTES;
    length = read_number (bytes + rest->start + HEAD_BYTES, 8);
  } else if (length == 0) {
    length = room;
  }
  if (length < head || length > room)
    return FALSE;
  *type = bytes + rest->start + 4;
  *body = (Span){ rest->start + head, rest->start + (gsize)length };
  rest->start = body->end;
  return TRUE;
}

/* The first box of this type in @outer. */
static gboolean
find_box (const guint8 *bytes, Span outer, const char *wanted, Span *body)
{
  const guint8 *type;

  while (next_box (bytes, &outer, &type, body))
    if (memcmp (type, wanted, 4) == 0)
      return TRUE;
  return FALSE;
}

gboolean
fm_heif_begins (const guint8 *bytes, gsize size)
{
  static const char *const brands[] = { "heic", "heix", "heim", "heis", "mif1", "msf1", "avif" };

  if (size < HEAD_BYTES + 4 || memcmp (bytes + 4, "ftyp", 4) != 0)
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (brands); i++)
    if (memcmp (bytes + HEAD_BYTES, brands[i], 4) == 0)
      return TRUE;
  return FALSE;
}

gboolean
fm_heif_is_whole (const guint8 *bytes, gsize size)
{
  Span rest = { 0, size };
  Span body;
  const guint8 *type;
  gboolean has_meta = FALSE, has_data = FALSE;

  while (next_box (bytes, &rest, &type, &body)) {
    has_meta = has_meta || memcmp (type, "meta", 4) == 0;
    has_data = has_data || memcmp (type, "mdat", 4) == 0;
  }
  return rest.start == size && has_meta && has_data;
}

void
fm_heif_size (const guint8 *bytes, gsize size, gint64 *width_px, gint64 *height_px)
{
  Span span = { 0, size };
  Span body;
  const guint8 *type;

  if (!find_box (bytes, span, "meta", &span) || span.end - span.start < FULL_BYTES)
    return;
  span.start += FULL_BYTES;
  if (!find_box (bytes, span, "iprp", &span) || !find_box (bytes, span, "ipco", &span))
    return;
  while (next_box (bytes, &span, &type, &body)) {
    if (memcmp (type, "ispe", 4) != 0 || body.end - body.start < FULL_BYTES + 8)
      continue;
    *width_px = MAX (*width_px, (gint64)read_number (bytes + body.start + FULL_BYTES, 4));
    *height_px = MAX (*height_px, (gint64)read_number (bytes + body.start + FULL_BYTES + 4, 4));
  }
}

/* It begins by its mark wherever it lies, so no table of places has to be believed. */
gssize
fm_heif_exif (const guint8 *bytes, gsize size)
{
  static const char mark[] = "Exif\0";
  const guint8 *at = bytes;

  while ((at = memchr (at, mark[0], size - (gsize)(at - bytes))) != NULL) {
    if (size - (gsize)(at - bytes) < sizeof mark)
      return -1;
    if (memcmp (at, mark, sizeof mark) == 0)
      return at - bytes;
    at++;
  }
  return -1;
}
