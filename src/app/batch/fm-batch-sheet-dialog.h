/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-dialog.h - plans a batch of the shown formula and prints its sheet */
#pragma once

#include "app/print/fm-paper-window.h"
#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_BATCH_SHEET_DIALOG (fm_batch_sheet_dialog_get_type ())
G_DECLARE_FINAL_TYPE (
    FmBatchSheetDialog, fm_batch_sheet_dialog, FM, BATCH_SHEET_DIALOG, FmPaperWindow)

/** Opens the dialog over the window of @parent, for the formula as it is shown now. */
void fm_batch_sheet_dialog_present (GtkWidget *parent, FmSession *session);

G_END_DECLS
