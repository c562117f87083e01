/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-image-kinds.c - photos of newer kinds, and the day that a camera writes into any kind */
#include <gdk-pixbuf/gdk-pixbuf.h>
#include <string.h>

#include "log-fixture.h"
#include "store/demo/fm-demo-photo.h"
#include "store/fm-exif.h"
#include "store/fm-image-kind.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/image-kinds/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)

#define TAKEN_AT 1741010709 /* 2025-03-03 14:05:09 UTC */
#define TAKEN "2025-03-03 14:05:09"

/* A red picture of 24 x 16 pixels, made with libwebp 1.2.4. */
static const guint8 webp_bytes[] = {
  0x52, 0x49, 0x46, 0x46, 0x1c, 0x00, 0x00, 0x00, 0x57, 0x45, 0x42, 0x50,
  0x56, 0x50, 0x38, 0x4c, 0x0f, 0x00, 0x00, 0x00, 0x2f, 0x17, 0xc0, 0x03,
  0x00, 0x07, 0x10, 0xfd, 0x8f, 0xfe, 0x07, 0x22, 0xa2, 0xff, 0x01, 0x00,
};

/* The same, made with libheif 1.15.1. */
static const char heic_text[] =
    "AAAAHGZ0eXBoZWljAAAAAG1pZjFoZWljbWlhZgAAAaptZXRhAAAAAAAAACFoZGxyAAAAAAAAAABw"
    "aWN0AAAAAAAAAAAAAAAAAAAAAA5waXRtAAAAAAACAAAAEGlkYXQAAAAAABgAEAAAADhpbG9jAQAA"
    "AERAAAIAAQAAAAAAAAHOAAEAAAAAAAAANAACAAEAAAAAAAAAAQAAAAAAAAAIAAAAOGlpbmYAAAAA"
    "AAIAAAAVaW5mZQIAAAEAAQAAaHZjMQAAAAAVaW5mZQIAAAAAAgAAZ3JpZAAAAADVaXBycAAAALNp"
    "cGNvAAAAc2h2Y0MBA3AAAAAAAAAAAAAe8AD8/fj4AAAPAyAAAQAYQAEMAf//A3AAAAMAkAAAAwAA"
    "AwAeugJAIQABACdCAQEDcAAAAwCQAAADAAADAB6gIIEFluqumubAgAAAAwCAAAADAIQiAAEABkQB"
    "wXPBiQAAABRpc3BlAAAAAAAAAEAAAABAAAAAFGlzcGUAAAAAAAAAGAAAABAAAAAQcGl4aQAAAAAD"
    "CAgIAAAAGmlwbWEAAAAAAAAAAgABAoECAAICA4QAAAAaaXJlZgAAAAAAAAAOZGltZwACAAEAAQAA"
    "ADxtZGF0AAAAMCgBrxMhZmNA+BD3Z//rvBX/mSE/8zex6c7IR0DA0iCAm0BIk11QCxYQgId2pVbc"
    "+A==";

static GBytes *
make_webp (void)
{
  return g_bytes_new_static (webp_bytes, sizeof webp_bytes);
}

static GBytes *
make_heic (void)
{
  gsize size;
  guchar *bytes = g_base64_decode (heic_text, &size);

  return g_bytes_new_take (bytes, size);
}

static GBytes *
make_jpeg (void)
{
  const FmDemoPhoto photo = { .kind = FM_DEMO_PHOTO_RAW, .fat_pct = 20, .taken_at = TAKEN_AT };

  return fm_demo_photo_paint (&photo, NULL);
}

static gboolean
has_decoder (const char *mime)
{
  g_autoptr (GSList) formats = gdk_pixbuf_get_formats ();

  for (GSList *l = formats; l != NULL; l = l->next) {
    g_auto (GStrv) mimes = gdk_pixbuf_format_get_mime_types (l->data);

    if (g_strv_contains ((const char *const *)mimes, mime))
      return TRUE;
  }
  return FALSE;
}

/* @bytes with a number of @n_bytes put in at @offset, the least byte first or last. */
static GBytes *
with_number (GBytes *bytes, gsize offset, guint n_bytes, guint32 number, gboolean big_endian)
{
  gsize size;
  const guint8 *from = g_bytes_get_data (bytes, &size);
  guint8 *copy = g_memdup2 (from, size);

  for (guint i = 0; i < n_bytes; i++)
    copy[offset + i] = (guint8)(number >> 8 * (big_endian ? n_bytes - 1 - i : i));
  return g_bytes_new_take (copy, size);
}

static gsize
find (GBytes *bytes, const char *mark)
{
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);

  for (gsize i = 0; i + strlen (mark) <= size; i++)
    if (memcmp (data + i, mark, strlen (mark)) == 0)
      return i;
  g_assert_not_reached ();
}

static void
assert_refused (Fixture *fixture, GBytes *bytes, const char *part)
{
  const gint64 experiment = fixture_add_experiment (fixture, "One", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (fm_photos_add (fixture->notebook, experiment, bytes, NULL, NULL, &error), ==, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_BAD_IMAGE);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, part));
}

/* Kept where this computer has a decoder, else refused with the name of the kind. */
static void
assert_kept_or_named (Fixture *fixture, GBytes *bytes, const char *mime, const char *name)
{
  const gint64 experiment = fixture_add_experiment (fixture, "One", NULL);
  g_autofree char *refusal = g_strdup_printf ("no decoder for %s photos", name);
  g_autoptr (GPtrArray) infos = NULL;
  g_autoptr (GError) error = NULL;

  if (!has_decoder (mime)) {
    g_test_message ("This computer has no decoder for %s: only its absence is tested.", mime);
    assert_refused (fixture, bytes, refusal);
    return;
  }
  fm_photos_add (fixture->notebook, experiment, bytes, NULL, NULL, &error);
  g_assert_no_error (error);
  infos = fm_photos_list (fixture->notebook, experiment, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (infos->len, ==, 1);
  g_assert_cmpstr (((FmPhotoInfo *)infos->pdata[0])->mime, ==, mime);
  g_assert_cmpint (((FmPhotoInfo *)infos->pdata[0])->width_px, ==, 24);
  g_assert_cmpint (((FmPhotoInfo *)infos->pdata[0])->height_px, ==, 16);
}

static void
test_webp (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) webp = make_webp ();

  assert_kept_or_named (fixture, webp, "image/webp", "WebP");
}

static void
test_heic (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) heic = make_heic ();

  assert_kept_or_named (fixture, heic, "image/heif", "HEIC");
}

/* The size is read before a decoder sees a byte, so that this holds without one, too. */
static void
test_size_beyond_the_limit (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) webp = make_webp ();
  g_autoptr (GBytes) heic = make_heic ();
  const gsize at = find (heic, "ispe") + 8;
  /* 14 bits each, less one. */
  g_autoptr (GBytes) wide = with_number (webp, 21, 4, 16383u | 16383u << 14, FALSE);
  g_autoptr (GBytes) half = with_number (heic, at, 4, 0x40000000, TRUE);
  g_autoptr (GBytes) tall = with_number (half, at + 4, 4, 0x40000000, TRUE);

  assert_refused (fixture, wide, "268 megapixels");
  assert_refused (fixture, tall, "megapixels");
}

static void
assert_cut_off (Fixture *fixture, GBytes *whole)
{
  for (gsize size = 12; size < g_bytes_get_size (whole); size += 3) {
    g_autoptr (GBytes) part = g_bytes_new_from_bytes (whole, 0, size);

    assert_refused (fixture, part, "");
  }
}

static void
test_cut_off (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) webp = make_webp ();
  g_autoptr (GBytes) heic = make_heic ();

  assert_cut_off (fixture, webp);
  assert_cut_off (fixture, heic);
}

static char *
taken_of (GBytes *bytes)
{
  const FmImageKind *kind = fm_image_kind_of (bytes);

  g_assert_nonnull (kind);
  return fm_image_kind_taken (kind, bytes);
}

/* What a demo photo says of its day, without the JPEG around it. */
static GBytes *
make_exif (void)
{
  g_autoptr (GBytes) jpeg = make_jpeg ();

  return g_bytes_new_from_bytes (jpeg, find (jpeg, "Exif"), 82);
}

static GBytes *
behind (GBytes *bytes, const char *head, gsize head_size, GBytes *exif, const char *tail)
{
  GByteArray *array = g_byte_array_new ();

  g_byte_array_append (array, g_bytes_get_data (bytes, NULL), (guint)g_bytes_get_size (bytes));
  g_byte_array_append (array, (const guint8 *)head, (guint)head_size);
  g_byte_array_append (array, g_bytes_get_data (exif, NULL), (guint)g_bytes_get_size (exif));
  g_byte_array_append (array, (const guint8 *)tail, (guint)strlen (tail));
  return g_byte_array_free_to_bytes (array);
}

static void
test_day_in_each_kind (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) exif = make_exif ();
  g_autoptr (GBytes) tiff = g_bytes_new_from_bytes (exif, 6, 76);
  g_autoptr (GBytes) png_mark = g_bytes_new_static ("\x89PNG\r\n\x1a\n", 8);
  g_autoptr (GBytes) webp = make_webp ();
  g_autoptr (GBytes) heic = make_heic ();
  GBytes *photos[] = {
    make_jpeg (),
    g_bytes_ref (tiff),
    behind (png_mark,
            "\0\0\0\x4c"
            "eXIf",
            8, tiff, "crc."),
    behind (webp, "EXIF\x52\0\0\0", 8, exif, ""),
    behind (heic,
            "\0\0\0\x5a"
            "free",
            8, exif, ""),
  };

  for (guint i = 0; i < G_N_ELEMENTS (photos); i++) {
    g_autofree char *taken = taken_of (photos[i]);

    g_assert_cmpstr (taken, ==, TAKEN);
    g_bytes_unref (photos[i]);
  }
}

static void
test_day_is_kept (Fixture *fixture, gconstpointer data)
{
  const gint64 experiment = fixture_add_experiment (fixture, "One", NULL);
  g_autoptr (GBytes) jpeg = make_jpeg ();
  g_autoptr (GPtrArray) infos = NULL;
  g_autoptr (GError) error = NULL;

  fm_photos_add (fixture->notebook, experiment, jpeg, NULL, NULL, &error);
  g_assert_no_error (error);
  fixture_reopen (fixture);
  infos = fm_photos_list_beside (fixture->notebook, experiment, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (infos->len, ==, 1);
  g_assert_cmpstr (((FmPhotoInfo *)infos->pdata[0])->taken, ==, TAKEN);
  g_assert_cmpstr (((FmPhotoInfo *)infos->pdata[0])->title, ==, "One");
  g_assert_cmpint (((FmPhotoInfo *)infos->pdata[0])->view, ==, FM_PHOTO_VIEW_NONE);
}

/* A clock that was never set, and days that do not exist. */
static void
test_no_such_day (Fixture *fixture, gconstpointer data)
{
  static const char *const clocks[] = { "0000:00:00 00:00:00", "2025:02:30 10:00:00",
                                        "2025-03-03 14:05:09", "    :  :     :  :  ",
                                        "2025:03:03 24:05:09", "\xff\xff\xff\xff:03:03 14:05:09" };
  g_autoptr (GBytes) exif = make_exif ();

  for (guint i = 0; i < G_N_ELEMENTS (clocks); i++) {
    gsize size;
    g_autofree guint8 *copy = g_memdup2 (g_bytes_get_data (exif, &size), g_bytes_get_size (exif));

    memcpy (copy + 62, clocks[i], 19);
    g_assert_null (fm_exif_taken (copy, size));
  }
}

/* Every byte of it may lie, and it may end anywhere: nothing outside of it is read. */
static void
test_lying_exif (Fixture *fixture, gconstpointer data)
{
  static const guint8 lies[] = { 0x00, 0x01, 0x7f, 0x80, 0xff };
  g_autoptr (GBytes) exif = make_exif ();
  gsize size;
  const guint8 *from = g_bytes_get_data (exif, &size);

  for (gsize length = 0; length <= size; length++) {
    g_autofree guint8 *part = g_memdup2 (from, length);
    g_autofree char *taken = fm_exif_taken (part, length);

    g_assert_true (taken == NULL || length == size || length + 1 == size);
  }
  for (gsize at = 0; at < size; at++)
    for (guint i = 0; i < G_N_ELEMENTS (lies); i++) {
      g_autofree guint8 *copy = g_memdup2 (from, size);
      g_autofree char *taken = NULL;

      copy[at] = lies[i];
      taken = fm_exif_taken (copy, size);
      g_assert_true (taken == NULL || strlen (taken) == strlen (TAKEN));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("webp", test_webp);
  ADD ("heic", test_heic);
  ADD ("size-beyond-the-limit", test_size_beyond_the_limit);
  ADD ("cut-off", test_cut_off);
  ADD ("day-in-each-kind", test_day_in_each_kind);
  ADD ("day-is-kept", test_day_is_kept);
  ADD ("no-such-day", test_no_such_day);
  ADD ("lying-exif", test_lying_exif);
  return g_test_run ();
}
