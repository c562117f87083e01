/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-sheet-tools.h - papers of an arranged tasting, and the way into blind mode */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-tasting-document.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_SHEET_TOOLS (fm_tasting_sheet_tools_get_type ())
G_DECLARE_FINAL_TYPE (
    FmTastingSheetTools, fm_tasting_sheet_tools, FM, TASTING_SHEET_TOOLS, GtkWidget)

/** @document: (nullable) of a tasting whose cups are arranged; the one before is let go. */
void fm_tasting_sheet_tools_set_document (FmTastingSheetTools *self, FmTastingDocument *document);

G_END_DECLS
