/* fm-targets-sure.h - how sure the fat of a blend is, in sentences */
#pragma once

#include "core/formula/fm-formula.h"

G_BEGIN_DECLS

/**
 * Fat with its 95 % interval, the probability that it lies within the fat band of the brief and
 * that it is below @limit_pct (NaN = not asked), and who states no uncertainty. Says why when
 * nothing can be said. Returns: (transfer full).
 */
char *fm_targets_sure_text (const FmFormula *formula, double scale_step_g, double limit_pct);

G_END_DECLS
