/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-preview.h - the pages of a sheet as they will be printed */
#pragma once

#include <gtk/gtk.h>

#include "report/fm-batch-sheet-paint.h"

G_BEGIN_DECLS

#define FM_TYPE_BATCH_SHEET_PREVIEW (fm_batch_sheet_preview_get_type ())
G_DECLARE_FINAL_TYPE (
    FmBatchSheetPreview, fm_batch_sheet_preview, FM, BATCH_SHEET_PREVIEW, GtkWidget)

/** Shows @sheet and keeps it; NULL shows bare paper. */
void fm_batch_sheet_preview_set_sheet (FmBatchSheetPreview *self, FmBatchSheet *sheet);
/** (transfer none) (nullable) */
FmBatchSheet *fm_batch_sheet_preview_get_sheet (FmBatchSheetPreview *self);

G_END_DECLS
