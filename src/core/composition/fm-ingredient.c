/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient.c - an ingredient as stocked */
#include "core/composition/fm-ingredient.h"

#include "core/composition/fm-short-name.h"

#include "core/base/fm-double.h"
#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Rounding of five analysed values may carry their sum a little past 100 g. Rows of the dataset
 * are taken as published, though 140 of them exceed this (up to 106.5 g, mostly cooked meat). */
#define MAX_PROXIMATE_SUM_G 101.5
/* Fat itself holds 902 kcal/100 g by the Atwater specific factor 9.02 (USDA Handbook 74). */
#define MAX_ENERGY_KCAL 950.0
/* A value per 100 g cannot weigh more than 100 g; vitamins in IU have no such bound. */
#define MAX_GRAMS 100.0
#define MAX_IU 1e9
#define MAX_PRICE_PER_KG 1e6

static const FmNutrient proximates[] = {
  FM_NUTRIENT_WATER, FM_NUTRIENT_PROTEIN,      FM_NUTRIENT_FAT,
  FM_NUTRIENT_ASH,   FM_NUTRIENT_CARBOHYDRATE,
};

FmIngredient *
fm_ingredient_new (const char *name, FmIngredientKind kind)
{
  FmIngredient *self = g_new0 (FmIngredient, 1);
  g_atomic_ref_count_init (&self->ref_count);
  self->id = g_uuid_string_random ();
  self->name = g_strdup (name);
  self->kind = kind;
  self->species = fm_ingredient_guess_species (self);
  self->provenance = FM_PROVENANCE_NONE;
  fm_composition_init_unknown (&self->composition);
  self->declared_fat_pct = NAN;
  self->fat_u_g_per_100g = NAN;
  self->collagen_g_per_100g = NAN;
  self->price_per_kg = NAN;
  self->ep_yield_pct = NAN;
  return self;
}

FmIngredient *
fm_ingredient_new_from_food (const FmFood *food)
{
  FmIngredient *self =
      fm_ingredient_new (food->name, fm_ingredient_guess_kind (food->ndb_no, food->name));
  self->provenance = FM_PROVENANCE_DATASET;
  self->source_ref = g_strdup (food->ndb_no);
  self->original_name = g_strdup (food->original_name);
  self->species = fm_ingredient_guess_species (self);
  fm_ingredient_shorten_name (self);
  fm_composition_copy (&self->composition, &food->composition);
  if (food->refuse_pct >= 0.0 && food->refuse_pct < 100.0)
    self->ep_yield_pct = 100.0 - food->refuse_pct;
  return self;
}

void
fm_ingredient_shorten_name (FmIngredient *self)
{
  g_autofree char *name = NULL;

  if (self->provenance != FM_PROVENANCE_DATASET || self->original_name == NULL ||
      self->full_name != NULL)
    return;
  name = fm_short_name (self->name);
  if (g_str_equal (name, self->name))
    return;
  self->full_name = g_steal_pointer (&self->name);
  self->name = g_steal_pointer (&name);
}

char *
fm_ingredient_name_apart (const FmIngredient *self, guint nth)
{
  if (nth == 2 && self->provenance == FM_PROVENANCE_DATASET && self->source_ref != NULL)
    return g_strdup_printf ("%s (%s)", self->name, self->source_ref);
  return g_strdup_printf ("%s (%u)", self->name, nth);
}

char *
fm_ingredient_describe_source (const FmIngredient *self)
{
  const char *name = self->full_name != NULL ? self->full_name : self->original_name;

  if (name == NULL || self->source_ref == NULL)
    return g_strdup (name);
  return g_strdup_printf ("%s · %s %s", name, fm_provenance_name (self->provenance),
                          self->source_ref);
}

FmSpecies
fm_ingredient_guess_species (const FmIngredient *self)
{
  if (self->kind == FM_INGREDIENT_SALT)
    return FM_SPECIES_NONE;
  /* A row whose figures the developer changed keeps the dataset's name and number. */
  return self->original_name != NULL ? fm_species_of_ndb (self->source_ref) : FM_SPECIES_UNKNOWN;
}

FmIngredient *
fm_ingredient_copy (const FmIngredient *self)
{
  FmIngredient *copy = g_memdup2 (self, sizeof *self);
  g_atomic_ref_count_init (&copy->ref_count);
  copy->id = g_strdup (self->id);
  copy->name = g_strdup (self->name);
  copy->full_name = g_strdup (self->full_name);
  copy->source_ref = g_strdup (self->source_ref);
  copy->original_name = g_strdup (self->original_name);
  return copy;
}

FmIngredient *
fm_ingredient_ref (FmIngredient *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fm_ingredient_unref (FmIngredient *self)
{
  if (!g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_free (self->id);
  g_free (self->name);
  g_free (self->full_name);
  g_free (self->source_ref);
  g_free (self->original_name);
  g_free (self);
}

gboolean
fm_ingredient_equal (const FmIngredient *a, const FmIngredient *b)
{
  if (a == b)
    return TRUE;
  return g_strcmp0 (a->id, b->id) == 0 && g_strcmp0 (a->name, b->name) == 0 &&
         g_strcmp0 (a->full_name, b->full_name) == 0 && a->kind == b->kind &&
         a->species == b->species && a->provenance == b->provenance &&
         g_strcmp0 (a->source_ref, b->source_ref) == 0 &&
         g_strcmp0 (a->original_name, b->original_name) == 0 &&
         fm_double_same (a->declared_fat_pct, b->declared_fat_pct) &&
         fm_double_same (a->fat_u_g_per_100g, b->fat_u_g_per_100g) &&
         fm_double_same (a->collagen_g_per_100g, b->collagen_g_per_100g) &&
         fm_double_same (a->price_per_kg, b->price_per_kg) &&
         fm_double_same (a->ep_yield_pct, b->ep_yield_pct) &&
         a->allergens_known == b->allergens_known && a->allergens == b->allergens &&
         fm_composition_equal (&a->composition, &b->composition);
}

const char *
fm_ingredient_identity (const FmIngredient *self)
{
  gboolean is_row = self->provenance == FM_PROVENANCE_DATASET && self->source_ref;
  return is_row ? self->source_ref : self->id;
}

double
fm_ingredient_fat_g_per_100g (const FmIngredient *self)
{
  double analysed = self->composition.per_100g[FM_NUTRIENT_FAT];
  return isnan (analysed) ? self->declared_fat_pct : analysed;
}

double
fm_ingredient_fat_u_g_per_100g (const FmIngredient *self)
{
  gboolean fatless = self->kind == FM_INGREDIENT_SALT || self->kind == FM_INGREDIENT_WATER;
  if (isnan (self->fat_u_g_per_100g) && fatless && fm_ingredient_fat_g_per_100g (self) == 0.0)
    return 0.0;
  return self->fat_u_g_per_100g;
}

double
fm_ingredient_value (const FmIngredient *self, FmNutrient nutrient)
{
  return nutrient == FM_NUTRIENT_FAT ? fm_ingredient_fat_g_per_100g (self)
                                     : self->composition.per_100g[nutrient];
}

double
fm_ingredient_collagen_g_per_100g (const FmIngredient *self)
{
  if (isnan (self->collagen_g_per_100g) && self->composition.per_100g[FM_NUTRIENT_PROTEIN] == 0.0)
    return 0.0;
  return self->collagen_g_per_100g;
}

double
fm_ingredient_edible_price_per_kg (const FmIngredient *self)
{
  double yield_pct = isnan (self->ep_yield_pct) ? 100.0 : self->ep_yield_pct;
  return self->price_per_kg / (yield_pct / 100.0);
}

static double
max_per_100g (const char *unit)
{
  if (strcmp (unit, "g") == 0)
    return MAX_GRAMS;
  if (strcmp (unit, "mg") == 0)
    return MAX_GRAMS * 1e3;
  if (strcmp (unit, "mcg") == 0)
    return MAX_GRAMS * 1e6;
  return strcmp (unit, "kcal") == 0 ? MAX_ENERGY_KCAL : MAX_IU;
}

static gboolean
check_value (const FmIngredient *self,
             const char *what,
             double value,
             double max,
             const char *unit,
             GError **error)
{
  if (fm_double_unknown_or_within (value, 0.0, max))
    return TRUE;
  g_autofree char *limit = fm_number_to_edit (max, 2);
  /* Translators: ingredient, quantity, highest value that makes sense, its unit */
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("%s: %s must lie from 0 to %s %s. Correct it, or leave it blank if it is not "
                  "known."),
               self->name, what, limit, unit);
  return FALSE;
}

static gboolean
check_composition (const FmIngredient *self, GError **error)
{
  for (int i = 0; i < FM_N_NUTRIENTS; i++) {
    const FmNutrientInfo *info = fm_nutrient_info ((FmNutrient)i);
    if (!check_value (self, fm_nutrient_name ((FmNutrient)i), self->composition.per_100g[i],
                      max_per_100g (info->unit), info->unit, error))
      return FALSE;
  }
  double sum_g = 0.0;
  for (gsize i = 0; i < G_N_ELEMENTS (proximates); i++)
    if (fm_composition_is_known (&self->composition, proximates[i]))
      sum_g += self->composition.per_100g[proximates[i]];
  if (sum_g <= MAX_PROXIMATE_SUM_G || self->provenance == FM_PROVENANCE_DATASET)
    return TRUE;
  g_autofree char *sum = fm_number_format (sum_g, 1);
  /* Translators: ingredient, sum in grams */
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("%s: water, protein, fat, ash and carbohydrate add up to %s g in 100 g. Check "
                  "the analysis for a slip."),
               self->name, sum);
  return FALSE;
}

static gboolean
check_ep_yield (const FmIngredient *self, GError **error)
{
  if (isnan (self->ep_yield_pct) || (self->ep_yield_pct > 0.0 && self->ep_yield_pct <= 100.0))
    return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("%s: the edible portion must be more than 0 and at most 100 %% of the mass as "
                  "purchased. Correct it, or leave it blank."),
               self->name);
  return FALSE;
}

static gboolean
check_collagen (const FmIngredient *self, GError **error)
{
  if (!check_value (self, _ ("the collagen"), self->collagen_g_per_100g, MAX_GRAMS, "g", error))
    return FALSE;
  if (!(self->collagen_g_per_100g > self->composition.per_100g[FM_NUTRIENT_PROTEIN]))
    return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("%s: collagen is a part of the protein and cannot be more than it. Check both "
                  "figures."),
               self->name);
  return FALSE;
}

gboolean
fm_ingredient_check (const FmIngredient *self, GError **error)
{
  g_autofree char *name = g_strstrip (g_strdup (self->name ? self->name : ""));
  if (*name == '\0') {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                 _ ("The ingredient has no name. Type a name for it."));
    return FALSE;
  }
  return check_value (self, _ ("the declared fat"), self->declared_fat_pct, 100.0, "%", error) &&
         check_value (self, _ ("the uncertainty of the fat"), self->fat_u_g_per_100g, 100.0, "g",
                      error) &&
         check_value (self, _ ("the price"), self->price_per_kg, MAX_PRICE_PER_KG, _ ("per kg"),
                      error) &&
         check_ep_yield (self, error) && check_composition (self, error) &&
         check_collagen (self, error);
}

const char *
fm_provenance_name (FmProvenance provenance)
{
  switch (provenance) {
  case FM_PROVENANCE_DATASET:
    return _ ("Food-composition dataset");
  case FM_PROVENANCE_DECLARED:
    return _ ("Declared by the supplier");
  case FM_PROVENANCE_ANALYSIS:
    return _ ("Own laboratory analysis");
  case FM_PROVENANCE_NONE:
    return _ ("No analysis");
  }
  g_return_val_if_reached (NULL);
}
