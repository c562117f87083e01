/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-derivation.c - where the sentence and the chances of a tasting come from, as text */
#include "core/tasting/fm-tasting-derivation.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

#define DECIMALS 4

static void
add_line (GString *text, char *line)
{
  g_string_append (text, line);
  g_string_append_c (text, '\n');
  g_free (line);
}

static void
add_number (GString *text, const char *what, double value, int decimals)
{
  g_autofree char *number = fm_number_format (value, decimals);

  if (!isnan (value))
    add_line (text, g_strdup_printf ("%s: %s", what, number));
}

/* "p = 0.042: chance gives as much in 42 of 1,000 sessions" */
static void
add_p (GString *text, double p)
{
  g_autofree char *number = fm_panel_p_text (p);
  g_autofree char *chance = fm_panel_chance_text (p);

  if (!isnan (p))
    /* TRANSLATORS: "p = 0.042", "in 42 of 1,000 sessions" */
    add_line (text, g_strdup_printf (_ ("%s: if all were alike, chance would give this or more "
                                        "%s."),
                                     number, chance));
}

static void
add_method (GString *text, char *method)
{
  add_line (text, method);
  g_string_append_c (text, '\n');
}

static void
add_orders (GString *text, const FmTastingReading *reading)
{
  for (guint i = 0; i < reading->n_tasters; i++) {
    g_autoptr (GString) line = g_string_new (NULL);

    for (guint j = 0; j < reading->n_samples; j++) {
      const double rank = fm_rank_table_get (reading->ranks, i, j);
      g_autofree char *place = fm_number_format (rank, 1);

      if (!isnan (rank))
        g_string_append_printf (line, "%s%s %s", line->len > 0 ? ", " : "", reading->labels[j],
                                place);
    }
    add_line (text, g_strdup_printf ("%s: %s", reading->tasters[i], line->str));
  }
}

static const char *
how_counted (FmRankMethod method)
{
  return method == FM_RANK_EXACT
             ? _ ("The chance was counted over all orders that were possible.")
             : _ ("There are too many orders to count: the chance is the share among drawn ones.");
}

static void
add_rank (GString *text, const FmTastingReading *reading)
{
  const FmRankResult *rank = reading->rank;

  add_line (text, g_strdup (_ ("Places on each sheet, 1 = first:")));
  add_orders (text, reading);
  for (guint i = 0; i < rank->n_samples; i++) {
    g_autofree char *sum = fm_number_format (rank->rank_sum[i], 1);
    g_autofree char *expected = fm_number_format (rank->expected_sum[i], 1);

    add_line (text, g_strdup_printf (ngettext ("%s: rank sum %s of %u sheet; %s if all were alike",
                                               "%s: rank sum %s of %u sheets; %s if all were alike",
                                               rank->n_ranked[i]),
                                     reading->labels[i], sum, rank->n_ranked[i], expected));
  }
  add_number (text,
              rank->design == FM_RANK_FRIEDMAN ? _ ("Friedman's statistic")
                                               : _ ("Durbin's statistic"),
              rank->statistic, DECIMALS);
  add_p (text, rank->p);
  add_line (text, g_strdup (how_counted (rank->method)));
  add_number (text, _ ("Rank sums that far apart are clearly apart, over all pairs at 5 %"),
              rank->clear_distance, 1);
  add_method (text, fm_panel_rank_method (rank));
}

static void
add_page (GString *text, const FmTastingReading *reading)
{
  add_number (text, _ ("Page's L, of the order written down before"), reading->page.l, 1);
  add_p (text, reading->page.p);
  add_line (text, g_strdup (how_counted (reading->page.method)));
  add_method (text, fm_panel_page_method (&reading->page));
}

static void
add_liking (GString *text, const FmTastingReading *reading)
{
  const FmAnovaResult *anova = reading->anova;

  for (guint i = 0; i < anova->n_samples; i++) {
    g_autofree char *mean = fm_number_format (anova->mean[i], 2);
    g_autofree char *adjusted = fm_number_format (anova->adjusted_mean[i], 2);

    add_line (text, g_strdup_printf (_ ("%s: mean score %s; as if all tasters had scored it %s"),
                                     reading->labels[i], mean, adjusted));
  }
  add_line (text,
            g_strdup_printf (_ ("Scores counted: %u, of %u tasters. Degrees of freedom: "
                                "samples %u, error %u."),
                             anova->n_scores, anova->n_tasters, anova->df_sample, anova->df_error));
  add_number (text, _ ("Sum of squares of the samples"), anova->ss_sample, DECIMALS);
  add_number (text, _ ("Sum of squares of the error"), anova->ss_error, DECIMALS);
  add_number (text, _ ("F, their mean squares divided"), anova->f_sample, DECIMALS);
  add_p (text, anova->p_sample);
  add_number (text, _ ("Means that far apart are clearly apart, over all pairs at 5 %"), anova->hsd,
              2);
  add_method (text, fm_panel_liking_method (anova));
}

static void
add_choice (GString *text, const FmChoiceResult *result, const char *first)
{
  if (first != NULL)
    add_line (text, g_strdup_printf (_ ("Answers: %u, of them for %s: %u."), result->n, first,
                                     result->n_right));
  else
    add_line (text, g_strdup_printf (_ ("Answers: %u, right: %u."), result->n, result->n_right));
  add_p (text, result->p);
  add_method (text, fm_panel_choice_method (result->kind));
}

char *
fm_tasting_derivation (const FmTastingReading *reading)
{
  GString *text = g_string_new (reading->headline);
  g_autofree char *tasters = g_strjoinv (", ", reading->tasters);

  g_string_append (text, "\n\n");
  add_line (text, g_strdup_printf (_ ("Sheets counted: %u (%s). Sheets waited for or missing are "
                                      "left out."),
                                   reading->n_tasters, tasters));
  g_string_append_c (text, '\n');
  if (reading->rank != NULL)
    add_rank (text, reading);
  if (reading->has_page)
    add_page (text, reading);
  if (reading->anova != NULL)
    add_liking (text, reading);
  if (reading->has_preference)
    add_choice (text, &reading->preference, reading->preference_names[0]);
  if (reading->has_triangle)
    add_choice (text, &reading->triangle, NULL);
  return g_string_free (text, FALSE);
}
