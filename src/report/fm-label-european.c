/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-european.c - the nutrition declaration of the European Union
 *
 * A table with the figures aligned (Article 34(2)); the x-height of its type is above 1.2 mm
 * (Article 13(2) and Annex IV).
 */
#include "report/fm-label-paint-private.h"

#include <math.h>

#define ROW_PT 8.0
#define TITLE_PT 10.0
#define RULE_PT 0.5

static char *
indented (const FmLabelRow *row)
{
  g_autofree char *name = g_markup_escape_text (row->name, -1);

  return row->indent > 0 ? g_strdup_printf ("– %s", name) : g_strdup_printf ("<b>%s</b>", name);
}

static char *
cell_text (const FmLabelFigure *figure, const FmLabelRow *row)
{
  g_autofree char *text = g_markup_escape_text (figure->text, -1);

  return g_strdup_printf ("%s %s", text, row->unit);
}

static void
draw_line (FmLabelPen *pen, const FmLabelLine *line)
{
  g_autofree char *name = indented (line->row);
  g_autofree char *amount = cell_text (&line->figure, line->row);
  g_autofree char *portion = cell_text (&line->portion, line->row);

  fm_label_pen_columns (pen, ROW_PT, *line->row->name != '\0' ? name : "", amount, portion);
}

void
fm_label_draw_european (FmLabelPen *pen, const FmLabelPicture *picture)
{
  const FmLabelPanel *panel = picture->panel;
  g_autofree char *words = g_markup_escape_text (picture->serving_words, -1);
  g_autofree char *portion =
      g_strdup_printf ("per %s (%.0f g)", words, round (panel->input.serving_g));

  fm_label_pen_row (pen, TITLE_PT, 0.0, "<b>Nutrition declaration</b>", NULL);
  fm_label_pen_bar (pen, RULE_PT);
  fm_label_pen_columns (pen, ROW_PT, "", "per 100 g", portion);
  for (guint i = 0; i < panel->lines->len; i++) {
    const FmLabelLine *line = &g_array_index (panel->lines, FmLabelLine, i);

    if (*line->row->name != '\0')
      fm_label_pen_bar (pen, FM_LABEL_HAIRLINE_PT);
    draw_line (pen, line);
  }
}
