/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-sheet-window.h - a document of the notebook: what goes into it, a preview, paper and PDF
 *
 * The sheet is made in a thread from an order, and made anew when the options above it activate
 * "sheet.renew".
 */
#pragma once

#include "app/print/fm-paper-window.h"
#include "app/session/fm-session.h"
#include "app/session/fm-store-task.h"

G_BEGIN_DECLS

#define FM_TYPE_SHEET_WINDOW (fm_sheet_window_get_type ())
G_DECLARE_FINAL_TYPE (FmSheetWindow, fm_sheet_window, FM, SHEET_WINDOW, FmPaperWindow)

/**
 * FmSheetOrder:
 * @title: translated; of the window, and of the file to start with
 * @options: what is chosen; stands above the preview
 * @make: in a thread: an order into an FmBatchSheet
 * @new_order: what is to be made of @options now; NULL = nothing yet
 */
typedef struct {
  const char *title;
  FmSession *session;
  GtkWidget *options;
  FmStoreFunc make;
  gpointer (*new_order) (GtkWidget *options);
  GDestroyNotify free_order;
} FmSheetOrder;

/** Over the window of @parent; made at once. */
void fm_sheet_window_present (GtkWidget *parent, const FmSheetOrder *order);

G_END_DECLS
