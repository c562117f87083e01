/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-choice.c - which ingredients of a formula a map changes */
#include "core/mixture/fm-map-choice.h"

#include <math.h>

/* First proposal of how far a share may go from what it is now: common practice, no source. */
#define PROPOSED_REACH 0.15

static void
ingredient_free (gpointer data)
{
  FmMapIngredient *self = data;

  g_free (self->identity);
  g_free (self->name);
  g_free (self);
}

static FmMapIngredient *
find (const GPtrArray *ingredients, const char *identity)
{
  for (guint i = 0; i < ingredients->len; i++) {
    FmMapIngredient *ingredient = g_ptr_array_index (ingredients, i);

    if (g_str_equal (ingredient->identity, identity))
      return ingredient;
  }
  return NULL;
}

static void
take_roles (const GPtrArray *ingredients, const GPtrArray *components)
{
  guint group = FM_MAP_GROUP;

  for (guint i = 0; i < components->len; i++) {
    const FmMixComponent *component = g_ptr_array_index (components, i);
    const gboolean alone = component->members->len == 1;

    for (guint k = 0; k < component->members->len; k++) {
      FmMapIngredient *ingredient = find (ingredients, g_ptr_array_index (component->members, k));

      if (ingredient != NULL)
        ingredient->role = alone ? FM_MAP_ALONE : MIN (group, FM_MAP_GROUP + FM_MAP_N_GROUPS - 1);
    }
    group += !alone;
  }
}

GPtrArray *
fm_map_ingredients_new (const FmFormula *formula, const GPtrArray *components)
{
  GPtrArray *ingredients = g_ptr_array_new_with_free_func (ingredient_free);

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmIngredient *stuff = fm_formula_line (formula, i)->ingredient;
    FmMapIngredient *ingredient = find (ingredients, fm_ingredient_identity (stuff));

    if (ingredient == NULL) {
      ingredient = g_new0 (FmMapIngredient, 1);
      ingredient->identity = g_strdup (fm_ingredient_identity (stuff));
      ingredient->name = g_strdup (stuff->name);
      g_ptr_array_add (ingredients, ingredient);
    }
    ingredient->share_pct += fm_formula_share_pct (formula, i);
  }
  take_roles (ingredients, components);
  return ingredients;
}

static void
add_member (FmMixComponent *component, const FmMapIngredient *ingredient)
{
  g_ptr_array_add (component->members, g_strdup (ingredient->identity));
  if (component->name == NULL) {
    component->name = g_strdup (ingredient->name);
  } else {
    char *name = g_strconcat (component->name, " + ", ingredient->name, NULL);

    g_free (component->name);
    component->name = name;
  }
}

/* Whole per cent about the share now. */
static void
propose_bounds (FmMap *map, guint i, double share)
{
  map->lower[i] = floor (100.0 * fmax (share - PROPOSED_REACH, 0.0)) / 100.0;
  map->upper[i] = ceil (100.0 * fmin (share + PROPOSED_REACH, 1.0)) / 100.0;
}

void
fm_map_ingredients_apply (const GPtrArray *ingredients, FmMap *map)
{
  FmMixComponent *group[FM_MAP_N_GROUPS] = { NULL };
  g_autoptr (GPtrArray) components =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_mix_component_free);
  g_autoptr (GArray) shares = g_array_new (FALSE, TRUE, sizeof (double));
  double total = 0.0;

  for (guint i = 0; i < ingredients->len; i++) {
    const FmMapIngredient *ingredient = g_ptr_array_index (ingredients, i);
    FmMixComponent *component = NULL;
    guint index;

    if (ingredient->role == FM_MAP_FIXED)
      continue;
    if (ingredient->role != FM_MAP_ALONE)
      component = group[ingredient->role - FM_MAP_GROUP];
    if (component == NULL) {
      component = fm_mix_component_new (NULL);
      g_ptr_array_add (components, component);
      g_array_set_size (shares, components->len);
    }
    if (ingredient->role != FM_MAP_ALONE)
      group[ingredient->role - FM_MAP_GROUP] = component;
    add_member (component, ingredient);
    g_ptr_array_find (components, component, &index);
    g_array_index (shares, double, index) += ingredient->share_pct;
    total += ingredient->share_pct;
  }
  for (guint i = 0; i < components->len && i < FM_MIX_BLEND_MAX_COMPONENTS; i++)
    propose_bounds (map, i, total > 0.0 ? g_array_index (shares, double, i) / total : 0.0);
  g_ptr_array_unref (map->components);
  map->components = g_steal_pointer (&components);
}
