/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-stat.c */
#include "core/statistics/fm-stat.h"

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_math.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_roots.h>
#include <math.h>

/* beyond this a normal density adds nothing to a double */
#define NORMAL_REACH 8.5
#define NORMAL_POINTS 64
#define SCALE_POINTS 16
#define ROOT_STEPS 100
#define ROOT_PART 1e-12 /* of the root */

void
fm_random_init (FmRandom *self, guint64 seed)
{
  self->state = seed;
}

guint64
fm_random_next (FmRandom *self)
{
  guint64 z = (self->state += G_GUINT64_CONSTANT (0x9e3779b97f4a7c15));
  z = (z ^ (z >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return z ^ (z >> 31);
}

guint
fm_random_below (FmRandom *self, guint n)
{
  g_return_val_if_fail (n >= 1, 0);
  /* draws past the last whole multiple of n would favour small numbers */
  const guint64 limit = G_MAXUINT64 - G_MAXUINT64 % n;
  guint64 draw;
  do
    draw = fm_random_next (self);
  while (draw >= limit);
  return (guint)(draw % n);
}

double
fm_random_unit (FmRandom *self)
{
  return (double)(fm_random_next (self) >> 11) * 0x1.0p-53;
}

void
fm_random_shuffle (FmRandom *self, guint *values, guint n)
{
  for (guint i = n; i > 1; i--) {
    guint j = fm_random_below (self, i);
    guint swap = values[i - 1];
    values[i - 1] = values[j];
    values[j] = swap;
  }
}

void
fm_stat_midranks (const double *values, guint n, double *ranks)
{
  for (guint i = 0; i < n; i++) {
    guint below = 0, same = 0;
    for (guint j = 0; j < n; j++) {
      below += values[j] < values[i];
      same += values[j] == values[i];
    }
    ranks[i] = below + (same + 1) / 2.0;
  }
}

double
fm_stat_spearman (const double *a, const double *b, guint n)
{
  g_autofree double *rank_a = g_new (double, n);
  g_autofree double *rank_b = g_new (double, n);
  const double mean = (n + 1) / 2.0;
  double ab = 0, aa = 0, bb = 0;

  fm_stat_midranks (a, n, rank_a);
  fm_stat_midranks (b, n, rank_b);
  for (guint i = 0; i < n; i++) {
    ab += (rank_a[i] - mean) * (rank_b[i] - mean);
    aa += (rank_a[i] - mean) * (rank_a[i] - mean);
    bb += (rank_b[i] - mean) * (rank_b[i] - mean);
  }
  return aa > 0 && bb > 0 ? ab / sqrt (aa * bb) : NAN;
}

double
fm_stat_binomial_upper (guint x, guint n, double p)
{
  if (x == 0)
    return 1;
  return x > n ? 0 : gsl_cdf_binomial_Q (x - 1, p, n);
}

void
fm_stat_clopper_pearson (guint x, guint n, double confidence, double *low, double *high)
{
  const double tail = (1 - confidence) / 2;
  if (n == 0) {
    *low = *high = NAN;
    return;
  }
  *low = x == 0 ? 0 : gsl_cdf_beta_Pinv (tail, x, n - x + 1);
  *high = x == n ? 1 : gsl_cdf_beta_Qinv (tail, x + 1, n - x);
}

typedef struct {
  double z[NORMAL_POINTS];
  double top[NORMAL_POINTS];    /* Phi (z) */
  double weight[NORMAL_POINTS]; /* of the quadrature, times the density */
} NormalNodes;

static double
normal_lower (double z)
{
  return 0.5 * erfc (-z * G_SQRT2 / 2);
}

static void
normal_nodes_init (NormalNodes *self)
{
  const double edge[] = { -NORMAL_REACH, -2, 0, 2, NORMAL_REACH };
  gsl_integration_glfixed_table *table = gsl_integration_glfixed_table_alloc (NORMAL_POINTS / 4);
  for (guint i = 0; i < NORMAL_POINTS; i++) {
    const guint part = i / (NORMAL_POINTS / 4);
    double weight;
    gsl_integration_glfixed_point (edge[part], edge[part + 1], i % (NORMAL_POINTS / 4), &self->z[i],
                                   &weight, table);
    self->top[i] = normal_lower (self->z[i]);
    self->weight[i] = weight * gsl_ran_ugaussian_pdf (self->z[i]);
  }
  gsl_integration_glfixed_table_free (table);
}

/* P(range of k standard normals >= w): with z the largest, the rest lie within w below it. The
 * difference is taken inside so that small tails keep their digits. */
static double
normal_range_upper (double w, guint k, const NormalNodes *node)
{
  double sum = 0;
  for (guint i = 0; i < NORMAL_POINTS; i++) {
    const double inside = node->top[i] - normal_lower (node->z[i] - w);
    sum += node->weight[i] *
           (gsl_pow_uint (node->top[i], k - 1) - gsl_pow_uint (MAX (inside, 0), k - 1));
  }
  return k * sum;
}

double
fm_stat_studentized_range_upper (double q, guint k, double df)
{
  g_return_val_if_fail (k >= 2 && df >= 1, NAN);
  if (isnan (q))
    return NAN;
  if (q <= 0)
    return 1;

  NormalNodes inner;
  normal_nodes_init (&inner);
  if (isinf (df))
    return CLAMP (normal_range_upper (q, k, &inner), 0, 1);

  gsl_integration_glfixed_table *outer = gsl_integration_glfixed_table_alloc (SCALE_POINTS);
  /* in s = sqrt (chi^2 / df) the mass lies between these; split so that each piece is smooth */
  const double tail[] = { 1e-14, 1e-5, 0.02, 0.3, 0.8, 0.99, 1 - 1e-6, 1 - 1e-14 };
  double sum = 0;

  for (guint part = 0; part + 1 < G_N_ELEMENTS (tail); part++) {
    const double from = part == 0 ? 0 : sqrt (gsl_cdf_chisq_Pinv (tail[part], df) / df);
    const double to = sqrt (gsl_cdf_chisq_Pinv (tail[part + 1], df) / df);
    for (guint i = 0; i < SCALE_POINTS; i++) {
      double s, weight;
      gsl_integration_glfixed_point (from, to, i, &s, &weight, outer);
      sum += weight * gsl_ran_chisq_pdf (s * s * df, df) * 2 * s * df *
             normal_range_upper (q * s, k, &inner);
    }
  }
  gsl_integration_glfixed_table_free (outer);
  return CLAMP (sum, 0, 1);
}

double
fm_stat_find_root (double (*function) (double x, void *params),
                   void *params,
                   double low,
                   double high)
{
  gsl_function f = { function, params };
  gsl_root_fsolver *solver = gsl_root_fsolver_alloc (gsl_root_fsolver_brent);
  double root = NAN;

  gsl_root_fsolver_set (solver, &f, low, high);
  for (int i = 0; i < ROOT_STEPS; i++) {
    gsl_root_fsolver_iterate (solver);
    root = gsl_root_fsolver_root (solver);
    if (gsl_root_test_interval (gsl_root_fsolver_x_lower (solver),
                                gsl_root_fsolver_x_upper (solver), 0, ROOT_PART) == GSL_SUCCESS)
      break;
  }
  gsl_root_fsolver_free (solver);
  return root;
}

typedef struct {
  double alpha;
  guint k;
  double df;
} RangeTail;

/* On a log scale the tail is nearly linear. */
static double
range_tail_excess (double q, void *params)
{
  const RangeTail *tail = params;
  const double p = fm_stat_studentized_range_upper (q, tail->k, tail->df);
  return log (MAX (p, 1e-300) / tail->alpha);
}

double
fm_stat_studentized_range_quantile (double alpha, guint k, double df)
{
  RangeTail tail = { alpha, k, df };
  double low = 0, high = 8;

  g_return_val_if_fail (alpha > 0 && alpha < 1, NAN);
  while (range_tail_excess (high, &tail) > 0 && high < 1e6) {
    low = high;
    high *= 2;
  }
  return fm_stat_find_root (range_tail_excess, &tail, low, high);
}
