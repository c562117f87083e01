/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-page.h - the lines of the shown formula, the brief and the live numbers */
#pragma once

#include "app/widgets/fm-page.h"

G_BEGIN_DECLS

#define FM_TYPE_FORMULA_PAGE (fm_formula_page_get_type ())
G_DECLARE_FINAL_TYPE (FmFormulaPage, fm_formula_page, FM, FORMULA_PAGE, FmPage)

/** A blend was just made and is shown: the cursor goes to the search. */
void fm_formula_page_begin (FmFormulaPage *self);

/** Looks for an ingredient as if @text had been typed. */
void fm_formula_page_find_food (FmFormulaPage *self, const char *text);

G_END_DECLS
