/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-specification.h - what a butcher or a supplier is to deliver
 *
 * What the notebook does not know is a line to write on: a limit that nobody agreed on is never
 * printed as one.
 */
#pragma once

#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/** NULL + error as fm_batch_new(). */
FmBatchSheet *
fm_specification_new (const FmFormula *formula, const FmBatchSheetInput *input, GError **error);

G_END_DECLS
