/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-totals-cell.h - one figure of the whole blend: its name, its value and a note, as a button
 *
 * It keeps its size whatever the figure is, so that nothing below moves when a value appears.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_TOTALS_CELL (fm_totals_cell_get_type ())
G_DECLARE_FINAL_TYPE (FmTotalsCell, fm_totals_cell, FM, TOTALS_CELL, GtkButton)

/** @n_note_lines: room that the note has; what does not fit is in the tooltip. */
GtkWidget *fm_totals_cell_new (guint n_note_lines);
/** @note: (nullable). */
void
fm_totals_cell_show (FmTotalsCell *self, const char *caption, const char *value, const char *note);
/** @css_class: of the note. */
void fm_totals_cell_set_note_class (FmTotalsCell *self, const char *css_class);
const char *fm_totals_cell_get_caption (FmTotalsCell *self);

G_END_DECLS
