/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-derivation.c - where a value of a map comes from, as text that can be copied */
#include "core/mixture/fm-mix-derivation.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

/* Enough digits to follow a sum by hand. */
#define DECIMALS 4
/* As the fit counts different blends. */
#define SAME_BLEND 1e-6

static void
add_line (GString *text, char *line)
{
  g_string_append (text, line);
  g_string_append_c (text, '\n');
  g_free (line);
}

static void
add_terms (GString *text, const FmMixFit *fit, const double *x, const char *const *names)
{
  g_auto (GStrv) called = fm_mix_term_names (fit->order, fit->q, names);
  g_autofree double *row = g_new0 (double, fit->n_terms);

  fm_mix_terms (fit->order, fit->q, x, row);
  for (guint i = 0; i < fit->n_terms; i++) {
    g_autofree char *coefficient = fm_number_format (fit->coefficient[i], DECIMALS);
    g_autofree char *error = fm_number_format (fit->std_error[i], DECIMALS);
    g_autofree char *term = fm_number_format (row[i], DECIMALS);
    g_autofree char *part = fm_number_format (fit->coefficient[i] * row[i], DECIMALS);

    /* TRANSLATORS: "Chuck × Shank: 3.2500 (standard error 0.4100) × 0.1200 = 0.3900" */
    add_line (text, g_strdup_printf (_ ("%s: %s (standard error %s) × %s = %s"), called[i],
                                     coefficient, error, term, part));
  }
}

static void
add_interval (GString *text, const FmMixPrediction *at, const FmMixFit *fit)
{
  g_autofree char *mean = fm_number_format (at->mean, DECIMALS);
  g_autofree char *se = fm_number_format (at->se_mean, DECIMALS);
  g_autofree char *low = fm_number_format (at->low, DECIMALS);
  g_autofree char *high = fm_number_format (at->high, DECIMALS);
  g_autofree char *new_low = fm_number_format (at->new_low, DECIMALS);
  g_autofree char *new_high = fm_number_format (at->new_high, DECIMALS);
  g_autofree char *sigma = fm_number_format (fit->sigma, DECIMALS);

  add_line (text, g_strdup_printf (_ ("Their sum: %s"), mean));
  add_line (text,
            g_strdup_printf (_ ("Standard error of it, from the covariances of the coefficients: "
                                "%s. What one measurement strays by: %s."),
                             se, sigma));
  add_line (text, g_strdup_printf (_ ("95 %% interval of the mean, by t with %u degrees of "
                                      "freedom: %s to %s"),
                                   fit->df_error, low, high));
  add_line (text, g_strdup_printf (_ ("95 %% interval of one new measurement, both errors "
                                      "together: %s to %s"),
                                   new_low, new_high));
}

static void
add_ends (GString *text, const FmMixResponse *response)
{
  g_autofree char *low = fm_mix_value_text (response, response->low_end);
  g_autofree char *high = fm_mix_value_text (response, response->high_end);

  if (!(response->high_end > response->low_end))
    return;
  if (isinf (response->high_end))
    add_line (text, g_strdup_printf (_ ("Where it is shown it ends at %s, as %s does."), low,
                                     response->name));
  else
    add_line (text, g_strdup_printf (_ ("Where they are shown they end at %s and %s, as %s does."),
                                     low, high, response->name));
}

static gboolean
is_row_of (const FmMixData *data, guint row, const double *x)
{
  const double *of_row = fm_mix_points_get (data->x, row);

  for (guint i = 0; i < data->x->q; i++)
    if (fabs (of_row[i] - x[i]) > SAME_BLEND)
      return FALSE;
  return TRUE;
}

char *
fm_mix_measured (const FmMixData *data, const double *x, const FmMixResponse *response)
{
  g_autoptr (GString) values = g_string_new (NULL);
  double sum = 0;
  guint n = 0;

  for (guint row = 0; row < data->x->n; row++) {
    g_autofree char *value = fm_mix_value_text (response, data->y[row]);

    if (!is_row_of (data, row, x))
      continue;
    g_string_append_printf (values, n > 0 ? "; %s" : "%s", value);
    sum += data->y[row];
    n++;
  }
  if (n == 0)
    /* TRANSLATORS: "liking" */
    return g_strdup_printf (_ ("No %s was measured of this very blend."), response->name);
  g_autofree char *mean = fm_number_format (sum / n, DECIMALS);
  return g_strdup_printf (
      /* TRANSLATORS: "liking", how many, the values, their mean */
      ngettext ("Measured %s of this very blend, %u value: %s. Its plain mean: %s.",
                "Measured %s of this very blend, %u values: %s. Their plain mean: %s.", n),
      response->name, n, values->str, mean);
}

char *
fm_mix_derivation (const FmMixFit *fit,
                   const FmMixData *data,
                   const double *x,
                   const char *const *names,
                   const FmMixResponse *response)
{
  g_autofree char *shares = fm_mix_shares_text (fit->q, x, names);
  g_autofree char *model = fm_mix_model_name (fit->order);
  g_autofree char *method = fm_mix_fit_method (fit);
  g_autofree char *lack = fm_mix_lack_sentence (fit);
  g_autofree char *measured = fm_mix_measured (data, x, response);
  FmMixPrediction at;
  GString *text = g_string_new (NULL);

  fm_mix_predict (fit, x, &at);
  /* TRANSLATORS: "liking", "55 % chuck, 45 % shank", "quadratic model", 72 values, 8 blends */
  add_line (text, g_strdup_printf (_ ("Expected %s of %s: a sum of terms of the %s, fitted to %u "
                                      "values of %u different blends."),
                                   response->name, shares, model, fit->n, fit->n_blends));
  add_line (text, g_steal_pointer (&measured));
  if (fit->n_blocks > 0)
    add_line (text,
              g_strdup_printf (_ ("Differences between sessions and tasters take %u "
                                  "parameters of their own; the figure holds for their mean."),
                               fit->n_blocks));
  g_string_append_c (text, '\n');
  add_line (text, g_strdup (_ ("Coefficient times product of the shares:")));
  add_terms (text, fit, x, names);
  add_interval (text, &at, fit);
  add_ends (text, response);
  g_string_append_printf (text, "\n%s\n%s", lack, method);
  return g_string_free (text, FALSE);
}
