/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-dish.c - a serving: cooked patties of a version and what comes with them */
#include "core/dish/fm-dish.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

#define MAX_YIELD_PCT 150.0

static const struct {
  const char *key;
  const char *name;
} roles[FM_N_DISH_ROLES] = {
  [FM_DISH_BUN] = { "bun", N_ ("Bun") },       [FM_DISH_CHEESE] = { "cheese", N_ ("Cheese") },
  [FM_DISH_SAUCE] = { "sauce", N_ ("Sauce") }, [FM_DISH_GARNISH] = { "garnish", N_ ("Garnish") },
  [FM_DISH_OTHER] = { "other", N_ ("Other") },
};

const char *
fm_dish_role_name (FmDishRole role)
{
  return _ (roles[role].name);
}

const char *
fm_dish_role_key (FmDishRole role)
{
  return roles[role].key;
}

FmDishRole
fm_dish_role_from_key (const char *key)
{
  for (guint i = 0; i < FM_N_DISH_ROLES; i++)
    if (g_strcmp0 (roles[i].key, key) == 0)
      return (FmDishRole)i;
  return FM_DISH_OTHER;
}

static void
part_free (FmDishPart *part)
{
  g_clear_pointer (&part->ingredient, fm_ingredient_unref);
  g_clear_pointer (&part->formula, fm_formula_free);
  g_free (part->name);
  g_free (part);
}

FmDish *
fm_dish_new (const FmBrief *brief)
{
  FmDish *self = g_new0 (FmDish, 1);

  self->parts = g_ptr_array_new_with_free_func ((GDestroyNotify)part_free);
  self->n_patties = 1;
  self->patty_raw_g = brief->patty_mass_g;
  self->method = FM_COOK_PATTY_PAN_BROILED;
  self->cook_yield_pct = NAN;
  return self;
}

void
fm_dish_free (FmDish *self)
{
  g_ptr_array_unref (self->parts);
  g_free (self);
}

FmDish *
fm_dish_copy (const FmDish *self)
{
  FmDish *copy = g_memdup2 (self, sizeof *self);

  copy->parts = g_ptr_array_new_with_free_func ((GDestroyNotify)part_free);
  for (guint i = 0; i < self->parts->len; i++) {
    const FmDishPart *part = fm_dish_part (self, i);

    if (part->formula != NULL)
      fm_dish_add_formula (copy, part->role, part->name, fm_formula_copy (part->formula),
                           part->mass_g);
    else
      fm_dish_add_ingredient (copy, part->role, part->ingredient, part->mass_g);
  }
  return copy;
}

const FmDishPart *
fm_dish_part (const FmDish *self, guint index)
{
  return g_ptr_array_index (self->parts, index);
}

static void
add_part (FmDish *self, const FmDishPart *part)
{
  g_ptr_array_add (self->parts, g_memdup2 (part, sizeof *part));
}

void
fm_dish_add_ingredient (FmDish *self, FmDishRole role, FmIngredient *ingredient, double mass_g)
{
  add_part (self, &(FmDishPart){ role, fm_ingredient_ref (ingredient), NULL,
                                 g_strdup (ingredient->name), mass_g });
}

void
fm_dish_add_formula (
    FmDish *self, FmDishRole role, const char *name, FmFormula *formula, double mass_g)
{
  add_part (self, &(FmDishPart){ role, NULL, formula, g_strdup (name), mass_g });
}

static gboolean
check_part (const FmDishPart *part, GError **error)
{
  if (!(part->mass_g > 0.0 && part->mass_g <= FM_MAX_DISH_PART_G)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("Type how many grams of %s come with the patty, up to %d g."), part->name,
                 (int)FM_MAX_DISH_PART_G);
    return FALSE;
  }
  if (part->formula == NULL || fm_formula_total_g (part->formula) > 0.0)
    return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
               _ ("%s weighs nothing, so nothing is known of it. Take it out."), part->name);
  return FALSE;
}

gboolean
fm_dish_check (const FmDish *self, GError **error)
{
  if (self->parts->len > FM_MAX_DISH_PARTS) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A serving holds at most %d things beside the patty."), FM_MAX_DISH_PARTS);
    return FALSE;
  }
  for (guint i = 0; i < self->parts->len; i++)
    if (!check_part (fm_dish_part (self, i), error))
      return FALSE;
  if (self->n_patties < 1 || self->n_patties > FM_MAX_DISH_PATTIES)
    return fm_number_fail_range (self->n_patties, _ ("Patties of a serving"), 1.0,
                                 FM_MAX_DISH_PATTIES, error);
  if (!(self->patty_raw_g > 0.0 && self->patty_raw_g <= FM_MAX_PATTY_MASS_G))
    return fm_number_fail_range (self->patty_raw_g, _ ("Raw mass of a patty"), 0.0,
                                 FM_MAX_PATTY_MASS_G, error);
  if (isnan (self->cook_yield_pct) ||
      (self->cook_yield_pct > 0.0 && self->cook_yield_pct <= MAX_YIELD_PCT))
    return TRUE;
  return fm_number_fail_range (self->cook_yield_pct, _ ("Cooked yield"), 0.0, MAX_YIELD_PCT, error);
}
