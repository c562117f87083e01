/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-csv.h - reading a table of a spreadsheet (RFC 4180)
 *
 * Cells may stand in quotes, quotes in them doubled; lines end in LF or CRLF; a mark of UTF-8 in
 * front is skipped. Blank lines are no rows. One row is in memory at a time.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * @line: where the row begins, from 1
 * @cells: NULL after the last one
 *
 * FALSE + error ends the reading.
 */
typedef gboolean (*FmCsvRowFunc) (guint line,
                                  const char *const *cells,
                                  gpointer data,
                                  GError **error);

/** The sign that stands most often in the first line: a semicolon, a tab, else a comma. */
char fm_csv_guess_separator (const char *text);
/** FALSE + error of @func, or NOT_A_NUMBER with the line where the text is no UTF-8, holds a NUL or
 * leaves a quote open. */
gboolean fm_csv_read (const char *text,
                      gsize length,
                      char separator,
                      FmCsvRowFunc func,
                      gpointer data,
                      GError **error);

G_END_DECLS
