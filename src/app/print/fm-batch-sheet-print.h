/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-print.h - a batch sheet to the printer or into a PDF file */
#pragma once

#include <gtk/gtk.h>

#include "report/fm-batch-sheet-paint.h"

G_BEGIN_DECLS

/** What became of it: @text is a sentence, @failed says which kind. */
typedef void (*FmBatchSheetSay) (GtkWidget *owner, const char *text, gboolean failed);

/** Asks for a printer. @sheet: (transfer full). @owner lives until @say was called. */
void fm_batch_sheet_print (GtkWidget *owner, FmBatchSheet *sheet, FmBatchSheetSay say);
/** Asks for a file, with @name as a start. @sheet: (transfer full). */
void fm_batch_sheet_save_pdf (GtkWidget *owner,
                              FmBatchSheet *sheet,
                              const char *name,
                              FmBatchSheetSay say);

G_END_DECLS
