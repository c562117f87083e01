/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* What a stranger may have put into a notebook: images and texts that cost memory or time. */
#include <gdk-pixbuf/gdk-pixbuf.h>
#include <sqlite3.h>
#include <string.h>
#include <sys/resource.h>

#include "core/base/fm-text-limit.h"
#include "log-fixture.h"
#include "store/fm-image-kind.h"
#include "store/fm-image.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/hostile/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)
#define MAX_GROWTH_MB 100.0

/* What the process took at most, in MB (Linux counts it in kB). */
static double
peak_mb (void)
{
  struct rusage usage;

  getrusage (RUSAGE_SELF, &usage);
  return (double)usage.ru_maxrss / 1024.0;
}

static void
put_le (GByteArray *array, guint64 value, guint n_bytes)
{
  for (guint i = 0; i < n_bytes; i++) {
    guint8 byte = (guint8)(value >> (8 * i));
    g_byte_array_append (array, &byte, 1);
  }
}

static void
put_entry (GByteArray *tiff, guint tag, guint32 value)
{
  put_le (tiff, tag, 2);
  put_le (tiff, 4, 2);
  put_le (tiff, 1, 4);
  put_le (tiff, value, 4);
}

/* A grey TIFF of one tile of this size. @next: where the next directory is said to be. */
static GBytes *
make_tiff (guint32 width_px, guint32 height_px, guint32 tile_px, guint32 compression, guint32 next)
{
  GByteArray *tiff = g_byte_array_new ();

  g_byte_array_append (tiff, (const guint8 *)"II*\0\x08\0\0\0", 8);
  put_le (tiff, 9, 2);
  put_entry (tiff, 256, width_px);
  put_entry (tiff, 257, height_px);
  put_entry (tiff, 258, 8);
  put_entry (tiff, 259, compression);
  put_entry (tiff, 262, 1);
  put_entry (tiff, 322, tile_px);
  put_entry (tiff, 323, tile_px);
  put_entry (tiff, 324, 8);
  put_entry (tiff, 325, 16);
  put_le (tiff, next, 4);
  return g_byte_array_free_to_bytes (tiff);
}

static GBytes *
make_plain (int width_px, int height_px, const char *type)
{
  g_autoptr (GdkPixbuf) pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, width_px, height_px);
  char *buffer;
  gsize size;

  gdk_pixbuf_fill (pixbuf, 0x804020ff);
  g_assert_true (gdk_pixbuf_save_to_buffer (pixbuf, &buffer, &size, type, NULL, NULL));
  return g_bytes_new_take (buffer, size);
}

/* A JPEG that says once more and once more how its pixels change. */
static GBytes *
make_many_scans (guint n_scans)
{
  static const guint8 scan[] = { 0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0 };
  g_autoptr (GBytes) plain = make_plain (40, 30, "jpeg");
  GByteArray *jpeg = g_byte_array_new ();
  gsize size;
  const guint8 *bytes = g_bytes_get_data (plain, &size);

  g_byte_array_append (jpeg, bytes, (guint)size - 2);
  for (guint i = 0; i < n_scans; i++)
    g_byte_array_append (jpeg, scan, sizeof scan);
  g_byte_array_append (jpeg, bytes + size - 2, 2);
  return g_byte_array_free_to_bytes (jpeg);
}

static void
assert_not_decoded (GBytes *bytes, const FmImageLimits *limits)
{
  const double before_mb = peak_mb ();
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_image_decode (bytes, limits, NULL, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_BAD_IMAGE);
  g_test_message ("%s Peak memory %.0f MB, %.0f MB more.", error->message, peak_mb (),
                  peak_mb () - before_mb);
  g_assert_cmpfloat (peak_mb () - before_mb, <, MAX_GROWTH_MB);
}

static void
test_image_kinds (Fixture *fixture, gconstpointer data)
{
  static const char gif[] = "GIF89a\x01\0\x01\0\0\0\0;";
  static const char drawing[] = "<svg xmlns=\"http://www.w3.org/2000/svg\"/>";
  static const char pixels[] = "/* XPM */ static char *x[] = {\"1 1 1 1\",\"a c red\",\"a\"};";
  g_autoptr (GBytes) bmp = make_plain (3, 3, "bmp");
  g_autoptr (GBytes) icon = make_plain (3, 3, "ico");
  GBytes *others[] = { g_bytes_new_static (gif, sizeof gif - 1),
                       g_bytes_new_static (drawing, sizeof drawing - 1),
                       g_bytes_new_static (pixels, sizeof pixels - 1), g_bytes_ref (bmp),
                       g_bytes_ref (icon) };

  for (gsize i = 0; i < G_N_ELEMENTS (others); i++) {
    g_assert_null (fm_image_kind_of (others[i]));
    assert_not_decoded (others[i], &fm_image_photo_limits);
    g_bytes_unref (others[i]);
  }
}

static void
test_image_bombs (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) wide = make_tiff (20000, 20000, 20000, 1, 0);
  g_autoptr (GBytes) no_width = make_tiff (0, 10, 16, 1, 0);
  g_autoptr (GBytes) great_tile = make_tiff (10, 10, 60000, 8, 0);
  g_autoptr (GBytes) circle = make_tiff (10, 10, 16, 1, 8);
  g_autoptr (GBytes) rare = make_tiff (10, 10, 16, 34887, 0);
  g_autoptr (GBytes) scans = make_many_scans (FM_IMAGE_MAX_SCANS + 1);

  assert_not_decoded (wide, &fm_image_photo_limits);
  assert_not_decoded (no_width, &fm_image_photo_limits);
  assert_not_decoded (great_tile, &fm_image_photo_limits);
  assert_not_decoded (circle, &fm_image_photo_limits);
  assert_not_decoded (rare, &fm_image_photo_limits);
  assert_not_decoded (scans, &fm_image_photo_limits);
}

static void
run_sql (Fixture *fixture, const char *sql, GBytes *blob)
{
  sqlite3 *handle = NULL;
  sqlite3_stmt *stmt = NULL;

  g_assert_cmpint (sqlite3_open (fixture->path, &handle), ==, SQLITE_OK);
  g_assert_cmpint (sqlite3_prepare_v2 (handle, sql, -1, &stmt, NULL), ==, SQLITE_OK);
  if (blob != NULL)
    sqlite3_bind_blob64 (stmt, 1, g_bytes_get_data (blob, NULL), g_bytes_get_size (blob),
                         SQLITE_STATIC);
  g_assert_cmpint (sqlite3_step (stmt), ==, SQLITE_DONE);
  sqlite3_finalize (stmt);
  sqlite3_close (handle);
}

/* A thumbnail of 64 megapixels in some kilobytes: a list of photos would decode each of them. */
static void
test_stored_thumbnail (Fixture *fixture, gconstpointer data)
{
  gint64 experiment = fixture_add_experiment (fixture, "One", NULL);
  g_autoptr (GBytes) png = make_plain (60, 40, "png");
  g_autoptr (GBytes) bomb = make_tiff (8000, 8000, 8000, 1, 0);
  g_autoptr (GError) error = NULL;

  gint64 id = fm_photos_add (fixture->notebook, experiment, png, NULL, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (GBytes) good = fm_photos_thumbnail (fixture->notebook, id, &error);
  g_autoptr (GdkPixbuf) small = fm_image_decode (good, &fm_image_thumbnail_limits, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (gdk_pixbuf_get_width (small), ==, 60);

  g_clear_pointer (&fixture->notebook, fm_notebook_unref);
  run_sql (fixture, "UPDATE photo_blobs SET thumb = ?1", bomb);
  fixture_reopen (fixture);
  g_autoptr (GBytes) stored = fm_photos_thumbnail (fixture->notebook, id, &error);
  g_assert_no_error (error);
  assert_not_decoded (stored, &fm_image_thumbnail_limits);
}

static void
test_large_photo_is_scaled (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) jpeg = make_plain (9000, 30, "jpeg");
  g_autoptr (GError) error = NULL;
  g_autoptr (GdkPixbuf) shown = fm_image_decode (jpeg, &fm_image_photo_limits, NULL, &error);

  g_assert_no_error (error);
  g_assert_cmpint (gdk_pixbuf_get_width (shown), ==, fm_image_photo_limits.max_edge_px);
}

static void
assert_not_loaded (Fixture *fixture, gint64 experiment, const char *sql)
{
  g_autoptr (GError) error = NULL;

  g_clear_pointer (&fixture->notebook, fm_notebook_unref);
  run_sql (fixture, sql, NULL);
  fixture_reopen (fixture);
  g_assert_null (fm_experiments_load (fixture->notebook, experiment, &error));
  g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED);
  g_test_message ("%s", error->message);
}

static void
test_stored_texts (Fixture *fixture, gconstpointer data)
{
  gint64 experiment = fixture_add_experiment (fixture, "One", "Notes");

  assert_not_loaded (fixture, experiment,
                     "UPDATE experiments SET notes = printf('%.*c', 2000000, 'x')");
  assert_not_loaded (fixture, experiment,
                     "UPDATE experiments SET notes = replace(printf('%.*c', 50000, 'x'), 'x',"
                     " char(10))");
  assert_not_loaded (fixture, experiment,
                     "UPDATE experiments SET notes = '', title = printf('%.*c', 2000000, 'x')");
}

static void
test_stored_readings (Fixture *fixture, gconstpointer data)
{
  gint64 experiment = fixture_add_experiment (fixture, "One", NULL);

  assert_not_loaded (fixture, experiment,
                     "WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL SELECT i + 1 FROM n WHERE i <"
                     " 20000) INSERT INTO core_readings SELECT e.id, i, i, 20 FROM n, experiments "
                     "e");
}

/* A probe that wrote once a second for an hour. */
static void
test_hour_of_readings (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (GError) error = NULL;

  for (int i = 0; i < 3600; i++)
    g_string_append_printf (text, "%d:%02d %.1f\n", i / 60, i % 60, 5.0 + i / 60.0);
  g_assert_true (fm_experiment_parse_readings (experiment, text->str, FALSE, &error));
  experiment->version_id = fixture->version_id;
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, &error));
  g_autoptr (FmExperiment) stored = fm_experiments_load (fixture->notebook, experiment->id, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (stored->core_readings->len, ==, 3600);

  g_assert_true (fm_experiment_parse_readings (experiment, text->str, FALSE, &error));
  g_assert_false (fm_experiment_parse_readings (experiment, text->str, FALSE, &error));
  g_test_message ("%s", error->message);
  g_assert_cmpuint (experiment->core_readings->len, ==, 7200);
}

static void
test_long_notes_are_refused (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmExperiment) experiment = fm_experiment_new ();
  g_autoptr (GError) error = NULL;

  experiment->version_id = fixture->version_id;
  experiment->notes = g_strnfill (FM_TEXT_MAX_BYTES, 'x');
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, &error));
  g_assert_no_error (error);
  g_free (experiment->notes);
  experiment->notes = g_strnfill (FM_TEXT_MAX_BYTES + 1, 'x');
  g_assert_false (fm_experiments_save (fixture->notebook, experiment, &error));
  g_test_message ("%s", error->message);
  memset (experiment->notes, '\n', FM_TEXT_MAX_LINES);
  experiment->notes[FM_TEXT_MAX_LINES] = '\0';
  g_assert_false (fm_experiments_save (fixture->notebook, experiment, NULL));
  experiment->notes[FM_TEXT_MAX_LINES - 1] = '\0';
  g_assert_true (fm_experiments_save (fixture->notebook, experiment, NULL));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("image-kinds", test_image_kinds);
  ADD ("image-bombs", test_image_bombs);
  ADD ("stored-thumbnail", test_stored_thumbnail);
  ADD ("large-photo-is-scaled", test_large_photo_is_scaled);
  ADD ("stored-texts", test_stored_texts);
  ADD ("stored-readings", test_stored_readings);
  ADD ("hour-of-readings", test_hour_of_readings);
  ADD ("long-notes-are-refused", test_long_notes_are_refused);
  return g_test_run ();
}
