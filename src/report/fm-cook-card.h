/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-card.h - the cook's card: grams and steps in big type, without costs */
#pragma once

#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/** NULL + error as fm_batch_new(). */
FmBatchSheet *
fm_cook_card_new (const FmFormula *formula, const FmBatchSheetInput *input, GError **error);

G_END_DECLS
