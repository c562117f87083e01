/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-words.h - how an ingredient is called on labels, and what it is made of
 *
 * Signal: "changed": one of the two texts was edited.
 */
#pragma once

#include <adwaita.h>

#include "core/composition/fm-ingredient.h"
#include "core/label/fm-ingredient-list.h"

G_BEGIN_DECLS

#define FM_TYPE_LABEL_WORDS_ROW (fm_label_words_row_get_type ())
G_DECLARE_FINAL_TYPE (FmLabelWordsRow, fm_label_words_row, FM, LABEL_WORDS_ROW, AdwExpanderRow)

GtkWidget *fm_label_words_row_new (const FmIngredient *ingredient, const FmLabelWords *words);
const char *fm_label_words_row_get_identity (FmLabelWordsRow *self);
/** "" while the list's own word stands. */
const char *fm_label_words_row_get_name (FmLabelWordsRow *self);
const char *fm_label_words_row_get_parts (FmLabelWordsRow *self);

G_END_DECLS
