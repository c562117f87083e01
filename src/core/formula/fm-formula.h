/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula.h - the lines of a blend, and how they may be edited
 *
 * A formula is a small mutable value. Callers that need history copy it before an edit; the
 * ingredients are shared by reference and never change.
 */
#pragma once

#include "core/base/fm-history.h"
#include "core/formula/fm-brief.h"
#include "core/formula/fm-process.h"
#include "core/composition/fm-ingredient.h"

G_BEGIN_DECLS

#define FM_MAX_LINE_MASS_G 1e7

typedef struct {
  char *id; /* UUID, stable over edits and versions */
  FmIngredient *ingredient;
  double mass_g;        /* [0, FM_MAX_LINE_MASS_G] */
  gboolean locked;      /* keeps its mass when shares of others are edited */
  double min_share_pct; /* NaN = none */
  double max_share_pct; /* NaN = none */
  char *note;           /* (nullable) */
} FmFormulaLine;

typedef struct {
  GPtrArray *lines; /* FmFormulaLine, owned */
  FmBrief *brief;
  FmProcess *process; /* how it is to be made */
} FmFormula;

FmFormula *fm_formula_new (void);
FmFormula *fm_formula_copy (const FmFormula *self);
void fm_formula_free (FmFormula *self);
/** Of FmFormula. Neighbouring states share lines, so that most steps cost one line: none may be
 * changed. */
extern const FmHistoryKind fm_formula_history_kind;
gboolean fm_formula_equal (const FmFormula *a, const FmFormula *b);

guint fm_formula_n_lines (const FmFormula *self);
FmFormulaLine *fm_formula_line (const FmFormula *self, guint index); /* (transfer none) */
double fm_formula_total_g (const FmFormula *self);
/** Kinds of animal in the lines that weigh something; the empty set when none does. */
FmSpeciesSet fm_formula_species (const FmFormula *self);
/** Share of line @index in % of the total; NaN when the total is zero. */
double fm_formula_share_pct (const FmFormula *self, guint index);

/**
 * Appends a line (the only way to make one); an unusable mass counts as 0. Of two different
 * ingredients of one name the new one is named with its number. Returns its index.
 */
guint fm_formula_add (FmFormula *self, FmIngredient *ingredient, double mass_g);
void fm_formula_remove (FmFormula *self, guint index);
/** Moves the line at @from so that it ends at @to. */
void fm_formula_move (FmFormula *self, guint from, guint to);
gboolean fm_formula_set_mass (FmFormula *self, guint index, double mass_g, GError **error);
/**
 * Sets the share of a line at constant total: the other unlocked lines give or take in
 * proportion to their mass (evenly if they weigh nothing). Fails with LOCKED when locked lines
 * leave no room and with EMPTY when the total is zero. Leaves the formula alone on failure.
 */
gboolean fm_formula_set_share (FmFormula *self, guint index, double share_pct, GError **error);
/** Scales all lines, locked ones too, to a total of @total_g. */
gboolean fm_formula_scale_to (FmFormula *self, double total_g, GError **error);
/** Replaces the ingredient of a line (e.g. edited analysis) and keeps mass, lock and id; names it
 * as fm_formula_add() does. */
void fm_formula_set_ingredient (FmFormula *self, guint index, FmIngredient *ingredient);
/** Number of lines that could be merged into an earlier line of the same ingredient. */
guint fm_formula_n_duplicates (const FmFormula *self);
/** Merges lines with the same ingredient identity and composition: masses add, locks stay. */
guint fm_formula_merge_duplicates (FmFormula *self);

/** JSON text of the whole formula with frozen compositions lives in the store layer. */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmFormula, fm_formula_free)

G_END_DECLS
