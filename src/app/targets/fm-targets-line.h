/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-line.h - one permitted ingredient: its share limits and its lock */
#pragma once

#include <gtk/gtk.h>

#include "core/formula/fm-formula.h"

G_BEGIN_DECLS

#define FM_TYPE_TARGETS_LINE (fm_targets_line_get_type ())
G_DECLARE_FINAL_TYPE (FmTargetsLine, fm_targets_line, FM, TARGETS_LINE, GtkListBoxRow)

/**
 * Shows line @index of @formula with its present limits.
 * @further: it is no line of the blend yet, and may be removed
 * @freed: it may change though its kind keeps its share
 */
GtkWidget *
fm_targets_line_new (const FmFormula *formula, guint index, gboolean further, gboolean freed);
guint fm_targets_line_get_index (FmTargetsLine *self);
/** Writes limits into @line; FALSE while an entry holds no good number. */
gboolean fm_targets_line_store (FmTargetsLine *self, FmFormulaLine *line);
gboolean fm_targets_line_keeps_mass (FmTargetsLine *self);

/**
 * Signals:
 *   "limits-changed" ()   the user changed a limit or the lock
 *   "figures-wanted" ()   the user wants to see or change the figures of the ingredient
 *   "removal-wanted" ()   the user takes back a further ingredient
 */

G_END_DECLS
