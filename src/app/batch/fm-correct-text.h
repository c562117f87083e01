/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-correct-text.h - a correction of a batch, in sentences */
#pragma once

#include "core/batch/fm-batch-correction.h"

G_BEGIN_DECLS

/** A formula with the masses that were weighed. @weighed_g: n lines. (transfer full) */
FmFormula *fm_correct_weighed_formula (const FmFormula *planned, const double *weighed_g);
/** The ingredients of @formula, each once; (element-type FmIngredient). (transfer full) */
GPtrArray *fm_correct_ingredients (const FmFormula *formula);
/** The brief's fat band, else the planned fat alone; ends of NaN when that is not known. */
FmBand fm_correct_default_band (const FmFormula *formula);
/** What @correction adds for the nearest edge and for the middle, a line each. (transfer full) */
char *fm_correct_text (const FmCorrection *correction);
/** What to add to each line to come back to the planned shares. (transfer full) */
char *fm_correct_top_up_text (const FmFormula *planned, const double *weighed_g);

G_END_DECLS
