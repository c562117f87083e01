/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-mix-text.c - a fitted mixture model in plain sentences */
#include "core/mixture/fm-mix-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/statistics/fm-panel-text.h"

#define ALPHA 0.05
/* shares are written to a tenth of a per cent */
#define SMALLEST_SHARE 0.0005
/* Blends whose shares all differ by less are one: 10 g in a batch of 1 kg. Common practice, no
 * source. */
#define ONE_BLEND 0.01

static char *
share_text (double share)
{
  const double percent = 100.0 * share;
  const gboolean whole = fabs (percent - round (percent)) < 0.05;
  return fm_number_format_unit (percent, whole ? 0 : 1, "%");
}

static int
compare_shares (gconstpointer a, gconstpointer b, gpointer data)
{
  const double *x = data;
  const guint i = *(const guint *)a, j = *(const guint *)b;
  if (x[i] != x[j])
    return x[i] > x[j] ? -1 : 1;
  return i < j ? -1 : i > j;
}

char *
fm_mix_shares_text (guint q, const double *x, const char *const *names)
{
  GString *text = g_string_new (NULL);
  guint order[FM_MIX_MAX_COMPONENTS];

  for (guint i = 0; i < q; i++)
    order[i] = i;
  g_qsort_with_data (order, (int)q, sizeof *order, compare_shares, (gpointer)x);
  for (guint i = 0; i < q && x[order[i]] >= SMALLEST_SHARE; i++) {
    g_autofree char *share = share_text (x[order[i]]);
    if (text->len > 0)
      /* TRANSLATORS: between the names in a list */
      g_string_append (text, _ (", "));
    /* TRANSLATORS: "55 %", name of a component */
    g_string_append_printf (text, _ ("%s %s"), share, names[order[i]]);
  }
  return g_string_free (text, FALSE);
}

char *
fm_mix_value_text (const FmMixResponse *response, double value)
{
  if (response->unit == NULL || response->unit[0] == '\0')
    return fm_number_format (value, response->decimals);
  return fm_number_format_unit (value, response->decimals, response->unit);
}

void
fm_mix_predict_within (const FmMixFit *fit,
                       const double *x,
                       const FmMixResponse *response,
                       FmMixPrediction *prediction)
{
  fm_mix_predict (fit, x, prediction);
  if (!(response->high_end > response->low_end))
    return;
  prediction->low = MAX (prediction->low, response->low_end);
  prediction->new_low = MAX (prediction->new_low, response->low_end);
  prediction->high = MIN (prediction->high, response->high_end);
  prediction->new_high = MIN (prediction->new_high, response->high_end);
}

static char *
interval_text (const FmMixResponse *response, double low, double high)
{
  g_autofree char *from = fm_mix_value_text (response, low);
  g_autofree char *to = fm_mix_value_text (response, high);

  /* TRANSLATORS: "6.4", "7.8" */
  return g_strdup_printf (_ ("%s to %s"), from, to);
}

/* "liking 7.1 (95 % intervals: mean 6.4 to 7.8, one new score 5.2 to 9)" */
static char *
expected_text (const FmMixFit *fit, const double *x, const FmMixResponse *response)
{
  FmMixPrediction prediction;

  fm_mix_predict_within (fit, x, response, &prediction);
  g_autofree char *mean = fm_mix_value_text (response, prediction.mean);
  g_autofree char *of_mean = interval_text (response, prediction.low, prediction.high);
  g_autofree char *of_new = interval_text (response, prediction.new_low, prediction.new_high);
  /* TRANSLATORS: "liking", "7.1", "6.4 to 7.8", "one new score", "5.2 to 9.0" */
  return g_strdup_printf (
      _ ("%s %s (95 %% intervals: expected mean %s, %s %s)"), response->name, mean, of_mean,
      response->once != NULL ? response->once : _ ("one new measurement"), of_new);
}

char *
fm_mix_model_name (FmMixOrder order)
{
  static const char *const names[] = {
    N_ ("linear model"),
    N_ ("quadratic model"),
    N_ ("special cubic model"),
  };
  return g_strdup (_ (names[order]));
}

char *
fm_mix_lack_sentence (const FmMixFit *fit)
{
  if (fit->df_pure == 0)
    return g_strdup (_ ("No blend was repeated, so nothing can be said about what the model "
                        "misses. Repeat one or two."));
  if (isnan (fit->p_lack))
    return g_strdup (_ ("Whether the model misses something cannot be tested: there are no more "
                        "different blends than terms, or repeats agree exactly."));
  g_autofree char *p = fm_panel_p_text (fit->p_lack);
  if (fit->p_lack <= ALPHA)
    return g_strdup_printf (_ ("The model misses something: blends lie further from it than "
                               "repeats lie from each other (%s). Take a larger model, or a "
                               "smaller region."),
                            p);
  return g_strdup_printf (_ ("Measured against the repeats, the model shows no lack of fit (%s)."),
                          p);
}

static const char *
confirm_text (const FmMixResponse *response)
{
  if (response->confirm != NULL)
    return response->confirm;
  return _ ("This is a prediction: confirm it in a blind tasting.");
}

char *
fm_mix_best_sentence (const FmMixFit *fit,
                      const FmMixSpot *spot,
                      const char *const *names,
                      const FmMixResponse *response)
{
  g_autofree char *shares = fm_mix_shares_text (fit->q, spot->x, names);
  g_autofree char *expected = expected_text (fit, spot->x, response);
  /* TRANSLATORS: shares, "liking 7.1 (95 % intervals: ...)", a sentence */
  return g_strdup_printf (_ ("Predicted best: %s; %s. %s"), shares, expected,
                          confirm_text (response));
}

char *
fm_mix_joined_sentence (guint n,
                        const FmMixFit *const *fits,
                        const FmMixResponse *responses,
                        const FmMixSpot *spot,
                        const char *const *names)
{
  g_autofree char *shares = fm_mix_shares_text (fits[0]->q, spot->x, names);
  g_autofree char *met = fm_number_format (spot->value, 2);
  /* one response that is tasted asks for a tasting of all */
  const char *confirm = confirm_text (&responses[0]);
  g_autoptr (GString) expected = g_string_new (NULL);

  for (guint i = 0; i < n; i++) {
    if (responses[i].confirm == NULL)
      confirm = confirm_text (&responses[i]);
    g_autofree char *one = expected_text (fits[i], spot->x, &responses[i]);
    g_string_append_printf (expected, "%s%s", i > 0 ? _ (", ") : "", one);
  }
  if (spot->value <= 0.0)
    return g_strdup_printf (_ ("No blend of this region is predicted to meet all goals at once. "
                               "Nearest: %s; %s. %s"),
                            shares, expected->str, confirm);
  /* TRANSLATORS: shares, what is expected of each response, "0.82", a sentence */
  return g_strdup_printf (_ ("Predicted best for all goals: %s; %s. Joined desirability %s of 1. "
                             "%s"),
                          shares, expected->str, met, confirm);
}

char *
fm_mix_next_sentence (const FmMixFit *fit,
                      const FmMixSpot *spot,
                      const char *const *names,
                      const FmMixResponse *response)
{
  if (!(spot->value >= 0.5 * pow (10.0, -response->decimals)))
    return g_strdup_printf (_ ("No blend of this region promises better %s than the best one so "
                               "far, as far as this model can tell."),
                            response->name);

  g_autofree char *shares = fm_mix_shares_text (fit->q, spot->x, names);
  g_autofree char *expected = expected_text (fit, spot->x, response);
  g_autofree char *gain = fm_mix_value_text (response, spot->value);
  /* TRANSLATORS: shares, "liking 7.1 (95 % intervals: ...)", "0.2", a sentence */
  return g_strdup_printf (_ ("Worth trying next: %s; %s. It promises most over the best blend so "
                             "far: %s on average, chances of a disappointment counted as no gain. "
                             "%s"),
                          shares, expected, gain, confirm_text (response));
}

char *
fm_mix_unknown_sentence (const FmMixFit *fit,
                         const FmMixSpot *spot,
                         const char *const *names,
                         const FmMixResponse *response)
{
  g_autofree char *shares = fm_mix_shares_text (fit->q, spot->x, names);
  g_autofree char *expected = expected_text (fit, spot->x, response);
  /* TRANSLATORS: shares, "liking 7.1 (95 % intervals: ...)", a sentence */
  return g_strdup_printf (_ ("Least known: %s; %s. A trial there would teach the model most. %s"),
                          shares, expected, confirm_text (response));
}

char *
fm_mix_cook_next_sentence (const FmMixFit *fit, const FmMixSpot *spot, const char *const *names)
{
  g_autofree char *shares = fm_mix_shares_text (fit->q, spot->x, names);

  return g_strdup_printf (_ ("Cook next, so that the map can predict: %s. There the model knows "
                             "least. Repeat one or two of the blends tasted as well."),
                          shares);
}

char *
fm_mix_one_blend_sentence (guint q, const double *a, const double *b)
{
  for (guint i = 0; i < q; i++)
    if (fabs (a[i] - b[i]) >= ONE_BLEND)
      return NULL;
  return g_strdup (_ ("The predicted best and the one worth trying next are one blend on the "
                      "scale: no share differs by a whole per cent."));
}

char *
fm_mix_fit_method (const FmMixFit *fit)
{
  g_autofree char *model = fm_mix_model_name (fit->order);
  g_autoptr (GString) text = g_string_new (NULL);

  /* TRANSLATORS: "quadratic model", values, blends, terms, degrees of freedom */
  g_string_append_printf (text,
                          _ ("Scheffé %s by least squares: %u values of %u blends, %u terms, %u "
                             "degrees of freedom for error."),
                          model, fit->n, fit->n_blends, fit->n_terms, fit->df_error);
  if (fit->n_blocks > 0)
    g_string_append_printf (text,
                            ngettext (" Sessions and tasters are blocks (%u parameter); the map "
                                      "is that at their mean.",
                                      " Sessions and tasters are blocks (%u parameters); the map "
                                      "is that at their mean.",
                                      fit->n_blocks),
                            fit->n_blocks);
  g_string_append (text, _ (" R² is taken about the mean. Prediction error: each blend left out "
                            "with all its repeats, against the plain mean of the others. Scheffé "
                            "(1958, 1963); Cornell, Experiments "
                            "with Mixtures (2002); Allen (1974), Technometrics 16."));
  return g_string_free (g_steal_pointer (&text), FALSE);
}

char *
fm_mix_joined_method (void)
{
  return g_strdup (_ ("Each response becomes a desirability from 0 to 1 by straight lines between "
                      "its limits; their weighted geometric mean is made as large as the region "
                      "allows. Derringer and Suich (1980), J. Quality Technology 12."));
}

char *
fm_mix_next_method (void)
{
  return g_strdup (_ ("Expected improvement over the best blend measured, with the normal "
                      "distribution of the model's expected value. Jones, Schonlau and Welch "
                      "(1998), J. Global Optimization 13."));
}
