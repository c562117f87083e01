/* fm-targets-line.h - one permitted ingredient: its share limits and its lock */
#pragma once

#include <gtk/gtk.h>

#include "core/fm-formula.h"

G_BEGIN_DECLS

#define FM_TYPE_TARGETS_LINE (fm_targets_line_get_type ())
G_DECLARE_FINAL_TYPE (FmTargetsLine, fm_targets_line, FM, TARGETS_LINE, GtkListBoxRow)

/** Shows line @index of @formula with its present limits. */
GtkWidget *fm_targets_line_new (const FmFormula *formula, guint index);
guint fm_targets_line_get_index (FmTargetsLine *self);
/** Writes limits and lock into @line; FALSE while an entry holds no good number. */
gboolean fm_targets_line_store (FmTargetsLine *self, FmFormulaLine *line);

/** Signal "limits-changed" (): the user changed a limit or the lock. */

G_END_DECLS
