/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-stat.h - distributions and seeded chance shared by the tasting statistics */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/** A stored seed gives the same draws on every machine (SplitMix64; Steele, Lea and Flood, 2014,
 * "Fast splittable pseudorandom number generators"). */
typedef struct {
  guint64 state;
} FmRandom;

void fm_random_init (FmRandom *self, guint64 seed);
guint64 fm_random_next (FmRandom *self);
/** Evenly drawn from 0 .. @n - 1; @n >= 1. */
guint fm_random_below (FmRandom *self, guint n);
/** Evenly drawn from [0, 1). */
double fm_random_unit (FmRandom *self);
void fm_random_shuffle (FmRandom *self, guint *values, guint n);

/** Midranks of @n values: the smallest gets 1, ties share their mean rank. */
void fm_stat_midranks (const double *values, guint n, double *ranks);
/** Spearman's rank correlation (product moment of midranks); NaN when one side is all tied. */
double fm_stat_spearman (const double *a, const double *b, guint n);

/** P(X >= x) for X binomial (n, p). 1 when x = 0. */
double fm_stat_binomial_upper (guint x, guint n, double p);
/** Exact interval of a proportion (Clopper and Pearson, Biometrika 26, 1934). Covers with at
 * least @confidence (0 .. 1). NaN both when n = 0. */
void fm_stat_clopper_pearson (guint x, guint n, double confidence, double *low, double *high);

/**
 * fm_stat_studentized_range_upper:
 * @q: range of @k means divided by the estimated standard error of one mean, >= 0
 * @k: number of means, >= 2
 * @df: degrees of freedom of the error, >= 1; INFINITY where it is known
 *
 * P(Q >= q) by Gauss-Legendre quadrature of the double integral: the range of k normals given
 * s, k * int phi(z) (Phi(z) - Phi(z - q s))^(k-1) dz, over the density of s = sqrt(chi2_df / df)
 * (Tukey 1953; Lund and Lund, Applied Statistics 32, 1983, AS 190 states the same integral).
 * Checked against SciPy's studentized_range to 1e-9 (R's ptukey() is 2e-5 off at places) and, for
 * two means, the closed form to 1e-9.
 */
double fm_stat_studentized_range_upper (double q, guint k, double df);
/** Where @function, finite and of different signs at @low and @high, is zero: Brent's method of
 * GSL, to 1e-12 of the root. */
double fm_stat_find_root (double (*function) (double x, void *params),
                          void *params,
                          double low,
                          double high);
/** The q with P(Q >= q) = @alpha, 0 < alpha < 1. */
double fm_stat_studentized_range_quantile (double alpha, guint k, double df);

G_END_DECLS
