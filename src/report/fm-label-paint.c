/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-paint.c - a nutrition panel drawn at its true size */
#include "report/fm-label-paint-private.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <gdk-pixbuf/gdk-pixbuf.h>
#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Widths that take the rows at the sizes of the rules: common practice, no source. */
#define AMERICAN_WIDTH_PT 174.0
#define EUROPEAN_WIDTH_PT 240.0
#define BOX_PT 0.5
#define CAPTION_PT 6.0
#define CAPTION_GAP_PT 4.0
#define FOOT_PT 3.0
#define POINTS_PER_INCH 72.0
#define DPI_TEXT "300"

static gboolean
is_american (const FmLabelPicture *self)
{
  return self->panel->input.set != FM_LABEL_EU;
}

static double
get_width (const FmLabelPicture *self)
{
  return is_american (self) ? AMERICAN_WIDTH_PT : EUROPEAN_WIDTH_PT;
}

static void
draw_panel (FmLabelPen *pen, const FmLabelPicture *self)
{
  if (is_american (self))
    fm_label_draw_american (pen, self);
  else
    fm_label_draw_european (pen, self);
}

static void
draw_box (const FmLabelPen *pen)
{
  cairo_set_line_width (pen->cr, BOX_PT);
  cairo_rectangle (pen->cr, BOX_PT / 2.0, BOX_PT / 2.0, pen->width_pt - BOX_PT, pen->y_pt - BOX_PT);
  cairo_stroke (pen->cr);
}

/* Draws all of it and returns its height. */
static double
draw (const FmLabelPicture *self, cairo_t *cr)
{
  FmLabelPen pen = { .cr = cr, .width_pt = get_width (self), .y_pt = BOX_PT };
  g_autofree char *caption = g_markup_escape_text (self->caption, -1);

  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  draw_panel (&pen, self);
  pen.y_pt += FOOT_PT;
  draw_box (&pen);
  pen.y_pt += CAPTION_GAP_PT;
  fm_label_pen_row (&pen, CAPTION_PT, 0.0, caption, NULL);
  return pen.y_pt;
}

void
fm_label_picture_size (const FmLabelPicture *self, double *width_pt, double *height_pt)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);

  *width_pt = get_width (self);
  *height_pt = ceil (draw (self, cr));
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

void
fm_label_picture_paint (const FmLabelPicture *self, cairo_t *cr)
{
  cairo_save (cr);
  draw (self, cr);
  cairo_restore (cr);
}

char *
fm_label_picture_text (const FmLabelPicture *self)
{
  FmLabelPen pen = { .text = g_string_new (NULL), .width_pt = get_width (self) };

  draw_panel (&pen, self);
  return g_string_free (pen.text, FALSE);
}

static cairo_status_t
append_cb (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static GBytes *
fail (cairo_status_t status, GError **error)
{
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _ ("The label could not be drawn: %s"),
               cairo_status_to_string (status));
  return NULL;
}

static GBytes *
to_vectors (const FmLabelPicture *self, FmLabelFileKind kind, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  double width_pt, height_pt;
  cairo_surface_t *surface;
  cairo_status_t status;
  cairo_t *cr;

  fm_label_picture_size (self, &width_pt, &height_pt);
  if (kind == FM_LABEL_FILE_PDF)
    surface = cairo_pdf_surface_create_for_stream (append_cb, bytes, width_pt, height_pt);
  else
    surface = cairo_svg_surface_create_for_stream (append_cb, bytes, width_pt, height_pt);
  cr = cairo_create (surface);
  fm_label_picture_paint (self, cr);
  cairo_show_page (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    return fail (status, error);
  return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}

/* Black on white has equal channels, whichever way they lie in memory. */
static GdkPixbuf *
to_pixbuf (cairo_surface_t *surface)
{
  const int width = cairo_image_surface_get_width (surface);
  const int height = cairo_image_surface_get_height (surface);
  const int stride = cairo_image_surface_get_stride (surface);
  const guchar *from = cairo_image_surface_get_data (surface);
  GdkPixbuf *pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, width, height);
  guchar *to = gdk_pixbuf_get_pixels (pixbuf);

  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      memset (to + y * gdk_pixbuf_get_rowstride (pixbuf) + 3 * x, from[y * stride + 4 * x + 1], 3);
  return pixbuf;
}

static GBytes *
to_pixels (const FmLabelPicture *self, GError **error)
{
  const double scale = FM_LABEL_PNG_DPI / POINTS_PER_INCH;
  g_autoptr (GdkPixbuf) pixbuf = NULL;
  double width_pt, height_pt;
  cairo_surface_t *surface;
  cairo_t *cr;
  char *data;
  gsize size;

  fm_label_picture_size (self, &width_pt, &height_pt);
  surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)ceil (width_pt * scale),
                                        (int)ceil (height_pt * scale));
  if (cairo_surface_status (surface) != CAIRO_STATUS_SUCCESS)
    return fail (cairo_surface_status (surface), error);
  cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  cairo_scale (cr, scale, scale);
  fm_label_picture_paint (self, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  pixbuf = to_pixbuf (surface);
  cairo_surface_destroy (surface);
  if (!gdk_pixbuf_save_to_buffer (pixbuf, &data, &size, "png", error, "x-dpi", DPI_TEXT, "y-dpi",
                                  DPI_TEXT, NULL))
    return NULL;
  return g_bytes_new_take (data, size);
}

GBytes *
fm_label_picture_to_file (const FmLabelPicture *self, FmLabelFileKind kind, GError **error)
{
  return kind == FM_LABEL_FILE_PNG ? to_pixels (self, error) : to_vectors (self, kind, error);
}
