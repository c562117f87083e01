/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-photo-shown.c - thumbnails that come when they are asked for, and a photo for other programs
 */
#include <gtk/gtk.h>
#include <string.h>

#include "app/photos/fm-photo-content.h"
#include "app/photos/fm-photo-thumbnails.h"
#include "log-fixture.h"
#include "store/demo/fm-demo-photo.h"

#define ADD(name, func)                                                                            \
  g_test_add ("/photo-shown/" name, Fixture, NULL, fixture_set_up, func, fixture_tear_down)

static gint64
add_photo (Fixture *fixture, FmDemoPhotoKind kind)
{
  const FmDemoPhoto photo = { .kind = kind, .fat_pct = 20 };
  const gint64 experiment = fixture_add_experiment (fixture, "One", NULL);
  g_autoptr (GBytes) jpeg = fm_demo_photo_paint (&photo, NULL);
  const gint64 id = fm_photos_add (fixture->notebook, experiment, jpeg, NULL, NULL, NULL);

  g_assert_cmpint (id, >, 0);
  return id;
}

static GdkPaintable *
wait_for_picture (GtkImage *image)
{
  while (gtk_image_get_paintable (image) == NULL)
    g_main_context_iteration (NULL, TRUE);
  return gtk_image_get_paintable (image);
}

static void
test_thumbnails (Fixture *fixture, gconstpointer data)
{
  const gint64 raw = add_photo (fixture, FM_DEMO_PHOTO_RAW);
  const gint64 seared = add_photo (fixture, FM_DEMO_PHOTO_SEARED);
  g_autoptr (FmPhotoThumbnails) thumbnails = fm_photo_thumbnails_new ();
  g_autoptr (GtkImage) image = g_object_ref_sink (GTK_IMAGE (gtk_image_new ()));
  GdkPaintable *first;

  fm_photo_thumbnails_show (thumbnails, raw, image);
  g_assert_null (gtk_image_get_paintable (image)); /* no notebook */
  fm_photo_thumbnails_set_notebook (thumbnails, fixture->notebook);
  fm_photo_thumbnails_show (thumbnails, raw, image);
  g_assert_null (gtk_image_get_paintable (image)); /* it is read in a thread */
  first = wait_for_picture (image);
  fm_photo_thumbnails_show (thumbnails, 0, image);
  g_assert_null (gtk_image_get_paintable (image));
  fm_photo_thumbnails_show (thumbnails, raw, image);
  g_assert_true (gtk_image_get_paintable (image) == first); /* it was kept */

  /* Scrolled on before it was read: the row shows the photo of its new experiment. */
  fm_photo_thumbnails_show (thumbnails, seared, image);
  fm_photo_thumbnails_show (thumbnails, raw, image);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_assert_true (gtk_image_get_paintable (image) == first);
}

static void
written_cb (GObject *content, GAsyncResult *result, gpointer done)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (
      gdk_content_provider_write_mime_type_finish (GDK_CONTENT_PROVIDER (content), result, &error));
  g_assert_no_error (error);
  *(gboolean *)done = TRUE;
}

static GBytes *
hand_out (GdkContentProvider *content, const char *mime)
{
  g_autoptr (GOutputStream) stream = g_memory_output_stream_new_resizable ();
  gboolean done = FALSE;

  gdk_content_provider_write_mime_type_async (content, mime, stream, G_PRIORITY_DEFAULT, NULL,
                                              written_cb, &done);
  while (!done)
    g_main_context_iteration (NULL, TRUE);
  g_output_stream_close (stream, NULL, NULL);
  return g_memory_output_stream_steal_as_bytes (G_MEMORY_OUTPUT_STREAM (stream));
}

static void
test_dragged_out (Fixture *fixture, gconstpointer data)
{
  const gint64 id = add_photo (fixture, FM_DEMO_PHOTO_RAW);
  const FmPhotoInfo info = { .id = id, .mime = (char *)"image/jpeg" };
  g_autoptr (GdkContentProvider) content = fm_photo_content_new (fixture->notebook, &info);
  g_autoptr (GBytes) original = fm_photos_original (fixture->notebook, id, NULL);
  g_autoptr (GBytes) bytes = hand_out (content, "image/jpeg");
  g_autoptr (GBytes) uris = hand_out (content, "text/uri-list");
  g_autofree char *text = g_strndup (g_bytes_get_data (uris, NULL), g_bytes_get_size (uris));
  g_auto (GStrv) lines = g_strsplit (text, "\r\n", -1);
  g_autoptr (GFile) file = g_file_new_for_uri (lines[0]);
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *wanted = g_strdup_printf ("photo-%" G_GINT64_FORMAT ".jpg", id);
  g_autoptr (GBytes) read = g_file_load_bytes (file, NULL, NULL, NULL);

  g_assert_true (g_bytes_equal (bytes, original));
  g_assert_true (g_bytes_equal (read, original));
  g_assert_cmpstr (name, ==, wanted);
  fm_photo_content_clean_up ();
  g_assert_false (g_file_query_exists (file, NULL));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  ADD ("thumbnails", test_thumbnails);
  ADD ("dragged-out", test_dragged_out);
  return g_test_run ();
}
