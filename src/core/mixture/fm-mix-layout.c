/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-layout.c - trials as columns for least squares */
#include <gsl/gsl_blas.h>
#include <gsl/gsl_linalg.h>
#include <math.h>

#include "core/mixture/fm-mix-fit-private.h"

/* A column of -1, 0 and 1 that keeps less than this beside the others says nothing new. */
#define DEPENDENT 1e-9

static gboolean
same_blend (const double *a, const double *b, guint q)
{
  for (guint i = 0; i < q; i++)
    if (fabs (a[i] - b[i]) > FM_MIX_SAME_BLEND)
      return FALSE;
  return TRUE;
}

static void
number_blends (FmMixLayout *self)
{
  const FmMixPoints *x = self->data->x;
  g_autofree guint *first = g_new (guint, MAX (self->n, 1));

  self->blend = g_new (guint, MAX (self->n, 1));
  for (guint row = 0; row < self->n; row++) {
    guint b = 0;
    while (b < self->n_blends &&
           !same_blend (fm_mix_points_get (x, row), fm_mix_points_get (x, first[b]), self->q))
      b++;
    if (b == self->n_blends)
      first[self->n_blends++] = row;
    self->blend[row] = b;
  }
}

static void
find_lowest (FmMixLayout *self)
{
  double left = 1.0;
  for (guint i = 0; i < self->q; i++) {
    self->lower[i] = self->n > 0 ? INFINITY : 0.0;
    for (guint row = 0; row < self->n; row++)
      self->lower[i] = MIN (self->lower[i], fm_mix_points_get (self->data->x, row)[i]);
    left -= self->lower[i];
  }
  self->scale = 1.0;
  if (left > FM_MIX_SAME_BLEND)
    self->scale = 1.0 / left;
  else
    memset (self->lower, 0, sizeof self->lower);
}

/* Levels of a factor that occur, numbered without gaps; returns how many */
static guint
used_levels (const FmMixData *data, guint factor, guint *level)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  for (guint row = 0; row < data->x->n; row++) {
    gpointer key = GUINT_TO_POINTER (data->level[row * data->n_factors + factor]), number;
    if (!g_hash_table_lookup_extended (seen, key, NULL, &number)) {
      number = GUINT_TO_POINTER (g_hash_table_size (seen));
      g_hash_table_insert (seen, key, number);
    }
    level[row] = GPOINTER_TO_UINT (number);
  }
  return g_hash_table_size (seen);
}

/* What is left of @column beside the orthonormal @basis is added to it; FALSE when nothing is */
static gboolean
extend_basis (gsl_matrix *basis, guint *n_basis, const gsl_vector *column)
{
  const double length = gsl_blas_dnrm2 (column);
  gsl_vector_view place = gsl_matrix_column (basis, *n_basis);

  gsl_vector_memcpy (&place.vector, column);
  /* twice is enough (Parlett and Kahan) */
  for (guint pass = 0; pass < 2; pass++)
    for (guint k = 0; k < *n_basis; k++) {
      double along;
      gsl_vector_view other = gsl_matrix_column (basis, k);
      gsl_blas_ddot (&other.vector, &place.vector, &along);
      gsl_blas_daxpy (-along, &other.vector, &place.vector);
    }
  const double left = gsl_blas_dnrm2 (&place.vector);
  if (left <= DEPENDENT * MAX (length, 1.0))
    return FALSE;
  gsl_vector_scale (&place.vector, 1.0 / left);
  (*n_basis)++;
  return TRUE;
}

typedef struct {
  guint n_levels;
  guint *level; /* [n] */
} Factor;

static void
factor_clear (gpointer data)
{
  g_free (((Factor *)data)->level);
}

static int
compare_levels (gconstpointer a, gconstpointer b)
{
  return (int)((const Factor *)b)->n_levels - (int)((const Factor *)a)->n_levels;
}

/* The last level is minus one in all of its factor's columns */
static void
fill_column (gsl_vector *column, const Factor *factor, guint which)
{
  for (guint row = 0; row < column->size; row++) {
    const guint level = factor->level[row];
    gsl_vector_set (column, row, level == which ? 1 : level + 1 == factor->n_levels ? -1 : 0);
  }
}

/* The mean over all values is zero then: a stray value of another session does not count like a
 * session. */
static void
centre_column (gsl_vector *column)
{
  gsl_vector_add_constant (column, -gsl_vector_sum (column) / (double)column->size);
}

/* Factors with most levels come first, so that of tasters nested in sessions the tasters stay and
 * the sessions, which then say nothing new, go. */
static void
code_blocks (FmMixLayout *self)
{
  g_autoptr (GArray) factors = g_array_new (FALSE, FALSE, sizeof (Factor));
  guint n_columns = 0, n_basis = 0;

  g_array_set_clear_func (factors, factor_clear);
  for (guint f = 0; f < self->data->n_factors; f++) {
    Factor factor = { .level = g_new (guint, MAX (self->n, 1)) };
    factor.n_levels = used_levels (self->data, f, factor.level);
    n_columns += MAX (factor.n_levels, 1) - 1;
    g_array_append_val (factors, factor);
  }
  if (n_columns == 0)
    return;
  g_array_sort (factors, compare_levels);

  gsl_matrix *all = gsl_matrix_alloc (self->n, n_columns);
  gsl_matrix *basis = gsl_matrix_alloc (self->n, n_columns + 1);
  gsl_vector *column = gsl_vector_alloc (self->n);
  gsl_vector_set_all (column, 1.0);
  extend_basis (basis, &n_basis, column);
  for (guint f = 0; f < factors->len; f++) {
    const Factor *factor = &g_array_index (factors, Factor, f);
    for (guint which = 0; which + 1 < factor->n_levels; which++) {
      fill_column (column, factor, which);
      centre_column (column);
      if (n_basis < self->n && extend_basis (basis, &n_basis, column))
        gsl_matrix_set_col (all, self->n_blocks++, column);
    }
  }
  self->blocks = all;
  gsl_matrix_free (basis);
  gsl_vector_free (column);
}

void
fm_mix_layout_init (FmMixLayout *self, const FmMixData *data, FmMixOrder order)
{
  *self = (FmMixLayout){ .data = data, .order = order, .q = data->x->q, .n = data->x->n };
  self->n_terms = fm_mix_n_terms (order, self->q);
  number_blends (self);
  find_lowest (self);
  code_blocks (self);
}

void
fm_mix_layout_clear (FmMixLayout *self)
{
  g_clear_pointer (&self->blend, g_free);
  g_clear_pointer (&self->blocks, gsl_matrix_free);
}

gsl_matrix *
fm_mix_layout_design (const FmMixLayout *self)
{
  gsl_matrix *design = gsl_matrix_alloc (self->n, self->n_terms + self->n_blocks);

  for (guint row = 0; row < self->n; row++) {
    const double *x = fm_mix_points_get (self->data->x, row);
    double z[FM_MIX_MAX_COMPONENTS];
    for (guint i = 0; i < self->q; i++)
      z[i] = (x[i] - self->lower[i]) * self->scale;
    fm_mix_terms (self->order, self->q, z, gsl_matrix_ptr (design, row, 0));
    for (guint b = 0; b < self->n_blocks; b++)
      gsl_matrix_set (design, row, self->n_terms + b, gsl_matrix_get (self->blocks, row, b));
  }
  return design;
}

/* Place of x_i x_j among the terms */
static guint
pair_term (guint q, guint i, guint j)
{
  return q + i * q - i * (i + 1) / 2 + (j - i - 1);
}

static void
add_to_all (gsl_matrix *m, guint q, guint column, double constant)
{
  for (guint k = 0; k < q; k++)
    *gsl_matrix_ptr (m, k, column) += constant;
}

static void
expand_triples (gsl_matrix *m, guint q, double a, const double *b)
{
  guint c = q + q * (q - 1) / 2;
  for (guint i = 0; i < q; i++)
    for (guint j = i + 1; j < q; j++)
      for (guint k = j + 1; k < q; k++, c++) {
        *gsl_matrix_ptr (m, c, c) = a * a * a;
        *gsl_matrix_ptr (m, pair_term (q, i, j), c) += a * a * b[k];
        *gsl_matrix_ptr (m, pair_term (q, i, k), c) += a * a * b[j];
        *gsl_matrix_ptr (m, pair_term (q, j, k), c) += a * a * b[i];
        *gsl_matrix_ptr (m, i, c) += a * b[j] * b[k];
        *gsl_matrix_ptr (m, j, c) += a * b[i] * b[k];
        *gsl_matrix_ptr (m, k, c) += a * b[i] * b[j];
        add_to_all (m, q, c, b[i] * b[j] * b[k]);
      }
}

/* z_i = a x_i + b_i multiplied out, with a constant c = c sum x_i */
gsl_matrix *
fm_mix_layout_to_shares (const FmMixLayout *self)
{
  const guint q = self->q;
  const double a = self->scale;
  gsl_matrix *m = gsl_matrix_calloc (self->n_terms, self->n_terms);
  double b[FM_MIX_MAX_COMPONENTS];

  for (guint i = 0; i < q; i++) {
    b[i] = -self->lower[i] * a;
    *gsl_matrix_ptr (m, i, i) = a;
    add_to_all (m, q, i, b[i]);
  }
  if (self->order >= FM_MIX_QUADRATIC)
    for (guint i = 0; i < q; i++)
      for (guint j = i + 1; j < q; j++) {
        const guint c = pair_term (q, i, j);
        *gsl_matrix_ptr (m, c, c) = a * a;
        *gsl_matrix_ptr (m, i, c) += a * b[j];
        *gsl_matrix_ptr (m, j, c) += a * b[i];
        add_to_all (m, q, c, b[i] * b[j]);
      }
  if (self->order >= FM_MIX_SPECIAL_CUBIC)
    expand_triples (m, q, a, b);
  return m;
}

guint
fm_mix_project (const gsl_matrix *columns, double *y, gsl_matrix *basis)
{
  gsl_vector_view left = gsl_vector_view_array (y, columns->size1);
  guint rank = 0;

  for (guint c = 0; c < columns->size2 && rank < columns->size1; c++) {
    gsl_vector_const_view column = gsl_matrix_const_column (columns, c);
    extend_basis (basis, &rank, &column.vector);
  }
  for (guint k = 0; k < rank; k++) {
    double along;
    gsl_vector_view direction = gsl_matrix_column (basis, k);
    gsl_blas_ddot (&direction.vector, &left.vector, &along);
    gsl_blas_daxpy (-along, &direction.vector, &left.vector);
  }
  return rank;
}

double
fm_mix_residual_ss (const gsl_matrix *columns, const double *y, guint *rank)
{
  gsl_matrix *basis = gsl_matrix_alloc (columns->size1, columns->size2);
  g_autofree double *left = g_memdup2 (y, columns->size1 * sizeof (double));
  double ss = 0.0;

  *rank = fm_mix_project (columns, left, basis);
  for (size_t row = 0; row < columns->size1; row++)
    ss += left[row] * left[row];
  gsl_matrix_free (basis);
  return ss;
}

gsl_matrix *
fm_mix_layout_mean (const FmMixLayout *self)
{
  gsl_matrix *columns = gsl_matrix_alloc (self->n, self->n_blocks + 1);

  for (guint row = 0; row < self->n; row++) {
    gsl_matrix_set (columns, row, 0, 1.0);
    for (guint b = 0; b < self->n_blocks; b++)
      gsl_matrix_set (columns, row, b + 1, gsl_matrix_get (self->blocks, row, b));
  }
  return columns;
}
