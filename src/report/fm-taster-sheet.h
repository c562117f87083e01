/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-taster-sheet.h - the papers of a tasting, as plain rows of text
 *
 * Taster sheets tell codes only, each taster's on a page of its own. The key sheet tells who is
 * who: it is for the kitchen, goes to paper or a file only and never onto the screen.
 */
#pragma once

#include "core/tasting/fm-tasting.h"
#include "report/fm-batch-sheet.h"

G_BEGIN_DECLS

/** @tasting: with its cups arranged. @date_text: (nullable). No sample's name is in it. */
FmBatchSheet *fm_taster_sheets_new (const FmTasting *tasting, const char *date_text);
/** Each code with its sample, and each taster's cups in serving order. */
FmBatchSheet *fm_taster_key_sheet_new (const FmTasting *tasting, const char *date_text);

G_END_DECLS
