/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-choice.h - which ingredients of a formula a map changes */
#pragma once

#include "core/mixture/fm-map.h"

G_BEGIN_DECLS

/* Ingredients that are changed together are one of these groups. */
#define FM_MAP_N_GROUPS 3

typedef enum {
  FM_MAP_FIXED, /* keeps its share of the blend */
  FM_MAP_ALONE, /* a component of its own */
  FM_MAP_GROUP, /* first group; FM_MAP_GROUP + 1 the second ... */
} FmMapRole;

typedef struct {
  char *identity;   /* fm_ingredient_identity() */
  char *name;       /* of the first line */
  double share_pct; /* of the blend, all its lines; NaN when the formula weighs nothing */
  guint role;       /* FmMapRole, or FM_MAP_GROUP + index of the group */
} FmMapIngredient;

/** FmMapIngredient of a formula, each once, with the roles that @components give them. */
GPtrArray *fm_map_ingredients_new (const FmFormula *formula, const GPtrArray *components);
/**
 * Gives the map the components that the roles make, in the order of the ingredients, and proposes
 * bounds about their shares now. Groups are named after their members. Other bounds are forgotten,
 * since they were shares of another mixture.
 */
void fm_map_ingredients_apply (const GPtrArray *ingredients, FmMap *map);

G_END_DECLS
