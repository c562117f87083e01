/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets.c - building a set of targets */
#include "fm-targets-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
candidate_free (gpointer data)
{
  FmCandidate *candidate = data;
  fm_ingredient_unref (candidate->ingredient);
  g_free (candidate->line_id);
  g_free (candidate);
}

static void
row_free (gpointer data)
{
  FmTargetRow *row = data;
  g_free (row->name);
  g_free (row->unit);
  g_free (row);
}

FmTargets *
fm_targets_new (double total_g)
{
  FmTargets *self = g_new0 (FmTargets, 1);
  self->candidates = g_ptr_array_new_with_free_func (candidate_free);
  self->rows = g_ptr_array_new_with_free_func (row_free);
  self->total_g = total_g;
  self->currency = g_strdup ("");
  return self;
}

void
fm_targets_free (FmTargets *self)
{
  g_ptr_array_unref (self->candidates);
  g_ptr_array_unref (self->rows);
  g_free (self->currency);
  g_free (self);
}

FmCandidate *
fm_targets_add_candidate (FmTargets *self, FmIngredient *ingredient)
{
  FmCandidate *candidate = g_new0 (FmCandidate, 1);
  candidate->ingredient = fm_ingredient_ref (ingredient);
  candidate->min_share_pct = NAN;
  candidate->max_share_pct = NAN;
  g_ptr_array_add (self->candidates, candidate);
  return candidate;
}

static FmTargetRow *
add_row (FmTargets *self, const char *name, const char *unit, FmQuantity quantity, FmBand band)
{
  FmTargetRow *row = g_new0 (FmTargetRow, 1);
  row->name = g_strdup (name);
  row->unit = g_strdup (unit);
  row->quantity = quantity;
  row->nutrient = FM_NUTRIENT_NONE;
  row->factor = 1.0;
  row->decimals = 1;
  row->band = band;
  g_ptr_array_add (self->rows, row);
  return row;
}

/* Shares add up to 1, so what every blend has stands beside each ingredient's own. */
static double
extra_amount (const FmTargets *self, const FmTargetRow *row)
{
  return row->nutrient == FM_NUTRIENT_SODIUM ? self->surface_sodium_mg_per_100g * row->factor : 0.0;
}

guint
fm_targets_add_nutrient (FmTargets *self, FmNutrient nutrient, FmBand band)
{
  const FmNutrientInfo *info = fm_nutrient_info (nutrient);
  /* Grams per 100 g are percent, and said so. */
  gboolean mass_share = g_str_equal (info->unit, "g");
  g_autofree char *unit =
      mass_share ? g_strdup ("%") : g_strdup_printf (_ ("%s/100 g"), info->unit);
  FmTargetRow *row = add_row (self, fm_nutrient_name (nutrient), unit, FM_QUANTITY_NUTRIENT, band);
  row->nutrient = nutrient;
  row->extra = extra_amount (self, row);
  row->decimals = MAX (1, info->display_decimals);
  return self->rows->len - 1;
}

guint
fm_targets_add_collagen (FmTargets *self, FmBand band)
{
  add_row (self, _ ("Collagen share of protein"), "%", FM_QUANTITY_COLLAGEN, band);
  return self->rows->len - 1;
}

guint
fm_targets_add_cost (FmTargets *self, FmBand band)
{
  FmTargetRow *row = add_row (self, _ ("Cost per kg"), self->currency, FM_QUANTITY_COST, band);
  row->decimals = 2;
  return self->rows->len - 1;
}

void
fm_targets_set_currency (FmTargets *self, const char *currency)
{
  g_free (self->currency);
  self->currency = g_strdup (currency);
  for (guint i = 0; i < self->rows->len; i++) {
    FmTargetRow *row = g_ptr_array_index (self->rows, i);
    if (row->quantity != FM_QUANTITY_COST)
      continue;
    g_free (row->unit);
    row->unit = g_strdup (currency);
  }
}

double
fm_targets_value_now (const FmTargets *self, guint row_index)
{
  const FmTargetRow *row = g_ptr_array_index (self->rows, row_index);
  double sum = 0.0;
  double over = 0.0;
  for (guint i = 0; i < self->candidates->len; i++) {
    const FmCandidate *candidate = g_ptr_array_index (self->candidates, i);
    if (!(candidate->current_g > 0.0))
      continue;
    sum += candidate->current_g * fm_target_row_amount (row, candidate->ingredient);
    over += candidate->current_g * fm_target_row_over (row, candidate->ingredient);
  }
  return over > 0.0 ? sum / over : NAN;
}

double
fm_target_row_amount (const FmTargetRow *row, const FmIngredient *ingredient)
{
  switch (row->quantity) {
  case FM_QUANTITY_NUTRIENT:
    return fm_ingredient_value (ingredient, row->nutrient) * row->factor + row->extra;
  case FM_QUANTITY_COST:
    return fm_ingredient_edible_price_per_kg (ingredient) * row->factor;
  case FM_QUANTITY_COLLAGEN:
    return fm_ingredient_collagen_g_per_100g (ingredient) * 100.0;
  }
  g_return_val_if_reached (NAN);
}

double
fm_target_row_over (const FmTargetRow *row, const FmIngredient *ingredient)
{
  return row->quantity == FM_QUANTITY_COLLAGEN
             ? fm_ingredient_value (ingredient, FM_NUTRIENT_PROTEIN)
             : 1.0;
}

static void
add_brief (FmTargets *self, const FmBrief *brief)
{
  for (int i = 0; i < FM_N_TARGETS; i++) {
    FmTargetKind kind = (FmTargetKind)i;
    const FmTargetInfo *info = fm_target_info (kind);
    const FmBand *band = &brief->bands[i];
    if (isnan (band->min) && isnan (band->max))
      continue;
    FmQuantity quantity =
        info->nutrient == FM_NUTRIENT_NONE ? FM_QUANTITY_COST : FM_QUANTITY_NUTRIENT;
    FmTargetRow *row = add_row (self, fm_target_name (kind), info->unit, quantity, *band);
    row->nutrient = info->nutrient;
    row->factor = fm_target_factor (kind, brief->patty_mass_g);
    row->extra = extra_amount (self, row);
    row->decimals = info->decimals;
  }
}

FmTargets *
fm_targets_new_from_formula (const FmFormula *formula)
{
  double total_g = fm_formula_total_g (formula);
  double planned_g = formula->brief->patty_mass_g * formula->brief->n_patties;
  FmTargets *self = fm_targets_new (total_g > 0.0 ? total_g : planned_g);
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    FmCandidate *candidate = fm_targets_add_candidate (self, line->ingredient);
    candidate->line_id = g_strdup (line->id);
    candidate->current_g = line->mass_g;
    candidate->locked = line->locked || fm_ingredient_kind_keeps_share (line->ingredient->kind);
    candidate->min_share_pct = line->min_share_pct;
    candidate->max_share_pct = line->max_share_pct;
  }
  self->surface_sodium_mg_per_100g = fm_brief_surface_sodium_mg_per_100g (formula->brief);
  add_brief (self, formula->brief);
  return self;
}

static FmCandidate *
find_same (FmTargets *self, const FmIngredient *ingredient)
{
  const char *identity = fm_ingredient_identity (ingredient);
  for (guint i = 0; i < self->candidates->len; i++) {
    FmCandidate *candidate = g_ptr_array_index (self->candidates, i);
    if (g_str_equal (fm_ingredient_identity (candidate->ingredient), identity))
      return candidate;
  }
  return NULL;
}

void
fm_targets_set_reference (FmTargets *self, const FmFormula *reference)
{
  double total_g = fm_formula_total_g (reference);
  for (guint i = 0; i < self->candidates->len; i++)
    ((FmCandidate *)g_ptr_array_index (self->candidates, i))->reference_share_pct = 0.0;
  for (guint i = 0; i < fm_formula_n_lines (reference) && total_g > 0.0; i++) {
    const FmFormulaLine *line = fm_formula_line (reference, i);
    FmCandidate *candidate = find_same (self, line->ingredient);
    if (!candidate)
      candidate = fm_targets_add_candidate (self, line->ingredient);
    candidate->reference_share_pct += line->mass_g / total_g * 100.0;
  }
}

gboolean
fm_targets_is_pearson (const FmTargets *self, guint *a, guint *b)
{
  gboolean has_fat = FALSE;
  for (guint i = 0; i < self->rows->len; i++)
    has_fat |= ((FmTargetRow *)g_ptr_array_index (self->rows, i))->nutrient == FM_NUTRIENT_FAT;
  if (!has_fat || self->candidates->len != 2)
    return FALSE;
  for (guint i = 0; i < 2; i++) {
    const FmCandidate *candidate = g_ptr_array_index (self->candidates, i);
    if (isnan (fm_ingredient_fat_g_per_100g (candidate->ingredient)))
      return FALSE;
  }
  *a = 0;
  *b = 1;
  return TRUE;
}
