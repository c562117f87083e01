/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-dish-sum.c - what is eaten of a serving, and what it was made of */
#include "core/dish/fm-dish.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-double.h"
#include "core/base/fm-error.h"
#include "core/formula/fm-nutrition-text.h"

/* The lines of @formula, together @mass_g. */
static void
add_scaled (FmFormula *to, const FmFormula *formula, double mass_g)
{
  const double factor = mass_g / fm_formula_total_g (formula);

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);

    if (line->mass_g > 0.0)
      fm_formula_add (to, line->ingredient, line->mass_g * factor);
  }
}

static void
add_parts (FmFormula *to, const FmDish *dish)
{
  for (guint i = 0; i < dish->parts->len; i++) {
    const FmDishPart *part = fm_dish_part (dish, i);

    if (part->formula != NULL)
      add_scaled (to, part->formula, part->mass_g);
    else
      fm_formula_add (to, part->ingredient, part->mass_g);
  }
}

/* The salt that the brief strews on the patties goes into the pot as well. */
static void
add_surface_salt (FmFormula *to, const FmBrief *brief, double raw_g)
{
  g_autoptr (FmIngredient) salt = NULL;

  if (!(brief->surface_salt_pct > 0.0))
    return;
  salt = fm_ingredient_new (_ ("Salt on the surface"), FM_INGREDIENT_SALT);
  salt->allergens_known = TRUE;
  fm_formula_add (to, salt, raw_g * brief->surface_salt_pct / 100.0);
}

/* The patty as it leaves the pan; what the dataset's pairs do not tell is not known. */
static FmIngredient *
cooked_patty (const FmCooked *cooked, FmSpeciesSet species, const char *name)
{
  FmIngredient *patty = fm_ingredient_new (name, FM_INGREDIENT_OTHER);

  patty->provenance = FM_PROVENANCE_NONE;
  for (int i = 0; i < FM_N_NUTRIENTS && cooked != NULL; i++) {
    const FmAmount *amount = &cooked->amounts[i];

    if (fm_amount_knowledge (amount) == FM_KNOWLEDGE_FULL)
      patty->composition.per_100g[i] = amount->known_g_per_100g;
  }
  for (int i = 0; i < FM_N_SPECIES; i++)
    if (species == FM_SPECIES_BIT (i))
      patty->species = (FmSpecies)i;
  return patty;
}

static gboolean
fill_patty (
    FmDishSum *self, const FmDish *dish, const FmFormula *patty, const char *name, GError **error)
{
  g_autoptr (FmAnalysis) raw = fm_analysis_new (patty);
  const FmCookFood food = { .species = fm_formula_species (patty), .fat_pct = raw->fat_pct };
  const double raw_g = dish->n_patties * dish->patty_raw_g;
  g_autoptr (FmCooked) cooked =
      fm_cooked_new (raw, food.species, dish->method, dish->cook_yield_pct, NULL);
  g_autofree char *shown = g_strdup_printf (_ ("%s, cooked"), name);
  g_autoptr (FmIngredient) ingredient = cooked_patty (cooked, food.species, shown);

  self->yield_pct =
      isnan (dish->cook_yield_pct) ? fm_cook_yield_pct (dish->method, &food) : dish->cook_yield_pct;
  self->basis = cooked != NULL ? g_strdup (cooked->basis) : NULL;
  self->cooked_g = raw_g * self->yield_pct / 100.0;
  if (isnan (self->cooked_g)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
                         _ ("Nothing tells what this patty weighs when it is cooked. Weigh one "
                            "before and after, and type the cooked yield."));
    return FALSE;
  }
  fm_formula_add (self->eaten, ingredient, self->cooked_g);
  add_scaled (self->used, patty, raw_g);
  add_surface_salt (self->used, patty->brief, raw_g);
  return TRUE;
}

static void
add_up (FmDishSum *self)
{
  g_autoptr (GStrvBuilder) without_price = g_strv_builder_new ();
  g_autoptr (GStrvBuilder) not_stated = g_strv_builder_new ();

  self->cost = NAN;
  for (guint i = 0; i < fm_formula_n_lines (self->used); i++) {
    const FmFormulaLine *line = fm_formula_line (self->used, i);
    const FmIngredient *stuff = line->ingredient;
    const double cost = line->mass_g / 1000.0 * fm_ingredient_edible_price_per_kg (stuff);

    self->cost = fm_double_add_known (self->cost, cost);
    if (isnan (cost))
      g_strv_builder_add (without_price, stuff->name);
    self->allergens |= stuff->allergens;
    if (!stuff->allergens_known)
      g_strv_builder_add (not_stated, stuff->name);
  }
  self->without_price = g_strv_builder_end (without_price);
  self->not_stated = g_strv_builder_end (not_stated);
}

FmDishSum *
fm_dish_sum_new (const FmDish *dish, const FmFormula *patty, const char *patty_name, GError **error)
{
  g_autoptr (FmDishSum) self = NULL;

  if (!fm_dish_check (dish, error))
    return NULL;
  if (!(fm_formula_total_g (patty) > 0.0)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("The blend weighs nothing yet. Type the mass of at least one line "
                            "first."));
    return NULL;
  }
  self = g_new0 (FmDishSum, 1);
  self->eaten = fm_formula_new ();
  self->used = fm_formula_new ();
  if (!fill_patty (self, dish, patty, patty_name, error))
    return NULL;
  add_parts (self->eaten, dish);
  add_parts (self->used, dish);
  self->total_g = fm_formula_total_g (self->eaten);
  self->eaten->brief->patty_mass_g = self->total_g;
  self->eaten->brief->n_patties = 1;
  add_up (self);
  return g_steal_pointer (&self);
}

void
fm_dish_sum_free (FmDishSum *self)
{
  fm_formula_free (self->eaten);
  fm_formula_free (self->used);
  g_free (self->basis);
  g_strfreev (self->without_price);
  g_strfreev (self->not_stated);
  g_free (self);
}
