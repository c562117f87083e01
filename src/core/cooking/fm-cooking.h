/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cooking.h - from raw to cooked, by stated method
 *
 * Predictions come from the dataset's own raw/cooked pairs (raw and cooked rows, and household
 * weights such as "yield from 1/4 lb raw meat"): ground beef of 3 to 30 % fat by four methods, and
 * single pairs of other meats. Where no pair of the blend's animal, fat and method tells, nothing
 * is predicted.
 *
 * Each nutrient uses the true retention of the pair; a retention beyond the noise of the pairs is
 * not known. Mass is closed: carbohydrate is taken as kept whole (our assumption, no source), water
 * is what remains of the cooked mass beside protein, fat, ash and carbohydrate, and energy goes
 * with what is kept of protein, fat and carbohydrate at 4.27, 9.02 (USDA Agriculture Handbook 74)
 * and 4 kcal/g. A measured cooked mass overrides the predicted yield.
 */
#pragma once

#include "core/cooking/fm-authority.h"
#include "core/formula/fm-analysis.h"

G_BEGIN_DECLS

typedef enum {
  FM_COOK_PATTY_BROILED,
  FM_COOK_PATTY_PAN_BROILED,
  FM_COOK_CRUMBLES_PAN_BROWNED,
  FM_COOK_LOAF_BAKED,
  FM_N_COOK_METHODS,
} FmCookMethod;

typedef struct {
  FmCookMethod method;
  double yield_pct;                 /* cooked mass / raw mass x 100 */
  gboolean yield_measured;          /* from a measured cooked mass, not the tables */
  gboolean extrapolated;            /* raw fat % lies below the table or beside the single pair */
  FmAmount amounts[FM_N_NUTRIENTS]; /* per 100 g cooked */
  char *basis;                      /* translated sentence: which pairs, which weights */
} FmCooked;

const char *fm_cook_method_name (FmCookMethod method); /* translated */
/** Predicted yield %, NaN when no pair tells. */
double fm_cook_yield_pct (FmCookMethod method, const FmCookFood *food);
/** Why no yield is predicted; NULL when one is. Translated. Returns: (transfer full) (nullable). */
char *fm_cook_unknown_text (FmCookMethod method, const FmCookFood *food);
/**
 * @species: animals of the blend, fm_formula_species()
 * @measured_yield_pct: NaN = predict
 *
 * NULL + error when no pair tells (UNKNOWN_VALUE), or when what is kept leaves no room for water or
 * more room than the raw blend has water (OUT_OF_RANGE).
 */
FmCooked *fm_cooked_new (const FmAnalysis *raw,
                         FmSpeciesSet species,
                         FmCookMethod method,
                         double measured_yield_pct,
                         GError **error);
/**
 * How a cooked amount follows from the raw one: what is kept of it, and of the mass.
 *
 * Returns: (transfer full): paragraphs to stand before fm_derivation_nutrient()
 */
char *fm_cooked_derivation (const FmCooked *self, const FmAnalysis *raw, FmNutrient nutrient);
void fm_cooked_free (FmCooked *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmCooked, fm_cooked_free)

G_END_DECLS
