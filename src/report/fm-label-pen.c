/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-pen.c - the pen that draws a panel */
#include "report/fm-label-paint-private.h"

#include <pango/pangocairo.h>

#include "report/fm-pango.h"

#define FONT "Sans"
#define MARGIN_PT 4.0
#define ROW_GAP_PT 0.8
/* Of the panel, in parts of its width. */
#define COLUMN_PART 0.27
#define TITLE_TRIAL_PT 10.0
#define TITLE_PART 0.99

static double
inner_pt (const FmLabelPen *self)
{
  return self->width_pt - 2.0 * MARGIN_PT;
}

/* Unhinted, so that paper, screen and pictures break lines alike. */
static PangoLayout *
new_layout (const FmLabelPen *self, double size_pt, const char *markup)
{
  PangoLayout *layout = pango_cairo_create_layout (self->cr);
  PangoFontDescription *font = pango_font_description_from_string (FONT);
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  pango_cairo_context_set_font_options (pango_layout_get_context (layout), options);
  cairo_font_options_destroy (options);
  pango_font_description_set_absolute_size (font, size_pt * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_markup (layout, markup, -1);
  return layout;
}

static double
width_of (PangoLayout *layout)
{
  int width;

  pango_layout_get_size (layout, &width, NULL);
  return (double)width / PANGO_SCALE;
}

static double
base_of (PangoLayout *layout)
{
  return (double)pango_layout_get_baseline (layout) / PANGO_SCALE;
}

/* The texts of one row, which stand on one base line. */
typedef struct {
  PangoLayout *layouts[3]; /* NULL where there is none */
  double x_pt[3];
} Row;

static void
row_add (Row *row, guint cell, PangoLayout *layout, double x_pt)
{
  row->layouts[cell] = layout;
  row->x_pt[cell] = x_pt;
}

static void
row_show (Row *row, FmLabelPen *pen)
{
  double base_pt = 0.0, bottom_pt = 0.0;

  for (guint i = 0; i < G_N_ELEMENTS (row->layouts); i++)
    if (row->layouts[i] != NULL)
      base_pt = MAX (base_pt, base_of (row->layouts[i]));
  for (guint i = 0; i < G_N_ELEMENTS (row->layouts); i++) {
    PangoLayout *layout = row->layouts[i];
    double down_pt;

    if (layout == NULL)
      continue;
    down_pt = base_pt - base_of (layout);
    cairo_move_to (pen->cr, row->x_pt[i], pen->y_pt + down_pt);
    pango_cairo_show_layout (pen->cr, layout);
    bottom_pt = MAX (bottom_pt, down_pt + fm_pango_height_pt (layout));
    g_object_unref (layout);
  }
  pen->y_pt += bottom_pt;
}

static void
gather (const FmLabelPen *self, const char *markup)
{
  g_autofree char *plain = NULL;

  if (markup != NULL && pango_parse_markup (markup, -1, 0, NULL, &plain, NULL, NULL))
    g_string_append_printf (self->text, "%s ", plain);
}

static gboolean
gather_row (const FmLabelPen *self, const char *left, const char *middle, const char *right)
{
  if (self->text != NULL) {
    gather (self, left);
    gather (self, middle);
    gather (self, right);
    g_string_append_c (self->text, '\n');
  }
  return self->cr == NULL;
}

void
fm_label_pen_bar (FmLabelPen *self, double thickness_pt)
{
  if (self->cr == NULL)
    return;
  self->y_pt += ROW_GAP_PT;
  cairo_rectangle (self->cr, MARGIN_PT, self->y_pt, inner_pt (self), thickness_pt);
  cairo_fill (self->cr);
  self->y_pt += thickness_pt + ROW_GAP_PT;
}

/* Puts @text at the end of the row, @shift_pt before it. Returns its width. */
static double
add_right (
    Row *row, guint cell, const FmLabelPen *pen, double size_pt, const char *text, double shift_pt)
{
  PangoLayout *layout;
  double width_pt;

  if (text == NULL)
    return 0.0;
  layout = new_layout (pen, size_pt, text);
  width_pt = width_of (layout);
  row_add (row, cell, layout, pen->width_pt - MARGIN_PT - shift_pt - width_pt);
  return width_pt;
}

static void
add_left (
    Row *row, const FmLabelPen *pen, double size_pt, const char *text, double x_pt, double room_pt)
{
  PangoLayout *layout = new_layout (pen, size_pt, text);

  pango_layout_set_width (layout, (int)(room_pt * PANGO_SCALE));
  row_add (row, 0, layout, x_pt);
}

void
fm_label_pen_row (
    FmLabelPen *self, double size_pt, double indent_pt, const char *left, const char *right)
{
  Row row = { { NULL }, { 0.0 } };
  double right_pt;

  if (gather_row (self, left, NULL, right))
    return;
  right_pt = add_right (&row, 1, self, size_pt, right, 0.0);
  if (left != NULL)
    add_left (&row, self, size_pt, left, MARGIN_PT + indent_pt,
              inner_pt (self) - indent_pt - right_pt);
  row_show (&row, self);
}

void
fm_label_pen_columns (
    FmLabelPen *self, double size_pt, const char *left, const char *middle, const char *right)
{
  const double column_pt = COLUMN_PART * inner_pt (self);
  Row row = { { NULL }, { 0.0 } };

  if (gather_row (self, left, middle, right))
    return;
  add_right (&row, 1, self, size_pt, middle, column_pt);
  add_right (&row, 2, self, size_pt, right, 0.0);
  add_left (&row, self, size_pt, left, MARGIN_PT, inner_pt (self) - 2.0 * column_pt);
  row_show (&row, self);
}

void
fm_label_pen_title (FmLabelPen *self, const char *text)
{
  g_autofree char *markup = g_strdup_printf ("<b>%s</b>", text);
  g_autoptr (PangoLayout) layout = NULL;

  if (gather_row (self, markup, NULL, NULL))
    return;
  layout = new_layout (self, TITLE_TRIAL_PT, markup);
  fm_label_pen_row (self, TITLE_TRIAL_PT * inner_pt (self) / width_of (layout) * TITLE_PART, 0.0,
                    markup, NULL);
}
