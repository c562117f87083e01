/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-number-row.h - number entries at the end of a row that has a title */
#pragma once

#include "app/widgets/fm-number-entry.h"

G_BEGIN_DECLS

/**
 * Lets the AdwActionRow around @entry say in its subtitle what is wrong with the text, across the
 * whole row: below the entry a sentence would squeeze the title. The row's own subtitle comes back
 * with good text.
 */
void fm_number_row_tell_errors (FmNumberEntry *entry);

/** Why the first of @entries whose text is refused holds bad text; NULL when all are good.
 * (transfer none) */
const char *fm_number_row_bad_text (FmNumberEntry *const *entries, guint n_entries);

G_END_DECLS
