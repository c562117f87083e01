/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-list.h - the list of ingredients of a label
 *
 * In order of the mass as used (21 CFR 101.4(a)(1); Regulation (EU) No 1169/2011, Article 18).
 * Parts of a compound ingredient stand in brackets (21 CFR 101.4(b)(2), from memory; Annex VII Part
 * E). Allergens follow the list in the United States and are emphasised within it in the European
 * Union (Article 21(1)(b)). Where somebody did not state the allergens of an ingredient there is no
 * list.
 *
 * Share of meat (QUID, Article 22 and Annex VIII): mass used by mass of the finished food. Meat
 * above the limit of fat counts in part (Annex VII Part B no 17): M x (100 - fat) / (100 - limit),
 * the rest being fat; that formula is from memory.
 */
#pragma once

#include "core/formula/fm-formula.h"
#include "core/label/fm-label-rules.h"

G_BEGIN_DECLS

/** How an ingredient is called on labels, and what it is made of itself. */
typedef struct {
  char *name;  /* (nullable): the list's own word */
  char *parts; /* (nullable): "wheat flour, salt", in descending order */
} FmLabelWords;

FmLabelWords *fm_label_words_new (const char *name, const char *parts);
void fm_label_words_free (FmLabelWords *self);

/**
 * FmIngredientListInput:
 * @gather_pct: ingredients of this share or less stand behind a phrase (2, 1.5, 1 or 0.5: 21 CFR
 *   101.4(a)(2)); 0 = in plain order. United States only.
 * @finished_g: mass of the finished food made of the formula; NaN = sold as mixed
 * @words: (nullable): fm_ingredient_identity() -> FmLabelWords
 */
typedef struct {
  FmLabelSetId set;
  double gather_pct;
  double finished_g;
  GHashTable *words;
} FmIngredientListInput;

/** Bytes of the text that are to be emphasised. */
typedef struct {
  guint start;
  guint end;
} FmTextSpan;

/**
 * FmIngredientList:
 * @text: (nullable): the list, emphasised words in capitals; NULL while it is held back
 * @spans: FmTextSpan of those words
 * @contains: (nullable): the statement that follows it
 * @held_back: (nullable): why there is no list, and who must be asked
 * @notes: what is to be thought of, a line each; may be ""
 */
typedef struct {
  char *text;
  GArray *spans;
  char *contains;
  char *held_back;
  char *notes;
} FmIngredientList;

FmIngredientList *fm_ingredient_list_new (const FmFormula *formula,
                                          const FmIngredientListInput *input);
void fm_ingredient_list_free (FmIngredientList *self);
/** The word of the list without any of the notebook's: "beef", "salt", else the ingredient's name.
 * Returns: (transfer none). */
const char *fm_ingredient_list_word (const FmIngredient *ingredient);

/** Mass of @mass_g that counts as meat under a limit of fat, g; @fat_pct NaN gives NaN. */
double fm_meat_that_counts_g (double mass_g, double fat_pct, double limit_pct);
/** Connective tissue = collagen x 37 / 8. Source: FSAI, meat content guide, section 8.1. */
double fm_connective_tissue_pct (double collagen_pct);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmLabelWords, fm_label_words_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmIngredientList, fm_ingredient_list_free)

G_END_DECLS
