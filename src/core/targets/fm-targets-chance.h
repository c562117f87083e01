/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-chance.h - how sure the fat of a blend is
 *
 * Source: JCGM 100:2008 (GUM). Ingredient uncertainties propagate by 5.2.2; lines of one
 * ingredient carry one error (r = 1). The resolution of the scale is a rectangular distribution
 * one step wide, u = step / sqrt (12) (F.2.2.1). The result is taken as normal.
 */
#pragma once

#include "core/formula/fm-formula.h"

G_BEGIN_DECLS

typedef struct {
  double fat_pct;        /* mean */
  double u_weighing_pct; /* standard uncertainty from the steps of the scale alone */
  double u_pct;          /* standard uncertainty; NaN while one ingredient states none */
  double below;          /* probability in [0, 1] that fat is below the limit; NaN likewise */
  GStrv without_u;       /* names of ingredients whose fat states no uncertainty */
} FmFatChance;

/**
 * Fills @self. @limit_pct: NaN = none (then below is NaN). @scale_step_g: 0 = weighed exactly.
 * Fails with EMPTY at zero mass, UNKNOWN_VALUE naming the lines whose fat is not known,
 * OUT_OF_RANGE for a limit outside 0-100 or a negative step.
 */
gboolean fm_fat_chance_init (FmFatChance *self,
                             const FmFormula *formula,
                             double limit_pct,
                             double scale_step_g,
                             GError **error);
void fm_fat_chance_clear (FmFatChance *self);
/**
 * How sure the fat of @formula is, in sentences: its 95 % interval, the probabilities that it keeps
 * the brief's band and stays below @limit_pct (NaN = not asked). While an ingredient states no
 * uncertainty only what the weighing leaves open, who lacks a spread, and for whom one is
 * published. Says why when nothing can be said. Returns: (transfer full).
 */
char *fm_fat_chance_text (const FmFormula *formula, double scale_step_g, double limit_pct);
/** P(X < limit) of a normal X; 0 or 1 when @u is 0 (0.5 at the limit itself); NaN if unknown. */
double fm_normal_below (double mean, double u, double limit);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FmFatChance, fm_fat_chance_clear)

G_END_DECLS
