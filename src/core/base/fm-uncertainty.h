/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-uncertainty.h - how uncertain a mean is when what it is made of is uncertain
 *
 * Source: JCGM 100:2008 (the "GUM"), 5.2.2 equation (16), the law of propagation for
 * correlated input quantities.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * fm_uncertainty_linear:
 * @n: number of inputs
 * @sensitivity: (array length=n): factor of each input in the result
 * @u: (array length=n): standard uncertainty of each input; NaN = not stated
 * @correlation: (nullable): n x n correlation coefficients by rows, -1 to 1, with ones on the
 *   diagonal; %NULL = all inputs are independent
 *
 * Returns: the standard uncertainty of sum (sensitivity_i * x_i), in the unit of the result; NaN
 * when an input that matters (sensitivity other than 0) states none.
 */
double fm_uncertainty_linear (gsize n,
                              const double *sensitivity,
                              const double *u,
                              const double *correlation);

/**
 * fm_uncertainty_mixture:
 * @n: number of parts
 * @mass_g: (array length=n): mass of each part, >= 0, not all 0
 * @value: (array length=n): value of each part per unit mass
 * @u_value: (array length=n): its standard uncertainty; NaN = not stated
 * @u_mass_g: (nullable) (array length=n): standard uncertainty of each weighing, independent
 *   of the others; %NULL = masses are exact
 * @correlation: (nullable): of the values, as for fm_uncertainty_linear()
 *
 * For the mass-weighted mean y = sum (m_i c_i) / M:
 * u^2 = sum_ij w_i w_j r_ij u(c_i) u(c_j) + sum (((c_i - y) / M) u(m_i))^2 with w_i = m_i / M.
 *
 * Returns: the standard uncertainty of y, in the unit of @value; NaN when the mass is zero
 * or a part that weighs something states no uncertainty.
 */
double fm_uncertainty_mixture (gsize n,
                               const double *mass_g,
                               const double *value,
                               const double *u_value,
                               const double *u_mass_g,
                               const double *correlation);

G_END_DECLS
