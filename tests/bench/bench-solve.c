/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* bench-solve.c - the whole search for shares beside GLPK's own solve of the same matrix */
#include "core/targets/fm-targets.h"

#include <glpk.h>
#include <math.h>

#define N_INGREDIENTS 30
#define N_TARGETS 20
#define N_RUNS 20
#define FRAME_MS 16.7
#define SEED 20260417

static FmTargets *
make_targets (double half_width)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  double mean[N_TARGETS] = { 0 };
  FmTargets *targets = fm_targets_new (10000.0);
  targets->scale_step_g = 5.0;
  for (int i = 0; i < N_INGREDIENTS; i++) {
    g_autofree char *name = g_strdup_printf ("Ingredient %d", i);
    g_autoptr (FmIngredient) ingredient = fm_ingredient_new (name, FM_INGREDIENT_CUT);
    ingredient->price_per_kg = g_rand_double_range (rand, 2.0, 20.0);
    for (int r = 0; r < N_TARGETS; r++) {
      double value = g_rand_double_range (rand, 1.0, 40.0);
      ingredient->composition.per_100g[r] = value;
      mean[r] += value / N_INGREDIENTS;
    }
    fm_targets_add_candidate (targets, ingredient)->current_g = 10000.0 / N_INGREDIENTS;
  }
  for (int r = 0; r < N_TARGETS; r++)
    fm_targets_add_nutrient (targets, (FmNutrient)r,
                             (FmBand){ mean[r] - half_width, mean[r] + half_width });
  return targets;
}

static void
solve_bare (const FmTargets *targets)
{
  glp_prob *problem = glp_create_prob ();
  glp_add_rows (problem, N_TARGETS + 1);
  glp_add_cols (problem, N_INGREDIENTS);
  int columns[N_INGREDIENTS + 1];
  double values[N_INGREDIENTS + 1];
  for (int r = 0; r <= N_TARGETS; r++) {
    for (int i = 0; i < N_INGREDIENTS; i++) {
      const FmCandidate *candidate = g_ptr_array_index (targets->candidates, i);
      columns[i + 1] = i + 1;
      values[i + 1] =
          r == N_TARGETS ? 1.0 : fm_ingredient_value (candidate->ingredient, (FmNutrient)r);
      glp_set_obj_coef (problem, i + 1, candidate->ingredient->price_per_kg);
      glp_set_col_bnds (problem, i + 1, GLP_DB, 0.0, 1.0);
    }
    glp_set_mat_row (problem, r + 1, N_INGREDIENTS, columns, values);
    if (r < N_TARGETS) {
      const FmTargetRow *row = g_ptr_array_index (targets->rows, r);
      glp_set_row_bnds (problem, r + 1, GLP_DB, row->band.min, row->band.max);
    } else {
      glp_set_row_bnds (problem, r + 1, GLP_FX, 1.0, 1.0);
    }
  }
  glp_smcp options;
  glp_init_smcp (&options);
  options.msg_lev = GLP_MSG_OFF;
  glp_simplex (problem, &options);
  glp_delete_prob (problem);
}

static double
bare_ms (const FmTargets *targets)
{
  gint64 start = g_get_monotonic_time ();
  for (int i = 0; i < N_RUNS; i++)
    solve_bare (targets);
  return (double)(g_get_monotonic_time () - start) / 1000.0 / N_RUNS;
}

static double
whole_ms (const FmTargets *targets, gboolean *on_scale)
{
  gint64 start = g_get_monotonic_time ();
  for (int i = 0; i < N_RUNS; i++) {
    g_autoptr (FmTargetsResult) result = fm_targets_solve (targets, NULL);
    *on_scale = result->on_scale;
  }
  return (double)(g_get_monotonic_time () - start) / 1000.0 / N_RUNS;
}

static void
measure (const char *what, const FmTargets *targets)
{
  gboolean on_scale = FALSE;
  double ours_ms = whole_ms (targets, &on_scale);
  double theirs_ms = bare_ms (targets);
  g_print ("solve %d x %d, %s: %.2f ms (%s), bare GLPK %.2f ms, ratio %.1f, %.2f of a frame\n",
           N_INGREDIENTS, N_TARGETS, what, ours_ms, on_scale ? "weighable" : "not weighable",
           theirs_ms, ours_ms / theirs_ms, ours_ms / FRAME_MS);
}

int
main (void)
{
  glp_term_out (GLP_OFF);
  g_autoptr (FmTargets) wide = make_targets (3.0);
  measure ("least cost", wide);
  wide->objective = FM_OBJECTIVE_NEAREST_CURRENT;
  measure ("nearest", wide);
  g_autoptr (FmTargets) impossible = make_targets (3.0);
  ((FmTargetRow *)g_ptr_array_index (impossible->rows, 0))->band = (FmBand){ NAN, 2.0 };
  measure ("impossible", impossible);
  return 0;
}
