/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-line-row.h - one line of the formula: its entries, figures and buttons
 *
 * Keys while the focus is in the row: Alt+Up and Alt+Down move the line, F2 edits its ingredient.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-formula-line-item.h"
#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_FORMULA_LINE_ROW (fm_formula_line_row_get_type ())
G_DECLARE_FINAL_TYPE (FmFormulaLineRow, fm_formula_line_row, FM, FORMULA_LINE_ROW, GtkListBoxRow)

GtkWidget *fm_formula_line_row_new (FmSession *session, FmFormulaLineItem *item);
const char *fm_formula_line_row_get_line_id (FmFormulaLineRow *self);
/** A row that is not seen keeps what it shows until it is, or until it is told to catch up. */
void fm_formula_line_row_set_seen (FmFormulaLineRow *self, gboolean seen);
void fm_formula_line_row_catch_up (FmFormulaLineRow *self);
/** The controls of a row from left to right; the first three are numbers. */
#define FM_FORMULA_LINE_N_CELLS 6
#define FM_FORMULA_LINE_N_NUMBERS 3
GtkWidget *fm_formula_line_row_get_cell (GtkWidget *row, guint column);
/** Puts the focus into the grams entry and selects its text. */
void fm_formula_line_row_focus_mass (FmFormulaLineRow *self);

G_END_DECLS
