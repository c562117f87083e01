/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-rank-worth.c */
#include "core/statistics/fm-rank-worth.h"

#include <gsl/gsl_multimin.h>
#include <math.h>

#include "core/statistics/fm-rank-private.h"

#define MAX_STEPS 500
#define FIRST_STEP 0.5
#define LINE_TOLERANCE 0.1
#define FLAT 1e-10

/* Samples of one sheet still to be placed, and how many of them share the next place */
typedef struct {
  guint n;
  guint n_tied; /* the first n_tied of @item */
  guint item[FM_RANK_MAX_SAMPLES];
} Stage;

/* Parameters are the log worths, then the log weights of the tie sizes that occur */
typedef struct {
  guint n_samples;
  guint n_sizes;
  guint size[FM_RANK_MAX_SAMPLES]; /* size[0] = 1, of weight 1 */
  guint which[FM_RANK_MAX_SAMPLES + 1];
  GArray *stages; /* Stage */
  double precision;
} Model;

static gboolean
is_connected (const FmRankRows *rows)
{
  guint group[FM_RANK_MAX_SAMPLES];
  guint first = FM_RANK_MAX_SAMPLES;

  for (guint s = 0; s < rows->n_samples; s++)
    group[s] = s;
  for (guint r = 0; r < rows->n_rows; r++)
    for (guint i = 1; i < rows->row[r].n; i++) {
      const guint old = group[rows->row[r].item[i]], kept = group[rows->row[r].item[0]];
      for (guint s = 0; s < rows->n_samples; s++)
        group[s] = group[s] == old ? kept : group[s];
    }
  for (guint r = 0; r < rows->n_rows; r++)
    for (guint i = 0; i < rows->row[r].n; i++) {
      const guint found = group[rows->row[r].item[i]];
      if (first != FM_RANK_MAX_SAMPLES && found != first)
        return FALSE;
      first = found;
    }
  return TRUE;
}

static void
add_stages (Model *self, const FmRankRow *row)
{
  guint order[FM_RANK_MAX_SAMPLES];
  for (guint i = 0; i < row->n; i++) {
    guint j = i;
    for (; j > 0 && row->score[order[j - 1]] > row->score[i]; j--)
      order[j] = order[j - 1];
    order[j] = i;
  }
  for (guint from = 0; from + 1 < row->n;) {
    Stage stage = { .n = row->n - from };
    for (guint i = from; i < row->n; i++) {
      stage.item[i - from] = row->item[order[i]];
      stage.n_tied += row->score[order[i]] == row->score[order[from]];
    }
    g_array_append_val (self->stages, stage);
    from += stage.n_tied;
  }
}

static void
find_sizes (Model *self)
{
  gboolean occurs[FM_RANK_MAX_SAMPLES + 1] = { FALSE };
  for (guint i = 0; i < self->stages->len; i++)
    occurs[g_array_index (self->stages, Stage, i).n_tied] = TRUE;
  occurs[1] = TRUE;
  for (guint d = 1; d <= FM_RANK_MAX_SAMPLES; d++)
    if (occurs[d]) {
      self->which[d] = self->n_sizes;
      self->size[self->n_sizes++] = d;
    }
}

static double
tie_weight (const Model *self, const gsl_vector *at, guint which)
{
  return which == 0 ? 1 : exp (gsl_vector_get (at, self->n_samples + which - 1));
}

/* Sum over all sets of @d of the @n factors, @left_out (or n) not among them, of their product */
static double
sum_of_products (const double *factor, guint n, guint left_out, guint d)
{
  double sum[FM_RANK_MAX_SAMPLES + 1] = { 1 };
  for (guint i = 0; i < n; i++)
    for (guint k = i != left_out ? d : 0; k > 0; k--)
      sum[k] += factor[i] * sum[k - 1];
  return sum[d];
}

/* All that could have happened at a stage; adds its share to @slope, by parameter */
static double
possible (const Model *self, const Stage *stage, const gsl_vector *at, double *slope)
{
  double all = 0;
  for (guint w = 0; w < self->n_sizes && self->size[w] <= stage->n; w++) {
    const guint d = self->size[w];
    const double weight = tie_weight (self, at, w);
    double factor[FM_RANK_MAX_SAMPLES];
    for (guint i = 0; i < stage->n; i++)
      factor[i] = exp (gsl_vector_get (at, stage->item[i]) / d);
    const double sum = weight * sum_of_products (factor, stage->n, stage->n, d);
    all += sum;
    if (w > 0)
      slope[self->n_samples + w - 1] += sum;
    for (guint i = 0; i < stage->n; i++)
      slope[stage->item[i]] +=
          weight * factor[i] * sum_of_products (factor, stage->n, i, d - 1) / d;
  }
  return all;
}

static double
stage_cost (const Model *self, const Stage *stage, const gsl_vector *at, double *slope)
{
  double share[2 * FM_RANK_MAX_SAMPLES] = { 0 };
  const guint n_parameters = self->n_samples + self->n_sizes - 1, w = self->which[stage->n_tied];
  const double all = possible (self, stage, at, share);
  double cost = log (all) - log (tie_weight (self, at, w));
  for (guint i = 0; i < n_parameters; i++)
    slope[i] += share[i] / all;
  if (w > 0)
    slope[self->n_samples + w - 1] -= 1;
  for (guint i = 0; i < stage->n_tied; i++) {
    cost -= gsl_vector_get (at, stage->item[i]) / stage->n_tied;
    slope[stage->item[i]] -= 1.0 / stage->n_tied;
  }
  return cost;
}

/* Minus the log of the posterior density, and its slope */
static void
cost_and_slope (const gsl_vector *at, void *data, double *cost, gsl_vector *gradient)
{
  const Model *self = data;
  double slope[2 * FM_RANK_MAX_SAMPLES] = { 0 };
  double sum = 0;
  for (guint i = 0; i < self->stages->len; i++)
    sum += stage_cost (self, &g_array_index (self->stages, Stage, i), at, slope);
  for (guint s = 0; s < self->n_samples; s++) {
    const double worth = gsl_vector_get (at, s);
    sum += self->precision * worth * worth / 2;
    slope[s] += self->precision * worth;
  }
  if (cost != NULL)
    *cost = sum;
  for (guint i = 0; gradient != NULL && i < gradient->size; i++)
    gsl_vector_set (gradient, i, slope[i]);
}

static double
cost_of (const gsl_vector *at, void *data)
{
  double cost;
  cost_and_slope (at, data, &cost, NULL);
  return cost;
}

static void
slope_of (const gsl_vector *at, void *data, gsl_vector *gradient)
{
  cost_and_slope (at, data, NULL, gradient);
}

/* The cost is convex, so wherever the search ends is the only minimum */
static void
search (Model *self, double *worth)
{
  const guint n = self->n_samples + self->n_sizes - 1;
  gsl_multimin_function_fdf function = { cost_of, slope_of, cost_and_slope, n, self };
  gsl_vector *start = gsl_vector_calloc (n);
  gsl_multimin_fdfminimizer *minimizer =
      gsl_multimin_fdfminimizer_alloc (gsl_multimin_fdfminimizer_vector_bfgs2, n);
  gsl_multimin_fdfminimizer_set (minimizer, &function, start, FIRST_STEP, LINE_TOLERANCE);
  for (guint step = 0; step < MAX_STEPS; step++)
    if (gsl_multimin_test_gradient (minimizer->gradient, FLAT) == GSL_SUCCESS ||
        gsl_multimin_fdfminimizer_iterate (minimizer) != GSL_SUCCESS)
      break;
  for (guint s = 0; s < self->n_samples; s++)
    worth[s] = gsl_vector_get (minimizer->x, s);
  gsl_multimin_fdfminimizer_free (minimizer);
  gsl_vector_free (start);
}

static void
centre (double *worth, const FmRankRows *rows)
{
  gboolean is_ranked[FM_RANK_MAX_SAMPLES] = { FALSE };
  double sum = 0;
  guint n = 0;
  for (guint r = 0; r < rows->n_rows; r++)
    for (guint i = 0; i < rows->row[r].n; i++)
      is_ranked[rows->row[r].item[i]] = TRUE;
  for (guint s = 0; s < rows->n_samples; s++) {
    sum += is_ranked[s] ? worth[s] : 0;
    n += is_ranked[s];
  }
  for (guint s = 0; s < rows->n_samples; s++)
    worth[s] = is_ranked[s] ? worth[s] - sum / n : NAN;
}

double *
fm_rank_worth (const FmRankTable *table, double prior_sd)
{
  g_return_val_if_fail (table->n_samples <= FM_RANK_MAX_SAMPLES, NULL);
  g_autoptr (FmRankRows) rows = fm_rank_rows_new (table, FALSE);
  if (rows->n_rows == 0 || !is_connected (rows))
    return NULL;

  Model model = { .n_samples = table->n_samples, .precision = 1 / (prior_sd * prior_sd) };
  double *worth = g_new (double, table->n_samples);
  model.stages = g_array_new (FALSE, FALSE, sizeof (Stage));
  for (guint r = 0; r < rows->n_rows; r++)
    add_stages (&model, &rows->row[r]);
  find_sizes (&model);
  search (&model, worth);
  g_array_unref (model.stages);
  centre (worth, rows);
  return worth;
}
