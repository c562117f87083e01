/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-report-drawings.c - pictures in a report: photos side by side, a map of three components */
#include "report/fm-report-drawings.h"

#include <math.h>
#include <pango/pangocairo.h>

#include "store/fm-experiments.h"
#include "store/fm-image.h"

#define PHOTO_WIDTH_PT 165.0
#define PHOTO_HEIGHT_PT 124.0
#define PHOTO_GAP_PT 8.0
/* Of the longer side: about 250 an inch at the width above. */
#define PHOTO_PX 600
#define TRIANGLE_SIDE_PT 230.0
#define TRIANGLE_HEIGHT_PT (TRIANGLE_SIDE_PT * 0.866025403784)
#define WORD_ROOM_PT 14.0
#define WORD_SIZE_PT 8.0
#define SPOT_PT 2.5

GdkPixbuf *
fm_report_photo (GBytes *data)
{
  static const FmImageLimits limits = { FM_PHOTO_MAX_BYTES, FM_PHOTO_MAX_PIXELS, PHOTO_PX };

  return fm_image_decode (data, &limits, NULL, NULL);
}

/* What is seen through is white, as paper is. */
static guint32
flat_pixel (const guchar *from, gboolean has_alpha)
{
  const guint alpha = has_alpha ? from[3] : 255;
  guint32 pixel = 0;

  for (guint channel = 0; channel < 3; channel++)
    pixel = pixel << 8 | (from[channel] * alpha + 255 * (255 - alpha)) / 255;
  return pixel;
}

static cairo_surface_t *
to_surface (GdkPixbuf *photo)
{
  const int width = gdk_pixbuf_get_width (photo), height = gdk_pixbuf_get_height (photo);
  const int channels = gdk_pixbuf_get_n_channels (photo);
  const guchar *pixels = gdk_pixbuf_read_pixels (photo);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  guchar *data = cairo_image_surface_get_data (surface);

  for (int y = 0; data != NULL && y < height; y++) {
    const guchar *from = pixels + (gsize)y * gdk_pixbuf_get_rowstride (photo);
    guint32 *to = (guint32 *)(void *)(data + (gsize)y * cairo_image_surface_get_stride (surface));

    for (int x = 0; x < width; x++)
      to[x] = flat_pixel (from + x * channels, gdk_pixbuf_get_has_alpha (photo));
  }
  cairo_surface_mark_dirty (surface);
  return surface;
}

static void
paint_photo (cairo_t *cr, GdkPixbuf *photo)
{
  const double width = gdk_pixbuf_get_width (photo), height = gdk_pixbuf_get_height (photo);
  const double scale = MIN (PHOTO_WIDTH_PT / width, PHOTO_HEIGHT_PT / height);
  cairo_surface_t *surface = to_surface (photo);

  cairo_save (cr);
  cairo_scale (cr, scale, scale);
  cairo_set_source_surface (cr, surface, 0.0, 0.0);
  cairo_paint (cr);
  cairo_restore (cr);
  cairo_surface_destroy (surface);
}

static void
paint_photos (gconstpointer data, cairo_t *cr)
{
  const GPtrArray *photos = data;

  for (guint i = 0; i < photos->len; i++) {
    paint_photo (cr, g_ptr_array_index (photos, i));
    cairo_translate (cr, PHOTO_WIDTH_PT + PHOTO_GAP_PT, 0.0);
  }
}

static void
add_drawing (FmBatchSheet *sheet, const FmSheetDrawing *drawing, char *words)
{
  FmSheetRow *row = fm_batch_sheet_add (sheet, FM_SHEET_DRAWING, words);

  row->drawing = g_memdup2 (drawing, sizeof *drawing);
}

void
fm_report_add_photos (FmBatchSheet *sheet, GPtrArray *photos, char *words)
{
  const FmSheetDrawing drawing = { FM_REPORT_PHOTOS_IN_ROW * (PHOTO_WIDTH_PT + PHOTO_GAP_PT),
                                   PHOTO_HEIGHT_PT, paint_photos, g_ptr_array_ref (photos),
                                   (GDestroyNotify)g_ptr_array_unref };

  add_drawing (sheet, &drawing, words);
}

typedef struct {
  GStrv corners;
  GPtrArray *spots; /* FmReportSpot */
} Triangle;

static void
triangle_free (Triangle *self)
{
  g_strfreev (self->corners);
  g_ptr_array_unref (self->spots);
  g_free (self);
}

/* @part: where it stands on its point, 0 = begins there, 1 = ends there. */
static void
paint_word (cairo_t *cr, const char *word, double x_pt, double y_pt, double part)
{
  g_autoptr (PangoLayout) layout = pango_cairo_create_layout (cr);
  PangoFontDescription *font = pango_font_description_from_string ("Sans");
  int width;

  pango_font_description_set_absolute_size (font, WORD_SIZE_PT * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_text (layout, word, -1);
  pango_layout_get_size (layout, &width, NULL);
  cairo_move_to (cr, x_pt - part * width / PANGO_SCALE, y_pt);
  pango_cairo_show_layout (cr, layout);
}

static void
paint_spot (cairo_t *cr, const FmReportSpot *spot)
{
  const double x = (spot->x[2] + spot->x[0] / 2.0) * TRIANGLE_SIDE_PT;
  const double y = WORD_ROOM_PT + (1.0 - spot->x[0]) * TRIANGLE_HEIGHT_PT;

  cairo_arc (cr, x, y, SPOT_PT, 0.0, 2.0 * G_PI);
  cairo_fill (cr);
  paint_word (cr, spot->name, x + 2.0 * SPOT_PT, y - WORD_SIZE_PT, 0.0);
}

static void
paint_triangle (gconstpointer data, cairo_t *cr)
{
  const Triangle *self = data;
  const double foot = WORD_ROOM_PT + TRIANGLE_HEIGHT_PT;

  cairo_set_line_width (cr, 0.6);
  cairo_move_to (cr, TRIANGLE_SIDE_PT / 2.0, WORD_ROOM_PT);
  cairo_line_to (cr, TRIANGLE_SIDE_PT, foot);
  cairo_line_to (cr, 0.0, foot);
  cairo_close_path (cr);
  cairo_stroke (cr);
  paint_word (cr, self->corners[0], TRIANGLE_SIDE_PT / 2.0, 0.0, 0.5);
  paint_word (cr, self->corners[1], 0.0, foot + 2.0, 0.0);
  paint_word (cr, self->corners[2], TRIANGLE_SIDE_PT, foot + 2.0, 1.0);
  for (guint i = 0; i < self->spots->len; i++)
    paint_spot (cr, g_ptr_array_index (self->spots, i));
}

void
fm_report_spot_free (FmReportSpot *spot)
{
  g_free (spot->name);
  g_free (spot);
}

void
fm_report_add_triangle (FmBatchSheet *sheet,
                        const char *const *corners,
                        GPtrArray *spots,
                        char *words)
{
  Triangle *triangle = g_new0 (Triangle, 1);
  const FmSheetDrawing drawing = { TRIANGLE_SIDE_PT, TRIANGLE_HEIGHT_PT + 2.0 * WORD_ROOM_PT,
                                   paint_triangle, triangle, (GDestroyNotify)triangle_free };

  triangle->corners = g_strdupv ((GStrv)corners);
  triangle->spots = spots;
  add_drawing (sheet, &drawing, words);
}
