/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-table.c - the numbers of a chart as rows of text, each with a sentence for the ear */
#include "app/charts/fm-chart-table.h"

#include "app/widgets/fm-text-grid.h"

static void
row_free (gpointer data)
{
  FmChartRow *row = data;

  g_free (row->sentence);
  g_strfreev (row->cells);
  g_free (row);
}

FmChartTable *
fm_chart_table_new (const char *const *headings)
{
  FmChartTable *self = g_new0 (FmChartTable, 1);

  self->headings = g_strdupv ((GStrv)headings);
  self->rows = g_ptr_array_new_with_free_func (row_free);
  return self;
}

FmChartTable *
fm_chart_table_copy (const FmChartTable *self)
{
  FmChartTable *copy = fm_chart_table_new ((const char *const *)self->headings);

  for (guint i = 0; i < self->rows->len; i++) {
    const FmChartRow *row = fm_chart_table_row (self, i);

    fm_chart_table_add (copy, g_strdup (row->sentence), (const char *const *)row->cells);
  }
  return copy;
}

void
fm_chart_table_free (FmChartTable *self)
{
  g_strfreev (self->headings);
  g_ptr_array_unref (self->rows);
  g_free (self);
}

void
fm_chart_table_add (FmChartTable *self, char *sentence, const char *const *cells)
{
  FmChartRow *row = g_new0 (FmChartRow, 1);

  row->sentence = sentence;
  row->cells = g_strdupv ((GStrv)cells);
  g_ptr_array_add (self->rows, row);
}

const FmChartRow *
fm_chart_table_row (const FmChartTable *self, guint index)
{
  return g_ptr_array_index (self->rows, index);
}

char *
fm_chart_table_describe (const FmChartTable *self)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < self->rows->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "; " : "",
                            fm_chart_table_row (self, i)->sentence);
  return g_string_free (text, FALSE);
}

static void
append_line (GString *text, GStrv cells)
{
  g_autofree char *line = g_strjoinv ("\t", cells);

  g_string_append (text, line);
  g_string_append_c (text, '\n');
}

char *
fm_chart_table_to_text (const FmChartTable *self)
{
  GString *text = g_string_new (NULL);

  append_line (text, self->headings);
  for (guint i = 0; i < self->rows->len; i++)
    append_line (text, fm_chart_table_row (self, i)->cells);
  return g_string_free (text, FALSE);
}

void
fm_chart_table_fill (const FmChartTable *self, GtkGrid *grid)
{
  const guint n = g_strv_length (self->headings);

  fm_text_grid_clear (grid);
  fm_text_grid_add_row (grid, (const char *const *)self->headings, n, TRUE);
  for (guint i = 0; i < self->rows->len; i++)
    fm_text_grid_add_row (grid, (const char *const *)fm_chart_table_row (self, i)->cells, n, FALSE);
}
