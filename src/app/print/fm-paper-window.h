/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-paper-window.h - a window beside the sheet that it makes: parent of those that go to paper
 *
 * Shows the sheet, says what is wrong, prints it and saves it as a file, but only while every field
 * holds what the cook sees. Actions: "sheet.print" (also Ctrl+P), "sheet.save-pdf".
 */
#pragma once

#include <adwaita.h>

#include "app/print/fm-batch-sheet-preview.h"

G_BEGIN_DECLS

#define FM_TYPE_PAPER_WINDOW (fm_paper_window_get_type ())
G_DECLARE_DERIVABLE_TYPE (FmPaperWindow, fm_paper_window, FM, PAPER_WINDOW, AdwWindow)

struct _FmPaperWindowClass {
  AdwWindowClass parent_class;

  /* (nullable): why a text in a field is refused; NULL when all are good. (transfer none) */
  const char *(*bad_text) (FmPaperWindow *self);
};

/** Parts of the template, once there is one: what is said, and the sheet. */
void
fm_paper_window_set_parts (FmPaperWindow *self, GtkLabel *message, FmBatchSheetPreview *preview);
/** The parts up to NULL are what files are called, with commas between them. */
void fm_paper_window_set_name (FmPaperWindow *self, const char *const *parts);
/** @sheet: (transfer full) (nullable): @error says why there is none (nullable) */
void fm_paper_window_show (FmPaperWindow *self, FmBatchSheet *sheet, const GError *error);
/** FmBatchSheetSay of such a window: the sentence stands over the fields. */
void fm_paper_window_say (GtkWidget *self, const char *text, gboolean failed);
/** FALSE and says why while a field holds bad text: it keeps its last good value, which is not what
 * the cook sees. */
gboolean fm_paper_window_may_keep (FmPaperWindow *self);
/** @ending: without its dot. (transfer full) */
char *fm_paper_window_file_name (FmPaperWindow *self, const char *ending);

G_END_DECLS
