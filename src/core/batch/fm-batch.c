/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch.c - what to buy and weigh for so many patties, and what they cost */
#include "core/batch/fm-batch.h"

#include "core/base/fm-double.h"
#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* No patty takes up more than half its mass in the pan; a larger figure is a typing error. */
#define MAX_COOK_YIELD_PCT 150.0
/* Relative to a step: a mass this close to a whole step is on it. */
#define ON_STEP 1e-9

void
fm_batch_plan_init (FmBatchPlan *self, const FmBrief *brief)
{
  *self = (FmBatchPlan){
    .n_patties = brief->n_patties,
    .patty_mass_g = brief->patty_mass_g,
    .salt_pct = brief->surface_salt_pct,
    .cook_yield_pct = NAN,
    .salt_price_per_kg = NAN,
    .buy_step_g = FM_BUY_STEP_G,
  };
}

static gboolean
check_pct (const char *what, double value, double max, GError **error)
{
  if (value >= 0.0 && value <= max)
    return TRUE;
  g_autofree char *limit = fm_number_to_edit (max, 0);
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
               _ ("%s must lie from 0 to %s %%. Type it in %%."), what, limit);
  return FALSE;
}

gboolean
fm_batch_plan_check (const FmBatchPlan *self, GError **error)
{
  g_autoptr (FmBrief) brief = fm_brief_new ();
  brief->n_patties = self->n_patties;
  brief->patty_mass_g = self->patty_mass_g;
  if (!fm_brief_check (brief, error))
    return FALSE;
  if (!check_pct (_ ("Grind loss"), self->grind_loss_pct, FM_MAX_GRIND_LOSS_PCT, error))
    return FALSE;
  if (!isnan (self->salt_pct) &&
      !check_pct (_ ("Salt"), self->salt_pct, FM_MAX_SURFACE_SALT_PCT, error))
    return FALSE;
  if (!(self->buy_step_g >= 0.0 && self->buy_step_g <= FM_MAX_LINE_MASS_G)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The steps in which you buy must be grams, 0 or more."));
    return FALSE;
  }
  if (isnan (self->cook_yield_pct))
    return TRUE;
  if (self->cook_yield_pct == 0.0) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A cooking yield of 0 %% leaves no patty. Type it in %%, or leave it blank."));
    return FALSE;
  }
  return check_pct (_ ("Cooking yield"), self->cook_yield_pct, MAX_COOK_YIELD_PCT, error);
}

double
fm_batch_edible_g (double purchased_g, double ep_yield_pct)
{
  return purchased_g * ep_yield_pct / 100.0;
}

double
fm_batch_purchased_g (double edible_g, double ep_yield_pct)
{
  return edible_g / (ep_yield_pct / 100.0);
}

/* What arithmetic leaves over a whole step buys no further one. */
double
fm_batch_bought_g (double mass_g, double step_g)
{
  return step_g > 0.0 ? ceil (mass_g / step_g - ON_STEP) * step_g : mass_g;
}

static FmBatchLine
batch_line (const FmFormulaLine *line, double share, double edible_total_g)
{
  const FmIngredient *ingredient = line->ingredient;
  FmBatchLine sheet = { .line = line, .share_pct = share * 100.0 };
  sheet.yield_assumed = isnan (ingredient->ep_yield_pct);
  sheet.edible_g = share * edible_total_g;
  sheet.purchased_g =
      fm_batch_purchased_g (sheet.edible_g, sheet.yield_assumed ? 100.0 : ingredient->ep_yield_pct);
  sheet.cost = sheet.purchased_g / 1000.0 * ingredient->price_per_kg;
  return sheet;
}

/* A salt in the blend is taken for the salt on the surface where nothing else is stated. */
static double
salt_price_per_kg (const FmFormula *formula, const FmBatchPlan *plan)
{
  double price_per_kg = plan->salt_price_per_kg;
  for (guint i = 0; isnan (price_per_kg) && i < fm_formula_n_lines (formula); i++) {
    const FmIngredient *ingredient = fm_formula_line (formula, i)->ingredient;
    if (ingredient->kind == FM_INGREDIENT_SALT)
      price_per_kg = fm_ingredient_edible_price_per_kg (ingredient);
  }
  return price_per_kg;
}

static void
fill_salt (FmBatch *self, const FmFormula *formula, const FmBatchPlan *plan)
{
  self->salt_per_patty_g = plan->patty_mass_g * plan->salt_pct / 100.0;
  self->salt_g = self->salt_per_patty_g * plan->n_patties;
  self->salt_bought_g = fm_batch_bought_g (self->salt_g, plan->buy_step_g);
  self->salt_cost = self->salt_g / 1000.0 * salt_price_per_kg (formula, plan);
}

static void
fill_lines (FmBatch *self, const FmFormula *formula, const FmBatchPlan *plan, double total_g)
{
  g_autoptr (GStrvBuilder) without_price = g_strv_builder_new ();

  self->lines_cost = NAN;
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    if (!(line->mass_g > 0.0))
      continue;
    FmBatchLine sheet = batch_line (line, line->mass_g / total_g, self->edible_g);
    sheet.bought_g = fm_batch_bought_g (sheet.purchased_g, plan->buy_step_g);
    g_array_append_val (self->lines, sheet);
    self->purchased_g += sheet.purchased_g;
    self->bought_g += sheet.bought_g;
    self->lines_cost = fm_double_add_known (self->lines_cost, sheet.cost);
    if (isnan (sheet.cost))
      g_strv_builder_add (without_price, line->ingredient->name);
  }
  self->cost = fm_double_add_known (self->lines_cost, self->salt_cost);
  if (self->salt_g > 0.0 && isnan (self->salt_cost))
    g_strv_builder_add (without_price, _ ("salt on the surface"));
  self->without_price = g_strv_builder_end (without_price);
}

static void
fill_patties (FmBatch *self, const FmBatchPlan *plan)
{
  self->cooked_patty_g = plan->patty_mass_g * plan->cook_yield_pct / 100.0;
  self->cost_per_raw_patty = self->cost / plan->n_patties;
  self->cost_per_cooked_patty = self->cost_per_raw_patty;
  self->cost_per_100g_raw = self->cost_per_raw_patty / plan->patty_mass_g * 100.0;
  self->cost_per_100g_cooked = self->cost_per_cooked_patty / self->cooked_patty_g * 100.0;
}

FmBatch *
fm_batch_new (const FmFormula *formula, const FmBatchPlan *plan, GError **error)
{
  if (!fm_batch_plan_check (plan, error))
    return NULL;
  double total_g = fm_formula_total_g (formula);
  if (!(total_g > 0.0)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                 _ ("The blend weighs nothing yet. Type the mass of at least one line first."));
    return NULL;
  }
  FmBatch *self = g_new0 (FmBatch, 1);
  self->lines = g_array_new (FALSE, FALSE, sizeof (FmBatchLine));
  self->ground_g = plan->n_patties * plan->patty_mass_g;
  self->edible_g = self->ground_g / (1.0 - plan->grind_loss_pct / 100.0);
  fill_salt (self, formula, plan);
  fill_lines (self, formula, plan, total_g);
  fill_patties (self, plan);
  return self;
}

void
fm_batch_free (FmBatch *self)
{
  g_array_unref (self->lines);
  g_strfreev (self->without_price);
  g_free (self);
}
