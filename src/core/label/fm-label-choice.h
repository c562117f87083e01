/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-choice.h - what somebody chose and stated for the label of a blend */
#pragma once

#include "core/label/fm-ingredient-list.h"
#include "core/label/fm-label-panel.h"

G_BEGIN_DECLS

/**
 * FmLabelChoice:
 * @input: rules, serving and pack
 * @gather_pct: as in FmIngredientListInput
 * @stated: figures that no composition tells
 * @stated_source: (nullable): where they are from
 * @words: fm_ingredient_identity() -> FmLabelWords
 */
typedef struct {
  FmLabelInput input;
  double gather_pct;
  FmLabelStated stated;
  char *stated_source;
  GHashTable *words;
} FmLabelChoice;

/** American retail rules for a serving of @serving_g, nothing stated. */
FmLabelChoice *fm_label_choice_new (double serving_g);
void fm_label_choice_free (FmLabelChoice *self);
/** Names an ingredient, or with "" or NULL for both leaves it as it is by itself. */
void fm_label_choice_set_words (FmLabelChoice *self,
                                const char *identity,
                                const char *name,
                                const char *parts);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmLabelChoice, fm_label_choice_free)

G_END_DECLS
