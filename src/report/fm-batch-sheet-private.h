/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-private.h - parts of the batch sheet that cards have as well */
#pragma once

#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/** The heading and a step each, from the cold meat to the heat. */
void fm_batch_sheet_add_steps (FmBatchSheet *self,
                               const FmFormula *formula,
                               const FmBatchSheetInput *input,
                               const FmBatch *batch);
/** The caution, and the figure that rules for the kinds of animal. */
void fm_batch_sheet_add_caution (FmBatchSheet *self, const FmBatchSheetInput *input);
/** What is known of a cost whose parts may lack a price: "€1.20", "at least €1.20", "not known".
 * Returns: (transfer full). */
char *fm_batch_sheet_known_money (const char *currency, gboolean is_whole, double amount);
/** "Grind through the plates ...". Returns: (transfer full). */
char *fm_batch_sheet_grind_step (const FmFormula *formula, const FmBatchSheetInput *input);

G_END_DECLS
