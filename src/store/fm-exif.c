/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-exif.c - when a photo was taken, as its camera wrote it */
#include "store/fm-exif.h"

#include <string.h>

#include "store/fm-tiff.h"

#define MARK_BYTES 6
#define TAG_EXIF_DIRECTORY 0x8769
#define TAG_TAKEN 0x9003 /* DateTimeOriginal */
#define TAKEN_BYTES 19   /* without the 0 behind it */

static gboolean
read_part (const char *digits, int n_digits, int *value)
{
  *value = 0;
  for (int i = 0; i < n_digits; i++) {
    if (!g_ascii_isdigit (digits[i]))
      return FALSE;
    *value = *value * 10 + (digits[i] - '0');
  }
  return TRUE;
}

/* A camera whose clock was never set writes zeros or spaces. */
static char *
to_day_and_time (const char *text)
{
  int year, month, day, hour, minute, second;
  g_autoptr (GDateTime) time = NULL;

  if (!read_part (text, 4, &year) || text[4] != ':' || !read_part (text + 5, 2, &month) ||
      text[7] != ':' || !read_part (text + 8, 2, &day) || text[10] != ' ' ||
      !read_part (text + 11, 2, &hour) || text[13] != ':' || !read_part (text + 14, 2, &minute) ||
      text[16] != ':' || !read_part (text + 17, 2, &second))
    return NULL;
  time = g_date_time_new_utc (year, month, day, hour, minute, second);
  return time != NULL ? g_date_time_format (time, "%Y-%m-%d %H:%M:%S") : NULL;
}

static char *
read_taken (const FmTiff *tiff)
{
  const guint64 pointer = fm_tiff_find (tiff, fm_tiff_first (tiff), TAG_EXIF_DIRECTORY);
  const guint64 directory = pointer != 0 ? fm_tiff_value (tiff, pointer) : 0;
  const guint64 entry = directory != 0 ? fm_tiff_find (tiff, directory, TAG_TAKEN) : 0;
  const guint64 offset = entry != 0 ? fm_tiff_number (tiff, entry + 8, 4) : 0;

  if (entry == 0 || fm_tiff_number (tiff, entry + 4, 4) < TAKEN_BYTES || offset > tiff->size ||
      tiff->size - offset < TAKEN_BYTES)
    return NULL;
  return to_day_and_time ((const char *)tiff->bytes + offset);
}

char *
fm_exif_taken (const guint8 *bytes, gsize size)
{
  if (size >= MARK_BYTES && memcmp (bytes, "Exif\0\0", MARK_BYTES) == 0) {
    bytes += MARK_BYTES;
    size -= MARK_BYTES;
  }
  if (!fm_tiff_begins (bytes, size))
    return NULL;
  const FmTiff tiff = fm_tiff_over (bytes, size);
  return read_taken (&tiff);
}
