/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-batch.c - batch sheets, corrections of a real batch, certainty of its fat */
#include "core/batch/fm-batch-correction.h"
#include "core/batch/fm-batch-derivation.h"
#include "core/batch/fm-batch-weighed.h"
#include "core/batch/fm-batch.h"
#include "core/base/fm-error.h"

#include <string.h>

#include "blends.h"

#define SEED 20260417

static void
test_sheet (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  FmIngredient *lean = fm_formula_line (formula, 0)->ingredient;
  lean->ep_yield_pct = 80.0;
  lean->price_per_kg = 8.0;
  fm_formula_line (formula, 1)->ingredient->price_per_kg = 5.0;
  fm_formula_line (formula, 2)->ingredient->price_per_kg = 2.0;
  FmBatchPlan plan = { 10, 190.0, 5.0, 1.5, 75.0, NAN, 30.0 };
  g_autoptr (FmBatch) batch = fm_batch_new (formula, &plan, NULL);
  assert_near (batch->ground_g, 1900.0, 1e-9);
  assert_near (batch->edible_g, 2000.0, 1e-9);
  const FmBatchLine *line = &g_array_index (batch->lines, FmBatchLine, 0);
  assert_near (line->edible_g, 1000.0, 1e-9);
  assert_near (line->purchased_g, 1250.0, 1e-9);
  assert_near (line->bought_g, 1260.0, 1e-9);
  assert_near (line->cost, 10.0, 1e-9);
  g_assert_false (line->yield_assumed);
  assert_near (batch->cost, 10.0 + 3.0 + 0.8, 1e-9);
  assert_near (batch->cost_per_raw_patty, 1.38, 1e-9);
  assert_near (batch->cost_per_cooked_patty, 1.38, 1e-9);
  assert_near (batch->cooked_patty_g, 142.5, 1e-9);
  assert_near (batch->cost_per_100g_cooked, 1.38 / 142.5 * 100.0, 1e-9);
  assert_near (batch->salt_g, 28.5, 1e-9);
  assert_near (batch->salt_bought_g, 30.0, 1e-9);
  g_assert_cmpstr (batch->without_price[0], ==, "salt on the surface");
}

/* Every cost can be followed by hand, and what has no price is named. */
static void
test_cost_derivation (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  FmIngredient *lean = fm_formula_line (formula, 0)->ingredient;
  lean->ep_yield_pct = 80.0;
  lean->price_per_kg = 8.0;
  fm_formula_line (formula, 1)->ingredient->price_per_kg = 5.0;
  FmBatchPlan plan = { 10, 190.0, 5.0, NAN, 75.0, NAN, 30.0 };
  g_autoptr (FmBatch) batch = fm_batch_new (formula, &plan, NULL);
  g_autofree char *text = fm_batch_cost_derivation (batch, &plan);
  static const char *const parts[] = {
    "10 patties × 190.0 g = 1900.0 g shaped.",
    "1900.0 g ÷ (100 % − 5.0 % grind loss) = 2000.0 g edible",
    "Lean: 1000.0 g edible ÷ 80.0 % stated yield = 1250.0 g as purchased; × 8.00 per kg = 10.000",
    "Plate: 600.0 g edible = 600.0 g as purchased, since no yield is stated for it and all of it "
    "is "
    "taken as edible; × 5.00 per kg = 3.000",
    "taken as edible; no price: what it costs is not known",
    "the whole batch: 13.000",
    "each raw patty: 1.300",
    "these are the least that it costs",
  };

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (strstr (text, parts[i]) == NULL)
      g_error ("“%s” is not in: %s", parts[i], text);
}

/* Salt on the surface is bought and paid for: at its own price, or at that of a salt in the blend.
 */
static void
test_surface_salt (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  for (guint i = 0; i < 3; i++)
    fm_formula_line (formula, i)->ingredient->price_per_kg = 10.0;
  formula->brief->surface_salt_pct = 1.5;
  FmBatchPlan plan;
  fm_batch_plan_init (&plan, formula->brief);
  assert_near (plan.salt_pct, 1.5, 1e-12);
  plan.salt_price_per_kg = 2.0;
  g_autoptr (FmBatch) batch = fm_batch_new (formula, &plan, NULL);
  assert_near (batch->salt_cost, batch->salt_g / 1000.0 * 2.0, 1e-12);
  assert_near (batch->cost, batch->lines_cost + batch->salt_cost, 1e-9);
  g_assert_null (batch->without_price[0]);
  g_autoptr (FmIngredient) salt = fm_ingredient_new ("Salt", FM_INGREDIENT_SALT);
  salt->price_per_kg = 4.0;
  fm_formula_add (formula, salt, 5.0);
  plan.salt_price_per_kg = NAN;
  g_autoptr (FmBatch) of_blend = fm_batch_new (formula, &plan, NULL);
  assert_near (of_blend->salt_cost, of_blend->salt_g / 1000.0 * 4.0, 1e-12);
}

static void
test_sheet_gaps (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  FmBatchPlan plan;
  fm_batch_plan_init (&plan, formula->brief);
  g_autoptr (FmBatch) batch = fm_batch_new (formula, &plan, NULL);
  g_assert_true (isnan (batch->cost));
  g_assert_true (isnan (batch->salt_g));
  g_assert_true (isnan (batch->cost_per_100g_cooked));
  g_assert_cmpuint (g_strv_length (batch->without_price), ==, 3);

  fm_formula_line (formula, 0)->ingredient->price_per_kg = 8.0;
  g_autoptr (FmBatch) partly = fm_batch_new (formula, &plan, NULL);
  assert_near (partly->cost, g_array_index (partly->lines, FmBatchLine, 0).cost, 1e-9);
  g_assert_cmpfloat (partly->cost_per_raw_patty, >, 0.0);
  g_assert_cmpuint (g_strv_length (partly->without_price), ==, 2);

  const double bad[] = { -1.0, 60.0, NAN, INFINITY };
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (GError) error = NULL;
    plan.grind_loss_pct = bad[i];
    g_assert_null (fm_batch_new (formula, &plan, &error));
    g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  }
  g_autoptr (FmFormula) empty = fm_formula_new ();
  g_autoptr (GError) error = NULL;
  fm_batch_plan_init (&plan, formula->brief);
  g_assert_null (fm_batch_new (empty, &plan, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
}

static GPtrArray *
shelf (void)
{
  GPtrArray *ingredients = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_ingredient_unref);
  g_ptr_array_add (ingredients, ingredient_with_fat ("Lean", 10.0));
  g_ptr_array_add (ingredients, ingredient_with_fat ("Plate", 30.0));
  g_ptr_array_add (ingredients, ingredient_with_fat ("Backfat", 90.0));
  g_ptr_array_add (ingredients, ingredient_with_fat ("Mystery", NAN));
  return ingredients;
}

static GPtrArray *
ways_to (double batch_g, double fat_pct, double min_pct, double max_pct, double step_g)
{
  g_autoptr (GPtrArray) ingredients = shelf ();
  g_autoptr (GError) error = NULL;
  GPtrArray *ways = fm_batch_corrections (batch_g, fat_pct, &(FmBand){ min_pct, max_pct },
                                          ingredients, step_g, &error);
  g_assert_no_error (error);
  return ways;
}

static const FmCorrection *
way_of (GPtrArray *ways, const char *name)
{
  for (guint i = 0; i < ways->len; i++) {
    const FmCorrection *way = g_ptr_array_index (ways, i);
    if (g_str_equal (way->ingredient->name, name))
      return way;
  }
  g_assert_not_reached ();
}

static void
test_corrections (void)
{
  g_autoptr (GPtrArray) ways = ways_to (1000.0, 15.0, 20.0, 20.0, 0.0);
  const FmCorrection *first = g_ptr_array_index (ways, 0);
  const FmCorrection *second = g_ptr_array_index (ways, 1);
  g_assert_cmpstr (first->ingredient->name, ==, "Backfat");
  assert_near (first->to_edge.add_g, 1000.0 * 5.0 / 70.0, 1e-9);
  assert_near (second->to_edge.add_g, 500.0, 1e-9);
  assert_near (second->to_edge.new_total_g, 1500.0, 1e-9);
  g_assert_true (isnan (second->to_middle.aim_pct));
  g_assert_null (second->to_middle.sentence);
  for (guint i = 2; i < 4; i++) {
    const FmCorrection *no = g_ptr_array_index (ways, i);
    g_assert_false (no->to_edge.possible);
    g_assert_true (isnan (no->to_edge.add_g));
    g_assert_nonnull (no->to_edge.sentence);
  }
}

/* 15 % to a band of 18 to 22: the edge asks 1,000 x 3 / 72 g of backfat, the middle 1,000 x 5 / 70.
 */
static void
test_correction_edge_and_middle (void)
{
  g_autoptr (GPtrArray) ways = ways_to (1000.0, 15.0, 18.0, 22.0, 5.0);
  const FmCorrection *way = way_of (ways, "Backfat");
  assert_near (way->to_edge.aim_pct, 18.0, 1e-12);
  assert_near (way->to_edge.add_g, 45.0, 1e-9); /* 41.7 rounded up: 40 g would stay outside */
  g_assert_cmpfloat (way->to_edge.new_fat_pct, >=, 18.0);
  assert_near (way->to_middle.aim_pct, 20.0, 1e-12);
  assert_near (way->to_middle.add_g, 70.0, 1e-9);
  g_autoptr (GPtrArray) down = ways_to (1000.0, 25.0, 18.0, 22.0, 0.0);
  way = way_of (down, "Lean");
  assert_near (way->to_edge.aim_pct, 22.0, 1e-12);
  assert_near (way->to_edge.add_g, 1000.0 * 3.0 / 12.0, 1e-9);
  assert_near (way->to_middle.add_g, 1000.0 * 5.0 / 10.0, 1e-9);
  g_autoptr (GPtrArray) inside = ways_to (1000.0, 19.0, 18.0, 22.0, 0.0);
  way = way_of (inside, "Backfat");
  g_assert_true (way->to_edge.possible);
  g_assert_cmpfloat (way->to_edge.add_g, ==, 0.0);
  assert_near (way->to_middle.add_g, 1000.0 / 70.0, 1e-9);
  g_autoptr (GPtrArray) open = ways_to (1000.0, 25.0, NAN, 22.0, 0.0);
  way = way_of (open, "Lean");
  assert_near (way->to_edge.add_g, 250.0, 1e-9);
  g_assert_true (isnan (way->to_middle.aim_pct));
}

/* Plate at 30 % would take 1,000 x 10 / 4 g to bring 16 % to 26 %: that is another batch. */
static void
test_correction_never_doubles (void)
{
  g_autoptr (GPtrArray) ways = ways_to (1000.0, 16.0, 22.0, 30.0, 0.0);
  const FmCorrection *way = way_of (ways, "Plate");
  assert_near (way->to_edge.add_g, 1000.0 * 6.0 / 8.0, 1e-9);
  g_assert_false (way->to_middle.possible);
  g_assert_nonnull (strstr (way->to_middle.sentence, "more than the batch itself"));
  g_autoptr (GPtrArray) brisket = ways_to (1000.0, 16.0, 29.9, 29.9, 0.0);
  way = way_of (brisket, "Plate");
  g_assert_false (way->to_edge.possible);
  g_assert_true (isnan (way->to_edge.add_g));
  g_assert_nonnull (strstr (way->to_edge.sentence, "more than the batch itself"));
}

static void
test_correction_coarse_scale (void)
{
  g_autoptr (GPtrArray) ways = ways_to (1000.0, 15.0, 18.0, 18.5, 100.0);
  const FmCorrection *way = way_of (ways, "Backfat");
  g_assert_false (way->to_edge.possible);
  g_assert_nonnull (strstr (way->to_edge.sentence, "finer steps"));
}

static void
assert_balances (const FmAddition *addition, double batch_g, double fat_pct, double own_pct)
{
  if (!addition->possible)
    return;
  g_assert_cmpfloat (addition->add_g, >=, 0.0);
  g_assert_cmpfloat (addition->add_g, <=, batch_g);
  if (addition->add_g == 0.0)
    return;
  assert_near (batch_g * fat_pct + addition->add_g * own_pct,
               addition->new_total_g * addition->new_fat_pct, 1e-6 * batch_g);
}

static void
test_correction_balance (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  for (int run = 0; run < 200; run++) {
    double batch_g = g_rand_double_range (rand, 100.0, 5000.0);
    double fat = g_rand_double_range (rand, 5.0, 60.0);
    double min = g_rand_double_range (rand, 11.0, 20.0);
    double max = g_rand_double_range (rand, 21.0, 29.0);
    g_autoptr (GPtrArray) ways = ways_to (batch_g, fat, min, max, run % 2 ? 5.0 : 0.0);
    for (guint i = 0; i < ways->len; i++) {
      const FmCorrection *way = g_ptr_array_index (ways, i);
      double own = fm_ingredient_fat_g_per_100g (way->ingredient);
      assert_balances (&way->to_edge, batch_g, fat, own);
      assert_balances (&way->to_middle, batch_g, fat, own);
      if (!way->to_edge.possible)
        continue;
      g_assert_cmpfloat (way->to_edge.new_fat_pct, >=, min - 1e-6);
      g_assert_cmpfloat (way->to_edge.new_fat_pct, <=, max + 1e-6);
    }
  }
}

static void
test_correction_bad_input (void)
{
  g_autoptr (GPtrArray) ingredients = shelf ();
  const struct {
    double mass, fat;
    FmBand band;
    int code;
  } bad[] = {
    { 0.0, 15.0, { 20.0, 20.0 }, FM_CORE_ERROR_EMPTY },
    { NAN, 15.0, { 20.0, 20.0 }, FM_CORE_ERROR_EMPTY },
    { 1e300, 15.0, { 20.0, 20.0 }, FM_CORE_ERROR_OUT_OF_RANGE },
    { 1000.0, NAN, { 20.0, 20.0 }, FM_CORE_ERROR_UNKNOWN_VALUE },
    { 1000.0, 15.0, { 20.0, 120.0 }, FM_CORE_ERROR_OUT_OF_RANGE },
    { 1000.0, 15.0, { 22.0, 20.0 }, FM_CORE_ERROR_OUT_OF_RANGE },
    { 1000.0, 15.0, { NAN, NAN }, FM_CORE_ERROR_UNKNOWN_VALUE },
  };
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (GError) error = NULL;
    g_assert_null (
        fm_batch_corrections (bad[i].mass, bad[i].fat, &bad[i].band, ingredients, 0.0, &error));
    g_assert_error (error, FM_CORE_ERROR, bad[i].code);
  }
}

static void
test_top_up (void)
{
  const char *names[] = { "Lean", "Fat", "Extra" };
  const double planned[] = { 800.0, 200.0, 0.0 };
  const double weighed[] = { 780.0, 220.0, 0.0 };
  g_auto (FmTopUp) top_up = { 0 };
  g_assert_true (fm_top_up_init (&top_up, 3, names, planned, weighed, NULL));
  assert_near (top_up.total_g, 1100.0, 1e-9);
  assert_near (top_up.add_g[0], 100.0, 1e-9);
  assert_near (top_up.add_g[1], 0.0, 1e-9);
  g_assert_cmpint (top_up.most_over, ==, 1);
  g_assert_true (top_up.is_sane);

  const double doubled[] = { 800.0, 401.0, 0.0 };
  g_auto (FmTopUp) twice = { 0 };
  g_assert_true (fm_top_up_init (&twice, 3, names, planned, doubled, NULL));
  g_assert_false (twice.is_sane);

  const double extra[] = { 800.0, 200.0, 5.0 };
  g_auto (FmTopUp) failed = { 0 };
  g_autoptr (GError) error = NULL;
  g_assert_false (fm_top_up_init (&failed, 3, names, planned, extra, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  g_assert_nonnull (strstr (error->message, "Extra"));
}

static const double extra_g = 12.0;

static FmExperiment *
experiment_of (const FmFormula *version)
{
  FmExperiment *experiment = fm_experiment_new ();

  fm_experiment_plan (experiment, version);
  g_array_index (experiment->weighings, FmWeighing, 0).weighed_g = 420.0;
  fm_experiment_add_weighing (experiment, NULL, "Ice", NAN, extra_g);
  fm_experiment_add_weighing (experiment, NULL, "Pepper", NAN, NAN);
  return experiment;
}

static void
test_weighed_plan (void)
{
  g_autoptr (FmFormula) version = three_line_blend ();
  g_autoptr (FmExperiment) experiment = experiment_of (version);
  g_autofree double *weighed_g = NULL;
  g_autoptr (FmFormula) plan = fm_batch_weighed_plan (version, experiment->weighings, &weighed_g);

  g_assert_cmpuint (fm_formula_n_lines (plan), ==, 5);
  for (guint i = 0; i < 3; i++)
    assert_near (mass_of (plan, i), g_array_index (experiment->weighings, FmWeighing, i).planned_g,
                 1e-12);
  g_assert_cmpfloat (weighed_g[0], ==, 420.0);
  g_assert_true (isnan (weighed_g[1]));
  g_assert_cmpstr (name_of (plan, 3), ==, "Ice");
  g_assert_cmpfloat (mass_of (plan, 3), ==, 0.0);
  g_assert_cmpfloat (weighed_g[3], ==, extra_g);
  g_assert_true (isnan (fm_ingredient_fat_g_per_100g (fm_formula_line (plan, 3)->ingredient)));
  g_assert_cmpfloat (weighed_g[4], ==, 0.0);
}

/* A line that the experiment does not know plans nothing; the version stays as it was. */
static void
test_weighed_plan_without_line (void)
{
  g_autoptr (FmFormula) version = three_line_blend ();
  g_autoptr (FmExperiment) experiment = experiment_of (version);
  g_autofree double *weighed_g = NULL;

  g_array_remove_index (experiment->weighings, 1);
  g_autoptr (FmFormula) plan = fm_batch_weighed_plan (version, experiment->weighings, &weighed_g);
  g_assert_cmpfloat (mass_of (plan, 1), ==, 0.0);
  g_assert_cmpfloat (weighed_g[1], ==, 0.0);
  g_assert_cmpfloat (mass_of (version, 1), ==, 300.0);
}

/* Whatever was weighed in, topping up gives every ingredient its planned share and takes nothing
 * out; no smaller batch would do. */
static void
test_top_up_balance (void)
{
  const char *names[] = { "Lean", "Plate", "Backfat", "Salt" };
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (int run = 0; run < 500; run++) {
    double planned[4], weighed[4];
    double planned_g = 0.0, mass_g = 0.0;
    gboolean one_is_full = FALSE;
    for (guint i = 0; i < 4; i++) {
      planned[i] = g_rand_double_range (rand, 1.0, 2000.0);
      weighed[i] = planned[i] * g_rand_double_range (rand, 0.0, 1.4);
      planned_g += planned[i];
    }
    g_auto (FmTopUp) top_up = { 0 };
    g_assert_true (fm_top_up_init (&top_up, 4, names, planned, weighed, NULL));
    for (guint i = 0; i < 4; i++) {
      double after_g = weighed[i] + top_up.add_g[i];
      g_assert_cmpfloat (top_up.add_g[i], >=, 0.0);
      assert_near (after_g / top_up.total_g, planned[i] / planned_g, 1e-9);
      one_is_full |= top_up.add_g[i] <= 1e-9 * after_g;
      mass_g += after_g;
    }
    assert_near (mass_g, top_up.total_g, 1e-6);
    g_assert_true (one_is_full || top_up.total_g <= planned_g * (1.0 + 1e-12));
  }
}

/* What a sheet weighs and costs is what its lines weigh and cost, and grinding loses what is told.
 */
static void
test_sheet_balance (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);

  for (int run = 0; run < 300; run++) {
    g_autoptr (FmFormula) formula = three_line_blend ();
    FmBatchPlan plan = { g_rand_int_range (rand, 1, 400),
                         g_rand_double_range (rand, 20.0, 400.0),
                         g_rand_double_range (rand, 0.0, 50.0),
                         1.0,
                         g_rand_double_range (rand, 40.0, 100.0),
                         3.0,
                         run % 2 ? 10.0 : 0.0 };
    double edible_g = 0.0, purchased_g = 0.0, bought_g = 0.0, cost = 0.0, share_pct = 0.0;
    for (guint i = 0; i < 3; i++) {
      FmIngredient *ingredient = fm_formula_line (formula, i)->ingredient;
      fm_formula_line (formula, i)->mass_g = g_rand_double_range (rand, 1.0, 3000.0);
      ingredient->price_per_kg = g_rand_double_range (rand, 0.0, 30.0);
      ingredient->ep_yield_pct = g_rand_double_range (rand, 30.0, 100.0);
    }
    g_autoptr (FmBatch) batch = fm_batch_new (formula, &plan, NULL);
    for (guint i = 0; i < batch->lines->len; i++) {
      const FmBatchLine *line = &g_array_index (batch->lines, FmBatchLine, i);
      double yield_pct = line->line->ingredient->ep_yield_pct;
      assert_near (fm_batch_edible_g (line->purchased_g, yield_pct), line->edible_g, 1e-6);
      g_assert_cmpfloat (line->purchased_g, >=, line->edible_g);
      edible_g += line->edible_g;
      purchased_g += line->purchased_g;
      bought_g += line->bought_g;
      g_assert_cmpfloat (line->bought_g, >=, line->purchased_g - 1e-6);
      g_assert_cmpfloat (line->bought_g, <, line->purchased_g + MAX (plan.buy_step_g, 1e-6));
      cost += line->cost;
      share_pct += line->share_pct;
    }
    assert_near (share_pct, 100.0, 1e-9);
    assert_near (edible_g, batch->edible_g, 1e-6 * batch->edible_g);
    assert_near (purchased_g, batch->purchased_g, 1e-6 * batch->purchased_g);
    assert_near (bought_g, batch->bought_g, 1e-6 * batch->bought_g);
    assert_near (cost, batch->lines_cost, 1e-6 * (1.0 + cost));
    assert_near (cost + batch->salt_g * 3.0 / 1000.0, batch->cost, 1e-6 * (1.0 + cost));
    assert_near (batch->edible_g * (1.0 - plan.grind_loss_pct / 100.0), batch->ground_g,
                 1e-6 * batch->ground_g);
    assert_near (batch->cost_per_100g_cooked * batch->cooked_patty_g / 100.0,
                 batch->cost_per_cooked_patty, 1e-9 * (1.0 + cost));
    assert_near (batch->cost_per_cooked_patty * plan.n_patties, batch->cost, 1e-6 * (1.0 + cost));
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch/sheet", test_sheet);
  g_test_add_func ("/batch/sheet-gaps", test_sheet_gaps);
  g_test_add_func ("/batch/cost-derivation", test_cost_derivation);
  g_test_add_func ("/batch/surface-salt", test_surface_salt);
  g_test_add_func ("/batch/corrections", test_corrections);
  g_test_add_func ("/batch/correction-edge-and-middle", test_correction_edge_and_middle);
  g_test_add_func ("/batch/correction-never-doubles", test_correction_never_doubles);
  g_test_add_func ("/batch/correction-coarse-scale", test_correction_coarse_scale);
  g_test_add_func ("/batch/correction-balance", test_correction_balance);
  g_test_add_func ("/batch/correction-bad-input", test_correction_bad_input);
  g_test_add_func ("/batch/top-up", test_top_up);
  g_test_add_func ("/batch/weighed-plan", test_weighed_plan);
  g_test_add_func ("/batch/weighed-plan-without-line", test_weighed_plan_without_line);
  g_test_add_func ("/batch/top-up-balance", test_top_up_balance);
  g_test_add_func ("/batch/sheet-balance", test_sheet_balance);
  return g_test_run ();
}
