/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-targets.c - shares that meet a set of target bands */
#include "core/base/fm-error.h"
#include "core/formula/fm-analysis.h"
#include "core/targets/fm-pearson.h"
#include "core/targets/fm-targets.h"

#include "blends.h"

#define SEED 20260417
#define N_RANDOM 300

static FmIngredient *
priced (const char *name, double fat, double price)
{
  FmIngredient *ingredient = ingredient_with_fat (name, fat);
  ingredient->price_per_kg = price;
  return ingredient;
}

static FmCandidate *
add (FmTargets *targets, const char *name, double fat, double price)
{
  g_autoptr (FmIngredient) ingredient = priced (name, fat, price);
  return fm_targets_add_candidate (targets, ingredient);
}

static FmTargets *
lean_and_fat (double min, double max)
{
  FmTargets *targets = fm_targets_new (1000.0);
  add (targets, "Lean", 10.0, 9.0);
  add (targets, "Plate", 30.0, 5.0);
  fm_targets_add_nutrient (targets, FM_NUTRIENT_FAT, (FmBand){ min, max });
  return targets;
}

static FmTargetsResult *
solve (const FmTargets *targets)
{
  g_autoptr (GError) error = NULL;
  FmTargetsResult *result = fm_targets_solve (targets, &error);
  g_assert_no_error (error);
  return result;
}

static void
test_two_equal_pearson (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (18.0, 20.0);
  g_autoptr (FmTargetsResult) result = solve (targets);
  g_assert_true (result->met);
  assert_near (result->share_pct[0], 50.0, 1e-9);
  assert_near (result->cost_per_kg, 7.0, 1e-9);
  FmPearson square;
  g_assert_true (fm_pearson_init (&square, 10.0, 30.0, result->row_value[0], NULL));
  assert_near (result->share_pct[0], square.a_share_pct, 1e-9);
  assert_near (result->fat_reach.min, 10.0, 1e-9);
  assert_near (result->fat_reach.max, 30.0, 1e-9);
  guint a, b;
  g_assert_true (fm_targets_is_pearson (targets, &a, &b));
}

static void
test_sensitivities (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (18.0, 20.0);
  g_autoptr (FmTargetsResult) result = solve (targets);
  /* One more % of fat lets 5 points of lean at 9 become plate at 5. */
  assert_near (result->cost_per_unit[0], -0.2, 1e-9);
  assert_near (result->cost_per_share_pct[0], 0.04, 1e-9);
  /* One more point of plate would break the band. */
  g_assert_true (isnan (result->cost_per_share_pct[1]));
}

static void
test_can_take_more (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (18.0, 20.0);
  g_autoptr (FmTargetsResult) result = solve (targets);
  g_assert_true (result->can_take_more[0]);
  g_assert_false (result->can_take_more[1]);
}

/* Lean 500 g, plate 500 g at 20 % fat must come down to 15: lean 75 %, plate 25 %. */
static void
test_sensitivities_of_nearest (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (NAN, 15.0);
  for (guint i = 0; i < 2; i++)
    ((FmCandidate *)g_ptr_array_index (targets->candidates, i))->current_g = 500.0;
  targets->objective = FM_OBJECTIVE_NEAREST_CURRENT;
  g_autoptr (FmTargetsResult) result = solve (targets);
  assert_near (result->share_pct[0], 75.0, 1e-6);
  assert_near (result->cost_per_unit[0], -0.2, 1e-6);
  assert_near (result->cost_per_share_pct[0], 0.04, 1e-6);
  g_assert_false (result->can_take_more[1]);

  ((FmCandidate *)g_ptr_array_index (targets->candidates, 0))->ingredient->price_per_kg = NAN;
  g_autoptr (FmTargetsResult) unpriced = solve (targets);
  g_assert_true (unpriced->can_take_more[0]);
  g_assert_true (isnan (unpriced->cost_per_share_pct[0]));
  g_assert_true (isnan (unpriced->cost_per_unit[0]));
}

/* Two kinds of lean move the blend equally far; the cheaper one is taken. */
static void
test_ties_go_to_the_cheaper (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (NAN, 15.0);
  add (targets, "Cheap lean", 10.0, 8.9);
  ((FmCandidate *)g_ptr_array_index (targets->candidates, 0))->current_g = 500.0;
  ((FmCandidate *)g_ptr_array_index (targets->candidates, 1))->current_g = 500.0;
  targets->objective = FM_OBJECTIVE_NEAREST_CURRENT;
  g_autoptr (FmTargetsResult) result = solve (targets);
  assert_near (result->share_pct[0], 50.0, 1e-6);
  assert_near (result->share_pct[1], 25.0, 1e-6);
  assert_near (result->share_pct[2], 25.0, 1e-6);
  assert_near (result->distance_pct, 50.0, 1e-6);
}

static void
test_currency_in_sentences (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (18.0, 20.0);
  guint cost = fm_targets_add_cost (targets, (FmBand){ NAN, 9.0 });
  fm_targets_set_currency (targets, "Kč");
  g_autoptr (FmTargetsResult) met = solve (targets);
  g_assert_nonnull (strstr (met->sentence, "7.00\302\240Kč per kg"));
  ((FmTargetRow *)g_ptr_array_index (targets->rows, cost))->band.max = 5.0;
  g_autoptr (FmTargetsResult) not_met = solve (targets);
  g_assert_nonnull (strstr (not_met->sentence, "5.00\302\240Kč"));
}

static void
test_value_now (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (NAN, 20.0);
  FmCandidate *lean = g_ptr_array_index (targets->candidates, 0);
  FmCandidate *plate = g_ptr_array_index (targets->candidates, 1);
  guint collagen = fm_targets_add_collagen (targets, (FmBand){ NAN, 20.0 });
  guint cost = fm_targets_add_cost (targets, (FmBand){ NAN, 20.0 });
  g_assert_true (isnan (fm_targets_value_now (targets, 0)));
  lean->current_g = 300.0;
  plate->current_g = 100.0;
  assert_near (fm_targets_value_now (targets, 0), 15.0, 1e-9);
  assert_near (fm_targets_value_now (targets, cost), 8.0, 1e-9);
  g_assert_true (isnan (fm_targets_value_now (targets, collagen)));
  lean->ingredient->composition.per_100g[FM_NUTRIENT_PROTEIN] = 20.0;
  lean->ingredient->collagen_g_per_100g = 2.0;
  plate->ingredient->composition.per_100g[FM_NUTRIENT_PROTEIN] = 0.0;
  assert_near (fm_targets_value_now (targets, collagen), 10.0, 1e-9);
}

static void
test_nearest_stays (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  formula->brief->bands[FM_TARGET_FAT_PCT] = (FmBand){ 30.0, 40.0 };
  g_autoptr (FmTargets) targets = fm_targets_new_from_formula (formula);
  targets->objective = FM_OBJECTIVE_NEAREST_CURRENT;
  g_autoptr (FmTargetsResult) result = solve (targets);
  assert_near (result->distance_pct, 0.0, 1e-9);
  g_autoptr (FmFormula) same = fm_targets_result_apply (result, targets, formula);
  for (guint i = 0; i < 3; i++)
    assert_near (mass_of (same, i), mass_of (formula, i), 1e-6);
  g_assert_true (isnan (result->cost_per_kg));
}

static void
test_nearest_moves_least (void)
{
  g_autoptr (FmFormula) formula = three_line_blend (); /* 32 % fat */
  formula->brief->bands[FM_TARGET_FAT_PCT] = (FmBand){ NAN, 24.0 };
  g_autoptr (FmTargets) targets = fm_targets_new_from_formula (formula);
  targets->objective = FM_OBJECTIVE_NEAREST_CURRENT;
  g_autoptr (FmTargetsResult) result = solve (targets);
  /* Backfat to lean: 80 points of fat apart, so 10 % of the blend moves. */
  assert_near (result->share_pct[0], 60.0, 1e-6);
  assert_near (result->share_pct[2], 10.0, 1e-6);
  assert_near (result->distance_pct, 20.0, 1e-6);
}

static void
test_reference (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_autoptr (FmFormula) reference = fm_formula_copy (formula);
  fm_formula_line (reference, 0)->mass_g = 700.0;
  fm_formula_line (reference, 2)->mass_g = 0.0;
  g_autoptr (FmTargets) targets = fm_targets_new_from_formula (formula);
  fm_targets_set_reference (targets, reference);
  targets->objective = FM_OBJECTIVE_NEAREST_REFERENCE;
  g_autoptr (FmTargetsResult) result = solve (targets);
  assert_near (result->share_pct[0], 70.0, 1e-6);
  assert_near (result->share_pct[2], 0.0, 1e-6);
}

static void
test_locks_and_limits (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (NAN, 20.0);
  FmCandidate *locked = add (targets, "Backfat", 90.0, 3.0);
  locked->locked = TRUE;
  locked->current_g = 50.0;
  g_autoptr (FmTargetsResult) result = solve (targets);
  assert_near (result->share_pct[2], 5.0, 1e-9);
  g_assert_true (result->row_value[0] <= 20.0 + 1e-6);

  locked->current_g = 1200.0;
  g_autoptr (GError) error = NULL;
  g_assert_null (fm_targets_solve (targets, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_LOCKED);
}

static void
test_out_of_reach (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (NAN, 8.0);
  g_autoptr (FmTargetsResult) result = solve (targets);
  g_assert_false (result->met);
  g_assert_cmpuint (result->conflict->len, ==, 1);
  const FmRelaxation *only = &g_array_index (result->conflict, FmRelaxation, 0);
  assert_near (only->alone_limit, 10.0, 1e-9);
  assert_near (only->joint_limit, 10.0, 1e-5);
  g_assert_false (result->limits_matter);
  g_assert_nonnull (strstr (result->sentence, "10.0"));
}

static void
test_conflict (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (NAN, 20.0);
  fm_targets_add_cost (targets, (FmBand){ NAN, 6.0 });
  /* Has no part in it. */
  fm_targets_add_nutrient (targets, FM_NUTRIENT_FAT, (FmBand){ 5.0, NAN });
  g_autoptr (FmTargetsResult) result = solve (targets);
  g_assert_false (result->met);
  g_assert_cmpuint (result->conflict->len, ==, 2);
  const FmRelaxation *fat = &g_array_index (result->conflict, FmRelaxation, 0);
  const FmRelaxation *cost = &g_array_index (result->conflict, FmRelaxation, 1);
  /* Cost is 11 - 0.2 x fat. */
  assert_near (fat->alone_limit, 25.0, 1e-6);
  assert_near (cost->alone_limit, 7.0, 1e-6);
  assert_near (fat->joint_limit, 22.5, 1e-5);
  assert_near (cost->joint_limit, 6.5, 1e-5);
}

static void
test_share_limits_matter (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (NAN, 12.0);
  ((FmCandidate *)g_ptr_array_index (targets->candidates, 1))->min_share_pct = 40.0;
  g_autoptr (FmTargetsResult) result = solve (targets);
  g_assert_false (result->met);
  g_assert_true (result->limits_matter);
  assert_near (g_array_index (result->conflict, FmRelaxation, 0).alone_limit, 18.0, 1e-6);
}

static void
test_unknown_is_named (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (NAN, 20.0);
  FmCandidate *mystery = add (targets, "Mystery", NAN, 1.0);
  g_autoptr (FmTargetsResult) result = solve (targets);
  g_assert_true (result->left_out[2]);
  g_assert_cmpfloat (result->share_pct[2], ==, 0.0);
  g_assert_nonnull (strstr (result->unknown_notes[0], "Mystery"));

  mystery->min_share_pct = 5.0;
  g_autoptr (GError) error = NULL;
  g_assert_null (fm_targets_solve (targets, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE);
  g_assert_nonnull (strstr (error->message, "Mystery"));
}

static void
test_collagen (void)
{
  g_autoptr (FmTargets) targets = fm_targets_new (1000.0);
  double protein[] = { 20.0, 10.0 };
  double collagen[] = { 2.0, 4.0 };
  double price[] = { 9.0, 3.0 };
  for (int i = 0; i < 2; i++) {
    FmCandidate *candidate = add (targets, i ? "Shank" : "Round", 10.0, price[i]);
    candidate->ingredient->composition.per_100g[FM_NUTRIENT_PROTEIN] = protein[i];
    candidate->ingredient->collagen_g_per_100g = collagen[i];
  }
  fm_targets_add_collagen (targets, (FmBand){ NAN, 20.0 });
  g_autoptr (FmTargetsResult) result = solve (targets);
  /* (2 x + 4 (1 - x)) / (20 x + 10 (1 - x)) = 0.2 at x = 0.5. */
  assert_near (result->share_pct[0], 50.0, 1e-9);
  assert_near (result->row_value[0], 20.0, 1e-9);
  assert_near (result->reach[0].min, 10.0, 1e-9);
  assert_near (result->reach[0].max, 40.0, 1e-9);
  /* d x / d limit = -(0.15) / (0.02 + 0.02) per unit / 100, times 6 per kg. */
  assert_near (result->cost_per_unit[0], -0.225, 1e-9);

  ((FmCandidate *)g_ptr_array_index (targets->candidates, 1))->ingredient->collagen_g_per_100g =
      NAN;
  g_autoptr (FmTargetsResult) skipped = solve (targets);
  g_assert_true (isnan (skipped->row_value[0]));
  g_assert_nonnull (strstr (skipped->unknown_notes[0], "Shank"));
  g_assert_nonnull (strstr (skipped->sentence, "that could be looked at"));
}

static void
test_rounding (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (17.0, 19.3);
  targets->scale_step_g = 50.0;
  g_autoptr (FmTargetsResult) result = solve (targets);
  g_assert_true (result->on_scale);
  assert_near (result->mass_g[0], 550.0, 1e-9);
  assert_near (result->total_g, 1000.0, 1e-9);
  g_assert_true (result->row_value[0] <= 19.3 + 1e-6);

  FmTargetRow *row = g_ptr_array_index (targets->rows, 0);
  row->band = (FmBand){ 19.2, 19.3 };
  g_autoptr (FmTargetsResult) none = solve (targets);
  g_assert_true (none->met);
  g_assert_false (none->on_scale);
  g_assert_nonnull (none->scale_note);
}

/* One step of 50 g between 10 and 30 % fat moves 1,000 g by 1 %: an exact target may be off by .5.
 */
static void
test_exact_target_on_scale (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (19.2, 19.2);
  targets->scale_step_g = 50.0;
  g_autoptr (FmTargetsResult) result = solve (targets);
  g_assert_true (result->on_scale);
  assert_near (result->row_tolerance[0], 0.5, 1e-9);
  assert_near (result->row_value[0], 19.0, 1e-9);
  ((FmTargetRow *)g_ptr_array_index (targets->rows, 0))->band = (FmBand){ 19.2, 19.3 };
  g_autoptr (FmTargetsResult) band = solve (targets);
  g_assert_false (band->on_scale);
  assert_near (band->row_tolerance[0], 0.0, 1e-12);
}

/* The exact 50.5 : 49.5 of the two cuts cannot be weighed in steps of 10 g, and that costs. */
static void
test_rounding_is_said (void)
{
  g_autoptr (FmTargets) targets = lean_and_fat (NAN, 19.9);
  targets->scale_step_g = 10.0;
  g_autoptr (FmTargetsResult) result = solve (targets);
  g_assert_true (result->on_scale);
  assert_near (result->mass_g[0], 510.0, 1e-9);
  /* 4 per kg lie between the cuts, and 5 g of 1,000 g more are lean. */
  assert_near (result->rounding_cost_per_kg, 0.02, 1e-9);
  g_assert_nonnull (strstr (result->rounding_note, "0.0200 per kg dearer"));
  targets->scale_step_g = 5.0;
  g_autoptr (FmTargetsResult) fine = solve (targets);
  assert_near (fine->rounding_cost_per_kg, 0.0, 1e-9);
  g_assert_nonnull (strstr (fine->rounding_note, "no more than"));
}

/* Sodium of the salt on the surface counts in the brief's band, in what is reached and in its
 * reach: 1 % on 200 g brings 775 mg, and the band of 900 mg leaves 125 mg, 62 mg in 100 g, to the
 * meat. */
static void
test_surface_salt_counts (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) plain = priced ("Plain", 10.0, 9.0);
  g_autoptr (FmIngredient) cured = priced ("Cured", 10.0, 2.0);
  plain->composition.per_100g[FM_NUTRIENT_SODIUM] = 50.0;
  cured->composition.per_100g[FM_NUTRIENT_SODIUM] = 1050.0;
  fm_formula_add (formula, plain, 500.0);
  fm_formula_add (formula, cured, 500.0);
  formula->brief->patty_mass_g = 200.0;
  formula->brief->surface_salt_pct = 1.0;
  formula->brief->bands[FM_TARGET_SODIUM_MG] = (FmBand){ NAN, 900.0 };
  g_autoptr (FmTargets) targets = fm_targets_new_from_formula (formula);
  g_autoptr (FmTargetsResult) result = solve (targets);
  g_autoptr (FmAnalysis) now = fm_analysis_new (formula);
  g_assert_true (result->met);
  assert_near (result->row_value[0], 900.0, 1e-6);
  assert_near (result->reach[0].min, 2.0 * (387.58 + 50.0), 1e-6);
  assert_near (result->share_pct[1], (900.0 / 2.0 - 387.58 - 50.0) / 1000.0 * 100.0, 1e-6);
  assert_near (fm_targets_value_now (targets, 0),
               fm_analysis_target_value (now, formula->brief, FM_TARGET_SODIUM_MG), 1e-6);
}

/* Least cost must not buy salt for meat: it keeps its mass, priced or not, until it is freed. */
static void
test_salt_keeps_its_share (void)
{
  for (FmIngredientKind kind = FM_INGREDIENT_SALT; kind < FM_INGREDIENT_OTHER; kind++) {
    for (int is_priced = 0; is_priced < 2; is_priced++) {
      g_autoptr (FmFormula) formula = fm_formula_new ();
      g_autoptr (FmIngredient) lean = priced ("Lean", 10.0, 9.0);
      g_autoptr (FmIngredient) suet = priced ("Suet", 90.0, 2.0);
      g_autoptr (FmIngredient) salt = priced ("Salt", 0.0, is_priced ? 1.0 : NAN);
      salt->kind = kind;
      fm_formula_add (formula, lean, 685.0);
      fm_formula_add (formula, suet, 300.0);
      fm_formula_add (formula, salt, 15.0);
      formula->brief->bands[FM_TARGET_FAT_PCT] = (FmBand){ 12.0, 25.0 };
      g_autoptr (FmTargets) targets = fm_targets_new_from_formula (formula);
      targets->objective = FM_OBJECTIVE_LEAST_COST;
      targets->scale_step_g = 1.0;
      g_autoptr (FmTargetsResult) kept = solve (targets);
      g_assert_true (kept->met);
      assert_near (kept->mass_g[2], 15.0, 1e-9);
      g_assert_true (isnan (kept->cost_per_kg) == !is_priced);
      g_assert_cmpfloat (kept->mass_g[0], >, 700.0);
      if (!is_priced)
        continue;
      ((FmCandidate *)g_ptr_array_index (targets->candidates, 2))->locked = FALSE;
      g_autoptr (FmTargetsResult) freed = solve (targets);
      g_assert_cmpfloat (freed->mass_g[2], >, 700.0);
    }
  }
}

static void
test_bad_input (void)
{
  g_autoptr (FmTargets) empty = fm_targets_new (1000.0);
  g_autoptr (GError) error = NULL;
  g_assert_null (fm_targets_solve (empty, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
  const FmBand bad[] = { { -1.0, NAN }, { 20.0, 10.0 }, { INFINITY, NAN }, { NAN, 1e300 } };
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (FmTargets) targets = lean_and_fat (bad[i].min, bad[i].max);
    g_clear_error (&error);
    g_assert_null (fm_targets_solve (targets, &error));
    g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
  }
  g_autoptr (FmTargets) huge = lean_and_fat (NAN, 20.0);
  ((FmCandidate *)g_ptr_array_index (huge->candidates, 0))->ingredient->price_per_kg = 1e200;
  g_clear_error (&error);
  g_assert_null (fm_targets_solve (huge, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
}

static FmTargets *
random_targets (GRand *rand, guint n, double half_width)
{
  FmTargets *targets = fm_targets_new (1000.0);
  double protein = 0.0;
  double fat = 0.0;
  for (guint i = 0; i < n; i++) {
    double own_fat = g_rand_double_range (rand, 2.0, 60.0);
    double own_protein = g_rand_double_range (rand, 8.0, 22.0);
    FmCandidate *candidate = add (targets, "Cut", own_fat, g_rand_double_range (rand, 2.0, 20.0));
    candidate->ingredient->composition.per_100g[FM_NUTRIENT_PROTEIN] = own_protein;
    candidate->current_g = 1000.0 / n;
    fat += own_fat / n;
    protein += own_protein / n;
  }
  fm_targets_add_nutrient (targets, FM_NUTRIENT_FAT,
                           (FmBand){ fat - half_width, fat + half_width });
  fm_targets_add_nutrient (targets, FM_NUTRIENT_PROTEIN,
                           (FmBand){ protein - half_width, protein + half_width });
  return targets;
}

static void
assert_holds (const FmTargets *targets, const FmTargetsResult *result)
{
  double sum_g = 0.0;
  g_assert_true (result->met);
  for (guint i = 0; i < result->n_candidates; i++) {
    g_assert_cmpfloat (result->mass_g[i], >=, 0.0);
    sum_g += result->mass_g[i];
  }
  assert_near (sum_g, targets->total_g, 1e-6);
  for (guint r = 0; r < result->n_rows; r++) {
    const FmTargetRow *row = g_ptr_array_index (targets->rows, r);
    g_assert_cmpint (fm_band_state (&row->band, result->row_value[r]), ==, FM_BAND_WITHIN);
  }
}

static void
test_random_hold_and_monotone (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  guint n_on_scale = 0;
  for (int run = 0; run < N_RANDOM; run++) {
    guint n = (guint)g_rand_int_range (rand, 3, 12);
    g_autoptr (FmTargets) targets = random_targets (rand, n, 0.5);
    targets->objective = (FmObjective)(run % 2);
    targets->scale_step_g = run % 3 ? 5.0 : 0.0;
    g_autoptr (FmTargetsResult) narrow = solve (targets);
    assert_holds (targets, narrow);
    n_on_scale += narrow->on_scale;

    targets->scale_step_g = 0.0;
    g_autoptr (FmTargetsResult) exact = solve (targets);
    for (guint r = 0; r < targets->rows->len; r++) {
      FmTargetRow *row = g_ptr_array_index (targets->rows, r);
      row->band.min -= 1.0;
      row->band.max += 1.0;
    }
    g_autoptr (FmTargetsResult) wide = solve (targets);
    if (targets->objective == FM_OBJECTIVE_LEAST_COST)
      g_assert_cmpfloat (wide->cost_per_kg, <=, exact->cost_per_kg + 1e-9);
    else
      g_assert_cmpfloat (wide->distance_pct, <=, exact->distance_pct + 1e-6);
  }
  /* The last resort is a search against the clock, which a busy machine may lose. */
  g_assert_cmpuint (n_on_scale, >=, N_RANDOM * 2 / 3 * 9 / 10);
}

/* What a sensitivity says is what happens. Limits a rounding error apart, as when one more point
 * ends at 100 %, once ended the program inside the library. */
static void
test_random_sensitivities (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  const double step = 1e-4;
  for (int run = 0; run < N_RANDOM / 3; run++) {
    guint n = (guint)g_rand_int_range (rand, 3, 12);
    g_autoptr (FmTargets) targets = random_targets (rand, n, -0.5);
    FmTargetRow *fat = g_ptr_array_index (targets->rows, 0);
    fat->band.min = NAN;
    fat->band.max -= 3.0;
    ((FmTargetRow *)g_ptr_array_index (targets->rows, 1))->band = (FmBand){ NAN, NAN };
    targets->objective = (FmObjective)(run % 2);
    g_autoptr (FmTargetsResult) before = solve (targets);
    if (!before->met)
      continue;
    fat->band.max += step;
    g_autoptr (FmTargetsResult) after = solve (targets);
    assert_near ((after->cost_per_kg - before->cost_per_kg) / step, before->cost_per_unit[0], 1e-3);
    fat->band.max -= step;
    for (guint i = 0; i < n; i++) {
      FmCandidate *candidate = g_ptr_array_index (targets->candidates, i);
      if (!before->can_take_more[i])
        continue;
      candidate->min_share_pct = before->share_pct[i] + 1.0;
      g_autoptr (FmTargetsResult) more = solve (targets);
      assert_near (more->cost_per_kg - before->cost_per_kg, before->cost_per_share_pct[i], 1e-6);
      candidate->min_share_pct = NAN;
    }
  }
}

/* Each way out that is offered must be one. */
static void
test_random_ways_out (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  for (int run = 0; run < N_RANDOM / 3; run++) {
    g_autoptr (FmTargets) targets = random_targets (rand, 5, 0.5);
    FmTargetRow *fat = g_ptr_array_index (targets->rows, 0);
    fat->band = (FmBand){ NAN, g_rand_double_range (rand, 3.0, 20.0) };
    fm_targets_add_cost (targets, (FmBand){ NAN, g_rand_double_range (rand, 2.0, 10.0) });
    g_autoptr (FmTargetsResult) result = solve (targets);
    for (guint k = 0; !result->met && k < result->conflict->len; k++) {
      const FmRelaxation *way = &g_array_index (result->conflict, FmRelaxation, k);
      FmTargetRow *row = g_ptr_array_index (targets->rows, way->row);
      FmBand old = row->band;
      if (isnan (way->alone_limit))
        continue;
      double slack = way->upper ? 1e-6 : -1e-6;
      *(way->upper ? &row->band.max : &row->band.min) = way->alone_limit + slack;
      g_autoptr (FmTargetsResult) eased = solve (targets);
      g_assert_true (eased->met);
      *(way->upper ? &row->band.max : &row->band.min) = way->alone_limit - 1000.0 * slack;
      g_autoptr (FmTargetsResult) still = solve (targets);
      g_assert_false (still->met);
      row->band = old;
    }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/targets/two-equal-pearson", test_two_equal_pearson);
  g_test_add_func ("/targets/sensitivities", test_sensitivities);
  g_test_add_func ("/targets/can-take-more", test_can_take_more);
  g_test_add_func ("/targets/sensitivities-of-nearest", test_sensitivities_of_nearest);
  g_test_add_func ("/targets/ties-go-to-the-cheaper", test_ties_go_to_the_cheaper);
  g_test_add_func ("/targets/currency-in-sentences", test_currency_in_sentences);
  g_test_add_func ("/targets/value-now", test_value_now);
  g_test_add_func ("/targets/nearest-stays", test_nearest_stays);
  g_test_add_func ("/targets/nearest-moves-least", test_nearest_moves_least);
  g_test_add_func ("/targets/reference", test_reference);
  g_test_add_func ("/targets/locks-and-limits", test_locks_and_limits);
  g_test_add_func ("/targets/out-of-reach", test_out_of_reach);
  g_test_add_func ("/targets/conflict", test_conflict);
  g_test_add_func ("/targets/share-limits-matter", test_share_limits_matter);
  g_test_add_func ("/targets/unknown-is-named", test_unknown_is_named);
  g_test_add_func ("/targets/collagen", test_collagen);
  g_test_add_func ("/targets/rounding", test_rounding);
  g_test_add_func ("/targets/exact-on-scale", test_exact_target_on_scale);
  g_test_add_func ("/targets/rounding-is-said", test_rounding_is_said);
  g_test_add_func ("/targets/salt-keeps-its-share", test_salt_keeps_its_share);
  g_test_add_func ("/targets/surface-salt-counts", test_surface_salt_counts);
  g_test_add_func ("/targets/bad-input", test_bad_input);
  g_test_add_func ("/targets/random-hold-and-monotone", test_random_hold_and_monotone);
  g_test_add_func ("/targets/random-sensitivities", test_random_sensitivities);
  g_test_add_func ("/targets/random-ways-out", test_random_ways_out);
  return g_test_run ();
}
