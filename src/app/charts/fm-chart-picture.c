/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-picture.c - a chart as a file: its picture with the words that belong to it */
#include "app/charts/fm-chart-picture.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <math.h>

#define MARGIN_PX 16.0
#define GAP_PX 8.0
/* Pixels of a PNG for each of the window: sharp in print at the size of the screen. */
#define PNG_SCALE 3.0
/* A narrow chart leaves its words this much room. */
#define SMALLEST_WIDTH_PX 320.0

typedef struct {
  PangoLayout *title;
  PangoLayout *legend;
  PangoLayout *subject;
  double width; /* of all of it */
  double height;
  double chart_y;
} Sheet;

const char *
fm_chart_format_ending (FmChartFormat format)
{
  static const char *const endings[FM_CHART_N_FORMATS] = {
    [FM_CHART_SVG] = "svg",
    [FM_CHART_PDF] = "pdf",
    [FM_CHART_PNG] = "png",
  };

  return endings[format];
}

gboolean
fm_chart_format_of_name (const char *name, FmChartFormat *format)
{
  const char *dot = strrchr (name, '.');

  for (FmChartFormat i = FM_CHART_SVG; dot != NULL && i < FM_CHART_N_FORMATS; i++)
    if (g_ascii_strcasecmp (dot + 1, fm_chart_format_ending (i)) == 0) {
      *format = i;
      return TRUE;
    }
  return FALSE;
}

char *
fm_chart_picture_name (const char *title, const char *subject, FmChartFormat format)
{
  char *name = subject != NULL
                   ? g_strdup_printf ("%s - %s.%s", subject, title, fm_chart_format_ending (format))
                   : g_strdup_printf ("%s.%s", title, fm_chart_format_ending (format));

  /* Neither a folder nor what other systems refuse. */
  return g_strdelimit (name, "/\\:*?\"<>|\n", '-');
}

static PangoLayout *
words_new (PangoContext *pango, const char *text, double width, double scale, PangoWeight weight)
{
  PangoLayout *layout = pango_layout_new (pango);
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_scale_new (scale));
  pango_attr_list_insert (attributes, pango_attr_weight_new (weight));
  pango_layout_set_attributes (layout, attributes);
  pango_layout_set_width (layout, (int)(width * PANGO_SCALE));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_text (layout, text != NULL ? text : "", -1);
  return layout;
}

/* With the gap above it; 0 without words. */
static double
height_of (PangoLayout *layout)
{
  int height;

  if (*pango_layout_get_text (layout) == '\0')
    return 0;
  pango_layout_get_pixel_size (layout, NULL, &height);
  return height + GAP_PX;
}

static void
sheet_init (Sheet *self, const FmChartPicture *picture, PangoContext *pango)
{
  const double inner = MAX (picture->width, SMALLEST_WIDTH_PX);

  self->title = words_new (pango, picture->title, inner, 1, PANGO_WEIGHT_BOLD);
  self->legend = words_new (pango, picture->legend, inner, PANGO_SCALE_SMALL, PANGO_WEIGHT_NORMAL);
  self->subject =
      words_new (pango, picture->subject, inner, PANGO_SCALE_SMALL, PANGO_WEIGHT_NORMAL);
  self->width = ceil (inner + 2 * MARGIN_PX);
  self->chart_y = MARGIN_PX + height_of (self->title);
  self->height = ceil (self->chart_y + picture->height + height_of (self->legend) +
                       height_of (self->subject) + MARGIN_PX);
}

static void
sheet_clear (Sheet *self)
{
  g_clear_object (&self->title);
  g_clear_object (&self->legend);
  g_clear_object (&self->subject);
}

static void
show_words (const FmChartCanvas *canvas, PangoLayout *layout, double y)
{
  cairo_move_to (canvas->cr, MARGIN_PX, y);
  pango_cairo_show_layout (canvas->cr, layout);
  cairo_new_path (canvas->cr);
}

static void
draw_sheet (const Sheet *self, const FmChartPicture *picture, cairo_t *cr, PangoContext *pango)
{
  const double below = self->chart_y + picture->height + GAP_PX;
  FmChartCanvas canvas;

  fm_chart_canvas_init (&canvas, cr, pango, picture->width, picture->height, FM_CHART_LIGHT);
  fm_chart_canvas_paint_ground (&canvas);
  fm_chart_canvas_set_colour (&canvas, &canvas.palette.ink, 1);
  show_words (&canvas, self->title, MARGIN_PX);
  show_words (&canvas, self->legend, below);
  show_words (&canvas, self->subject, below + height_of (self->legend));
  cairo_translate (cr, MARGIN_PX, self->chart_y);
  picture->draw (picture->data, &canvas);
  fm_chart_canvas_clear (&canvas);
}

static cairo_status_t
append_cb (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static cairo_surface_t *
surface_new (const Sheet *sheet,
             const FmChartPicture *picture,
             FmChartFormat format,
             GByteArray *to)
{
  cairo_surface_t *surface = NULL;

  switch (format) {
  case FM_CHART_SVG:
    surface = cairo_svg_surface_create_for_stream (append_cb, to, sheet->width, sheet->height);
    cairo_svg_surface_set_document_unit (surface, CAIRO_SVG_UNIT_PX);
    break;
  case FM_CHART_PDF:
    surface = cairo_pdf_surface_create_for_stream (append_cb, to, sheet->width, sheet->height);
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, picture->title);
    if (picture->subject != NULL)
      cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_SUBJECT, picture->subject);
    break;
  case FM_CHART_PNG:
    surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)(sheet->width * PNG_SCALE),
                                          (int)(sheet->height * PNG_SCALE));
    cairo_surface_set_device_scale (surface, PNG_SCALE, PNG_SCALE);
    break;
  }
  return surface;
}

/* The letters of the window, measured for what they are drawn on. */
static PangoContext *
context_for (const FmChartPicture *picture, cairo_t *cr)
{
  PangoContext *pango = pango_cairo_create_context (cr);

  if (picture->pango != NULL) {
    pango_context_set_font_description (pango, pango_context_get_font_description (picture->pango));
    pango_context_set_base_dir (pango, pango_context_get_base_dir (picture->pango));
    pango_cairo_context_set_resolution (pango, pango_cairo_context_get_resolution (picture->pango));
  }
  pango_context_set_round_glyph_positions (pango, FALSE);
  return pango;
}

GBytes *
fm_chart_picture_make (const FmChartPicture *self, FmChartFormat format, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *measuring = cairo_image_surface_create (CAIRO_FORMAT_A8, 1, 1);
  cairo_t *cr = cairo_create (measuring);
  PangoContext *pango = context_for (self, cr);
  cairo_surface_t *surface;
  cairo_status_t status;
  Sheet sheet;

  cairo_destroy (cr);
  cairo_surface_destroy (measuring);
  sheet_init (&sheet, self, pango);
  surface = surface_new (&sheet, self, format, bytes);
  cr = cairo_create (surface);
  draw_sheet (&sheet, self, cr, pango);
  cairo_show_page (cr);
  status = cairo_status (cr);
  cairo_destroy (cr);
  if (status == CAIRO_STATUS_SUCCESS && format == FM_CHART_PNG)
    status = cairo_surface_write_to_png_stream (surface, append_cb, bytes);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  sheet_clear (&sheet);
  g_object_unref (pango);
  if (status != CAIRO_STATUS_SUCCESS) {
    g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_FAILED, cairo_status_to_string (status));
    return NULL;
  }
  return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}
