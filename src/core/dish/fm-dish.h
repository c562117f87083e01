/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-dish.h - a serving: cooked patties of a version and what comes with them
 *
 * On screen it is a serving; here it is a dish, because a serving is the order of a tasting
 * (fm-serving.h). What comes along is eaten as it is weighed: nothing of it is cooked again.
 */
#pragma once

#include "core/cooking/fm-cooking.h"

G_BEGIN_DECLS

#define FM_MAX_DISH_PATTIES 20
#define FM_MAX_DISH_PARTS 50
#define FM_MAX_DISH_PART_G 5000.0

typedef enum {
  FM_DISH_BUN,
  FM_DISH_CHEESE,
  FM_DISH_SAUCE,
  FM_DISH_GARNISH,
  FM_DISH_OTHER,
  FM_N_DISH_ROLES,
} FmDishRole;

/** One of @ingredient and @formula is there. */
typedef struct {
  FmDishRole role;
  FmIngredient *ingredient; /* (nullable) a food or an own entry */
  FmFormula *formula;       /* (nullable) another formula, as it was when it was chosen */
  char *name;               /* "House sauce, version 2"; of an ingredient its name */
  double mass_g;            /* (0, FM_MAX_DISH_PART_G], as eaten */
} FmDishPart;

typedef struct {
  GPtrArray *parts; /* FmDishPart */
  int n_patties;    /* [1, FM_MAX_DISH_PATTIES] */
  double patty_raw_g;
  FmCookMethod method;
  double cook_yield_pct; /* cooked / raw x 100, measured; NaN = as predicted for the method */
} FmDish;

/** One patty of the brief, nothing with it. */
FmDish *fm_dish_new (const FmBrief *brief);
FmDish *fm_dish_copy (const FmDish *self);
void fm_dish_free (FmDish *self);
const FmDishPart *fm_dish_part (const FmDish *self, guint index);
void
fm_dish_add_ingredient (FmDish *self, FmDishRole role, FmIngredient *ingredient, double mass_g);
/** @formula: (transfer full) */
void fm_dish_add_formula (
    FmDish *self, FmDishRole role, const char *name, FmFormula *formula, double mass_g);
/** OUT_OF_RANGE with a sentence about the first figure that cannot be. */
gboolean fm_dish_check (const FmDish *self, GError **error);

/**
 * FmDishSum: what is eaten, and what it was made of.
 *
 * @eaten: the cooked patties as one line, then what comes with them; its brief has one patty of the
 *   whole mass, so that a patty of it is a serving
 * @used: all ingredients in the masses that go in, the meat raw: for lists, allergens and costs
 * @cooked_g: of all patties
 * @yield_pct, @basis: how the cooked mass is known
 * @cost: of what has a price, trim loss included; NaN = nothing has one
 * @without_price: names; empty when @cost is whole
 * @not_stated: names of those whose allergens nobody stated
 */
typedef struct {
  FmFormula *eaten;
  FmFormula *used;
  double total_g;
  double cooked_g;
  double yield_pct;
  char *basis;
  double cost;
  GStrv without_price;
  FmAllergenSet allergens;
  GStrv not_stated;
} FmDishSum;

/**
 * @patty: the formula of the version
 * @patty_name: "Pan patty, version 3"
 *
 * NULL + error as fm_dish_check(); EMPTY for a formula that weighs nothing; UNKNOWN_VALUE when the
 * cooked mass is neither measured nor predicted. Nutrients of the cooked patty that nothing tells
 * stay unknown.
 */
FmDishSum *fm_dish_sum_new (const FmDish *dish,
                            const FmFormula *patty,
                            const char *patty_name,
                            GError **error);
void fm_dish_sum_free (FmDishSum *self);
const char *fm_dish_role_name (FmDishRole role); /* translated */
/** Word for files: stable, not translated. */
const char *fm_dish_role_key (FmDishRole role);
/** FM_DISH_OTHER for NULL and unknown words. */
FmDishRole fm_dish_role_from_key (const char *key);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmDish, fm_dish_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmDishSum, fm_dish_sum_free)

G_END_DECLS
