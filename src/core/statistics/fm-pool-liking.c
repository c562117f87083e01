/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-pool-liking.c - liking scores of several sessions in one reading */
#include "core/statistics/fm-pool-liking.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_blas.h>
#include <gsl/gsl_cdf.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-pool.h"
#include "core/statistics/fm-stat-private.h"
#include "core/statistics/fm-stat.h"

#define ALPHA 0.05

typedef struct {
  guint n_items;
  guint n_sessions;
  guint n_tasters;
} Size;

static const FmPoolScore *
score_at (const GArray *scores, guint index)
{
  return &g_array_index (scores, FmPoolScore, index);
}

static Size
size_of (const GArray *scores, guint n_items)
{
  Size size = { .n_items = n_items };

  for (guint i = 0; i < scores->len; i++) {
    size.n_sessions = MAX (size.n_sessions, score_at (scores, i)->session + 1);
    size.n_tasters = MAX (size.n_tasters, score_at (scores, i)->taster + 1);
  }
  return size;
}

/* Items that stood on one sheet, so that a pool of sheets finds the groups. */
static void
find_groups (FmPoolLiking *self, const GArray *scores)
{
  g_autoptr (FmPool) pool = fm_pool_new (self->n_items);
  g_autoptr (FmPoolFit) fit = NULL;

  for (guint i = 0; i < scores->len; i++)
    for (guint j = 0; j < i; j++) {
      const FmPoolScore *a = score_at (scores, i), *b = score_at (scores, j);
      const guint item[] = { a->item, b->item };
      const double place[] = { 1, 1 };

      if (a->session == b->session && a->taster == b->taster && a->item != b->item)
        fm_pool_add (pool, a->session, a->taster, 2, item, place);
    }
  fit = fm_pool_fit (pool, 1.0, NULL);
  for (guint a = 0; a < self->n_items; a++)
    self->group[a] = fit != NULL ? fit->group[a] : FM_POOL_NO_GROUP;
}

/* Tasters and sessions as deviations from their means, so that an item's column is its mean. */
static void
fill_row (gsl_matrix *x, guint row, const FmPoolScore *score, const Size *size)
{
  gsl_matrix_set (x, row, score->item, 1);
  for (guint t = 0; t < size->n_tasters; t++)
    gsl_matrix_set (x, row, size->n_items + t,
                    (t == score->taster) - 1.0 / (double)size->n_tasters);
  for (guint s = 0; s < size->n_sessions; s++)
    gsl_matrix_set (x, row, size->n_items + size->n_tasters + s,
                    (s == score->session) - 1.0 / (double)size->n_sessions);
}

static void
read_fit (FmPoolLiking *self, const gsl_vector *c, const gsl_matrix *covariance)
{
  const double t = gsl_cdf_tdist_Qinv (ALPHA / 2, self->df_error);

  for (guint a = 0; a < self->n_items; a++) {
    const double half = t * sqrt (gsl_matrix_get (covariance, a, a));
    const gboolean known = self->group[a] != FM_POOL_NO_GROUP;

    self->mean[a] = known ? gsl_vector_get (c, a) : (double)NAN;
    self->low[a] = self->mean[a] - half;
    self->high[a] = self->mean[a] + half;
    for (guint b = 0; b < self->n_items; b++)
      self->covariance[a * self->n_items + b] = gsl_matrix_get (covariance, a, b);
  }
}

/* FALSE when nothing is left for the error. */
static gboolean
solve (FmPoolLiking *self, const GArray *scores)
{
  const Size size = size_of (scores, self->n_items);
  const gsize n = scores->len, p = size.n_items + size.n_tasters + size.n_sessions;
  gsl_matrix *x = gsl_matrix_calloc (n, p), *inverse = gsl_matrix_calloc (p, p);
  gsl_matrix *normal = gsl_matrix_alloc (p, p);
  gsl_vector *y = gsl_vector_alloc (n), *xy = gsl_vector_calloc (p), *c = gsl_vector_calloc (p);
  double error_ss;
  guint rank;

  for (guint i = 0; i < n; i++) {
    fill_row (x, i, score_at (scores, i), &size);
    gsl_vector_set (y, i, score_at (scores, i)->score);
  }
  gsl_blas_dgemm (CblasTrans, CblasNoTrans, 1, x, x, 0, normal);
  gsl_blas_dgemv (CblasTrans, 1, x, y, 0, xy);
  rank = fm_stat_invert (normal, inverse);
  gsl_blas_dgemv (CblasNoTrans, 1, inverse, xy, 0, c);
  gsl_blas_dgemv (CblasNoTrans, -1, x, c, 1, y);
  gsl_blas_ddot (y, y, &error_ss);
  self->df_error = n > rank ? (guint)(n - rank) : 0;
  if (self->df_error > 0) {
    self->ms_error = error_ss / self->df_error;
    gsl_matrix_scale (inverse, self->ms_error);
    read_fit (self, c, inverse);
  }
  gsl_vector_free (c);
  gsl_vector_free (xy);
  gsl_vector_free (y);
  gsl_matrix_free (normal);
  gsl_matrix_free (inverse);
  gsl_matrix_free (x);
  return self->df_error > 0;
}

FmPoolLiking *
fm_pool_liking (const GArray *scores, guint n_items, GError **error)
{
  g_autoptr (FmPoolLiking) self = g_new0 (FmPoolLiking, 1);
  guint n_grouped = 0;

  self->n_items = n_items;
  self->n_scores = scores->len;
  self->group = g_new (guint, n_items);
  self->mean = g_new0 (double, n_items);
  self->low = g_new0 (double, n_items);
  self->high = g_new0 (double, n_items);
  self->covariance = g_new0 (double, (gsize)n_items *n_items);
  find_groups (self, scores);
  for (guint a = 0; a < n_items; a++)
    n_grouped += self->group[a] != FM_POOL_NO_GROUP;
  if (n_grouped < 2) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("No taster scored two samples at one tasting yet."));
    return NULL;
  }
  if (!solve (self, scores)) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                         _ ("There are too few liking scores to tell a difference from chance."));
    return NULL;
  }
  return g_steal_pointer (&self);
}

void
fm_pool_liking_free (FmPoolLiking *self)
{
  g_free (self->group);
  g_free (self->mean);
  g_free (self->low);
  g_free (self->high);
  g_free (self->covariance);
  g_free (self);
}

double
fm_pool_liking_difference (const FmPoolLiking *self, guint a, guint b, double *se)
{
  const guint n = self->n_items;
  const gboolean together = self->group[a] == self->group[b] && self->group[a] != FM_POOL_NO_GROUP;
  const double variance =
      self->covariance[a * n + a] + self->covariance[b * n + b] - 2 * self->covariance[a * n + b];

  *se = together ? sqrt (fmax (variance, 0)) : (double)NAN;
  return together ? self->mean[a] - self->mean[b] : (double)NAN;
}

double
fm_pool_liking_better (const FmPoolLiking *self, guint a, guint b)
{
  double se;
  const double difference = fm_pool_liking_difference (self, a, b, &se);

  return a != b && se > 0 ? gsl_cdf_tdist_P (difference / se, self->df_error) : (double)NAN;
}

gboolean
fm_pool_liking_is_apart (const FmPoolLiking *self, guint a, guint b)
{
  double se;
  const double difference = fm_pool_liking_difference (self, a, b, &se);
  guint k = 0;

  for (guint i = 0; i < self->n_items; i++)
    k += self->group[i] == self->group[a];
  return se > 0 && fm_stat_studentized_range_upper (fabs (difference) / se * G_SQRT2, k,
                                                    self->df_error) <= ALPHA;
}
