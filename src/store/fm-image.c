/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "store/fm-image.h"

#include <glib/gi18n-lib.h>

#include "core/base/fm-number.h"
#include "store/fm-experiments.h"
#include "store/fm-image-kind.h"

#define CHUNK_BYTES (64 * 1024)
#define THUMB_QUALITY "85"

const FmImageLimits fm_image_photo_limits = { FM_PHOTO_MAX_BYTES, FM_PHOTO_MAX_PIXELS, 8192 };
/* Four times as wide as they are made, so that another program may have made them. */
const FmImageLimits fm_image_thumbnail_limits = { 1024 * 1024,
                                                  16 * FM_PHOTO_THUMB_PX *FM_PHOTO_THUMB_PX,
                                                  FM_PHOTO_THUMB_PX };
static const FmImageLimits inspected = { FM_PHOTO_MAX_BYTES, FM_PHOTO_MAX_PIXELS,
                                         FM_PHOTO_THUMB_PX };

typedef struct {
  const FmImageLimits *limits;
  const FmImageKind *kind;
  gint64 width_px;
  gint64 height_px;
  int n_rows;
} Decoding;

static gboolean
bad_image (GError **error, const char *message)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_BAD_IMAGE, message);
  return FALSE;
}

/* Size of a picture of this size within the limit; its own size when it is small. */
static void
fit (int width_px, int height_px, int max_edge_px, int *fitted_width_px, int *fitted_height_px)
{
  double scale = MIN (1.0, max_edge_px / (double)MAX (width_px, height_px));

  *fitted_width_px = MAX (1, (int)(width_px * scale + 0.5));
  *fitted_height_px = MAX (1, (int)(height_px * scale + 0.5));
}

static gboolean
has_size (const Decoding *decoding)
{
  return decoding->width_px > 0 && decoding->height_px > 0;
}

static gboolean
fits_limits (const Decoding *decoding)
{
  return (double)decoding->width_px * (double)decoding->height_px <
         (double)decoding->limits->max_pixels;
}

/* A size of zero makes the decoders stop here, before they allocate any pixel. JPEG decoders skip
 * most of the work when they know the size that is wanted. */
static void
size_prepared_cb (GdkPixbufLoader *loader, int width_px, int height_px, gpointer user_data)
{
  Decoding *decoding = user_data;
  int fitted_width_px;
  int fitted_height_px;

  decoding->width_px = width_px;
  decoding->height_px = height_px;
  if (!has_size (decoding) || !fits_limits (decoding)) {
    gdk_pixbuf_loader_set_size (loader, 0, 0);
  } else if (decoding->kind->scales) {
    fit (width_px, height_px, decoding->limits->max_edge_px, &fitted_width_px, &fitted_height_px);
    gdk_pixbuf_loader_set_size (loader, fitted_width_px, fitted_height_px);
  }
}

static void
note_rows_cb (GdkPixbufLoader *loader, int x, int y, int width, int height, gpointer user_data)
{
  Decoding *decoding = user_data;

  decoding->n_rows = MAX (decoding->n_rows, y + height);
}

static gboolean
feed (GdkPixbufLoader *loader, GBytes *data, GCancellable *cancellable, GError **error)
{
  gsize size;
  const guchar *bytes = g_bytes_get_data (data, &size);

  for (gsize offset = 0; offset < size; offset += CHUNK_BYTES) {
    if (g_cancellable_set_error_if_cancelled (cancellable, error) ||
        !gdk_pixbuf_loader_write (loader, bytes + offset, MIN (CHUNK_BYTES, size - offset), error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
check_bytes (GBytes *data, const FmImageLimits *limits, GError **error)
{
  if (g_bytes_get_size (data) == 0)
    return bad_image (error, _ ("The photo is empty. Copy or export it anew."));
  if (g_bytes_get_size (data) <= limits->max_bytes)
    return TRUE;

  g_autofree char *limit = fm_number_format ((double)(limits->max_bytes >> 20), 0);
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_BAD_IMAGE,
               _ ("The photo is larger than %s MB. Scale it down or save it as JPEG, then add it "
                  "again."),
               limit);
  return FALSE;
}

static gboolean
set_too_many_pixels (const Decoding *decoding, GError **error)
{
  const double pixels = (double)decoding->width_px * (double)decoding->height_px;
  g_autofree char *megapixels = fm_number_format (pixels / 1e6, 0);
  g_autofree char *limit = fm_number_format ((double)decoding->limits->max_pixels / 1e6, 0);

  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_BAD_IMAGE,
               /* TRANSLATORS: Both are numbers: the photo's own and the limit. */
               _ ("The photo has %s megapixels; photos of %s megapixels and more are not taken. "
                  "Scale it down first."),
               megapixels, limit);
  return FALSE;
}

/* Decodes everything; NULL when anything is missing. */
static GdkPixbuf *
decode_whole (GBytes *data, Decoding *decoding, GCancellable *cancellable, GError **error)
{
  g_autoptr (GdkPixbufLoader) loader =
      gdk_pixbuf_loader_new_with_mime_type (decoding->kind->mime, error);

  if (loader == NULL)
    return NULL;
  g_signal_connect (loader, "size-prepared", G_CALLBACK (size_prepared_cb), decoding);
  g_signal_connect (loader, "area-updated", G_CALLBACK (note_rows_cb), decoding);
  gboolean fed = feed (loader, data, cancellable, error);
  gboolean closed = gdk_pixbuf_loader_close (loader, fed ? error : NULL);
  GdkPixbuf *pixbuf = fed && closed ? gdk_pixbuf_loader_get_pixbuf (loader) : NULL;
  if (pixbuf == NULL ||
      (decoding->kind->fills_up && decoding->n_rows < gdk_pixbuf_get_height (pixbuf)))
    return NULL;
  return g_object_ref (pixbuf);
}

static GdkPixbuf *
scale_down (GdkPixbuf *pixbuf, int max_edge_px)
{
  int width_px;
  int height_px;

  fit (gdk_pixbuf_get_width (pixbuf), gdk_pixbuf_get_height (pixbuf), max_edge_px, &width_px,
       &height_px);
  if (width_px == gdk_pixbuf_get_width (pixbuf) && height_px == gdk_pixbuf_get_height (pixbuf))
    return g_object_ref (pixbuf);
  GdkPixbuf *small = gdk_pixbuf_scale_simple (pixbuf, width_px, height_px, GDK_INTERP_BILINEAR);
  if (small != NULL)
    gdk_pixbuf_copy_options (pixbuf, small);
  return small;
}

/* Why nothing came of it. A size beyond the limits is an error of the decoder too. */
static void
set_failure (const Decoding *decoding, GError *failure, GError **error)
{
  if (g_error_matches (failure, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    g_propagate_error (error, g_error_copy (failure));
  else if (g_error_matches (failure, GDK_PIXBUF_ERROR, GDK_PIXBUF_ERROR_UNKNOWN_TYPE))
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_BAD_IMAGE,
                 /* TRANSLATORS: a kind of file: "HEIC", "WebP" */
                 _ ("This computer has no decoder for %s photos. Save the photo as JPEG, then add "
                    "it again."),
                 decoding->kind->name);
  else if (has_size (decoding) && !fits_limits (decoding))
    set_too_many_pixels (decoding, error);
  else
    bad_image (error, _ ("The photo is damaged or cut off. Copy or export it anew."));
}

/* As it lies in the file, not yet upright. */
static GdkPixbuf *
decode (GBytes *data, Decoding *decoding, GCancellable *cancellable, GError **error)
{
  g_autoptr (GError) failure = NULL;
  g_autoptr (GdkPixbuf) pixbuf = NULL;
  GdkPixbuf *small;

  if (!check_bytes (data, decoding->limits, error))
    return NULL;
  decoding->kind = fm_image_kind_of (data);
  if (decoding->kind == NULL) {
    bad_image (
        error,
        _ ("This is not a photo that can be read. Choose a JPEG, PNG, TIFF, WebP or HEIC file."));
    return NULL;
  }
  fm_image_kind_size (decoding->kind, data, &decoding->width_px, &decoding->height_px);
  if (fits_limits (decoding) && fm_image_kind_is_whole (decoding->kind, data))
    pixbuf = decode_whole (data, decoding, cancellable, &failure);
  small = pixbuf != NULL ? scale_down (pixbuf, decoding->limits->max_edge_px) : NULL;
  if (small == NULL)
    set_failure (decoding, failure, error);
  return small;
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
  Decoding decoding = { .limits = &inspected };
  g_autoptr (GdkPixbuf) pixbuf = decode (data, &decoding, cancellable, error);

  if (pixbuf == NULL)
    return NULL;
  self->mime = decoding.kind->mime;
  self->orientation = read_orientation (pixbuf);
  /* 5 to 8 turn the picture by a quarter. */
  gboolean turned = self->orientation >= 5;
  self->width_px = (int)(turned ? decoding.height_px : decoding.width_px);
  self->height_px = (int)(turned ? decoding.width_px : decoding.height_px);
  self->taken = fm_image_kind_taken (decoding.kind, data);
  self->thumbnail = encode_upright (pixbuf, error);
  return self->thumbnail != NULL ? g_steal_pointer (&self) : NULL;
}

void
fm_image_free (FmImage *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->thumbnail, g_bytes_unref);
  g_free (self->taken);
  g_free (self);
}

GdkPixbuf *
fm_image_decode (GBytes *data,
                 const FmImageLimits *limits,
                 GCancellable *cancellable,
                 GError **error)
{
  Decoding decoding = { .limits = limits };
  g_autoptr (GdkPixbuf) pixbuf = decode (data, &decoding, cancellable, error);

  return pixbuf != NULL ? gdk_pixbuf_apply_embedded_orientation (pixbuf) : NULL;
}
