/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-amount.h - what a blend holds of each thing that labels tell
 *
 * Sources of what is calculated: energy of the European Union by Regulation (EU) No 1169/2011,
 * Annex XIV (protein and carbohydrate 17 kJ or 4 kcal, fat 37 or 9, fibre 8 or 2 a gram); salt =
 * sodium x 2.5, Annex I. American calories are those of the ingredients, which the dataset gives by
 * the factors of each food; where one gives none, protein and carbohydrate x 4 and fat x 9 of the
 * whole blend, both as 21 CFR 101.9(c)(1)(i) allows. Trans fat and added sugars are in no row of
 * the dataset: they are zero only where there is no fat, or no sugar, at all.
 */
#pragma once

#include "core/formula/fm-analysis.h"
#include "core/label/fm-label-rules.h"

G_BEGIN_DECLS

/**
 * FmLabelStated: what somebody states of the blend because no composition tells it.
 *
 * @per_100g: in the unit of the item, per 100 g of blend; NaN = not stated
 * @protein_quality: digestibility-corrected score, (0, 1.5]; NaN = not stated
 */
typedef struct {
  double per_100g[FM_N_LABEL_ITEMS];
  double protein_quality;
} FmLabelStated;

void fm_label_stated_init (FmLabelStated *self);

/** Per 100 g of @formula; what is calculated goes before what is @stated; NaN = not known. */
double fm_label_amount (FmLabelItem item,
                        const FmFormula *formula,
                        const FmAnalysis *analysis,
                        const FmLabelStated *stated);
/** TRUE when the amount is one that somebody stated. */
gboolean fm_label_amount_is_stated (FmLabelItem item,
                                    const FmFormula *formula,
                                    const FmAnalysis *analysis,
                                    const FmLabelStated *stated);
/** Standard uncertainty of the amount per 100 g: known of fat alone, and of what follows from fat
 * alone; NaN else. */
double fm_label_amount_u (FmLabelItem item, const FmAnalysis *analysis);
/** Names of the ingredients for which @item is not known, each once. Returns: (transfer full). */
GStrv fm_label_amount_missing (FmLabelItem item, const FmFormula *formula);
/** 21 CFR 101.9(c)(1)(i)(B): 4, 4 and 9 kcal a gram. */
double fm_label_general_kcal (double protein_g, double carbohydrate_g, double fat_g);

G_END_DECLS
