/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-line-item.h - what one row of the formula shows, and the list of them
 *
 * The list keeps one item per line id over edits, so that a row under the typing cursor is never
 * rebuilt; an item emits "changed" () only when a figure of it differs.
 */
#pragma once

#include <gio/gio.h>

#include "core/formula/fm-analysis.h"

G_BEGIN_DECLS

/** Figures of one line; NaN = unknown. Read-only for views. */
typedef struct {
  char *id;
  FmIngredient *ingredient;
  double mass_g;
  double share_pct;
  double patty_g;       /* grams of this line in one patty */
  double batch_g;       /* grams of it in all patties of the brief */
  double fat_g;         /* fat grams of the line in the formula */
  double fat_share_pct; /* of the blend's known fat */
  int n_patties;
  guint position; /* from 0 */
  guint n_lines;
  gboolean locked;
  gboolean editable;
} FmLineFigures;

#define FM_TYPE_FORMULA_LINE_ITEM (fm_formula_line_item_get_type ())
G_DECLARE_FINAL_TYPE (FmFormulaLineItem, fm_formula_line_item, FM, FORMULA_LINE_ITEM, GObject)

const FmLineFigures *fm_formula_line_item_get_figures (FmFormulaLineItem *self);
/** Where the ingredient's numbers come from and what is unknown, in words. (transfer full) */
char *fm_formula_line_item_describe (FmFormulaLineItem *self);

#define FM_TYPE_FORMULA_LINE_LIST (fm_formula_line_list_get_type ())
G_DECLARE_FINAL_TYPE (FmFormulaLineList, fm_formula_line_list, FM, FORMULA_LINE_LIST, GObject)

FmFormulaLineList *fm_formula_line_list_new (void);
/** Brings the items up to date. NULL @formula empties the list. */
void fm_formula_line_list_update (FmFormulaLineList *self,
                                  const FmFormula *formula,
                                  const FmAnalysis *analysis,
                                  gboolean editable);

G_END_DECLS
