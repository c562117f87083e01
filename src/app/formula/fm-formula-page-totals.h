/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-page-totals.h - the numbers of the whole blend, as captions with values */
#pragma once

#include <gtk/gtk.h>

#include "core/formula/fm-analysis.h"

G_BEGIN_DECLS

#define FM_TYPE_FORMULA_PAGE_TOTALS (fm_formula_page_totals_get_type ())
G_DECLARE_FINAL_TYPE (
    FmFormulaPageTotals, fm_formula_page_totals, FM, FORMULA_PAGE_TOTALS, GtkWidget)

/** Signal "target-chosen" (guint kind, an FmTargetKind): the user wants to see its band. */
void fm_formula_page_totals_update (FmFormulaPageTotals *self,
                                    const FmFormula *formula,
                                    const FmAnalysis *analysis);

G_END_DECLS
