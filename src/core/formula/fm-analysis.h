/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-analysis.h - what a formula is made of, with its unknowns
 *
 * A composition is the mass-weighted mean of the ingredients. Unknown values stay unknown: an
 * amount carries its known part, the share of the mass that it covers, and who lacks it. Salt that
 * the brief strews on the surface counts in sodium; its own mass counts nowhere.
 */
#pragma once

#include "core/formula/fm-formula.h"
#include "core/composition/fm-nutrient.h"

G_BEGIN_DECLS

typedef struct {
  double
      known_g_per_100g; /* known part, in the nutrient's own unit per 100 g of blend; NaN at 0 % */
  double covered_pct;   /* share of the mass whose value is known, 0-100 */
} FmAmount;

typedef struct {
  double total_g;
  guint n_lines;
  FmAmount amounts[FM_N_NUTRIENTS];
  double fat_pct;  /* calculated (falls back per line to declared); NaN unless fully covered */
  double lean_pct; /* 100 - fat_pct (chemical lean); NaN likewise */
  double declared_fat_pct;    /* by declared lean points where there are any, else analysis; NaN */
  double fat_u_pct;           /* GUM standard uncertainty of fat_pct; NaN when a line lacks one */
  double cost_per_kg;         /* edible, after EP yield; NaN unless every line has a price */
  double known_cost_per_kg;   /* what the lines with a price bring to a kilogram; NaN without one */
  double cost_covered_pct;    /* share of the mass that has a price, 0-100 */
  double *line_share_pct;     /* n_lines */
  double *line_fat_g;         /* n_lines, fat grams of the line; NaN = unknown */
  double *line_fat_share_pct; /* n_lines, share of the blend's known fat; NaN = unknown */
} FmAnalysis;

FmAnalysis *fm_analysis_new (const FmFormula *formula);
void fm_analysis_free (FmAnalysis *self);
/** Value per 100 g when fully covered (>= 99.995 % of the mass), else NaN. */
double fm_analysis_value (const FmAnalysis *self, FmNutrient nutrient);
/** Names of the ingredients in the blend that lack @nutrient, each once. Returns: (transfer full).
 */
GStrv fm_analysis_missing (const FmFormula *formula, FmNutrient nutrient);
/** Names of the ingredients in the blend that have no price, each once. Returns: (transfer full).
 */
GStrv fm_analysis_unpriced (const FmFormula *formula);
/** "78/22": lean/fat, rounded to whole % so that both add up to 100. "—" when unknown. */
char *fm_lean_point_format (double fat_pct);
/** Current value of a target (unit of its FmTargetInfo); NaN when unknown. */
double fm_analysis_target_value (const FmAnalysis *self, const FmBrief *brief, FmTargetKind kind);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmAnalysis, fm_analysis_free)

G_END_DECLS
