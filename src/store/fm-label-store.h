/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-store.h - what was chosen and stated for the label of a blend, kept in the notebook
 *
 * A setting of the notebook for each blend, as JSON text.
 */
#pragma once

#include "core/label/fm-label-choice.h"
#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

/** The key of the setting. Returns: (transfer full). */
char *fm_label_store_key (gint64 blend_id);
/** Likewise of servings of the blend. */
char *fm_label_store_serving_key (gint64 blend_id);
/** Returns: (transfer full). */
char *fm_label_choice_to_json (const FmLabelChoice *choice);
/** What @text has is put over @choice; what it lacks or says wrongly stays. */
void fm_label_choice_read_json (FmLabelChoice *choice, const char *text);
/** Reads what is kept for @blend_id over @choice. Any thread but the main one. */
void fm_label_store_read (FmNotebook *notebook, const char *key, FmLabelChoice *choice);

G_END_DECLS
