/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-csv-text.h - cells of a table for a spreadsheet */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** Quoted; what a spreadsheet would run as a formula gets an apostrophe in front. */
void fm_csv_append_text (GString *csv, const char *text);
/** With a point and @decimals places; NaN is an empty cell. */
void fm_csv_append_number (GString *csv, double value, int decimals);

G_END_DECLS
