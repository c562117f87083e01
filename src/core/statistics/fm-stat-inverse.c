/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-stat-inverse.c */
#include <gsl/gsl_eigen.h>

#include "core/statistics/fm-stat-private.h"

/* an eigenvalue below this part of the largest is a comparison nobody made */
#define SINGULAR 1e-9

guint
fm_stat_invert (const gsl_matrix *matrix, gsl_matrix *inverse)
{
  const size_t n = matrix->size1;
  gsl_eigen_symmv_workspace *workspace = gsl_eigen_symmv_alloc (n);
  gsl_matrix *copy = gsl_matrix_alloc (n, n), *vectors = gsl_matrix_alloc (n, n);
  gsl_vector *values = gsl_vector_alloc (n);
  guint rank = 0;

  gsl_matrix_memcpy (copy, matrix);
  gsl_eigen_symmv (copy, values, vectors, workspace);
  const double largest = gsl_vector_max (values);
  for (size_t e = 0; e < n; e++) {
    const double value = gsl_vector_get (values, e);
    if (value <= SINGULAR * largest)
      continue;
    rank++;
    for (size_t a = 0; a < n; a++)
      for (size_t b = 0; b < n; b++)
        *gsl_matrix_ptr (inverse, a, b) +=
            gsl_matrix_get (vectors, a, e) * gsl_matrix_get (vectors, b, e) / value;
  }
  gsl_eigen_symmv_free (workspace);
  gsl_matrix_free (copy);
  gsl_matrix_free (vectors);
  gsl_vector_free (values);
  return rank;
}
