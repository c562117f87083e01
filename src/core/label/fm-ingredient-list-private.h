/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-list-private.h - entries of an ingredient list, shared by the files that make it */
#pragma once

#include "core/label/fm-ingredient-list.h"

G_BEGIN_DECLS

/** Ingredients of one word. */
typedef struct {
  char *name;
  char *parts; /* (nullable) */
  double mass_g;
  double fat_g; /* of a meat; NaN = not known */
  double collagen_g;
  double protein_g;
  FmSpecies species;
  FmIngredientKind kind;
  FmAllergenSet allergens;
} FmListEntry;

/** FmListEntry, heaviest first. Returns: (transfer full). */
GPtrArray *fm_list_entries_new (const FmFormula *formula, const FmIngredientListInput *input);
gboolean fm_list_entry_is_meat (const FmListEntry *entry);
/** What the meat and the fat of an animal are called. (nullable): no animal whose meat has a name
 */
const char *fm_meat_word (FmSpecies species);
const char *fm_meat_fat_word (FmSpecies species);
/** Limits of Annex VII Part B no 17, % of fat and of collagen in meat protein; NaN = no meat. */
double fm_meat_fat_limit_pct (FmSpecies species);
double fm_meat_collagen_limit_pct (FmSpecies species);
/** Mass by which shares are told, g. */
double fm_list_finished_g (const FmFormula *formula, const FmIngredientListInput *input);
/** Puts the texts of @self together. */
void fm_ingredient_list_write (FmIngredientList *self,
                               GPtrArray *entries,
                               double finished_g,
                               const FmIngredientListInput *input);

G_END_DECLS
