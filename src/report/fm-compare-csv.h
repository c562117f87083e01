/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-csv.h - a comparison as a table for a spreadsheet */
#pragma once

#include "core/compare/fm-comparison.h"

G_BEGIN_DECLS

/**
 * CSV text (RFC 4180: CRLF, quotes doubled), UTF-8, decimal point. The first lines cite the
 * dataset; then one header line and one line per row, each with its unit. A value that is not
 * known is an empty cell; where only part of the mass is covered the cell holds ">=" and the
 * known part. A text that a spreadsheet would run as a formula gets an apostrophe in front.
 *
 * @reference: column that the differences refer to, negative for absolute values
 * @notice: (nullable): a line to begin with
 */
char *fm_compare_csv (const FmComparison *comparison, int reference, const char *notice);

G_END_DECLS
