/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-line.h - one line of the comparison table, as a list model holds it */
#pragma once

#include <gio/gio.h>

#include "core/compare/fm-comparison.h"

G_BEGIN_DECLS

typedef enum {
  FM_COMPARE_LINE_HEADING, /* of a section; no cells */
  FM_COMPARE_LINE_TITLE,   /* full names of the items */
  FM_COMPARE_LINE_ABOUT,   /* what else is known about the items */
  FM_COMPARE_LINE_ROW,
} FmCompareLineKind;

#define FM_TYPE_COMPARE_LINE (fm_compare_line_get_type ())
G_DECLARE_FINAL_TYPE (FmCompareLine, fm_compare_line, FM, COMPARE_LINE, GObject)

/** @row: (nullable): kept by pointer; the comparison must outlive the line. */
FmCompareLine *
fm_compare_line_new (FmCompareLineKind kind, const char *heading, const FmCompareRow *row);
FmCompareLineKind fm_compare_line_get_kind (FmCompareLine *self);
const FmCompareRow *fm_compare_line_get_row (FmCompareLine *self);
/** Text of the first column. (transfer full) */
char *fm_compare_line_name (FmCompareLine *self, const FmComparison *comparison);
/** Text of a cell. (transfer full) */
char *fm_compare_line_cell (FmCompareLine *self,
                            const FmComparison *comparison,
                            guint column,
                            int reference);
/** The lines of @comparison, headings included; of the rows all, or only those that differ.
 * (transfer full) */
GPtrArray *fm_compare_lines (const FmComparison *comparison, gboolean only_differing);

G_END_DECLS
