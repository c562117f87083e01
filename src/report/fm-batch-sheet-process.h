/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-process.h - what a version plans of its process, as steps to tick */
#pragma once

#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/** A step for each planned field from @first to @last; what the sheet asks for by itself (meat
 * temperature, plates, time of salting) is left out. */
void fm_batch_sheet_add_process (FmBatchSheet *self,
                                 const FmProcess *process,
                                 FmProcessField first,
                                 FmProcessField last);

G_END_DECLS
