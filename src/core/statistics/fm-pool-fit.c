/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pool-fit.c - the worths that make the orders of all sheets likeliest, and what follows */
#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_linalg.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-pool-private.h"

#define ALPHA 0.05
#define MAX_STEPS 100
#define MAX_HALVINGS 30
/* Once a Newton step promises less than this, its square root is what the worths are off by. */
#define FLAT 1e-16
/* Part of a cost that its own digits leave open. */
#define ROUNDING 1e-13
/* Log worths do not come near this unless they run away. */
#define RUNAWAY 25.0
/* Keeps the weight of a tie finite where every sheet ties, and moves it nowhere else. */
#define TIE_PRECISION 1e-9

/* Parameters are the log worths, then the log weights of the tie sizes that occur. */
typedef struct {
  guint n_items;
  guint n_parameters;
  guint n_sizes;
  guint size[FM_POOL_MAX_ON_SHEET + 1]; /* size[0] = 1, of weight 1 */
  guint which[FM_POOL_MAX_ON_SHEET + 1];
  GArray *stages; /* FmPoolStage */
  double precision;
  const guint *group;
  double cost; /* of the sheets alone, at the last place looked at */
  gsl_vector *slope;
  gsl_matrix *bend;
} Model;

/* All that could have happened at one stage, by item on the sheet and by tie size. */
typedef struct {
  double all;
  double item[FM_POOL_MAX_ON_SHEET];
  double size[FM_POOL_MAX_ON_SHEET + 1];
} Possible;

static void
find_sizes (Model *self)
{
  gboolean occurs[FM_POOL_MAX_ON_SHEET + 1] = { FALSE };

  for (guint i = 0; i < self->stages->len; i++)
    occurs[g_array_index (self->stages, FmPoolStage, i).n_tied] = TRUE;
  occurs[1] = TRUE;
  for (guint d = 1; d <= FM_POOL_MAX_ON_SHEET; d++)
    if (occurs[d]) {
      self->which[d] = self->n_sizes;
      self->size[self->n_sizes++] = d;
    }
}

static guint
tie_index (const Model *self, guint which)
{
  return self->n_items + which - 1;
}

static void
add_bend (Model *self, guint a, guint b, double value)
{
  *gsl_matrix_ptr (self->bend, a, b) += value;
}

/* What sets of size @which add to the sum of all, and its second slopes within those sets. */
static void
add_size (Model *self,
          const FmPoolStage *stage,
          const gsl_vector *at,
          guint which,
          double top,
          Possible *possible,
          double *second)
{
  const guint d = self->size[which], n = stage->n;
  const double weight = which == 0 ? 1 : exp (gsl_vector_get (at, tie_index (self, which)));
  double factor[FM_POOL_MAX_ON_SHEET];

  for (guint i = 0; i < n; i++)
    factor[i] = exp ((gsl_vector_get (at, stage->item[i]) - top) / d);
  possible->size[which] = weight * fm_pool_sum_of_products (factor, n, n, n, d);
  possible->all += possible->size[which];
  for (guint i = 0; i < n; i++) {
    const double slope = weight * factor[i] * fm_pool_sum_of_products (factor, n, i, n, d - 1) / d;

    possible->item[i] += slope;
    second[i * n + i] += slope / d;
    if (which > 0)
      second[n * n + (which - 1) * n + i] = slope;
    for (guint j = 0; d > 1 && j < n; j++)
      if (j != i)
        second[i * n + j] += weight * factor[i] * factor[j] *
                             fm_pool_sum_of_products (factor, n, i, j, d - 2) / (d * d);
  }
}

/* The second slopes of the log of the sum of all. */
static void
bend_of_stage (Model *self, const FmPoolStage *stage, const Possible *possible, double *second)
{
  const guint n = stage->n;
  const double all = possible->all;

  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < n; j++)
      add_bend (self, stage->item[i], stage->item[j],
                second[i * n + j] / all - possible->item[i] / all * possible->item[j] / all);
  for (guint w = 1; w < self->n_sizes && self->size[w] <= n; w++) {
    const guint tie = tie_index (self, w);

    for (guint i = 0; i < n; i++) {
      const double cross =
          second[n * n + (w - 1) * n + i] / all - possible->size[w] / all * possible->item[i] / all;

      add_bend (self, tie, stage->item[i], cross);
      add_bend (self, stage->item[i], tie, cross);
    }
    add_bend (self, tie, tie, possible->size[w] / all);
    for (guint v = 1; v < self->n_sizes && self->size[v] <= n; v++)
      add_bend (self, tie, tie_index (self, v), -possible->size[w] / all * possible->size[v] / all);
  }
}

static void
add_stage (Model *self, const FmPoolStage *stage, const gsl_vector *at)
{
  g_autofree double *second = g_new0 (double, stage->n *(stage->n + self->n_sizes));
  Possible possible = { 0 };
  const guint tied = self->which[stage->n_tied];
  double top = -INFINITY;

  for (guint i = 0; i < stage->n; i++)
    top = fmax (top, gsl_vector_get (at, stage->item[i]));
  for (guint w = 0; w < self->n_sizes && self->size[w] <= stage->n; w++)
    add_size (self, stage, at, w, top, &possible, second);
  self->cost += log (possible.all) + top;
  for (guint i = 0; i < stage->n; i++)
    *gsl_vector_ptr (self->slope, stage->item[i]) += possible.item[i] / possible.all;
  for (guint w = 1; w < self->n_sizes && self->size[w] <= stage->n; w++)
    *gsl_vector_ptr (self->slope, tie_index (self, w)) += possible.size[w] / possible.all;
  for (guint i = 0; i < stage->n_tied; i++) {
    self->cost -= gsl_vector_get (at, stage->item[i]) / stage->n_tied;
    *gsl_vector_ptr (self->slope, stage->item[i]) -= 1.0 / stage->n_tied;
  }
  if (tied > 0) {
    self->cost -= gsl_vector_get (at, tie_index (self, tied));
    *gsl_vector_ptr (self->slope, tie_index (self, tied)) -= 1;
  }
  bend_of_stage (self, stage, &possible, second);
}

/* Without a prior the mean of a group is free: it is held where it is. */
static void
hold_means (Model *self)
{
  for (guint a = 0; a < self->n_items; a++) {
    if (self->group[a] == FM_POOL_NO_GROUP)
      add_bend (self, a, a, 1);
    for (guint b = 0; b < self->n_items && self->group[a] != FM_POOL_NO_GROUP; b++)
      if (self->group[a] == self->group[b])
        add_bend (self, a, b, 1);
  }
}

/* Minus the log of the posterior density at @at, with its slope and bend in @self. */
static double
look_at (Model *self, const gsl_vector *at)
{
  double prior = 0;

  self->cost = 0;
  gsl_vector_set_zero (self->slope);
  gsl_matrix_set_zero (self->bend);
  for (guint i = 0; i < self->stages->len; i++)
    add_stage (self, &g_array_index (self->stages, FmPoolStage, i), at);
  for (guint i = 0; i < self->n_parameters; i++) {
    const double precision = i < self->n_items ? self->precision : TIE_PRECISION;
    const double value = gsl_vector_get (at, i);

    prior += precision * value * value / 2;
    *gsl_vector_ptr (self->slope, i) += precision * value;
    add_bend (self, i, i, precision);
  }
  if (!(self->precision > 0))
    hold_means (self);
  return self->cost + prior;
}

/* The cost is convex, so wherever the steps end is the only minimum. */
static void
search (Model *self, gsl_vector *at)
{
  gsl_vector *step = gsl_vector_alloc (self->n_parameters);
  gsl_vector *next = gsl_vector_alloc (self->n_parameters);
  gsl_matrix *root = gsl_matrix_alloc (self->n_parameters, self->n_parameters);
  double cost = look_at (self, at);

  for (guint i = 0; i < MAX_STEPS; i++) {
    double part = 1, reached = INFINITY, promised;

    gsl_matrix_memcpy (root, self->bend);
    gsl_linalg_cholesky_decomp1 (root);
    gsl_linalg_cholesky_solve (root, self->slope, step);
    gsl_blas_ddot (self->slope, step, &promised);
    if (promised < FLAT || gsl_vector_max (at) > RUNAWAY || gsl_vector_min (at) < -RUNAWAY)
      break;
    for (guint j = 0; j < MAX_HALVINGS && !(reached <= cost + ROUNDING * fabs (cost));
         j++, part /= 2) {
      gsl_vector_memcpy (next, at);
      gsl_blas_daxpy (-part, step, next);
      reached = look_at (self, next);
    }
    gsl_vector_memcpy (at, next);
    cost = reached;
  }
  gsl_matrix_free (root);
  gsl_vector_free (next);
  gsl_vector_free (step);
}

static guint
find_groups (const FmPool *self, guint *group)
{
  guint n_groups = 0;
  g_autofree guint *name = g_new (guint, self->n_items + 1);

  for (guint a = 0; a < self->n_items; a++)
    group[a] = FM_POOL_NO_GROUP;
  for (guint s = 0; s < self->sheets->len; s++) {
    const FmPoolSheet *sheet = &g_array_index (self->sheets, FmPoolSheet, s);

    for (guint i = 0; i < sheet->n; i++) {
      const guint old = group[sheet->item[i]], kept = group[sheet->item[0]];

      if (i == 0 && old == FM_POOL_NO_GROUP)
        group[sheet->item[0]] = sheet->item[0];
      else if (i > 0 && old == FM_POOL_NO_GROUP)
        group[sheet->item[i]] = kept;
      for (guint a = 0; i > 0 && old != FM_POOL_NO_GROUP && a < self->n_items; a++)
        group[a] = group[a] == old ? kept : group[a];
    }
  }
  for (guint a = 0; a < self->n_items; a++)
    name[a] = FM_POOL_NO_GROUP;
  for (guint a = 0; a < self->n_items; a++)
    if (group[a] != FM_POOL_NO_GROUP) {
      if (name[group[a]] == FM_POOL_NO_GROUP)
        name[group[a]] = n_groups++;
      group[a] = name[group[a]];
    }
  return n_groups;
}

static guint
group_size (const FmPoolFit *self, guint group)
{
  guint n = 0;

  for (guint a = 0; a < self->n_items; a++)
    n += self->group[a] == group;
  return n;
}

/* Row means of the group are taken off on both sides: worths are told from their group's mean. */
static void
centre_covariance (FmPoolFit *self)
{
  const guint n = self->n_items;

  for (guint side = 0; side < 2; side++)
    for (guint a = 0; a < n; a++)
      for (guint group = 0; group < self->n_groups; group++) {
        double sum = 0;

        for (guint b = 0; b < n; b++)
          sum += self->group[b] == group ? self->covariance[side ? b * n + a : a * n + b] : 0;
        for (guint b = 0; b < n; b++)
          if (self->group[b] == group)
            self->covariance[side ? b * n + a : a * n + b] -= sum / group_size (self, group);
      }
}

static void
centre_worths (FmPoolFit *self)
{
  for (guint group = 0; group < self->n_groups; group++) {
    double sum = 0;

    for (guint a = 0; a < self->n_items; a++)
      sum += self->group[a] == group ? self->worth[a] : 0;
    for (guint a = 0; a < self->n_items; a++)
      if (self->group[a] == group)
        self->worth[a] -= sum / group_size (self, group);
  }
  for (guint a = 0; a < self->n_items; a++)
    if (self->group[a] == FM_POOL_NO_GROUP)
      self->worth[a] = NAN;
}

static void
read_model (FmPoolFit *self, Model *model, const gsl_vector *at)
{
  const guint n = self->n_items;

  self->log_likelihood = -model->cost;
  self->n_sizes = model->n_sizes;
  for (guint w = 0; w < model->n_sizes; w++) {
    self->size[w] = model->size[w];
    self->tie[w] = w > 0 ? gsl_vector_get (at, tie_index (model, w)) : 0;
  }
  gsl_linalg_cholesky_decomp1 (model->bend);
  gsl_linalg_cholesky_invert (model->bend);
  for (guint a = 0; a < n; a++) {
    self->worth[a] = gsl_vector_get (at, a);
    for (guint b = 0; b < n; b++)
      self->covariance[a * n + b] = gsl_matrix_get (model->bend, a, b);
  }
  centre_worths (self);
  centre_covariance (self);
  for (guint a = 0; a < n; a++)
    self->se[a] = isnan (self->worth[a]) ? (double)NAN : sqrt (self->covariance[a * n + a]);
}

static gboolean
check_finite (const Model *model, const gsl_vector *at, GError **error)
{
  for (guint a = 0; a < model->n_items; a++)
    if (!(fabs (gsl_vector_get (at, a)) < RUNAWAY)) {
      g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                           _ ("A sample came first, or last, whenever it was served, so without "
                              "the weak assumption its worth has no end. Switch it on again."));
      return FALSE;
    }
  return TRUE;
}

static FmPoolFit *
fit_new (const FmPool *pool)
{
  FmPoolFit *self = g_new0 (FmPoolFit, 1);

  self->n_items = pool->n_items;
  self->group = g_new (guint, pool->n_items);
  self->worth = g_new0 (double, pool->n_items);
  self->se = g_new0 (double, pool->n_items);
  self->covariance = g_new0 (double, (gsize)pool->n_items * pool->n_items);
  self->n_groups = find_groups (pool, self->group);
  return self;
}

FmPoolFit *
fm_pool_fit (const FmPool *self, double prior_sd, GError **error)
{
  g_autoptr (FmPoolFit) fit = NULL;
  Model model = { .n_items = self->n_items, .precision = 1 / (prior_sd * prior_sd) };
  gboolean is_finite;

  if (self->sheets->len == 0) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("No sheet puts two samples in order yet."));
    return NULL;
  }
  fit = fit_new (self);
  model.group = fit->group;
  model.stages = g_array_new (FALSE, FALSE, sizeof (FmPoolStage));
  for (guint s = 0; s < self->sheets->len; s++)
    fm_pool_add_stages (model.stages, &g_array_index (self->sheets, FmPoolSheet, s));
  find_sizes (&model);
  model.n_parameters = model.n_items + model.n_sizes - 1;
  model.slope = gsl_vector_alloc (model.n_parameters);
  model.bend = gsl_matrix_alloc (model.n_parameters, model.n_parameters);
  gsl_vector *at = gsl_vector_calloc (model.n_parameters);
  search (&model, at);
  is_finite = check_finite (&model, at, error);
  if (is_finite)
    read_model (fit, &model, at);
  gsl_vector_free (at);
  gsl_vector_free (model.slope);
  gsl_matrix_free (model.bend);
  g_array_unref (model.stages);
  return is_finite ? g_steal_pointer (&fit) : NULL;
}

void
fm_pool_fit_free (FmPoolFit *self)
{
  g_free (self->group);
  g_free (self->worth);
  g_free (self->se);
  g_free (self->covariance);
  g_free (self);
}

double
fm_pool_fit_difference (const FmPoolFit *self, guint a, guint b, double *se)
{
  const guint n = self->n_items;
  const gboolean together = self->group[a] == self->group[b] && self->group[a] != FM_POOL_NO_GROUP;
  const double variance =
      self->covariance[a * n + a] + self->covariance[b * n + b] - 2 * self->covariance[a * n + b];

  *se = together ? sqrt (fmax (variance, 0)) : (double)NAN;
  return together ? self->worth[a] - self->worth[b] : (double)NAN;
}

double
fm_pool_fit_better (const FmPoolFit *self, guint a, guint b)
{
  double se;
  const double difference = fm_pool_fit_difference (self, a, b, &se);

  return a != b && se > 0 ? gsl_cdf_ugaussian_P (difference / se) : (double)NAN;
}

gboolean
fm_pool_fit_is_apart (const FmPoolFit *self, guint a, guint b)
{
  double se;
  const double difference = fm_pool_fit_difference (self, a, b, &se);

  if (!(se > 0))
    return FALSE;
  return fm_stat_studentized_range_upper (fabs (difference) / se * G_SQRT2,
                                          group_size (self, self->group[a]), INFINITY) <= ALPHA;
}
