/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-copy.c - a comparison as it is shown: for the clipboard and for paper */
#include "report/fm-compare-copy.h"

#include <glib/gi18n-lib.h>

#include "core/base/fm-chart-scale.h"

/* After the name of a row of the sheet. */
#define COLUMNS_PER_BLOCK (FM_SHEET_N_CELLS - 1)

typedef void (*HeadingFunc) (const FmCompareView *view, FmCompareSection section, gpointer out);
typedef void (*RowFunc) (const FmCompareView *view, const FmCompareRow *row, gpointer out);

static void
each_row (const FmCompareView *view, HeadingFunc heading, RowFunc add, gpointer out)
{
  g_autoptr (GPtrArray) rows = fm_comparison_shown_rows (view->comparison, view->only_differing);
  int section = -1;

  for (guint i = 0; i < rows->len; i++) {
    const FmCompareRow *row = g_ptr_array_index (rows, i);

    if ((int)row->section != section)
      heading (view, row->section, out);
    section = (int)row->section;
    add (view, row, out);
  }
}

/* "Differences from Pan patty, version 6": (transfer full) NULL where values are shown. */
static char *
reference_text (const FmCompareView *view)
{
  if (view->reference < 0)
    return NULL;
  return g_strdup_printf (_ ("Differences from: %s (its own column holds its values)"),
                          fm_comparison_item (view->comparison, (guint)view->reference)->title);
}

/* A cell of a table in plain text is one line. */
static void
append_cell (GString *out, const char *text)
{
  g_autofree char *line = g_strdup (text);

  g_string_append (out, g_strdelimit (line, "\t\r\n", ' '));
}

static void
append_text_heading (const FmCompareView *view, FmCompareSection section, gpointer out)
{
  g_string_append_printf (out, "%s\n", fm_compare_section_name (section));
}

static void
append_text_row (const FmCompareView *view, const FmCompareRow *row, gpointer out)
{
  g_autofree char *title = fm_compare_row_title (row);

  append_cell (out, title);
  for (guint i = 0; i < fm_comparison_n_items (view->comparison); i++) {
    g_autofree char *cell = fm_compare_row_text (row, i, view->reference);

    g_string_append_c (out, '\t');
    append_cell (out, cell);
  }
  g_string_append_c (out, '\n');
}

char *
fm_compare_copy_text (const FmCompareView *view)
{
  g_autofree char *reference = reference_text (view);
  GString *out = g_string_new (NULL);

  if (view->notice != NULL)
    g_string_append_printf (out, "%s\n", view->notice);
  if (reference != NULL)
    g_string_append_printf (out, "%s\n", reference);
  g_string_append (out, _ ("Quantity"));
  for (guint i = 0; i < fm_comparison_n_items (view->comparison); i++) {
    g_string_append_c (out, '\t');
    append_cell (out, fm_comparison_item (view->comparison, i)->title);
  }
  g_string_append_c (out, '\n');
  each_row (view, append_text_heading, append_text_row, out);
  return g_string_free (out, FALSE);
}

static void
append_tag (GString *out, const char *tag, const char *attributes, const char *text)
{
  g_autofree char *escaped = g_markup_escape_text (text, -1);

  g_string_append_printf (out, "<%s%s>%s</%s>", tag, attributes, escaped, tag);
}

static void
append_html_heading (const FmCompareView *view, FmCompareSection section, gpointer out)
{
  g_autofree char *span = g_strdup_printf (" colspan=\"%u\" align=\"left\"",
                                           fm_comparison_n_items (view->comparison) + 1);

  g_string_append (out, "<tr>");
  append_tag (out, "th", span, fm_compare_section_name (section));
  g_string_append (out, "</tr>\n");
}

static void
append_html_row (const FmCompareView *view, const FmCompareRow *row, gpointer out)
{
  g_autofree char *title = fm_compare_row_title (row);

  g_string_append (out, "<tr>");
  append_tag (out, "th", " scope=\"row\" align=\"left\"", title);
  for (guint i = 0; i < fm_comparison_n_items (view->comparison); i++) {
    g_autofree char *cell = fm_compare_row_text (row, i, view->reference);

    append_tag (out, "td", row->texts != NULL ? "" : " align=\"right\"", cell);
  }
  g_string_append (out, "</tr>\n");
}

char *
fm_compare_copy_html (const FmCompareView *view)
{
  g_autofree char *reference = reference_text (view);
  GString *out = g_string_new ("<meta charset=\"utf-8\">");

  if (view->notice != NULL)
    append_tag (out, "p", "", view->notice);
  if (reference != NULL)
    append_tag (out, "p", "", reference);
  g_string_append (out, "<table>\n<tr>");
  append_tag (out, "th", " scope=\"col\" align=\"left\"", _ ("Quantity"));
  for (guint i = 0; i < fm_comparison_n_items (view->comparison); i++)
    append_tag (out, "th", " scope=\"col\"", fm_comparison_item (view->comparison, i)->title);
  g_string_append (out, "</tr>\n");
  each_row (view, append_html_heading, append_html_row, out);
  g_string_append (out, "</table>");
  return g_string_free (out, FALSE);
}

/* The columns of a comparison that stand side by side on the sheet. */
typedef struct {
  FmBatchSheet *sheet;
  guint first;
  guint end;
} Block;

static void
add_heading (const FmCompareView *view, FmCompareSection section, gpointer out)
{
  const Block *block = out;
  FmSheetRow *row;

  fm_batch_sheet_add (block->sheet, FM_SHEET_HEADING, g_strdup (fm_compare_section_name (section)));
  row = fm_batch_sheet_add (block->sheet, FM_SHEET_COLUMNS, g_strdup (_ ("Quantity")));
  for (guint i = block->first; i < block->end; i++)
    row->cells[1 + i - block->first] = g_strdup (fm_chart_letter (i));
}

/* Words do not fit beside each other, so they stand below. */
static void
add_words (const FmCompareView *view, const FmCompareRow *row, const Block *block)
{
  fm_batch_sheet_add (block->sheet, FM_SHEET_TOTAL, g_strdup (row->name));
  for (guint i = block->first; i < block->end; i++) {
    g_autofree char *cell = fm_compare_row_text (row, i, view->reference);

    fm_batch_sheet_add (block->sheet, FM_SHEET_TEXT,
                        g_strdup_printf ("%s: %s", fm_chart_letter (i), cell));
  }
}

static void
add_row (const FmCompareView *view, const FmCompareRow *row, gpointer out)
{
  const Block *block = out;
  FmSheetRow *sheet_row;

  if (row->texts != NULL) {
    add_words (view, row, block);
    return;
  }
  sheet_row = fm_batch_sheet_add (block->sheet, FM_SHEET_TOTAL, fm_compare_row_title (row));
  for (guint i = block->first; i < block->end; i++)
    sheet_row->cells[1 + i - block->first] = fm_compare_row_text (row, i, view->reference);
}

static void
add_block (const FmCompareView *view, FmBatchSheet *sheet, guint first)
{
  const guint n = fm_comparison_n_items (view->comparison);
  Block block = { sheet, first, MIN (first + COLUMNS_PER_BLOCK, n) };

  fm_batch_sheet_add (sheet, FM_SHEET_TITLE, g_strdup (_ ("Comparison")));
  for (guint i = first; i < block.end; i++)
    fm_batch_sheet_add (sheet, FM_SHEET_SUBTITLE,
                        g_strdup_printf ("%s · %s", fm_chart_letter (i),
                                         fm_comparison_item (view->comparison, i)->title));
  if (view->reference >= 0)
    fm_batch_sheet_add (sheet, FM_SHEET_TEXT, reference_text (view));
  each_row (view, add_heading, add_row, &block);
}

FmBatchSheet *
fm_compare_copy_sheet (const FmCompareView *view)
{
  FmBatchSheet *sheet = fm_batch_sheet_new_empty (_ ("Comparison"));

  sheet->is_long = TRUE;
  sheet->notice = view->notice;
  for (guint i = 0; i < fm_comparison_n_items (view->comparison); i += COLUMNS_PER_BLOCK)
    add_block (view, sheet, i);
  fm_batch_sheet_add (sheet, FM_SHEET_SMALL,
                      g_strdup (_ ("Composition: USDA National Nutrient Database for Standard "
                                   "Reference, Release 28, and your own entries.")));
  return sheet;
}
