/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-result.h - what an opened tasting says */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-tasting-document.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_RESULT (fm_tasting_result_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingResult, fm_tasting_result, FM, TASTING_RESULT, GtkWidget)

/** @document: (nullable) of a tasting whose cups are arranged; the one before is let go. */
void fm_tasting_result_set_document (FmTastingResult *self, FmTastingDocument *document);

G_END_DECLS
