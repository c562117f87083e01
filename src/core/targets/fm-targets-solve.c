/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-solve.c - from targets to shares, masses and what they cost */
#include "fm-targets-private.h"

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static FmTargetsResult *
result_new (const FmTargetsModel *model)
{
  FmTargetsResult *self = g_new0 (FmTargetsResult, 1);
  self->n_candidates = model->n;
  self->n_rows = model->n_rows;
  self->share_pct = g_new0 (double, model->n);
  self->mass_g = g_new0 (double, model->n);
  self->cost_per_share_pct = g_new (double, model->n);
  self->can_take_more = g_new0 (gboolean, model->n);
  self->left_out = g_new0 (gboolean, model->n);
  self->row_value = g_new (double, model->n_rows);
  self->row_tolerance = g_new0 (double, model->n_rows);
  self->rounding_cost_per_kg = NAN;
  self->cost_per_unit = g_new (double, model->n_rows);
  self->reach = g_new (FmReach, model->n_rows);
  self->conflict = g_array_new (FALSE, FALSE, sizeof (FmRelaxation));
  for (guint i = 0; i < model->n; i++) {
    self->left_out[i] = !model->usable[i];
    self->cost_per_share_pct[i] = NAN;
  }
  for (guint r = 0; r < model->n_rows; r++)
    self->cost_per_unit[r] = NAN;
  return self;
}

void
fm_targets_result_free (FmTargetsResult *self)
{
  g_free (self->share_pct);
  g_free (self->mass_g);
  g_free (self->scale_note);
  g_free (self->rounding_note);
  g_free (self->row_value);
  g_free (self->row_tolerance);
  g_free (self->cost_per_share_pct);
  g_free (self->cost_per_unit);
  g_free (self->reach);
  g_free (self->can_take_more);
  g_free (self->left_out);
  g_strfreev (self->unknown_notes);
  g_array_unref (self->conflict);
  g_free (self->sentence);
  g_free (self);
}

static void
fill_reach (FmTargetsResult *self, FmTargetsModel *model)
{
  for (guint r = 0; r < model->n_rows; r++) {
    self->reach[r] = (FmReach){ NAN, NAN };
    if (!model->active[r])
      continue;
    self->reach[r].min = fm_targets_model_reach (model, r, FALSE);
    self->reach[r].max = fm_targets_model_reach (model, r, TRUE);
  }
}

/* Not known when an ingredient that may be used does not know its fat. */
static void
fill_fat_reach (FmTargetsResult *self, FmTargetsModel *model)
{
  g_autofree double *fat = g_new0 (double, model->n);
  self->fat_reach = (FmReach){ NAN, NAN };
  for (guint i = 0; i < model->n; i++) {
    const FmCandidate *candidate = g_ptr_array_index (model->targets->candidates, i);
    if (!model->usable[i])
      continue;
    fat[i] = fm_ingredient_fat_g_per_100g (candidate->ingredient);
    if (isnan (fat[i]))
      return;
  }
  self->fat_reach.min = fm_targets_model_reach_of (model, fat, FALSE);
  self->fat_reach.max = fm_targets_model_reach_of (model, fat, TRUE);
}

static void
fill_masses (FmTargetsResult *self, const FmTargetsModel *model, const double *share)
{
  for (guint i = 0; i < model->n; i++) {
    self->share_pct[i] = share[i] * 100.0;
    self->mass_g[i] = share[i] * model->targets->total_g;
  }
  if (model->targets->scale_step_g > 0.0)
    fm_targets_round_masses (model, self);
}

static void
fill_values (FmTargetsResult *self, const FmTargetsModel *model)
{
  self->total_g = 0.0;
  for (guint i = 0; i < model->n; i++)
    self->total_g += self->mass_g[i];
  self->cost_per_kg = fm_targets_model_cost (model, self->mass_g) / self->total_g;
  g_autofree double *share = g_new (double, model->n);
  for (guint i = 0; i < model->n; i++)
    share[i] = self->mass_g[i] / self->total_g;
  self->distance_pct = fm_targets_model_distance_pct (model, share);
  for (guint r = 0; r < model->n_rows; r++)
    self->row_value[r] = fm_targets_model_value (model, r, self->mass_g);
}

/* Whether a band was set aside, so that nothing can be said about it. */
static gboolean
any_set_aside (const FmTargetsModel *model)
{
  for (guint r = 0; r < model->n_rows; r++) {
    const FmTargetRow *row = g_ptr_array_index (model->targets->rows, r);
    if (!model->active[r] && !(isnan (row->band.min) && isnan (row->band.max)))
      return TRUE;
  }
  return FALSE;
}

static char *
met_sentence (const FmTargetsResult *self, const FmTargetsModel *model)
{
  const char *currency = model->targets->currency;
  gboolean partly = any_set_aside (model);
  g_autofree char *cost = *currency ? fm_number_format_unit (self->cost_per_kg, 2, currency)
                                    : fm_number_format (self->cost_per_kg, 2);
  if (isnan (self->cost_per_kg))
    return g_strdup (partly ? _ ("Every target that could be looked at is met; the cost is not "
                                 "known.")
                            : _ ("Every target is met; the cost is not known."));
  return g_strdup_printf (partly ? _ ("Every target that could be looked at is met at %s per kg.")
                                 : _ ("Every target is met at %s per kg."),
                          cost);
}

static void
fill_met (FmTargetsResult *self, FmTargetsModel *model)
{
  g_autofree double *share = g_new (double, model->n);
  fm_targets_model_shares (model, share);
  self->met = TRUE;
  fm_targets_fill_sensitivities (model, self, share);
  fill_masses (self, model, share);
  fill_values (self, model);
  self->sentence = met_sentence (self, model);
  if (model->targets->scale_step_g > 0.0)
    fm_targets_note_rounding (model, self, share);
}

static void
fill_not_met (FmTargetsResult *self, FmTargetsModel *model)
{
  double total_g = 0.0;
  for (guint i = 0; i < model->n; i++) {
    const FmCandidate *candidate = g_ptr_array_index (model->targets->candidates, i);
    self->mass_g[i] = candidate->current_g;
    total_g += candidate->current_g;
  }
  for (guint i = 0; i < model->n; i++)
    self->share_pct[i] = total_g > 0.0 ? self->mass_g[i] / total_g * 100.0 : NAN;
  fill_values (self, model);
  /* Coefficients of what was left out are not known, so neither are values that include it. */
  for (guint i = 0; i < model->n; i++)
    for (guint r = 0; !model->usable[i] && self->mass_g[i] > 0.0 && r < model->n_rows; r++)
      self->row_value[r] = NAN;
  fm_targets_explain_conflict (model, self);
}

FmTargetsResult *
fm_targets_solve (const FmTargets *self, GError **error)
{
  g_autoptr (GStrvBuilder) notes = g_strv_builder_new ();
  g_autoptr (FmTargetsModel) model = fm_targets_model_new (self, notes, error);
  if (!model)
    return NULL;
  fm_targets_model_aim (model);
  FmSolveStatus status = fm_solver_run (model->solver);
  if (status != FM_SOLVE_OPTIMAL && status != FM_SOLVE_INFEASIBLE) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The numbers are too large or too far apart to compute with. Check the values "
                    "of the ingredients and the targets."));
    return NULL;
  }
  FmTargetsResult *result = result_new (model);
  result->unknown_notes = g_strv_builder_end (notes);
  if (status == FM_SOLVE_OPTIMAL)
    fill_met (result, model);
  else
    fill_not_met (result, model);
  fill_reach (result, model);
  fill_fat_reach (result, model);
  return result;
}

static FmFormulaLine *
line_of (FmFormula *formula, const char *id)
{
  for (guint i = 0; id && i < fm_formula_n_lines (formula); i++)
    if (g_str_equal (fm_formula_line (formula, i)->id, id))
      return fm_formula_line (formula, i);
  return NULL;
}

FmFormula *
fm_targets_result_apply (const FmTargetsResult *result,
                         const FmTargets *targets,
                         const FmFormula *formula)
{
  FmFormula *copy = fm_formula_copy (formula);
  for (guint i = 0; i < result->n_candidates; i++) {
    const FmCandidate *candidate = g_ptr_array_index (targets->candidates, i);
    FmFormulaLine *line = line_of (copy, candidate->line_id);
    if (!line && result->mass_g[i] > 0.0) {
      guint index = fm_formula_add (copy, candidate->ingredient, result->mass_g[i]);
      line = fm_formula_line (copy, index);
      line->min_share_pct = candidate->min_share_pct;
      line->max_share_pct = candidate->max_share_pct;
    } else if (line) {
      line->mass_g = result->mass_g[i];
    }
  }
  return copy;
}
