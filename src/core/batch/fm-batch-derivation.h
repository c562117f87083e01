/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-derivation.h - where the costs of a batch come from, as text that can be copied */
#pragma once

#include "core/batch/fm-batch.h"

G_BEGIN_DECLS

/** Masses, losses, prices line by line, their sum, and how it is divided. Returns: (transfer full).
 */
char *fm_batch_cost_derivation (const FmBatch *batch, const FmBatchPlan *plan);

G_END_DECLS
