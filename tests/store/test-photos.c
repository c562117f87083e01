/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include <gdk-pixbuf/gdk-pixbuf.h>
#include <string.h>

#include "log-fixture.h"
#include "store/demo/fm-demo-photo.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/photos/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)

/* The checksum of the PNG standard, ISO/IEC 15948, annex D. */
static guint32
png_crc (const guint8 *bytes, gsize size)
{
  guint32 crc = 0xffffffffu;

  for (gsize i = 0; i < size; i++) {
    crc ^= bytes[i];
    for (int bit = 0; bit < 8; bit++)
      crc = (crc & 1) ? 0xedb88320u ^ (crc >> 1) : crc >> 1;
  }
  return ~crc;
}

static void
append_u32 (GByteArray *array, guint32 value)
{
  guint32 big = GUINT32_TO_BE (value);

  g_byte_array_append (array, (const guint8 *)&big, sizeof big);
}

static void
append_chunk (GByteArray *png, const char *type, const guint8 *bytes, guint size)
{
  append_u32 (png, size);
  guint start = png->len;
  g_byte_array_append (png, (const guint8 *)type, 4);
  g_byte_array_append (png, bytes, size);
  append_u32 (png, png_crc (png->data + start, png->len - start));
}

/* A PNG of a few bytes whose header claims this size. */
static GBytes *
make_png_bomb (guint32 width_px, guint32 height_px)
{
  static const guint8 signature[] = { 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n' };
  static const guint8 tail[] = { 8, 6, 0, 0, 0 };
  static const guint8 empty_stream[] = { 0x78, 0x9c, 0x03, 0x00, 0x00, 0x00, 0x00, 0x01 };
  GByteArray *png = g_byte_array_new ();
  g_autoptr (GByteArray) header = g_byte_array_new ();

  append_u32 (header, width_px);
  append_u32 (header, height_px);
  g_byte_array_append (header, tail, sizeof tail);
  g_byte_array_append (png, signature, sizeof signature);
  append_chunk (png, "IHDR", header->data, header->len);
  append_chunk (png, "IDAT", empty_stream, sizeof empty_stream);
  append_chunk (png, "IEND", empty_stream, 0);
  return g_byte_array_free_to_bytes (png);
}

/* Left half red, right half blue. */
static GBytes *
make_image (int width_px, int height_px, const char *type)
{
  g_autoptr (GdkPixbuf) pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, width_px, height_px);
  g_autoptr (GdkPixbuf) right = NULL;
  char *buffer;
  gsize size;

  gdk_pixbuf_fill (pixbuf, 0xff0000ff);
  right = gdk_pixbuf_new_subpixbuf (pixbuf, width_px / 2, 0, width_px - width_px / 2, height_px);
  gdk_pixbuf_fill (right, 0x0000ffff);
  g_assert_true (gdk_pixbuf_save_to_buffer (pixbuf, &buffer, &size, type, NULL, NULL));
  return g_bytes_new_take (buffer, size);
}

static GdkPixbuf *
decode (GBytes *bytes)
{
  g_autoptr (GInputStream) stream = g_memory_input_stream_new_from_bytes (bytes);
  g_autoptr (GError) error = NULL;
  GdkPixbuf *pixbuf = gdk_pixbuf_new_from_stream (stream, NULL, &error);

  g_assert_no_error (error);
  return pixbuf;
}

static gboolean
is_red (GdkPixbuf *pixbuf, int x, int y)
{
  const guchar *pixel =
      gdk_pixbuf_read_pixels (pixbuf) + y * gdk_pixbuf_get_rowstride (pixbuf) + 3 * x;

  return pixel[0] > 200 && pixel[2] < 60;
}

static FmPhotoInfo *
only_photo (Fixture *fixture, gint64 experiment_id, GPtrArray **infos)
{
  g_autoptr (GError) error = NULL;

  *infos = fm_photos_list (fixture->notebook, experiment_id, &error);
  g_assert_no_error (error);
  g_assert_cmpuint ((*infos)->len, ==, 1);
  return (*infos)->pdata[0];
}

static guint
n_photos (Fixture *fixture, gint64 experiment_id)
{
  g_autoptr (GPtrArray) infos = fm_photos_list (fixture->notebook, experiment_id, NULL);

  return infos->len;
}

static void
test_add (Fixture *fixture, gconstpointer data)
{
  gint64 experiment = fixture_add_experiment (fixture, "One", NULL);
  g_autoptr (GBytes) png = make_image (600, 400, "png");
  g_autoptr (GPtrArray) infos = NULL;
  g_autoptr (GError) error = NULL;

  gint64 id = fm_photos_add (fixture->notebook, experiment, png, "Cut face", NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (id, >, 0);
  fixture_reopen (fixture);
  const FmPhotoInfo *info = only_photo (fixture, experiment, &infos);
  g_autofree char *sha256 = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, png);
  g_assert_cmpstr (info->sha256, ==, sha256);
  g_assert_cmpstr (info->mime, ==, "image/png");
  g_assert_cmpstr (info->caption, ==, "Cut face");
  g_assert_cmpint (info->width_px, ==, 600);
  g_assert_cmpint (info->height_px, ==, 400);
  g_assert_cmpint (info->orientation, ==, 1);
  g_assert_cmpint (info->size_bytes, ==, (gint64)g_bytes_get_size (png));

  g_autoptr (GBytes) original = fm_photos_original (fixture->notebook, id, &error);
  g_assert_true (g_bytes_equal (original, png));
  g_autoptr (GBytes) thumbnail = fm_photos_thumbnail (fixture->notebook, id, &error);
  g_autoptr (GdkPixbuf) small = decode (thumbnail);
  g_assert_cmpint (gdk_pixbuf_get_width (small), ==, FM_PHOTO_THUMB_PX);
  g_assert_cmpint (gdk_pixbuf_get_height (small), ==, 171);
  g_assert_true (is_red (small, 10, 80));
  g_assert_false (is_red (small, 240, 80));
}

/* Orientation 6: the stored picture is shown turned clockwise, so its left edge is on top. */
static void
test_exif_orientation (Fixture *fixture, gconstpointer data)
{
  gint64 experiment = fixture_add_experiment (fixture, "One", NULL);
  g_autoptr (GBytes) plain = make_image (600, 400, "jpeg");
  g_autoptr (GBytes) jpeg = fm_demo_photo_tag (plain, 6, 0);
  g_autoptr (GPtrArray) infos = NULL;
  g_autoptr (GError) error = NULL;

  gint64 id = fm_photos_add (fixture->notebook, experiment, jpeg, NULL, NULL, &error);
  g_assert_no_error (error);
  const FmPhotoInfo *info = only_photo (fixture, experiment, &infos);
  g_assert_cmpint (info->orientation, ==, 6);
  g_assert_cmpint (info->width_px, ==, 400);
  g_assert_cmpint (info->height_px, ==, 600);
  g_assert_null (info->caption);
  g_autoptr (GBytes) thumbnail = fm_photos_thumbnail (fixture->notebook, id, &error);
  g_autoptr (GdkPixbuf) small = decode (thumbnail);
  g_assert_cmpint (gdk_pixbuf_get_width (small), ==, 171);
  g_assert_cmpint (gdk_pixbuf_get_height (small), ==, FM_PHOTO_THUMB_PX);
  g_assert_true (is_red (small, 80, 10));
  g_assert_false (is_red (small, 80, 240));
  g_autoptr (GBytes) original = fm_photos_original (fixture->notebook, id, &error);
  g_assert_true (g_bytes_equal (original, jpeg));
}

static void
assert_refused (Fixture *fixture, GBytes *bytes, const char *part)
{
  gint64 experiment = fixture_add_experiment (fixture, "One", NULL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (fm_photos_add (fixture->notebook, experiment, bytes, NULL, NULL, &error), ==, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_BAD_IMAGE);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, part));
  g_assert_cmpuint (n_photos (fixture, experiment), ==, 0);
}

static void
test_image_bomb (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) exactly = make_png_bomb (10000, 10000);
  g_autoptr (GBytes) huge = make_png_bomb (900000, 900000);
  g_autoptr (GBytes) just_under = make_png_bomb (9999, 100);

  assert_refused (fixture, exactly, "100 megapixels");
  assert_refused (fixture, huge, "810000 megapixels");
  assert_refused (fixture, just_under, "damaged");
}

static void
test_too_many_bytes (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) bytes =
      g_bytes_new_take (g_malloc0 (FM_PHOTO_MAX_BYTES + 1), FM_PHOTO_MAX_BYTES + 1);

  assert_refused (fixture, bytes, "64 MB");
}

static void
test_no_image (Fixture *fixture, gconstpointer data)
{
  static const char text[] = "Dear diary, today the patties fell apart.";
  static const char drawing[] =
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"9\" height=\"9\"><rect width=\"9\" "
      "height=\"9\"/></svg>";
  g_autoptr (GBytes) words = g_bytes_new_static (text, sizeof text - 1);
  g_autoptr (GBytes) svg = g_bytes_new_static (drawing, sizeof drawing - 1);
  g_autoptr (GBytes) nothing = g_bytes_new_static ("", 0);

  assert_refused (fixture, words, "JPEG, PNG, TIFF, WebP or HEIC");
  assert_refused (fixture, svg, "JPEG, PNG, TIFF, WebP or HEIC");
  assert_refused (fixture, nothing, "empty");
}

/* Cut off at many places: never stored, never a crash. */
static void
test_truncated (Fixture *fixture, gconstpointer data)
{
  static const char *const types[] = { "jpeg", "png", "tiff" };
  const FmDemoPhoto photo = { FM_DEMO_PHOTO_SEARED, 3, 20, 70, FALSE, 0 };
  g_autoptr (GBytes) jpeg = fm_demo_photo_paint (&photo, NULL);
  g_autoptr (GBytes) half = g_bytes_new_from_bytes (jpeg, 0, g_bytes_get_size (jpeg) / 2);

  assert_refused (fixture, half, "damaged");
  for (guint i = 0; i < G_N_ELEMENTS (types); i++) {
    g_autoptr (GBytes) whole = make_image (120, 90, types[i]);
    for (gsize size = 1; size < g_bytes_get_size (whole) * 9 / 10; size += 97) {
      g_autoptr (GBytes) part = g_bytes_new_from_bytes (whole, 0, size);
      assert_refused (fixture, part, "");
    }
  }
}

static gint64
file_size (Fixture *fixture)
{
  g_autofree char *copy = g_strconcat (fixture->path, ".copy", NULL);
  g_autoptr (GError) error = NULL;
  GStatBuf status;

  g_assert_true (fm_notebook_save_copy (fixture->notebook, copy, NULL, &error));
  g_assert_no_error (error);
  g_assert_cmpint (g_stat (copy, &status), ==, 0);
  return status.st_size;
}

static void
test_same_bytes_are_stored_once (Fixture *fixture, gconstpointer data)
{
  const FmDemoPhoto photo = { FM_DEMO_PHOTO_RAW, 9, 30, 70, FALSE, 0 };
  g_autoptr (GBytes) jpeg = fm_demo_photo_paint (&photo, NULL);
  gint64 size = (gint64)g_bytes_get_size (jpeg);
  gint64 first = fixture_add_experiment (fixture, "One", NULL);
  gint64 second = fixture_add_experiment (fixture, "Two", NULL);
  g_autoptr (GError) error = NULL;

  gint64 a = fm_photos_add (fixture->notebook, first, jpeg, "a", NULL, &error);
  gint64 once = file_size (fixture);
  gint64 b = fm_photos_add (fixture->notebook, second, jpeg, "b", NULL, &error);
  gint64 c = fm_photos_add (fixture->notebook, second, jpeg, "c", NULL, &error);
  g_assert_no_error (error);
  g_assert_true (a != b && b != c);
  g_assert_cmpint (file_size (fixture) - once, <, size / 2);

  /* The bytes stay as long as one photo uses them. */
  g_assert_true (fm_photos_remove (fixture->notebook, a, &error));
  g_assert_true (fm_photos_remove (fixture->notebook, b, &error));
  g_autoptr (GBytes) original = fm_photos_original (fixture->notebook, c, &error);
  g_assert_true (g_bytes_equal (original, jpeg));
  g_assert_true (fm_experiments_remove (fixture->notebook, second, &error));
  g_assert_null (fm_photos_original (fixture->notebook, c, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);

  /* Room that was freed is used again, so the file does not grow. */
  gint64 before = file_size (fixture);
  g_assert_cmpint (fm_photos_add (fixture->notebook, first, jpeg, NULL, NULL, &error), >, 0);
  g_assert_cmpint (file_size (fixture) - before, <, size / 2);
}

static void
test_counts_and_captions (Fixture *fixture, gconstpointer data)
{
  gint64 experiment = fixture_add_experiment (fixture, "One", NULL);
  const FmExperimentFilter filter = { .with_photos = TRUE };
  g_autoptr (GBytes) png = make_image (30, 20, "png");
  g_autoptr (GPtrArray) infos = NULL;
  g_autoptr (GError) error = NULL;

  gint64 id = fm_photos_add (fixture->notebook, experiment, png, "", NULL, &error);
  g_assert_null (only_photo (fixture, experiment, &infos)->caption);
  g_clear_pointer (&infos, g_ptr_array_unref);
  g_assert_true (fm_photos_describe (fixture->notebook, id, "Käse", FM_PHOTO_VIEW_CRUMB, &error));
  g_assert_cmpstr (only_photo (fixture, experiment, &infos)->caption, ==, "Käse");
  g_assert_cmpint (((FmPhotoInfo *)infos->pdata[0])->view, ==, FM_PHOTO_VIEW_CRUMB);
  g_autoptr (GPtrArray) rows = fm_experiments_list (fixture->notebook, &filter, NULL, &error);
  g_assert_cmpuint (rows->len, ==, 1);
  g_assert_cmpuint (((FmExperimentInfo *)rows->pdata[0])->n_photos, ==, 1);
  g_assert_cmpint (((FmExperimentInfo *)rows->pdata[0])->first_photo_id, ==, id);
  g_assert_true (fm_photos_remove (fixture->notebook, id, &error));
  g_assert_false (fm_photos_remove (fixture->notebook, id, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_assert_false (fm_photos_describe (fixture->notebook, id, "x", FM_PHOTO_VIEW_NONE, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_autoptr (GPtrArray) none = fm_experiments_list (fixture->notebook, &filter, NULL, NULL);
  g_assert_cmpuint (none->len, ==, 0);
}

static void
test_no_experiment_no_photo (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) png = make_image (30, 20, "png");
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (fm_photos_add (fixture->notebook, 99, png, NULL, NULL, &error), ==, 0);
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  g_clear_error (&error);
  g_cancellable_cancel (cancellable);
  g_assert_cmpint (fm_photos_add (fixture->notebook, 99, png, NULL, cancellable, &error), ==, 0);
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("add", test_add);
  ADD ("exif-orientation", test_exif_orientation);
  ADD ("image-bomb", test_image_bomb);
  ADD ("too-many-bytes", test_too_many_bytes);
  ADD ("no-image", test_no_image);
  ADD ("truncated", test_truncated);
  ADD ("same-bytes-are-stored-once", test_same_bytes_are_stored_once);
  ADD ("counts-and-captions", test_counts_and_captions);
  ADD ("no-experiment-no-photo", test_no_experiment_no_photo);
  return g_test_run ();
}
