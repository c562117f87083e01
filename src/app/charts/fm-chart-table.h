/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart-table.h - the numbers of a chart as rows of text, each with a sentence for the ear */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct {
  char *sentence;
  GStrv cells;
} FmChartRow;

typedef struct {
  GStrv headings;
  GPtrArray *rows; /* FmChartRow */
} FmChartTable;

/** @headings: copied. (transfer full) */
FmChartTable *fm_chart_table_new (const char *const *headings);
FmChartTable *fm_chart_table_copy (const FmChartTable *self);
void fm_chart_table_free (FmChartTable *self);
/** @sentence: (transfer full): says all of the row; @cells: as many as headings, copied. */
void fm_chart_table_add (FmChartTable *self, char *sentence, const char *const *cells);
const FmChartRow *fm_chart_table_row (const FmChartTable *self, guint index);
/** All sentences. (transfer full) */
char *fm_chart_table_describe (const FmChartTable *self);
/** A line each, cells parted by tabs, the headings first. (transfer full) */
char *fm_chart_table_to_text (const FmChartTable *self);
/** Shows it in @grid, in place of what was there. */
void fm_chart_table_fill (const FmChartTable *self, GtkGrid *grid);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmChartTable, fm_chart_table_free)

G_END_DECLS
