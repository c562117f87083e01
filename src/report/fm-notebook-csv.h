/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-csv.h - a notebook as tables that a spreadsheet opens without mending
 *
 * UTF-8 with a mark in front, so that spreadsheets read it as such. A text that a spreadsheet would
 * run as a formula gets an apostrophe in front. Unknown values are empty cells. A sealed tasting
 * tells codes only. Tables of a notebook in which all is invented begin with a line that says so.
 */
#pragma once

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

typedef enum {
  FM_NOTEBOOK_CSV_FORMULAS,  /* a line a row: drafts and versions */
  FM_NOTEBOOK_CSV_NUTRITION, /* a nutrient a row, per 100 g raw */
  FM_NOTEBOOK_CSV_EXPERIMENTS,
  FM_NOTEBOOK_CSV_TASTINGS, /* a mark a row */
  FM_N_NOTEBOOK_CSVS,
} FmNotebookCsv;

/** Cells lie between @separator, numbers have @decimal; the two must differ. */
typedef struct {
  char separator;
  char decimal;
} FmCsvStyle;

/** What spreadsheets of the locale expect: a semicolon where the decimal sign is a comma. */
FmCsvStyle fm_csv_style_of_locale (void);
/** "formulas": for names of files. */
const char *fm_notebook_csv_name (FmNotebookCsv what);
/** Any thread but the main one. (transfer full) */
char *fm_notebook_csv (FmNotebook *notebook, FmNotebookCsv what, FmCsvStyle style, GError **error);
/** All of them into @folder, which is made. */
gboolean
fm_notebook_csv_write (FmNotebook *notebook, const char *folder, FmCsvStyle style, GError **error);

G_END_DECLS
