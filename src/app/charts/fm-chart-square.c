/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-square.c - the Pearson square of two ingredients, as the trade lays it out */
#include "app/charts/fm-chart-square.h"

#include <glib/gi18n-lib.h>

#include "core/base/fm-number.h"

#define MARGIN_PX 12.0
#define GAP_PX 6.0
/* The texts at the sides never take more than this part of the width. */
#define SIDE_PART 0.36
/* A side and the middle have two lines each, and the diagonals one between them. */
#define N_LINES 8

/* Rows of the table, in the order of the marks. */
enum {
  ROW_A,
  ROW_TARGET,
  ROW_B,
};

struct _FmChartSquare {
  FmChart parent_instance;

  char *a_name;
  char *b_name;
  FmPearson square;
};

G_DEFINE_FINAL_TYPE (FmChartSquare, fm_chart_square, FM_TYPE_CHART)

/* Two lines around @y. Returns: the place of both. */
static FmBox
draw_two (
    FmChartCanvas *canvas, const char *first, const char *second, double x, double y, double align)
{
  const double half = fm_chart_line_height (canvas->pango) / 2.0;
  const int room = (int)(SIDE_PART * canvas->width);
  const FmBox one = fm_chart_canvas_text_box (canvas, first, x, y - half, align, room);
  const FmBox two = fm_chart_canvas_text_box (canvas, second, x, y + half, align, room);
  const double left = MIN (one.x, two.x);

  fm_chart_canvas_text (canvas, first, x, y - half, align, room);
  fm_chart_canvas_text (canvas, second, x, y + half, align, room);
  return (FmBox){ left, one.y, MAX (one.x + one.width, two.x + two.width) - left,
                  two.y + two.height - one.y };
}

static FmBox
draw_side (FmChartCanvas *canvas, const char *name, double fat_pct, double y)
{
  g_autofree char *number = fm_number_format_unit (fat_pct, 1, "%");
  g_autofree char *fat = g_strdup_printf (_ ("%s fat"), number);

  return draw_two (canvas, name, fat, MARGIN_PX, y, 0);
}

static FmBox
draw_parts (FmChartCanvas *canvas, double parts, double share_pct, double y)
{
  g_autofree char *number = fm_number_format (parts, 1);
  g_autofree char *share = fm_number_format_unit (share_pct, 1, "%");
  g_autofree char *text = g_strdup_printf (_ ("%s parts"), number);

  return draw_two (canvas, text, share, canvas->width - MARGIN_PX, y, 1);
}

/* From the inner corner of a text at the side to the corner of the middle that faces it. */
static void
draw_diagonal (FmChartCanvas *canvas, const FmBox *side, const FmBox *middle)
{
  const gboolean left = side->x < middle->x;
  const gboolean above = side->y < middle->y;

  fm_chart_canvas_line (canvas, left ? side->x + side->width + GAP_PX : side->x - GAP_PX,
                        above ? side->y + side->height : side->y,
                        left ? middle->x - GAP_PX : middle->x + middle->width + GAP_PX,
                        above ? middle->y : middle->y + middle->height);
}

void
fm_chart_square_draw (const char *a_name,
                      const char *b_name,
                      const FmPearson *square,
                      FmChartCanvas *canvas)
{
  const double line = fm_chart_line_height (canvas->pango);
  const double top = MARGIN_PX + line;
  const double bottom = canvas->height - MARGIN_PX - line;
  g_autofree char *target = fm_number_format_unit (square->target_pct, 1, "%");
  const FmBox middle =
      draw_two (canvas, _ ("target"), target, canvas->width / 2, canvas->height / 2, 0.5);
  const FmBox sides[] = {
    draw_side (canvas, a_name, square->a_pct, top),
    draw_side (canvas, b_name, square->b_pct, bottom),
    draw_parts (canvas, square->a_parts, square->a_share_pct, top),
    draw_parts (canvas, square->b_parts, square->b_share_pct, bottom),
  };

  fm_chart_canvas_set_colour (canvas, &canvas->palette.ink, 0.6);
  cairo_set_line_width (canvas->cr, 1);
  cairo_new_path (canvas->cr);
  cairo_rectangle (canvas->cr, 0.5, 0.5, canvas->width - 1, canvas->height - 1);
  cairo_stroke (canvas->cr);
  for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
    draw_diagonal (canvas, &sides[i], &middle);
  fm_chart_canvas_mark (canvas, ROW_A, &sides[0]);
  fm_chart_canvas_mark (canvas, ROW_TARGET, &middle);
  fm_chart_canvas_mark (canvas, ROW_B, &sides[1]);
}

int
fm_chart_square_height (PangoContext *pango)
{
  return (int)(2 * MARGIN_PX) + N_LINES * fm_chart_line_height (pango);
}

static void
draw (FmChart *chart, FmChartCanvas *canvas)
{
  const FmChartSquare *self = FM_CHART_SQUARE (chart);

  fm_chart_square_draw (self->a_name, self->b_name, &self->square, canvas);
}

static void
get_size (FmChart *chart, GtkOrientation orientation, int *minimum, int *natural)
{
  PangoContext *pango = gtk_widget_get_pango_context (GTK_WIDGET (chart));

  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 240 : fm_chart_square_height (pango);
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 420 : *minimum;
}

static void
fm_chart_square_finalize (GObject *object)
{
  FmChartSquare *self = FM_CHART_SQUARE (object);

  g_free (self->a_name);
  g_free (self->b_name);
  G_OBJECT_CLASS (fm_chart_square_parent_class)->finalize (object);
}

static void
fm_chart_square_class_init (FmChartSquareClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_chart_square_finalize;
  FM_CHART_CLASS (klass)->draw = draw;
  FM_CHART_CLASS (klass)->get_size = get_size;
}

static void
fm_chart_square_init (FmChartSquare *self)
{
}

static void
add_side (FmChartTable *table, const char *name, double fat_pct, double parts, double share_pct)
{
  g_autofree char *fat = fm_number_format_unit (fat_pct, 1, "%");
  g_autofree char *part = fm_number_format (parts, 1);
  g_autofree char *share = fm_number_format_unit (share_pct, 1, "%");
  const char *cells[] = { name, fat, part, share, NULL };

  /* Translators: an ingredient, its fat, how many parts and what share of the blend it is. */
  fm_chart_table_add (
      table, g_strdup_printf (_ ("%s: %s fat, %s parts, %s of both"), name, fat, part, share),
      cells);
}

static FmChartTable *
make_table (const FmChartSquare *self)
{
  const char *headings[] = { "", _ ("Fat"), _ ("Parts"), _ ("Share"), NULL };
  FmChartTable *table = fm_chart_table_new (headings);
  g_autofree char *target = fm_number_format_unit (self->square.target_pct, 1, "%");
  const char *cells[] = { _ ("Target"), target, "", "", NULL };

  add_side (table, self->a_name, self->square.a_pct, self->square.a_parts,
            self->square.a_share_pct);
  fm_chart_table_add (table, g_strdup_printf (_ ("Target: %s fat"), target), cells);
  add_side (table, self->b_name, self->square.b_pct, self->square.b_parts,
            self->square.b_share_pct);
  return table;
}

void
fm_chart_square_set (FmChartSquare *self,
                     const char *a_name,
                     const char *b_name,
                     const FmPearson *square,
                     const char *words)
{
  g_return_if_fail (FM_IS_CHART_SQUARE (self));
  g_free (self->a_name);
  g_free (self->b_name);
  self->a_name = g_strdup (a_name);
  self->b_name = g_strdup (b_name);
  self->square = *square;
  fm_chart_say (FM_CHART (self), _ ("Pearson square"), words, make_table (self));
  fm_chart_set_legend (FM_CHART (self), words);
}
