/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient.h - an ingredient as stocked, with the composition it had when it was used */
#pragma once

#include "core/composition/fm-allergen.h"
#include "core/composition/fm-composition.h"
#include "core/composition/fm-food.h"
#include "core/composition/fm-species.h"

G_BEGIN_DECLS

typedef enum {
  FM_INGREDIENT_CUT,
  FM_INGREDIENT_TRIM,
  FM_INGREDIENT_FAT,
  FM_INGREDIENT_CURED,
  FM_INGREDIENT_SALT,
  FM_INGREDIENT_SPICE,
  FM_INGREDIENT_WATER,
  FM_INGREDIENT_BINDER,
  FM_INGREDIENT_OTHER,
} FmIngredientKind;

/** Where a composition comes from; shown beside every number that uses it. */
typedef enum {
  FM_PROVENANCE_DATASET,  /* row of the food-composition dataset */
  FM_PROVENANCE_DECLARED, /* supplier's lean point; fat known, the rest unknown */
  FM_PROVENANCE_ANALYSIS, /* the developer's own laboratory analysis */
  FM_PROVENANCE_NONE,     /* no analysis at all: everything unknown */
} FmProvenance;

/**
 * FmIngredient: immutable once shared; reference counted (atomic).
 *
 * @id: UUID, stable over edits of the ingredient
 * @name: as shown to the cook; short for a dataset row, and what the cook made of it
 * @full_name: (nullable): the dataset's readable name, of dataset rows whose @name is another
 * @species: animal that it comes from; FM_SPECIES_UNKNOWN = nobody stated it
 * @source_ref: (nullable): NDB number for dataset rows, else free text (lab report, supplier)
 * @original_name: (nullable): the dataset's own description, for citation
 * @declared_fat_pct: the supplier's lean point as fat %, NaN when none was declared
 * @fat_u_g_per_100g: standard uncertainty of the fat value, NaN when not known
 * @collagen_g_per_100g: connective-tissue protein, part of the protein; NaN when not known
 * @price_per_kg: as purchased, in the notebook's currency; NaN when not known
 * @ep_yield_pct: edible portion of the as-purchased mass, (0, 100]; NaN = taken as 100 and said so
 * @allergens_known: somebody stated the allergens; FALSE = not stated, which is never "none"
 * @allergens: what was stated; empty while not stated
 */
typedef struct {
  gatomicrefcount ref_count;
  char *id;
  char *name;
  char *full_name;
  FmIngredientKind kind;
  FmSpecies species;
  FmProvenance provenance;
  char *source_ref;
  char *original_name;
  FmComposition composition;
  double declared_fat_pct;
  double fat_u_g_per_100g;
  double collagen_g_per_100g;
  double price_per_kg;
  double ep_yield_pct;
  gboolean allergens_known;
  FmAllergenSet allergens;
} FmIngredient;

/** New ingredient with a fresh UUID, everything unknown, but that salt is of no animal. */
FmIngredient *fm_ingredient_new (const char *name, FmIngredientKind kind);
/** New ingredient from a dataset row, named short by rule; kind is guessed from the name, ep yield
 * from refuse %. */
FmIngredient *fm_ingredient_new_from_food (const FmFood *food);
/** Names a dataset row that bears its readable name short by rule; keeps any other as it is. */
void fm_ingredient_shorten_name (FmIngredient *self);
/**
 * A name for the @nth ingredient of one name: with the number of the dataset's row, else with @nth.
 * Returns: (transfer full).
 */
char *fm_ingredient_name_apart (const FmIngredient *self, guint nth);
/** What is named: the dataset's readable name and number, or where else it comes from.
 * Returns: (transfer full) (nullable). */
char *fm_ingredient_describe_source (const FmIngredient *self);
/**
 * What the kind of animal is as far as the rest tells: that of the dataset's row whose number
 * @source_ref gives, no animal for salt, else unknown. For notebooks that state none.
 */
FmSpecies fm_ingredient_guess_species (const FmIngredient *self);
/** Deep copy (ref count 1, same id): change the copy, never a shared one. */
FmIngredient *fm_ingredient_copy (const FmIngredient *self);
FmIngredient *fm_ingredient_ref (FmIngredient *self);
void fm_ingredient_unref (FmIngredient *self);
/** TRUE when everything in them is equal; two unknown values count as equal. */
gboolean fm_ingredient_equal (const FmIngredient *a, const FmIngredient *b);
/**
 * What makes two ingredients one and the same stuff: the NDB number of a dataset row (however
 * often it was picked from the search), else the id. (transfer none)
 */
const char *fm_ingredient_identity (const FmIngredient *self);
/** Fat g per 100 g of the composition, else by declared lean point, else NaN. */
double fm_ingredient_fat_g_per_100g (const FmIngredient *self);
/**
 * Standard uncertainty of that fat as stated. Salt and water hold no fat, so theirs is 0 unless
 * stated; NaN when not known.
 */
double fm_ingredient_fat_u_g_per_100g (const FmIngredient *self);
/** Any nutrient per 100 g, fat as above; NaN when not known. */
double fm_ingredient_value (const FmIngredient *self, FmNutrient nutrient);
/** As stated; 0 where there is no protein at all, as collagen is a part of it; NaN when not known.
 */
double fm_ingredient_collagen_g_per_100g (const FmIngredient *self);
/** What a kilogram costs once the inedible part is gone; NaN without a price. */
double fm_ingredient_edible_price_per_kg (const FmIngredient *self);
/**
 * Checks ranges: values >= 0, water+protein+fat+ash+carbohydrate <= 101.5 g (but for dataset rows,
 * which are taken as published), collagen <= protein, and so on.
 */
gboolean fm_ingredient_check (const FmIngredient *self, GError **error);
/** Kind of a dataset row: by a reviewed list of numbers, else by its name. */
FmIngredientKind fm_ingredient_guess_kind (const char *ndb_no, const char *name);
/** Salt, spice, water and binders: no arithmetic may make a blend of them. */
gboolean fm_ingredient_kind_keeps_share (FmIngredientKind kind);
const char *fm_ingredient_kind_name (FmIngredientKind kind); /* translated */
const char *fm_provenance_name (FmProvenance provenance);    /* translated */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmIngredient, fm_ingredient_unref)

G_END_DECLS
