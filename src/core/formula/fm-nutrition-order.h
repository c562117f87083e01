/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-order.h - nutrients in the order in which a label has them
 *
 * Source of the first group and of the first four of the second: 21 CFR 101.9(c)(1) to (8) and the
 * table of labels in data/label/rows.tsv (us_retail). The rest of the second group follows the list
 * of reference values in 21 CFR 101.9(c)(8)(iv), from memory. What no label has comes last.
 */
#pragma once

#include "core/composition/fm-nutrient.h"

G_BEGIN_DECLS

typedef enum {
  FM_NUTRITION_LABEL,
  FM_NUTRITION_VITAMINS_MINERALS,
  FM_NUTRITION_FURTHER,
  FM_N_NUTRITION_GROUPS,
} FmNutritionGroup;

/** Translated heading. */
const char *fm_nutrition_group_name (FmNutritionGroup group);
/** Its nutrients, top down; each nutrient is in one group. @n: (out). Returns: (transfer none). */
const FmNutrient *fm_nutrition_group_nutrients (FmNutritionGroup group, guint *n);
/** TRUE for what a label sets in, as a part of the line above. */
gboolean fm_nutrition_is_part (FmNutrient nutrient);

G_END_DECLS
