/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-text.h - one nutrient of a portion, in words that never hide a gap */
#pragma once

#include "core/formula/fm-analysis.h"

G_BEGIN_DECLS

/**
 * FmNutritionText:
 * @amount: "12.3 mg", "at least 12.3 mg" when part of the mass has no value, or "not known"
 * @daily_value: share of the Daily Value, same wording; "" when FDA names none
 * @gap: (nullable): how much of the mass is covered and which ingredients lack the value
 * @spoken: all of it as one sentence, for a screen reader
 */
typedef struct {
  char *amount;
  char *daily_value;
  char *gap;
  char *spoken;
} FmNutritionText;

/**
 * Fills @self.
 * @portion_g: mass of the portion in g; NaN = not known
 * @missing: (nullable): names of the ingredients that lack @nutrient
 */
void fm_nutrition_text_init (FmNutritionText *self,
                             FmNutrient nutrient,
                             const FmAmount *amount,
                             double portion_g,
                             const char *const *missing);
void fm_nutrition_text_clear (FmNutritionText *self);
/**
 * The gap that most of @texts share, so that it can be said once for all of them.
 *
 * Returns: (nullable) (transfer none): of one of @texts; NULL when no two share one
 */
const char *fm_nutrition_common_gap (const FmNutritionText *texts, guint n);

/**
 * All gaps of @texts (FM_N_NUTRIENTS), each once: first the one that most share, then the others
 * with the names of their nutrients, a line each. Returns: (transfer full): "" without gaps
 */
char *fm_nutrition_gaps (const FmNutritionText *texts);

/** How far a value is known. */
typedef enum {
  FM_KNOWLEDGE_NONE,
  FM_KNOWLEDGE_PART,
  FM_KNOWLEDGE_FULL,
} FmKnowledge;

/** Fully known from 99.995 % of the mass on, as fm_analysis_value() has it. */
FmKnowledge fm_amount_knowledge (const FmAmount *amount);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FmNutritionText, fm_nutrition_text_clear)

G_END_DECLS
