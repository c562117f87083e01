#include "store/fm-image.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <glib/gi18n-lib.h>

#include "core/fm-number.h"
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

static void
fit_thumbnail_cb (GdkPixbufLoader *loader, int width_px, int height_px, gpointer user_data)
{
  double scale = FM_PHOTO_THUMB_PX / (double)MAX (width_px, height_px);

  if (scale < 1.0)
    gdk_pixbuf_loader_set_size (loader, MAX (1, (int)(width_px * scale + 0.5)),
                                MAX (1, (int)(height_px * scale + 0.5)));
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

static GdkPixbuf *
decode_small (GBytes *data, GCancellable *cancellable, GError **error)
{
  g_autoptr (GdkPixbufLoader) loader = gdk_pixbuf_loader_new ();
  g_autoptr (GError) local_error = NULL;

  g_signal_connect (loader, "size-prepared", G_CALLBACK (fit_thumbnail_cb), NULL);
  gboolean fed = feed (loader, data, NULL, cancellable, &local_error);
  gboolean closed = gdk_pixbuf_loader_close (loader, local_error == NULL ? &local_error : NULL);
  if (g_error_matches (local_error, G_IO_ERROR, G_IO_ERROR_CANCELLED)) {
    g_propagate_error (error, g_steal_pointer (&local_error));
    return NULL;
  }

  GdkPixbuf *pixbuf = fed && closed ? gdk_pixbuf_loader_get_pixbuf (loader) : NULL;
  if (pixbuf == NULL) {
    bad_image (error, _ ("The photo is damaged or cut off. Copy or export it anew."));
    return NULL;
  }
  return g_object_ref (pixbuf);
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

  g_autoptr (GdkPixbuf) pixbuf = decode_small (data, cancellable, error);
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
