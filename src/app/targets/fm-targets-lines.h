/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-lines.h - the permitted ingredients: the lines of the blend and what else may be used
 *
 * Works on a formula that its owner keeps; further ingredients are lines of 0 g behind those of the
 * blend.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_TARGETS_LINES (fm_targets_lines_get_type ())
G_DECLARE_FINAL_TYPE (FmTargetsLines, fm_targets_lines, FM, TARGETS_LINES, GtkWidget)

/** @formula: (transfer none): must outlive the widget's use; it is changed as the user edits. */
void fm_targets_lines_set_formula (FmTargetsLines *self, FmSession *session, FmFormula *formula);
/** How many lines of the formula are those of the blend; further ingredients come behind them. */
guint fm_targets_lines_n_present (FmTargetsLines *self);
/** Whether line @index keeps its mass: locked, or salt, spice, water or binder and not freed. */
gboolean fm_targets_lines_keeps_mass (FmTargetsLines *self, guint index);
/** Whether a spread is published for a line that states none. */
gboolean fm_targets_lines_lack_spread (FmTargetsLines *self);
/** Takes those spreads as the uncertainty of the fat. */
void fm_targets_lines_take_spreads (FmTargetsLines *self);
/** Writes limits and locks into the formula; FALSE while some entry holds no good number. */
gboolean fm_targets_lines_store (FmTargetsLines *self);

/** Signal "changed" (): an ingredient, a limit or a lock was changed. */

G_END_DECLS
