/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-paint.c - a batch sheet on paper */
#include "report/fm-batch-sheet-paint.h"

#include <cairo-pdf.h>
#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <pango/pangocairo.h>

#include "report/fm-pango.h"

#define MARGIN_PT 40.0
/* Of the notice, in the margin at the top. */
#define NOTICE_Y_PT 18.0
#define NOTICE_FONT "Sans Bold"
#define NOTICE_SIZE_PT 8.0
#define MIN_SCALE 0.75
#define SCALE_STEP 0.05
#define BOX_PT 9.0
#define INDENT_PT 16.0
#define GAP_PT 6.0
/* Of the last line, which stands in the margin. */
#define FOOT_SIZE_PT 8.0
#define FOOT_DROP_PT 8.0

static const struct {
  const char *font;
  double size_pt;
  double space_before_pt;
  double space_after_pt;
  gboolean box;
} looks[] = {
  [FM_SHEET_TITLE] = { "Sans Bold", 16.0, 0.0, 3.0, FALSE },
  [FM_SHEET_SUBTITLE] = { "Sans", 12.0, 0.0, 3.0, FALSE },
  [FM_SHEET_HEADING] = { "Sans Bold", 11.0, 10.0, 3.0, FALSE },
  [FM_SHEET_COLUMNS] = { "Sans Bold", 9.0, 0.0, 2.0, FALSE },
  [FM_SHEET_INGREDIENT] = { "Sans", 10.0, 2.5, 2.5, TRUE },
  [FM_SHEET_TOTAL] = { "Sans Bold", 10.0, 2.5, 2.5, FALSE },
  [FM_SHEET_STEP] = { "Sans", 10.0, 2.5, 2.5, TRUE },
  [FM_SHEET_TEXT] = { "Sans", 10.0, 1.0, 1.0, FALSE },
  [FM_SHEET_WRITE] = { "Sans", 11.0, 5.0, 4.0, FALSE },
  [FM_SHEET_CAUTION] = { "Sans", 10.0, 1.0, 3.0, FALSE },
  [FM_SHEET_SMALL] = { "Sans", 8.0, 2.0, 1.0, FALSE },
  [FM_SHEET_DRAWING] = { "Sans", 8.0, 4.0, 4.0, FALSE },
};

/* Widths of the cells after the name, in parts of the line. */
static const double cell_parts[FM_SHEET_N_CELLS] = { 0.0, 0.12, 0.15, 0.17, 0.13 };

static gboolean
is_in_table (FmSheetKind kind)
{
  return kind == FM_SHEET_COLUMNS || kind == FM_SHEET_INGREDIENT || kind == FM_SHEET_TOTAL;
}

static double
indent_pt (FmSheetKind kind, double scale)
{
  return looks[kind].box || is_in_table (kind) ? INDENT_PT * scale : 0.0;
}

static double
cell_width_pt (FmSheetKind kind, guint cell, double line_pt, double scale)
{
  double rest = 1.0;

  g_return_val_if_fail (cell < FM_SHEET_N_CELLS, 0.0);
  if (!is_in_table (kind))
    return line_pt - indent_pt (kind, scale);
  if (cell > 0)
    return cell_parts[cell] * line_pt - GAP_PT * scale;
  for (guint i = 1; i < FM_SHEET_N_CELLS; i++)
    rest -= cell_parts[i];
  return rest * line_pt - indent_pt (kind, scale);
}

static PangoLayout *
layout_in (cairo_t *cr, const char *font_name, double size_pt)
{
  PangoLayout *layout = pango_cairo_create_layout (cr);
  PangoFontDescription *font = pango_font_description_from_string (font_name);

  pango_font_description_set_absolute_size (font, size_pt * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  return layout;
}

static PangoLayout *
cell_layout (cairo_t *cr, const FmSheetRow *row, guint cell, double line_pt, double scale)
{
  PangoLayout *layout = layout_in (cr, looks[row->kind].font, looks[row->kind].size_pt * scale);

  pango_layout_set_width (layout,
                          (int)(cell_width_pt (row->kind, cell, line_pt, scale) * PANGO_SCALE));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_set_alignment (layout, cell > 0 ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);
  pango_layout_set_text (layout, row->cells[cell], -1);
  return layout;
}

/* The words of a drawing are in the drawing. */
static gboolean
has_text (const FmSheetRow *row, guint cell)
{
  return row->drawing == NULL && row->cells[cell] != NULL;
}

static double
row_height_pt (cairo_t *cr, const FmSheetRow *row, double line_pt, double scale)
{
  double height_pt = row->drawing != NULL ? row->drawing->height_pt : 0.0;

  for (guint cell = 0; cell < FM_SHEET_N_CELLS; cell++) {
    g_autoptr (PangoLayout) layout =
        has_text (row, cell) ? cell_layout (cr, row, cell, line_pt, scale) : NULL;

    if (layout != NULL)
      height_pt = MAX (height_pt, fm_pango_height_pt (layout));
  }
  return height_pt + (looks[row->kind].space_before_pt + looks[row->kind].space_after_pt) * scale;
}

static const FmSheetRow *
get_row (const FmBatchSheet *sheet, guint index)
{
  return g_ptr_array_index (sheet->rows, index);
}

/* A heading at the foot of a page would stand away from what it heads. */
static guint
step_back_over_headings (const FmBatchSheet *sheet, guint first, guint index)
{
  guint back = index;

  while (back > first + 1 && (get_row (sheet, back - 1)->kind == FM_SHEET_HEADING ||
                              get_row (sheet, back - 1)->kind == FM_SHEET_COLUMNS))
    back--;
  return back;
}

static GArray *
break_pages (const FmBatchSheet *sheet, cairo_t *cr, double line_pt, double column_pt, double scale)
{
  GArray *first = g_array_new (FALSE, FALSE, sizeof (guint));
  double y_pt = 0.0;
  guint start = 0;

  g_array_append_val (first, start);
  for (guint i = 0; i < sheet->rows->len; i++) {
    const double height_pt = row_height_pt (cr, get_row (sheet, i), line_pt, scale);
    const gboolean title = get_row (sheet, i)->kind == FM_SHEET_TITLE;

    if ((title || y_pt + height_pt > column_pt) && i > start) {
      i = start = title ? i : step_back_over_headings (sheet, start, i);
      g_array_append_val (first, start);
      y_pt = row_height_pt (cr, get_row (sheet, i), line_pt, scale);
    } else {
      y_pt += height_pt;
    }
  }
  return first;
}

static guint
count_titles (const FmBatchSheet *sheet)
{
  guint n_titles = 0;

  for (guint i = 0; i < sheet->rows->len; i++)
    n_titles += get_row (sheet, i)->kind == FM_SHEET_TITLE;
  return n_titles;
}

FmSheetLayout *
fm_sheet_layout_new (const FmBatchSheet *sheet, cairo_t *cr, double width_pt, double height_pt)
{
  FmSheetLayout *self = g_new0 (FmSheetLayout, 1);
  const double line_pt = width_pt - 2.0 * MARGIN_PT;
  const double column_pt = height_pt - 2.0 * MARGIN_PT;

  self->height_pt = height_pt;
  for (self->scale = sheet->type_scale > 0.0 ? sheet->type_scale : 1.0;;
       self->scale -= SCALE_STEP) {
    g_clear_pointer (&self->first, g_array_unref);
    self->first = break_pages (sheet, cr, line_pt, column_pt, self->scale);
    if (sheet->is_long || self->first->len <= MAX (count_titles (sheet), 1) ||
        self->scale < MIN_SCALE + SCALE_STEP / 2.0)
      return self;
  }
}

void
fm_sheet_layout_free (FmSheetLayout *self)
{
  g_array_unref (self->first);
  g_free (self);
}

guint
fm_sheet_layout_n_pages (const FmSheetLayout *self)
{
  return self->first->len;
}

static void
paint_box (cairo_t *cr, double y_pt, double scale)
{
  cairo_set_line_width (cr, 0.8);
  cairo_rectangle (cr, MARGIN_PT, y_pt + 1.5 * scale, BOX_PT * scale, BOX_PT * scale);
  cairo_stroke (cr);
}

static void
paint_rule (cairo_t *cr, double y_pt, double line_pt)
{
  cairo_set_line_width (cr, 0.4);
  cairo_move_to (cr, MARGIN_PT, y_pt);
  cairo_line_to (cr, MARGIN_PT + line_pt, y_pt);
  cairo_stroke (cr);
}

/* One line: what does not fit it is cut at its end. */
static void
paint_notice (cairo_t *cr, const char *notice, double line_pt)
{
  g_autoptr (PangoLayout) layout = layout_in (cr, NOTICE_FONT, NOTICE_SIZE_PT);

  pango_layout_set_width (layout, (int)(line_pt * PANGO_SCALE));
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  pango_layout_set_text (layout, notice, -1);
  cairo_move_to (cr, MARGIN_PT, NOTICE_Y_PT);
  pango_cairo_show_layout (cr, layout);
}

static void
paint_drawing (cairo_t *cr, const FmSheetDrawing *drawing, double y_pt)
{
  if (drawing == NULL || drawing->paint == NULL)
    return;
  cairo_save (cr);
  cairo_translate (cr, MARGIN_PT, y_pt);
  drawing->paint (drawing->data, cr);
  cairo_restore (cr);
}

static void
paint_row (cairo_t *cr, const FmSheetRow *row, double y_pt, double line_pt, double scale)
{
  double x_pt = MARGIN_PT + indent_pt (row->kind, scale);

  for (guint cell = 0; cell < FM_SHEET_N_CELLS; cell++) {
    const double width_pt = cell_width_pt (row->kind, cell, line_pt, scale);

    if (has_text (row, cell)) {
      g_autoptr (PangoLayout) layout = cell_layout (cr, row, cell, line_pt, scale);

      cairo_move_to (cr, x_pt + (cell > 0 ? GAP_PT * scale : 0.0), y_pt);
      pango_cairo_show_layout (cr, layout);
    }
    x_pt += width_pt + (cell > 0 ? GAP_PT * scale : 0.0);
  }
}

static gboolean
begins_part (const FmSheetLayout *self, const FmBatchSheet *sheet, guint page)
{
  const guint first = g_array_index (self->first, guint, page);

  return page == 0 || get_row (sheet, first)->kind == FM_SHEET_TITLE;
}

char *
fm_sheet_layout_foot (const FmSheetLayout *self, const FmBatchSheet *sheet, guint page)
{
  guint begin = page, end = page + 1;
  g_autofree char *count = NULL;
  const FmSheetRow *title;

  while (!begins_part (self, sheet, begin))
    begin--;
  while (end < self->first->len && !begins_part (self, sheet, end))
    end++;
  title = get_row (sheet, g_array_index (self->first, guint, begin));
  /* TRANSLATORS: at the foot of a page */
  count = g_strdup_printf (_ ("page %u of %u"), page - begin + 1, end - begin);
  /* TRANSLATORS: title of a sheet, "page 1 of 2" */
  return g_strdup_printf (_ ("%s · %s"), title->cells[0], count);
}

/* A long title is cut in its middle: the number of the page stands at the end. */
static void
paint_foot (
    const FmSheetLayout *self, const FmBatchSheet *sheet, cairo_t *cr, double line_pt, guint page)
{
  g_autoptr (PangoLayout) layout = pango_cairo_create_layout (cr);
  g_autofree char *text = fm_sheet_layout_foot (self, sheet, page);
  PangoFontDescription *font = pango_font_description_from_string ("Sans");

  pango_font_description_set_absolute_size (font, FOOT_SIZE_PT * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_width (layout, (int)(line_pt * PANGO_SCALE));
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_MIDDLE);
  pango_layout_set_alignment (layout, PANGO_ALIGN_RIGHT);
  pango_layout_set_text (layout, text, -1);
  cairo_move_to (cr, MARGIN_PT, self->height_pt - MARGIN_PT + FOOT_DROP_PT);
  pango_cairo_show_layout (cr, layout);
}

void
fm_sheet_layout_paint (
    const FmSheetLayout *self, const FmBatchSheet *sheet, cairo_t *cr, double width_pt, guint page)
{
  const double line_pt = width_pt - 2.0 * MARGIN_PT;
  double y_pt = MARGIN_PT;
  guint end = sheet->rows->len;

  g_return_if_fail (page < self->first->len);
  if (page + 1 < self->first->len)
    end = g_array_index (self->first, guint, page + 1);
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  if (sheet->notice != NULL)
    paint_notice (cr, sheet->notice, line_pt);
  for (guint i = g_array_index (self->first, guint, page); i < end; i++) {
    const FmSheetRow *row = get_row (sheet, i);
    const double top_pt = y_pt + looks[row->kind].space_before_pt * self->scale;

    paint_row (cr, row, top_pt, line_pt, self->scale);
    paint_drawing (cr, row->drawing, top_pt);
    if (looks[row->kind].box)
      paint_box (cr, top_pt, self->scale);
    y_pt += row_height_pt (cr, row, line_pt, self->scale);
    if (is_in_table (row->kind) || row->kind == FM_SHEET_WRITE)
      paint_rule (cr, y_pt, line_pt);
  }
  paint_foot (self, sheet, cr, line_pt, page);
}

static cairo_status_t
append_cb (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

GBytes *
fm_batch_sheet_to_pdf (const FmBatchSheet *sheet, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface =
      cairo_pdf_surface_create_for_stream (append_cb, bytes, FM_A4_WIDTH_PT, FM_A4_HEIGHT_PT);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (FmSheetLayout) layout =
      fm_sheet_layout_new (sheet, cr, FM_A4_WIDTH_PT, FM_A4_HEIGHT_PT);
  cairo_status_t status;

  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, get_row (sheet, 0)->cells[0]);
  for (guint page = 0; page < fm_sheet_layout_n_pages (layout); page++) {
    fm_sheet_layout_paint (layout, sheet, cr, FM_A4_WIDTH_PT, page);
    cairo_show_page (cr);
  }
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
  g_set_error (error, G_IO_ERROR, G_IO_ERROR_FAILED, _ ("The PDF could not be made: %s"),
               cairo_status_to_string (status));
  return NULL;
}
