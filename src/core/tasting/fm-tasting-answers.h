/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-answers.h - what stands on the sheets, in words, and which code was which sample
 *
 * Codes carry names only once the tasting is opened.
 */
#pragma once

#include "core/tasting/fm-tasting.h"

G_BEGIN_DECLS

/** "731 – Draft 3: rank order 1, 9-point liking 7; 264 – ...", in serving order; "" when nothing is
 * filled in. (transfer full) */
char *fm_tasting_sheet_text (const FmTasting *self, guint taster);
/** "731 – Draft 3" of the main round, then those of the pair, as one line each; %NULL unless
 * opened. Triangle samples have a code for each taster. (transfer full) */
char *fm_tasting_key_text (const FmTasting *self);
/** Remarks on a sample, "Ana: bouncy", a line each; %NULL when there is none, or it is not opened.
 * (transfer full) */
char *fm_tasting_sample_remarks (const FmTasting *self, guint sample);

G_END_DECLS
