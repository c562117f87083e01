/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-model.c - the linear program behind a set of targets */
#include "fm-targets-private.h"

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* Shares that rounding inside the library puts this far outside their limits are at them. */
#define SHARE_TOLERANCE 1e-9
/* Among blends that are equally near, the cheaper one: what the whole batch costs weighs less than
 * a hundredth of a point of distance. */
#define TIE_WEIGHT 1e-4

static const FmCandidate *
candidate_at (const FmTargetsModel *self, guint index)
{
  return g_ptr_array_index (self->targets->candidates, index);
}

static const FmTargetRow *
row_at (const FmTargetsModel *self, guint index)
{
  return g_ptr_array_index (self->targets->rows, index);
}

static gboolean
lacks (const FmTargetRow *row, const FmCandidate *candidate)
{
  return isnan (fm_target_row_amount (row, candidate->ingredient)) ||
         isnan (fm_target_row_over (row, candidate->ingredient));
}

/* Names of the candidates that lack what @row needs; NULL when none does. */
static char *
who_lacks (const FmTargetsModel *self, const FmTargetRow *row)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  for (guint i = 0; i < self->n; i++)
    if (lacks (row, candidate_at (self, i)))
      g_ptr_array_add (names, candidate_at (self, i)->ingredient->name);
  if (names->len == 0)
    return NULL;
  g_ptr_array_add (names, NULL);
  return g_strjoinv ("; ", (char **)names->pdata);
}

static gboolean
has_band (const FmTargetRow *row)
{
  return !isnan (row->band.min) || !isnan (row->band.max);
}

/* A target of collagen is set aside when values lack; others leave out who lacks a value. */
static void
find_unknown (FmTargetsModel *self, GStrvBuilder *notes)
{
  for (guint r = 0; r < self->n_rows; r++) {
    const FmTargetRow *row = row_at (self, r);
    self->active[r] = has_band (row);
    g_autofree char *names = self->active[r] ? who_lacks (self, row) : NULL;
    if (!names)
      continue;
    g_autofree char *note = NULL;
    if (row->quantity == FM_QUANTITY_COLLAGEN) {
      self->active[r] = FALSE;
      note =
          g_strdup_printf (_ ("%s was set aside, as it is not known for: %s."), row->name, names);
    } else {
      note = g_strdup_printf (_ ("Left out, as %s is not known: %s."), row->name, names);
      for (guint i = 0; i < self->n; i++)
        self->usable[i] &= !lacks (row, candidate_at (self, i));
    }
    g_strv_builder_add (notes, note);
  }
}

static void
find_unpriced (FmTargetsModel *self, GStrvBuilder *notes)
{
  g_autoptr (GPtrArray) names = g_ptr_array_new ();
  for (guint i = 0; i < self->n; i++) {
    const FmIngredient *ingredient = candidate_at (self, i)->ingredient;
    self->price[i] = fm_ingredient_edible_price_per_kg (ingredient);
    /* What keeps its mass costs the same in every blend, so its price decides nothing. */
    if (!isnan (self->price[i]) || candidate_at (self, i)->locked ||
        self->targets->objective != FM_OBJECTIVE_LEAST_COST)
      continue;
    self->usable[i] = FALSE;
    g_ptr_array_add (names, ingredient->name);
  }
  if (names->len == 0)
    return;
  g_ptr_array_add (names, NULL);
  g_autofree char *joined = g_strjoinv ("; ", (char **)names->pdata);
  g_autofree char *note = g_strdup_printf (_ ("Left out, as the price is not known: %s."), joined);
  g_strv_builder_add (notes, note);
}

static void
fill_coefficients (FmTargetsModel *self)
{
  for (guint r = 0; r < self->n_rows; r++) {
    for (guint i = 0; i < self->n; i++) {
      const FmIngredient *ingredient = candidate_at (self, i)->ingredient;
      gboolean counts = self->active[r] && self->usable[i];
      self->coef[r * self->n + i] =
          counts ? fm_target_row_amount (row_at (self, r), ingredient) : 0.0;
      self->over[r * self->n + i] =
          counts ? fm_target_row_over (row_at (self, r), ingredient) : 1.0;
    }
  }
}

static gboolean
fail_unusable (const FmCandidate *candidate, GError **error)
{
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
               _ ("%s must be in the blend, but lacks a value that a target or the price needs. "
                  "Type the value, or take away its lock, its lower limit or the target."),
               candidate->ingredient->name);
  return FALSE;
}

static gboolean
fill_bounds (FmTargetsModel *self, GError **error)
{
  double total_g = self->targets->total_g;
  double locked = 0.0;
  for (guint i = 0; i < self->n; i++) {
    const FmCandidate *candidate = candidate_at (self, i);
    double share = candidate->current_g / total_g;
    self->min[i] = isnan (candidate->min_share_pct) ? 0.0 : candidate->min_share_pct / 100.0;
    self->max[i] = isnan (candidate->max_share_pct) ? 1.0 : candidate->max_share_pct / 100.0;
    if (candidate->locked)
      self->min[i] = self->max[i] = share;
    locked += candidate->locked ? share : 0.0;
    if (self->usable[i])
      continue;
    if (self->min[i] > 0.0)
      return fail_unusable (candidate, error);
    self->max[i] = 0.0;
  }
  if (locked <= 1.0 + SHARE_TOLERANCE)
    return TRUE;
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_LOCKED,
               _ ("The locked ingredients weigh more than the batch. Unlock one, or make the batch "
                  "larger."));
  return FALSE;
}

static gboolean
check_room (const FmTargetsModel *self, GError **error)
{
  double least = 0.0;
  double most = 0.0;
  gboolean all_usable = TRUE;
  for (guint i = 0; i < self->n; i++) {
    least += self->min[i];
    most += self->max[i];
    all_usable &= self->usable[i];
  }
  if (least <= 1.0 + SHARE_TOLERANCE && most >= 1.0 - SHARE_TOLERANCE)
    return TRUE;
  if (!all_usable && most < 1.0)
    g_set_error (
        error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
        _ ("The ingredients whose values are known do not fill the batch. Type the missing "
           "values, or take away the target that needs them."));
  else
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 least > 1.0
                     ? _ ("The lower share limits and locks add up to more than 100 %%. Lower "
                          "one of them.")
                     : _ ("The upper share limits and locks add up to less than 100 %%. Raise "
                          "one of them, or add an ingredient."));
  return FALSE;
}

static gboolean
fill_base (FmTargetsModel *self, GError **error)
{
  FmObjective objective = self->targets->objective;
  if (objective == FM_OBJECTIVE_LEAST_COST)
    return TRUE;
  self->base = g_new0 (double, self->n);
  double sum = 0.0;
  for (guint i = 0; i < self->n; i++) {
    const FmCandidate *candidate = candidate_at (self, i);
    self->base[i] = objective == FM_OBJECTIVE_NEAREST_CURRENT ? candidate->current_g
                                                              : candidate->reference_share_pct;
    sum += self->base[i];
  }
  if (!(sum > 0.0)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                 _ ("There is no blend yet to stay near to. Give it masses, or ask for the lowest "
                    "cost."));
    return FALSE;
  }
  for (guint i = 0; i < self->n; i++)
    self->base[i] /= sum;
  return TRUE;
}

static void
fill_limits (FmTargetsModel *self)
{
  for (guint r = 0; r < self->n_rows; r++) {
    const FmBand *band = &row_at (self, r)->band;
    if (!self->active[r])
      continue;
    for (int upper = 0; upper < 2; upper++) {
      FmTargetLimit limit = { r, upper == 1, upper ? band->max : band->min };
      if (!isnan (limit.limit))
        g_array_append_val (self->limits, limit);
    }
  }
}

/* Columns: shares, then for each share how far it lies above and below the base. Rows: the sum,
 * the limits, then share - above + below = base. */
static void
build_program (FmTargetsModel *self)
{
  guint n_columns = self->base ? 3 * self->n : self->n;
  guint first_base_row = 1 + self->limits->len;
  self->solver = fm_solver_new (first_base_row + (self->base ? self->n : 0), n_columns);
  g_autofree double *row = g_new0 (double, n_columns);
  for (guint i = 0; i < self->n; i++)
    row[i] = 1.0;
  fm_solver_set_row (self->solver, 0, row);
  fm_solver_set_row_limits (self->solver, 0, 1.0, 1.0);
  for (guint i = 0; self->base && i < self->n; i++) {
    memset (row, 0, n_columns * sizeof *row);
    row[i] = 1.0;
    row[self->n + 2 * i] = -1.0;
    row[self->n + 2 * i + 1] = 1.0;
    fm_solver_set_row (self->solver, first_base_row + i, row);
    fm_solver_set_row_limits (self->solver, first_base_row + i, self->base[i], self->base[i]);
  }
  for (guint k = 0; k < self->limits->len; k++)
    fm_targets_model_move_limit (self, k, g_array_index (self->limits, FmTargetLimit, k).limit);
  fm_targets_model_free_shares (self, FALSE);
}

FmTargetsModel *
fm_targets_model_new (const FmTargets *targets, GStrvBuilder *notes, GError **error)
{
  if (!fm_targets_check (targets, error))
    return NULL;
  g_autoptr (FmTargetsModel) self = g_new0 (FmTargetsModel, 1);
  self->targets = targets;
  self->n = targets->candidates->len;
  self->n_rows = targets->rows->len;
  self->usable = g_new (gboolean, self->n);
  self->active = g_new0 (gboolean, self->n_rows);
  self->coef = g_new0 (double, self->n_rows * self->n);
  self->over = g_new0 (double, self->n_rows * self->n);
  self->price = g_new0 (double, self->n);
  self->min = g_new0 (double, self->n);
  self->max = g_new0 (double, self->n);
  self->limits = g_array_new (FALSE, FALSE, sizeof (FmTargetLimit));
  for (guint i = 0; i < self->n; i++)
    self->usable[i] = TRUE;
  find_unknown (self, notes);
  find_unpriced (self, notes);
  if (!fill_bounds (self, error) || !check_room (self, error) || !fill_base (self, error))
    return NULL;
  fill_coefficients (self);
  fill_limits (self);
  build_program (self);
  return g_steal_pointer (&self);
}

void
fm_targets_model_free (FmTargetsModel *self)
{
  g_free (self->usable);
  g_free (self->active);
  g_free (self->coef);
  g_free (self->over);
  g_free (self->price);
  g_free (self->min);
  g_free (self->max);
  g_free (self->base);
  g_array_unref (self->limits);
  g_clear_pointer (&self->solver, fm_solver_free);
  g_free (self);
}

double
fm_targets_model_cost (const FmTargetsModel *self, const double *share)
{
  double cost = 0.0;
  for (guint i = 0; i < self->n; i++)
    if (share[i] > 0.0)
      cost += share[i] * self->price[i];
  return cost;
}

double
fm_targets_model_distance_pct (const FmTargetsModel *self, const double *share)
{
  double distance_pct = self->base ? 0.0 : NAN;
  for (guint i = 0; self->base && i < self->n; i++)
    distance_pct += fabs (share[i] - self->base[i]) * 100.0;
  return distance_pct;
}

gboolean
fm_targets_model_is_ratio (const FmTargetsModel *self, guint row)
{
  return row_at (self, row)->quantity == FM_QUANTITY_COLLAGEN;
}

void
fm_targets_model_homogeneous (const FmTargetsModel *self,
                              const FmTargetLimit *limit,
                              double *coefficients)
{
  for (guint i = 0; i < self->n; i++) {
    guint at = limit->row * self->n + i;
    coefficients[i] = self->coef[at] - limit->limit * self->over[at];
  }
}

void
fm_targets_model_move_limit (FmTargetsModel *self, guint index, double value)
{
  const FmTargetLimit *limit = &g_array_index (self->limits, FmTargetLimit, index);
  FmTargetLimit moved = { limit->row, limit->upper, value };
  guint n_columns = self->base ? 3 * self->n : self->n;
  g_autofree double *row = g_new0 (double, n_columns);
  gboolean ratio = fm_targets_model_is_ratio (self, limit->row);
  if (ratio)
    fm_targets_model_homogeneous (self, &moved, row);
  else
    memcpy (row, &self->coef[limit->row * self->n], self->n * sizeof *row);
  fm_solver_set_row (self->solver, 1 + index, row);
  double bound = ratio ? 0.0 : value;
  fm_solver_set_row_limits (self->solver, 1 + index, moved.upper ? NAN : bound,
                            moved.upper ? bound : NAN);
}

void
fm_targets_model_use_limit (FmTargetsModel *self, guint index, gboolean use)
{
  const FmTargetLimit *limit = &g_array_index (self->limits, FmTargetLimit, index);
  double bound = fm_targets_model_is_ratio (self, limit->row) ? 0.0 : limit->limit;
  fm_solver_set_row_limits (self->solver, 1 + index, use && !limit->upper ? bound : NAN,
                            use && limit->upper ? bound : NAN);
}

void
fm_targets_model_free_shares (FmTargetsModel *self, gboolean free_shares)
{
  for (guint i = 0; i < self->n; i++) {
    gboolean open = free_shares && self->usable[i];
    fm_solver_set_column (self->solver, i, open ? 0.0 : self->min[i], open ? 1.0 : self->max[i]);
  }
}

void
fm_targets_model_aim_at_nothing (FmTargetsModel *self)
{
  for (guint j = 0; j < (self->base ? 3 * self->n : self->n); j++)
    fm_solver_set_cost (self->solver, j, 0.0);
}

/* Per unit of price; 0 where a price is missing, as nothing is guessed. */
static double
tie_weight (const FmTargetsModel *self)
{
  double highest = 0.0;
  for (guint i = 0; i < self->n; i++) {
    if (!self->usable[i] || (candidate_at (self, i)->locked && isnan (self->price[i])))
      continue;
    if (isnan (self->price[i]))
      return 0.0;
    highest = MAX (highest, self->price[i]);
  }
  return highest > 0.0 ? TIE_WEIGHT / highest : 0.0;
}

void
fm_targets_model_aim (FmTargetsModel *self)
{
  double weight = self->base ? tie_weight (self) : 1.0;
  for (guint i = 0; i < self->n; i++) {
    gboolean priced = self->usable[i] && weight > 0.0 && !isnan (self->price[i]);
    fm_solver_set_cost (self->solver, i, priced ? weight * self->price[i] : 0.0);
    for (guint k = 0; self->base && k < 2; k++)
      fm_solver_set_cost (self->solver, self->n + 2 * i + k, 1.0);
  }
}

double
fm_targets_model_value (const FmTargetsModel *self, guint row, const double *share)
{
  double sum = 0.0;
  double over = 0.0;
  for (guint i = 0; i < self->n; i++) {
    sum += self->coef[row * self->n + i] * share[i];
    over += self->over[row * self->n + i] * share[i];
  }
  return self->active[row] && over > 0.0 ? sum / over : NAN;
}

void
fm_targets_model_shares (const FmTargetsModel *self, double *share)
{
  for (guint i = 0; i < self->n; i++) {
    double value = fm_solver_column (self->solver, i);
    /* Beyond the limits only by rounding, or because they were lifted on purpose. */
    if (fabs (value - self->min[i]) <= SHARE_TOLERANCE)
      value = self->min[i];
    else if (fabs (value - self->max[i]) <= SHARE_TOLERANCE)
      value = self->max[i];
    share[i] = value;
  }
}
