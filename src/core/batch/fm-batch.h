/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch.h - what to buy and weigh for so many patties, and what they cost
 *
 * Sources: edible portion = as purchased x yield %, EP cost = AP cost / yield (Trade Calculations,
 * Yield and Cost of Edible Product, Canadian cook training, 2007). Grind loss is what stays in the
 * grinder: ground mass = edible mass x (1 - loss / 100).
 */
#pragma once

#include "core/formula/fm-formula.h"

G_BEGIN_DECLS

#define FM_MAX_GRIND_LOSS_PCT 50.0
/* Steps in which a shop weighs meat out: common practice, no source. */
#define FM_BUY_STEP_G 10.0

typedef struct {
  int n_patties;            /* [1, FM_MAX_N_PATTIES] */
  double patty_mass_g;      /* raw, (0, FM_MAX_PATTY_MASS_G] */
  double grind_loss_pct;    /* [0, FM_MAX_GRIND_LOSS_PCT] of the edible mass */
  double salt_pct;          /* of the mass of the shaped patties, added on top; NaN = not planned */
  double cook_yield_pct;    /* cooked / raw x 100, (0, 150]; NaN = not known */
  double salt_price_per_kg; /* NaN = as of a salt in the blend */
  double buy_step_g;        /* what is bought is rounded up to whole steps; 0 = exact */
} FmBatchPlan;

typedef struct {
  const FmFormulaLine *line; /* of the formula, which must outlive the sheet */
  double share_pct;
  double edible_g;
  double purchased_g;     /* as purchased, edible / EP yield */
  double bought_g;        /* purchased_g in whole steps, rounded up */
  gboolean yield_assumed; /* no EP yield is stated, 100 % taken */
  double cost;            /* of purchased_g; NaN = no price */
} FmBatchLine;

typedef struct {
  GArray *lines;   /* FmBatchLine, formula order, lines of zero mass left out */
  double edible_g; /* into the grinder */
  double purchased_g;
  double bought_g; /* of the lines */
  double ground_g; /* n_patties x patty_mass_g */
  double salt_g;   /* NaN = not planned */
  double salt_per_patty_g;
  double salt_bought_g;
  double salt_cost;      /* of salt_g; NaN = no price */
  double cooked_patty_g; /* NaN = yield not known */
  /* Costs, the salt on the surface included, are of what goes in and has a price: the least it can
   * cost where without_price names any; NaN when none has a price. */
  double lines_cost; /* of the lines alone */
  double cost;       /* whole batch */
  double cost_per_raw_patty;
  double cost_per_cooked_patty; /* one raw patty gives one cooked: the same money, less mass */
  double cost_per_100g_raw;
  double cost_per_100g_cooked; /* NaN also when the yield is not known */
  GStrv without_price;         /* names */
} FmBatch;

/** A plan from a brief: its patties and salt, no losses, yield not known, FM_BUY_STEP_G. */
void fm_batch_plan_init (FmBatchPlan *self, const FmBrief *brief);
gboolean fm_batch_plan_check (const FmBatchPlan *self, GError **error);
/** NULL + error for a bad plan (OUT_OF_RANGE) or a formula that weighs nothing (EMPTY). */
FmBatch *fm_batch_new (const FmFormula *formula, const FmBatchPlan *plan, GError **error);
void fm_batch_free (FmBatch *self);

/** Edible mass of @purchased_g at a yield of @ep_yield_pct, and back. */
double fm_batch_edible_g (double purchased_g, double ep_yield_pct);
double fm_batch_purchased_g (double edible_g, double ep_yield_pct);
/** @mass_g in whole steps of @step_g, rounded up; 0 = exact. */
double fm_batch_bought_g (double mass_g, double step_g);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmBatch, fm_batch_free)

G_END_DECLS
