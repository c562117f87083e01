/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-weighed.h - an experiment's weighings beside what its version planned */
#pragma once

#include "core/experiment/fm-experiment.h"

G_BEGIN_DECLS

/**
 * The lines of @version with the masses that @weighings (array of FmWeighing) planned, then a line
 * that plans nothing for each extra that went in. Nothing is known of an extra but its name, so its
 * fat is unknown too. A line of the version that has no weighing plans nothing.
 *
 * @weighed_g: (out) (transfer full) (array): weighed grams of each line; NaN = not weighed, which
 * is 0 for an extra.
 * Returns: (transfer full).
 */
FmFormula *
fm_batch_weighed_plan (const FmFormula *version, const GArray *weighings, double **weighed_g);

G_END_DECLS
