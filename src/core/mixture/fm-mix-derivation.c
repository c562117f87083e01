/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-derivation.c - where a value of a map comes from, as text that can be copied */
#include "core/mixture/fm-mix-derivation.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

/* Enough digits to follow a sum by hand. */
#define DECIMALS 4

static void
add_line (GString *text, char *line)
{
  g_string_append (text, line);
  g_string_append_c (text, '\n');
  g_free (line);
}

/* Names of the components whose shares are multiplied in a term, in the order of fm_mix_terms(). */
static GStrv
term_names (const FmMixFit *fit, const char *const *names)
{
  const guint q = fit->q;
  GStrv made = g_new0 (char *, fit->n_terms + 1);
  guint n = 0;

  for (guint i = 0; i < q && n < fit->n_terms; i++)
    made[n++] = g_strdup (names[i]);
  for (guint i = 0; i < q; i++)
    for (guint j = i + 1; j < q && n < fit->n_terms; j++)
      made[n++] = g_strdup_printf ("%s × %s", names[i], names[j]);
  for (guint i = 0; i < q; i++)
    for (guint j = i + 1; j < q; j++)
      for (guint k = j + 1; k < q && n < fit->n_terms; k++)
        made[n++] = g_strdup_printf ("%s × %s × %s", names[i], names[j], names[k]);
  return made;
}

static void
add_terms (GString *text, const FmMixFit *fit, const double *x, const char *const *names)
{
  g_auto (GStrv) called = term_names (fit, names);
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

char *
fm_mix_derivation (const FmMixFit *fit,
                   const double *x,
                   const char *const *names,
                   const FmMixResponse *response)
{
  g_autofree char *shares = fm_mix_shares_text (fit->q, x, names);
  g_autofree char *model = fm_mix_model_name (fit->order);
  g_autofree char *method = fm_mix_fit_method (fit);
  g_autofree char *lack = fm_mix_lack_sentence (fit);
  FmMixPrediction at;
  GString *text = g_string_new (NULL);

  fm_mix_predict (fit, x, &at);
  /* TRANSLATORS: "liking", "55 % chuck, 45 % shank", "quadratic model", 72 values, 8 blends */
  add_line (text, g_strdup_printf (_ ("Expected %s of %s. It was never measured there for this "
                                      "figure: it is a sum of terms of the %s, fitted to %u "
                                      "values of %u different blends."),
                                   response->name, shares, model, fit->n, fit->n_blends));
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
