/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-line-layout.h - one line of a table that folds when the page is narrow
 *
 * A layout manager for up to six children in this order: lead (takes what is left), entries,
 * figures (only while wide), summary (only while folded), tail (buttons), message (full width,
 * below).
 *
 *   wide:    lead ......... | entries | figures | tail
 *   folded:  lead ................... | tail
 *            entries | summary ........
 *
 * The parts have the same widths in every row, so that rows and their heading line up.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_FORMULA_LINE_LAYOUT (fm_formula_line_layout_get_type ())
G_DECLARE_FINAL_TYPE (
    FmFormulaLineLayout, fm_formula_line_layout, FM, FORMULA_LINE_LAYOUT, GtkLayoutManager)

/** Property "like" (GtkListBox): this is the heading of its rows; it has the widths of their parts
 * and takes no room while they are folded. */

G_END_DECLS
