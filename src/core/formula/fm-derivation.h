/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-derivation.h - where a figure of a blend comes from, as text that can be copied
 *
 * Each text names the ingredients with their masses, the rows with their numbers, the rule, the
 * source and what is not known. Masses are in grams whatever the notebook shows, as the sums are.
 */
#pragma once

#include "core/formula/fm-analysis.h"

G_BEGIN_DECLS

/** A nutrient of 100 g of the raw blend; fat with its uncertainty. Returns: (transfer full). */
char *
fm_derivation_nutrient (const FmFormula *formula, const FmAnalysis *analysis, FmNutrient nutrient);
/** Chemical lean and the lean point, calculated and declared. Returns: (transfer full). */
char *fm_derivation_lean (const FmFormula *formula, const FmAnalysis *analysis);
/** What a kilogram of the edible mass costs. Returns: (transfer full). */
char *fm_derivation_cost (const FmFormula *formula, const FmAnalysis *analysis);
/** Each target that is set: value, band and how it stands, then what the value is worked out of.
 * Returns: (transfer full). */
char *fm_derivation_targets (const FmFormula *formula, const FmAnalysis *analysis);
/** The mass of the lines and the patties that it makes. Returns: (transfer full). */
char *fm_derivation_mass (const FmFormula *formula, const FmAnalysis *analysis);
/**
 * The rows in the blend whose figures cannot all be true, one a line, with what is wrong.
 *
 * Returns: (transfer full) (nullable): NULL when there is none
 */
char *fm_derivation_doubts (const FmFormula *formula);

G_END_DECLS
