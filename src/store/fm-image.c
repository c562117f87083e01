/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "store/fm-image.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#include "core/base/fm-number.h"
#include "store/fm-experiments.h"

#define CHUNK_BYTES (64 * 1024)
#define THUMB_QUALITY "85"

/* Bitmap formats only: a drawing format could refer to other files or unfold without end. */
static const char *const accepted_mimes[] = {
  "image/jpeg", "image/png",  "image/tiff", "image/webp", "image/gif",
  "image/bmp",  "image/heif", "image/heic", "image/avif", NULL,
};

typedef struct {
  gint64 width_px;
  gint64 height_px;
  char *mime;
} Header;

static gboolean
bad_image (GError **error, const char *message)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_BAD_IMAGE, message);
  return FALSE;
}

static void
note_header_cb (GdkPixbufLoader *loader, int width_px, int height_px, gpointer user_data)
{
  Header *header = user_data;
  GdkPixbufFormat *format = gdk_pixbuf_loader_get_format (loader);

  header->width_px = width_px;
  header->height_px = height_px;
  if (format != NULL && header->mime == NULL) {
    g_auto (GStrv) mimes = gdk_pixbuf_format_get_mime_types (format);
    header->mime = g_strdup (mimes[0]);
  }
  /* A size of zero makes the decoders stop here, before they allocate any pixel. */
  gdk_pixbuf_loader_set_size (loader, 0, 0);
}

/* Size of a thumbnail of a picture of this size; the picture's own size when it is small. */
static void
thumbnail_size (int width_px, int height_px, int *thumb_width_px, int *thumb_height_px)
{
  double scale = MIN (1.0, FM_PHOTO_THUMB_PX / (double)MAX (width_px, height_px));

  *thumb_width_px = MAX (1, (int)(width_px * scale + 0.5));
  *thumb_height_px = MAX (1, (int)(height_px * scale + 0.5));
}

/* JPEG decoders skip most of the work when they know the size that is wanted. */
static void
fit_thumbnail_cb (GdkPixbufLoader *loader, int width_px, int height_px, gpointer user_data)
{
  int thumb_width_px;
  int thumb_height_px;

  thumbnail_size (width_px, height_px, &thumb_width_px, &thumb_height_px);
  gdk_pixbuf_loader_set_size (loader, thumb_width_px, thumb_height_px);
}

static void
note_rows_cb (GdkPixbufLoader *loader, int x, int y, int width, int height, gpointer user_data)
{
  int *n_rows = user_data;

  *n_rows = MAX (*n_rows, y + height);
}

static gboolean
feed (GdkPixbufLoader *loader,
      GBytes *data,
      const Header *stop_when_known,
      GCancellable *cancellable,
      GError **error)
{
  gsize size;
  const guchar *bytes = g_bytes_get_data (data, &size);

  for (gsize offset = 0; offset < size; offset += CHUNK_BYTES) {
    if (stop_when_known != NULL && stop_when_known->width_px > 0)
      return TRUE;
    if (g_cancellable_set_error_if_cancelled (cancellable, error) ||
        !gdk_pixbuf_loader_write (loader, bytes + offset, MIN (CHUNK_BYTES, size - offset), error))
      return FALSE;
  }
  return TRUE;
}

/* Errors of the decoder only matter when no size was found: the zero size itself is one. */
static gboolean
read_header (GBytes *data, Header *header, GCancellable *cancellable, GError **error)
{
  g_autoptr (GdkPixbufLoader) loader = gdk_pixbuf_loader_new ();
  g_autoptr (GError) local_error = NULL;

  g_signal_connect (loader, "size-prepared", G_CALLBACK (note_header_cb), header);
  feed (loader, data, header, cancellable, &local_error);
  gdk_pixbuf_loader_close (loader, local_error == NULL ? &local_error : NULL);
  if (g_error_matches (local_error, G_IO_ERROR, G_IO_ERROR_CANCELLED)) {
    g_propagate_error (error, g_steal_pointer (&local_error));
    return FALSE;
  }
  if (header->width_px > 0 && header->height_px > 0)
    return TRUE;
  if (g_error_matches (local_error, GDK_PIXBUF_ERROR, GDK_PIXBUF_ERROR_CORRUPT_IMAGE))
    return bad_image (error, _ ("The photo is damaged or cut off. Copy or export it anew."));
  return bad_image (error,
                    _ ("This is not a photo that can be read. Choose a JPEG, PNG or TIFF file."));
}

static gboolean
check_header (const Header *header, GError **error)
{
  gint64 pixels = header->width_px * header->height_px;

  if (header->mime == NULL || !g_strv_contains (accepted_mimes, header->mime))
    return bad_image (
        error, _ ("This kind of image is not kept as a photo. Choose a JPEG, PNG or TIFF file."));
  if (pixels < FM_PHOTO_MAX_PIXELS)
    return TRUE;

  g_autofree char *megapixels = fm_number_format ((double)pixels / 1e6, 0);
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_BAD_IMAGE,
               _ ("The photo has %s megapixels; photos of 100 megapixels and more are not taken. "
                  "Scale it down first."),
               megapixels);
  return FALSE;
}

static gboolean
check_bytes (GBytes *data, GError **error)
{
  if (g_bytes_get_size (data) == 0)
    return bad_image (error, _ ("The photo is empty. Copy or export it anew."));
  if (g_bytes_get_size (data) > FM_PHOTO_MAX_BYTES)
    return bad_image (
        error,
        _ ("The photo is larger than 64 MB. Scale it down or save it as JPEG, then add it again."));
  return TRUE;
}

/* The PNG and JPEG decoders take a cut-off file for a whole one, filling up with grey, so follow
 * the parts of the file to the mark of its end. PNG: a chain of chunks. */
static gboolean
png_has_end (GBytes *data)
{
  gsize size;
  const guint8 *bytes = g_bytes_get_data (data, &size);

  for (gsize offset = 8; offset + 12 <= size;) {
    guint32 length;
    memcpy (&length, bytes + offset, sizeof length);
    if (memcmp (bytes + offset + 4, "IEND", 4) == 0)
      return TRUE;
    offset += 12 + (gsize)GUINT32_FROM_BE (length);
  }
  return FALSE;
}

/* Markers that stand alone, within coded data too: restarts, and the 0 behind a coded 0xff. */
static gboolean
jpeg_stands_alone (guint8 marker)
{
  return marker <= 0x01 || (marker >= 0xd0 && marker <= 0xd8);
}

/* JPEG: marked segments, which state their length, and coded data up to the next marker. Bytes
 * behind the end are common (phones put a film there). */
static gboolean
jpeg_has_end (GBytes *data)
{
  gsize size;
  const guint8 *bytes = g_bytes_get_data (data, &size);

  for (gsize offset = 0; offset + 1 < size;) {
    guint8 marker = bytes[offset + 1];
    if (bytes[offset] != 0xff || marker == 0xff) {
      offset++;
      continue;
    }
    if (marker == 0xd9)
      return TRUE;
    offset += 2;
    if (!jpeg_stands_alone (marker) && offset + 1 < size)
      offset += (gsize)bytes[offset] << 8 | bytes[offset + 1];
  }
  return FALSE;
}

static gboolean
has_end (GBytes *data, const char *mime)
{
  if (g_str_equal (mime, "image/png"))
    return png_has_end (data);
  return !g_str_equal (mime, "image/jpeg") || jpeg_has_end (data);
}

/* Decodes everything; NULL when anything is missing. */
static GdkPixbuf *
decode (GBytes *data, gboolean is_png, GCancellable *cancellable, GError **error)
{
  g_autoptr (GdkPixbufLoader) loader = gdk_pixbuf_loader_new ();
  int n_rows = 0;

  if (is_png)
    g_signal_connect (loader, "area-updated", G_CALLBACK (note_rows_cb), &n_rows);
  else
    g_signal_connect (loader, "size-prepared", G_CALLBACK (fit_thumbnail_cb), NULL);
  gboolean fed = feed (loader, data, NULL, cancellable, error);
  gboolean closed = gdk_pixbuf_loader_close (loader, fed ? error : NULL);
  GdkPixbuf *pixbuf = fed && closed ? gdk_pixbuf_loader_get_pixbuf (loader) : NULL;
  if (pixbuf == NULL || (is_png && n_rows < gdk_pixbuf_get_height (pixbuf)))
    return NULL;
  return g_object_ref (pixbuf);
}

static GdkPixbuf *
scale_down (GdkPixbuf *pixbuf)
{
  int width_px;
  int height_px;

  thumbnail_size (gdk_pixbuf_get_width (pixbuf), gdk_pixbuf_get_height (pixbuf), &width_px,
                  &height_px);
  GdkPixbuf *small = gdk_pixbuf_scale_simple (pixbuf, width_px, height_px, GDK_INTERP_BILINEAR);
  if (small != NULL)
    gdk_pixbuf_copy_options (pixbuf, small);
  return small;
}

static GdkPixbuf *
decode_small (GBytes *data, const char *mime, GCancellable *cancellable, GError **error)
{
  g_autoptr (GError) local_error = NULL;
  g_autoptr (GdkPixbuf) pixbuf =
      has_end (data, mime)
          ? decode (data, g_str_equal (mime, "image/png"), cancellable, &local_error)
          : NULL;
  GdkPixbuf *small = pixbuf != NULL ? scale_down (pixbuf) : NULL;

  if (small != NULL)
    return small;
  if (g_error_matches (local_error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    g_propagate_error (error, g_steal_pointer (&local_error));
  else
    bad_image (error, _ ("The photo is damaged or cut off. Copy or export it anew."));
  return NULL;
}

static int
read_orientation (GdkPixbuf *pixbuf)
{
  const char *option = gdk_pixbuf_get_option (pixbuf, "orientation");
  gint64 orientation = option != NULL ? g_ascii_strtoll (option, NULL, 10) : 1;

  return orientation >= 1 && orientation <= 8 ? (int)orientation : 1;
}

/* JPEG has no transparency, so see-through parts become white. */
static GBytes *
encode_upright (GdkPixbuf *pixbuf, GError **error)
{
  g_autoptr (GdkPixbuf) upright = gdk_pixbuf_apply_embedded_orientation (pixbuf);
  char *buffer = NULL;
  gsize size = 0;

  if (gdk_pixbuf_get_has_alpha (upright)) {
    GdkPixbuf *flat = gdk_pixbuf_composite_color_simple (
        upright, gdk_pixbuf_get_width (upright), gdk_pixbuf_get_height (upright),
        GDK_INTERP_NEAREST, 255, 8, 0xffffff, 0xffffff);
    g_set_object (&upright, flat);
    g_clear_object (&flat);
  }
  if (upright == NULL || !gdk_pixbuf_save_to_buffer (upright, &buffer, &size, "jpeg", NULL,
                                                     "quality", THUMB_QUALITY, NULL)) {
    bad_image (error, _ ("No small picture could be made of the photo. Save it as JPEG first."));
    return NULL;
  }
  return g_bytes_new_take (buffer, size);
}

FmImage *
fm_image_inspect (GBytes *data, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmImage) self = g_new0 (FmImage, 1);
  Header header = { 0 };

  if (!check_bytes (data, error))
    return NULL;
  gboolean readable = read_header (data, &header, cancellable, error);
  self->mime = g_steal_pointer (&header.mime);
  header.mime = self->mime;
  if (!readable || !check_header (&header, error))
    return NULL;

  g_autoptr (GdkPixbuf) pixbuf = decode_small (data, self->mime, cancellable, error);
  if (pixbuf == NULL)
    return NULL;
  self->orientation = read_orientation (pixbuf);
  /* 5 to 8 turn the picture by a quarter. */
  gboolean turned = self->orientation >= 5;
  self->width_px = (int)(turned ? header.height_px : header.width_px);
  self->height_px = (int)(turned ? header.width_px : header.height_px);
  self->thumbnail = encode_upright (pixbuf, error);
  return self->thumbnail != NULL ? g_steal_pointer (&self) : NULL;
}

void
fm_image_free (FmImage *self)
{
  if (self == NULL)
    return;
  g_free (self->mime);
  g_clear_pointer (&self->thumbnail, g_bytes_unref);
  g_free (self);
}
