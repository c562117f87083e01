/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-round.c - from exact shares to masses on a scale, and what that costs */
#include "fm-targets-private.h"

#include "core/base/fm-number.h"
#include "core/targets/fm-weighable.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* As fm_band_state() has it: arithmetic may leave a value this far outside its limit. */
#define BAND_SLACK 1e-9
/* Costs and distances that differ by less show as the same. */
#define LEAST_COST_CHANGE 0.00005
#define LEAST_DISTANCE_PCT 0.005

/* What fm_weighable_round() is given, and the memory behind it. */
typedef struct {
  FmWeighable given;
  double *ideal_g;
  double *min_g;
  double *max_g;
  gboolean *fixed;
  double *rows;
  double *row_min;
  double *row_max;
  double *cost;
} Rounding;

static const FmTargetLimit *
limit_at (const FmTargetsModel *model, guint index)
{
  return &g_array_index (model->limits, FmTargetLimit, index);
}

static gboolean
is_exact (const FmTargetsModel *model, guint row)
{
  const FmTargetRow *target = g_ptr_array_index (model->targets->rows, row);
  return model->active[row] && target->band.min == target->band.max;
}

/* Half of what one step from one mass to another can change the limit's sum by. */
static double
half_a_step (const Rounding *self, guint index)
{
  double least = G_MAXDOUBLE;
  double most = -G_MAXDOUBLE;
  for (guint i = 0; i < self->given.n; i++) {
    if (self->fixed[i] || !(self->max_g[i] > self->min_g[i]))
      continue;
    least = MIN (least, self->rows[index * self->given.n + i]);
    most = MAX (most, self->rows[index * self->given.n + i]);
  }
  return most > least ? 0.5 * self->given.step_g * (most - least) : 0.0;
}

static void
fill_limits (Rounding *self, const FmTargetsModel *model)
{
  guint n_rows = model->limits->len;
  self->rows = g_new0 (double, n_rows * model->n);
  self->row_min = g_new (double, n_rows);
  self->row_max = g_new (double, n_rows);
  for (guint k = 0; k < n_rows; k++) {
    const FmTargetLimit *limit = limit_at (model, k);
    fm_targets_model_homogeneous (model, limit, &self->rows[k * model->n]);
    double slack = 0.5 * BAND_SLACK * MAX (1.0, fabs (limit->limit)) * model->targets->total_g;
    if (is_exact (model, limit->row))
      slack += half_a_step (self, k);
    self->row_min[k] = limit->upper ? NAN : -slack;
    self->row_max[k] = limit->upper ? slack : NAN;
  }
}

/* Share limits refer to the total that can be weighed. */
static double
weighable_total_g (const Rounding *self)
{
  double free_g = 0.0;
  double locked_g = 0.0;
  for (guint i = 0; i < self->given.n; i++)
    *(self->fixed[i] ? &locked_g : &free_g) += self->ideal_g[i];
  return locked_g + round (free_g / self->given.step_g) * self->given.step_g;
}

static void
rounding_init (Rounding *self, const FmTargetsModel *model, const double *ideal_g)
{
  guint n = model->n;
  *self = (Rounding){
    .given = { .n = n, .n_rows = model->limits->len, .step_g = model->targets->scale_step_g },
    .ideal_g = g_memdup2 (ideal_g, n * sizeof *ideal_g),
    .min_g = g_new (double, n),
    .max_g = g_new (double, n),
    .fixed = g_new0 (gboolean, n),
    .cost = model->base ? NULL : g_new0 (double, n),
  };
  for (guint i = 0; i < n; i++)
    self->fixed[i] = ((const FmCandidate *)model->targets->candidates->pdata[i])->locked;
  double total_g = weighable_total_g (self);
  for (guint i = 0; i < n; i++) {
    self->min_g[i] = model->min[i] * total_g;
    self->max_g[i] = model->max[i] * total_g;
    if (self->cost && model->usable[i] && !self->fixed[i])
      self->cost[i] = model->price[i];
  }
  fill_limits (self, model);
  self->given.ideal_g = self->ideal_g;
  self->given.min_g = self->min_g;
  self->given.max_g = self->max_g;
  self->given.fixed = self->fixed;
  self->given.rows = self->rows;
  self->given.row_min = self->row_min;
  self->given.row_max = self->row_max;
  self->given.cost = self->cost;
}

static void
rounding_clear (Rounding *self)
{
  g_free (self->ideal_g);
  g_free (self->min_g);
  g_free (self->max_g);
  g_free (self->fixed);
  g_free (self->rows);
  g_free (self->row_min);
  g_free (self->row_max);
  g_free (self->cost);
}

static void
fill_tolerances (const Rounding *self, const FmTargetsModel *model, FmTargetsResult *result)
{
  for (guint k = 0; k < model->limits->len; k++) {
    guint row = limit_at (model, k)->row;
    if (!is_exact (model, row))
      continue;
    double over = 0.0;
    for (guint i = 0; i < model->n; i++)
      over += model->over[row * model->n + i] * result->mass_g[i];
    result->row_tolerance[row] = over > 0.0 ? half_a_step (self, k) / over : 0.0;
  }
}

void
fm_targets_round_masses (const FmTargetsModel *model, FmTargetsResult *result)
{
  Rounding rounding;
  rounding_init (&rounding, model, result->mass_g);
  g_autofree double *mass_g = g_new0 (double, model->n);
  FmWeighableStatus status = fm_weighable_round (&rounding.given, mass_g);
  g_autofree char *step = fm_number_to_edit (model->targets->scale_step_g, 3);
  result->on_scale = status == FM_WEIGHABLE_OK;
  for (guint i = 0; result->on_scale && i < model->n; i++)
    result->mass_g[i] = mass_g[i];
  if (result->on_scale)
    fill_tolerances (&rounding, model, result);
  if (status == FM_WEIGHABLE_IMPOSSIBLE)
    result->scale_note =
        g_strdup_printf (_ ("No masses in steps of %s g meet every target. Weigh in finer steps, "
                            "make the batch larger, or widen a target."),
                         step);
  else if (status == FM_WEIGHABLE_NOT_FOUND)
    result->scale_note = g_strdup_printf (
        _ ("No masses in steps of %s g that meet every target were found. Weigh in "
           "finer steps, or widen a target."),
        step);
  rounding_clear (&rounding);
}

static char *
cost_note (const FmTargetsModel *model, double change_per_kg, const char *step)
{
  const char *currency = model->targets->currency;
  g_autofree char *cost = *currency ? fm_number_format_unit (fabs (change_per_kg), 4, currency)
                                    : fm_number_format (fabs (change_per_kg), 4);
  if (isnan (change_per_kg))
    return NULL;
  if (fabs (change_per_kg) < LEAST_COST_CHANGE)
    return g_strdup_printf (_ ("Weighing in steps of %s g costs no more than the exact shares."),
                            step);
  return g_strdup_printf (change_per_kg > 0.0
                              ? _ ("Weighing in steps of %s g makes it %s per kg dearer than the "
                                   "exact shares.")
                              : _ ("Weighing in steps of %s g makes it %s per kg cheaper than the "
                                   "exact shares."),
                          step, cost);
}

static char *
distance_note (double further_pct, const char *step)
{
  if (!(further_pct >= LEAST_DISTANCE_PCT))
    return NULL;
  g_autofree char *further = fm_number_format (further_pct, 2);
  return g_strdup_printf (_ ("Weighing in steps of %s g moves the shares %s %% points further in "
                             "all than the exact ones."),
                          step, further);
}

void
fm_targets_note_rounding (const FmTargetsModel *model, FmTargetsResult *result, const double *share)
{
  g_autofree char *step = fm_number_to_edit (model->targets->scale_step_g, 3);
  if (!result->on_scale)
    return;
  result->rounding_cost_per_kg = result->cost_per_kg - fm_targets_model_cost (model, share);
  double further_pct = result->distance_pct - fm_targets_model_distance_pct (model, share);
  g_autofree char *further = distance_note (further_pct, step);
  g_autofree char *cost = cost_note (model, result->rounding_cost_per_kg, step);
  result->rounding_note =
      further && cost ? g_strjoin (" ", further, cost, NULL) : g_strdup (further ? further : cost);
  if (fabs (result->total_g - model->targets->total_g) <= 1e-9 * result->total_g)
    return;
  g_autofree char *total = fm_number_format_unit (result->total_g, 1, "g");
  result->scale_note = g_strdup_printf (
      _ ("The batch becomes %s, as the scale cannot weigh the planned total."), total);
}
