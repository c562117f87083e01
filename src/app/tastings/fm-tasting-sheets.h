/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-sheets.h - the tasters' sheets: what each found of the codes on the cups */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-tasting-document.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_SHEETS (fm_tasting_sheets_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingSheets, fm_tasting_sheets, FM, TASTING_SHEETS, GtkWidget)

/** @document: (nullable) of a tasting whose cups are arranged; the one before is let go. */
void fm_tasting_sheets_set_document (FmTastingSheets *self, FmTastingDocument *document);

G_END_DECLS
