/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-composition.h - what 100 g of a food hold */
#pragma once

#include "core/composition/fm-nutrient.h"

G_BEGIN_DECLS

/**
 * FmComposition: a plain value; assign it to copy it.
 *
 * @per_100g: per 100 g edible portion, each in the unit of fm_nutrient_info(). NaN means that the
 *   value is not known, which is never the same as zero.
 */
typedef struct {
  double per_100g[FM_N_NUTRIENTS];
} FmComposition;

void fm_composition_init_unknown (FmComposition *self);
void fm_composition_copy (FmComposition *self, const FmComposition *from);
/** Two unknown values count as equal. */
gboolean fm_composition_equal (const FmComposition *a, const FmComposition *b);
gboolean fm_composition_is_known (const FmComposition *self, FmNutrient nutrient);
guint fm_composition_n_known (const FmComposition *self);

G_END_DECLS
