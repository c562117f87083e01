/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-report.h - the reading of an opened tasting, for paper and for a spreadsheet
 *
 * Both tell which code was which sample, so they are made of opened tastings only.
 */
#pragma once

#include "core/tasting/fm-tasting-reading.h"
#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/** %NULL unless opened. @date_text: (nullable). */
FmBatchSheet *fm_tasting_report_new (const FmTasting *tasting,
                                     const FmTastingReading *reading,
                                     const char *date_text);
/** The sentences, then every mark and remark as a row of its own, for a spreadsheet; UTF-8, commas.
 * @notice: (nullable): a line to begin with. %NULL unless opened. (transfer full) */
char *fm_tasting_report_csv (const FmTasting *tasting,
                             const FmTastingReading *reading,
                             const char *notice);

G_END_DECLS
