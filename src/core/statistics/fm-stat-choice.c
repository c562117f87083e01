/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-stat-choice.c */
#include "core/statistics/fm-stat-choice.h"

#include <glib/gi18n-lib.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_randist.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/statistics/fm-stat.h"

#define CONFIDENCE 0.95
#define D_PRIME_MAX 20.0

double
fm_choice_chance (FmChoiceKind kind)
{
  return kind == FM_CHOICE_TRIANGLE ? 1.0 / 3 : 0.5;
}

static double
choice_p (FmChoiceKind kind, guint n, guint n_right)
{
  if (kind != FM_CHOICE_PAIRED_PREFERENCE)
    return fm_stat_binomial_upper (n_right, n, fm_choice_chance (kind));
  return MIN (1, 2 * fm_stat_binomial_upper (MAX (n_right, n - n_right), n, 0.5));
}

/* Share of those who can tell among the right answers, after the lucky guesses are taken off */
static double
without_guesses (FmChoiceKind kind, double share)
{
  const double chance = fm_choice_chance (kind);
  return kind == FM_CHOICE_PAIRED_PREFERENCE ? NAN : MAX (0, (share - chance) / (1 - chance));
}

gboolean
fm_choice_test (FmChoiceKind kind, guint n, guint n_right, FmChoiceResult *result, GError **error)
{
  if (n == 0) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                         _ ("No answers are in yet. Enter at least one sheet."));
    return FALSE;
  }
  if (n_right > n) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("There are %u right answers but only %u answers. Check the sheets."), n_right,
                 n);
    return FALSE;
  }

  *result = (FmChoiceResult){ .kind = kind, .n = n, .n_right = n_right };
  result->p = choice_p (kind, n, n_right);
  result->share = (double)n_right / n;
  fm_stat_clopper_pearson (n_right, n, CONFIDENCE, &result->share_low, &result->share_high);
  result->discriminators = without_guesses (kind, result->share);
  result->discriminators_low = without_guesses (kind, result->share_low);
  result->discriminators_high = without_guesses (kind, result->share_high);
  const gboolean has_distance = kind != FM_CHOICE_PAIRED_PREFERENCE;
  result->d_prime = has_distance ? fm_choice_d_prime (kind, result->share) : NAN;
  result->d_prime_low = has_distance ? fm_choice_d_prime (kind, result->share_low) : NAN;
  result->d_prime_high = has_distance ? fm_choice_d_prime (kind, result->share_high) : NAN;
  return TRUE;
}

guint
fm_choice_critical (FmChoiceKind kind, guint n, double alpha)
{
  /* a preference is two-sided: votes below half mirror those above */
  for (guint x = kind == FM_CHOICE_PAIRED_PREFERENCE ? (n + 1) / 2 : 1; x <= n; x++)
    if (choice_p (kind, n, x) <= alpha)
      return x;
  return 0;
}

double
fm_choice_power (FmChoiceKind kind, guint n, double discriminators, double alpha)
{
  const guint critical = fm_choice_critical (kind, n, alpha);
  const double right = discriminators + (1 - discriminators) * fm_choice_chance (kind);
  if (critical == 0)
    return 0;
  double power = fm_stat_binomial_upper (critical, n, right);
  if (kind == FM_CHOICE_PAIRED_PREFERENCE)
    power += fm_stat_binomial_upper (critical, n, 1 - right);
  return MIN (power, 1);
}

/* 2 int_0^inf [Phi(-u sqrt 3 + d sqrt 2/3) + Phi(-u sqrt 3 - d sqrt 2/3)] phi(u) du: the two like
 * samples lie nearer to each other than to the odd one */
static double
triangle_share (double d)
{
  gsl_integration_glfixed_table *table = gsl_integration_glfixed_table_alloc (128);
  const double shift = d * sqrt (2.0 / 3);
  double sum = 0;

  for (size_t i = 0; i < table->n; i++) {
    double u, weight;
    gsl_integration_glfixed_point (0, 9, i, &u, &weight, table);
    sum +=
        weight * gsl_ran_ugaussian_pdf (u) *
        (gsl_cdf_ugaussian_P (-u * sqrt (3) + shift) + gsl_cdf_ugaussian_P (-u * sqrt (3) - shift));
  }
  gsl_integration_glfixed_table_free (table);
  return MIN (2 * sum, 1);
}

double
fm_choice_share_from_d_prime (FmChoiceKind kind, double d_prime)
{
  const double near = gsl_cdf_ugaussian_P (d_prime / sqrt (2));
  const double far = gsl_cdf_ugaussian_P (d_prime / sqrt (6));

  switch (kind) {
  case FM_CHOICE_TRIANGLE:
    return triangle_share (d_prime);
  case FM_CHOICE_DUO_TRIO:
    return 1 - near - far + 2 * near * far;
  case FM_CHOICE_PAIRED_DIRECTIONAL:
  case FM_CHOICE_PAIRED_PREFERENCE:
    return near;
  }
  g_return_val_if_reached (NAN);
}

typedef struct {
  FmChoiceKind kind;
  double share;
} Wanted;

static double
share_excess (double d_prime, void *params)
{
  const Wanted *wanted = params;
  return fm_choice_share_from_d_prime (wanted->kind, d_prime) - wanted->share;
}

double
fm_choice_d_prime (FmChoiceKind kind, double share)
{
  Wanted wanted = { kind, share };

  if (isnan (share))
    return NAN;
  if (share <= fm_choice_chance (kind))
    return 0;
  if (share >= 1)
    return INFINITY;
  if (share_excess (D_PRIME_MAX, &wanted) <= 0)
    return D_PRIME_MAX;
  return fm_stat_find_root (share_excess, &wanted, 0, D_PRIME_MAX);
}
