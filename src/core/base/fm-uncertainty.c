/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-uncertainty.c - the law of propagation of uncertainty for sums and mixtures */
#include "core/base/fm-uncertainty.h"

#include <math.h>

static double
contribution (const double *sensitivity, const double *u, gsize i)
{
  return sensitivity[i] == 0.0 ? 0.0 : sensitivity[i] * u[i];
}

double
fm_uncertainty_linear (gsize n,
                       const double *sensitivity,
                       const double *u,
                       const double *correlation)
{
  double variance = 0.0;
  for (gsize i = 0; i < n; i++) {
    double own = contribution (sensitivity, u, i);
    variance += own * own;
    for (gsize j = 0; correlation && j < i; j++)
      variance += 2.0 * correlation[i * n + j] * own * contribution (sensitivity, u, j);
  }
  /* Full negative correlation may leave a rounding error below zero. */
  return variance < 0.0 ? 0.0 : sqrt (variance);
}

double
fm_uncertainty_mixture (gsize n,
                        const double *mass_g,
                        const double *value,
                        const double *u_value,
                        const double *u_mass_g,
                        const double *correlation)
{
  double total_g = 0.0;
  double mean = 0.0;
  for (gsize i = 0; i < n; i++) {
    total_g += mass_g[i];
    mean += mass_g[i] * value[i];
  }
  if (!(total_g > 0.0))
    return NAN;
  mean /= total_g;

  g_autofree double *weight = g_new (double, n);
  g_autofree double *by_mass = g_new (double, n);
  for (gsize i = 0; i < n; i++) {
    weight[i] = mass_g[i] / total_g;
    by_mass[i] = (value[i] - mean) / total_g;
  }
  double u_from_values = fm_uncertainty_linear (n, weight, u_value, correlation);
  double u_from_masses = u_mass_g ? fm_uncertainty_linear (n, by_mass, u_mass_g, NULL) : 0.0;
  return hypot (u_from_values, u_from_masses);
}
