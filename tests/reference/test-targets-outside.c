/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-targets-outside.c - whole target problems against glpsol and SciPy's linprog
 *
 * The programs are written anew here from the problem's own numbers, so that a slip in how the
 * search for shares builds its program shows.
 */
#include "core/targets/fm-targets.h"

#include "../core/blends.h"
#include "ask-solver.h"

#define SEED 20260601
#define N_RANDOM 24
#define TOTAL_G 1000.0

static FmTargets *
random_targets (GRand *rand, FmObjective objective)
{
  guint n = (guint)g_rand_int_range (rand, 3, 15);
  FmTargets *targets = fm_targets_new (TOTAL_G);
  targets->objective = objective;
  for (guint i = 0; i < n; i++) {
    g_autoptr (FmIngredient) cut = ingredient_with_fat ("Cut", g_rand_double_range (rand, 2, 60));
    cut->price_per_kg = g_rand_double_range (rand, 2.0, 20.0);
    cut->composition.per_100g[FM_NUTRIENT_PROTEIN] = g_rand_double_range (rand, 8.0, 22.0);
    cut->composition.per_100g[FM_NUTRIENT_SODIUM] = g_rand_double_range (rand, 40.0, 900.0);
    cut->collagen_g_per_100g = g_rand_double_range (rand, 0.5, 5.0);
    FmCandidate *candidate = fm_targets_add_candidate (targets, cut);
    candidate->current_g = TOTAL_G / n;
    candidate->max_share_pct = g_rand_boolean (rand) ? g_rand_double_range (rand, 30, 90) : NAN;
  }
  fm_targets_add_nutrient (targets, FM_NUTRIENT_FAT,
                           (FmBand){ NAN, g_rand_double_range (rand, 8.0, 40.0) });
  fm_targets_add_nutrient (targets, FM_NUTRIENT_PROTEIN,
                           (FmBand){ g_rand_double_range (rand, 10.0, 18.0), NAN });
  fm_targets_add_nutrient (targets, FM_NUTRIENT_SODIUM, (FmBand){ 100.0, 600.0 });
  fm_targets_add_collagen (targets, (FmBand){ NAN, g_rand_double_range (rand, 10.0, 30.0) });
  return targets;
}

/* Collagen as % of protein: collagen - limit / 100 x protein stays at or below 0. */
static void
fill_row (OutsideProgram *program, const FmTargets *targets, guint r)
{
  const FmTargetRow *row = g_ptr_array_index (targets->rows, r);
  gboolean collagen = row->quantity == FM_QUANTITY_COLLAGEN;
  for (guint i = 0; i < targets->candidates->len; i++) {
    const FmCandidate *candidate = g_ptr_array_index (targets->candidates, i);
    const double *per_100g = candidate->ingredient->composition.per_100g;
    program->rows[(r + 1) * program->n + i] =
        collagen ? candidate->ingredient->collagen_g_per_100g -
                       row->band.max / 100.0 * per_100g[FM_NUTRIENT_PROTEIN]
                 : per_100g[row->nutrient];
  }
  program->min[r + 1] = row->band.min;
  program->max[r + 1] = collagen ? 0.0 : row->band.max;
}

/* Columns: shares, then how far each lies above and below its share now. */
static OutsideProgram *
as_program (const FmTargets *targets)
{
  guint n = targets->candidates->len;
  guint m = targets->rows->len;
  gboolean nearest = targets->objective == FM_OBJECTIVE_NEAREST_CURRENT;
  OutsideProgram *program = outside_program_new (nearest ? 3 * n : n, 1 + m + (nearest ? n : 0));
  program->min[0] = program->max[0] = 1.0;
  for (guint r = 0; r < m; r++)
    fill_row (program, targets, r);
  for (guint i = 0; i < n; i++) {
    const FmCandidate *candidate = g_ptr_array_index (targets->candidates, i);
    double *near = nearest ? &program->rows[(1 + m + i) * program->n] : NULL;
    program->rows[i] = 1.0;
    program->column_max[i] =
        isnan (candidate->max_share_pct) ? 1.0 : candidate->max_share_pct / 100.0;
    program->cost[i] = nearest ? 0.0 : candidate->ingredient->price_per_kg;
    if (!near)
      continue;
    program->cost[n + i] = program->cost[2 * n + i] = 1.0;
    near[i] = 1.0;
    near[n + i] = -1.0;
    near[2 * n + i] = 1.0;
    program->min[1 + m + i] = program->max[1 + m + i] = candidate->current_g / TOTAL_G;
  }
  return program;
}

typedef double *(*Ask) (const GPtrArray *programs);

static void
check (Ask ask, FmObjective objective)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_targets_free);
  g_autoptr (GPtrArray) programs = g_ptr_array_new_with_free_func (outside_program_free);
  for (int run = 0; run < N_RANDOM; run++) {
    FmTargets *targets = random_targets (rand, objective);
    g_ptr_array_add (problems, targets);
    g_ptr_array_add (programs, as_program (targets));
  }
  g_autofree double *theirs = ask (programs);
  guint n_met = 0;
  for (guint i = 0; theirs && i < problems->len; i++) {
    g_autoptr (FmTargetsResult) result = fm_targets_solve (g_ptr_array_index (problems, i), NULL);
    g_assert_nonnull (result);
    g_assert_cmpint (result->met, ==, !isnan (theirs[i]));
    n_met += result->met;
    if (!result->met)
      continue;
    if (objective == FM_OBJECTIVE_LEAST_COST)
      assert_near (result->cost_per_kg, theirs[i], 1e-6);
    else
      assert_near (result->distance_pct / 100.0, theirs[i], 1e-4);
  }
  /* A set that is never or always met would test half of it. */
  if (theirs)
    g_assert_true (n_met > 0 && n_met < problems->len);
}

static void
test_glpsol (gconstpointer objective)
{
  check (ask_glpsol, (FmObjective)GPOINTER_TO_INT (objective));
}

static void
test_scipy (gconstpointer objective)
{
  check (ask_scipy, (FmObjective)GPOINTER_TO_INT (objective));
}

int
main (int argc, char **argv)
{
  gconstpointer cost = GINT_TO_POINTER (FM_OBJECTIVE_LEAST_COST);
  gconstpointer nearest = GINT_TO_POINTER (FM_OBJECTIVE_NEAREST_CURRENT);
  g_test_init (&argc, &argv, NULL);
  g_test_add_data_func ("/targets-outside/glpsol-least-cost", cost, test_glpsol);
  g_test_add_data_func ("/targets-outside/glpsol-nearest", nearest, test_glpsol);
  g_test_add_data_func ("/targets-outside/scipy-least-cost", cost, test_scipy);
  g_test_add_data_func ("/targets-outside/scipy-nearest", nearest, test_scipy);
  return g_test_run ();
}
