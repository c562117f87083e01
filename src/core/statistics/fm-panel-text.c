/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-panel-text.c */
#include "core/statistics/fm-panel-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/statistics/fm-panel-text-private.h"

#define ALPHA FM_PANEL_ALPHA

/* Small counts read better as words; the caller gets digits above twelve */
char *
fm_panel_count_word (guint n)
{
  static const char *const words[] = {
    N_ ("no"),    N_ ("one"),   N_ ("two"),  N_ ("three"), N_ ("four"),   N_ ("five"),   N_ ("six"),
    N_ ("seven"), N_ ("eight"), N_ ("nine"), N_ ("ten"),   N_ ("eleven"), N_ ("twelve"),
  };
  return n < G_N_ELEMENTS (words) ? g_strdup (_ (words[n])) : g_strdup_printf ("%u", n);
}

char *
fm_panel_count_word_first (guint n)
{
  g_autofree char *word = fm_panel_count_word (n);
  gunichar first = g_unichar_totitle (g_utf8_get_char (word));
  GString *text = g_string_new (NULL);
  g_string_append_unichar (text, first);
  g_string_append (text, g_utf8_next_char (word));
  return g_string_free (text, FALSE);
}

char *
fm_panel_join_names (const char *const *names, const gboolean *wanted, guint n)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < n; i++)
    if (wanted[i]) {
      if (text->len > 0)
        /* TRANSLATORS: between the names in a list */
        g_string_append (text, _ (", "));
      g_string_append (text, names[i]);
    }
  return g_string_free (text, FALSE);
}

static char *
preference_sentence (const FmChoiceResult *result, const char *first, const char *second)
{
  const gboolean first_leads = 2 * result->n_right >= result->n;
  const char *winner = first_leads ? first : second, *loser = first_leads ? second : first;
  const guint votes = first_leads ? result->n_right : result->n - result->n_right;
  g_autofree char *chance = fm_panel_chance_text (result->p);

  if (2 * result->n_right == result->n)
    return g_strdup_printf (_ ("The tasters are split evenly between %s and %s."), first, second);
  if (result->p <= ALPHA)
    /* TRANSLATORS: two samples, votes, tasters, "in 8 of 1,000 sessions" */
    return g_strdup_printf (_ ("%s is preferred to %s: %u of %u chose it; chance gives a split as "
                               "uneven %s."),
                            winner, loser, votes, result->n, chance);
  return g_strdup_printf (_ ("No preference is shown between %s and %s: %u of %u chose %s; chance "
                             "gives a split as uneven %s."),
                          winner, loser, votes, result->n, winner, chance);
}

char *
fm_panel_choice_sentence (const FmChoiceResult *result, const char *first, const char *second)
{
  if (result->kind == FM_CHOICE_PAIRED_PREFERENCE)
    return preference_sentence (result, first, second);

  g_autofree char *chance = fm_panel_chance_text (result->p);
  if (result->p <= ALPHA)
    return g_strdup_printf (_ ("The panel can tell the two apart: %u of %u answers were right; "
                               "guessing gives that many %s."),
                            result->n_right, result->n, chance);
  const guint needed = fm_choice_critical (result->kind, result->n, ALPHA);
  if (needed == 0)
    return g_strdup_printf (
        ngettext ("%u answer is too few to show a difference even when it is right.",
                  "%u answers are too few to show a difference even when all are right.",
                  result->n),
        result->n);
  return g_strdup_printf (_ ("No difference is shown: %u of %u answers were right and %u were "
                             "needed; guessing gives that many %s. That does not mean the two are "
                             "alike."),
                          result->n_right, result->n, needed, chance);
}

static char *
liking_separated (const FmAnovaResult *result, const char *const *names)
{
  g_autofree gboolean *behind = g_new0 (gboolean, result->n_samples);
  guint n_behind = 0;
  for (guint i = 0; i < result->n_pairs; i++) {
    const FmAnovaPair *pair = &result->pair[i];
    if (pair->p <= ALPHA && (pair->a == result->leader || pair->b == result->leader)) {
      behind[pair->a == result->leader ? pair->b : pair->a] = TRUE;
      n_behind++;
    }
  }
  g_autofree char *chance = fm_panel_chance_text (result->p_sample);
  if (n_behind == 0)
    return g_strdup_printf (
        _ ("The samples are not liked alike; chance gives scores this far apart "
           "%s. %s was liked most, but is not clearly ahead of any single one."),
        chance, names[result->leader]);
  g_autofree char *losers = fm_panel_join_names (names, behind, result->n_samples);
  return g_strdup_printf (
      _ ("%s was liked most, clearly more than %s, by a distance that holds over "
         "all pairs; chance gives scores this far apart %s."),
      names[result->leader], losers, chance);
}

char *
fm_panel_liking_sentence (const FmAnovaResult *result, const char *const *names)
{
  if (isnan (result->p_sample))
    return g_strdup (_ ("The scores leave no chance variation to compare the samples with."));
  if (result->p_sample <= ALPHA)
    return liking_separated (result, names);

  g_autofree char *tasters = fm_panel_count_word_first (result->n_tasters);
  g_autofree char *samples = fm_panel_count_word (result->df_sample + 1);
  g_autofree char *chance = fm_panel_chance_text (result->p_sample);
  return g_strdup_printf (
      ngettext ("%s taster's scores show no difference between these %s; %s scored highest, and "
                "chance gives scores this far apart %s.",
                "%s tasters' scores show no difference between these %s; %s scored highest, and "
                "chance gives scores this far apart %s.",
                result->n_tasters),
      tasters, samples, names[result->leader], chance);
}

char *
fm_panel_page_sentence (const FmPageResult *result)
{
  g_autofree char *chance = fm_panel_chance_text (result->p);
  return g_strdup_printf (
      result->p <= ALPHA ? _ ("The sheets follow the order written down before; chance gives that "
                              "much agreement with it %s.")
                         : _ ("The sheets do not show the order written down before; chance gives "
                              "as much agreement with it %s."),
      chance);
}

char *
fm_panel_jar_sentence (const FmJarResult *result, const char *attribute)
{
  g_autofree char *counts =
      g_strdup_printf (_ ("%s: %u too little, %u just about right, %u too much."), attribute,
                       result->n_low, result->count[2], result->n_high);
  const gboolean low = result->enough_low && result->drop_low > 0;
  const gboolean high = result->enough_high && result->drop_high > 0;
  g_autofree char *drop_low = fm_number_format (result->drop_low, 1);
  g_autofree char *drop_high = fm_number_format (result->drop_high, 1);
  GString *text = g_string_new (counts);
  if (low)
    g_string_append_printf (text, _ (" Too little goes with %s less liking."), drop_low);
  if (high)
    g_string_append_printf (text, _ (" Too much goes with %s less liking."), drop_high);
  return g_string_free (text, FALSE);
}

static char *
with_counting (const char *method, FmRankMethod counting)
{
  return g_strdup_printf (
      counting == FM_RANK_EXACT
          ? _ ("%s All orders the tasters could have given were counted, with their own ties.")
          : _ ("%s There are too many orders to count, so %d random ones were drawn from the "
               "session's seed, with the tasters' own ties."),
      method, FM_RANK_PERMUTATIONS);
}

char *
fm_panel_rank_method (const FmRankResult *result)
{
  return with_counting (
      result->design == FM_RANK_FRIEDMAN
          ? _ ("Friedman's test (Friedman 1937) at 5 %. “Clearly ahead” is a distance of rank sums "
               "that equal samples reach in at most 5 % of sessions, whichever of all pairs is "
               "looked at: the range of rank sums under chance. It is used only after a "
               "significant test.")
      : result->worth == NULL
          ? _ ("Durbin's test for incomplete blocks (Durbin 1951) at 5 %. “Clearly ahead” is a "
               "distance of rank sums that equal samples reach in at most 5 % of sessions, "
               "whichever of all pairs is looked at: the range of rank sums under chance. It is "
               "used only after a significant test.")
          : _ ("The squared deviations of rank sums from what chance gives each sample's own "
               "sheets, at 5 %. Places are by worths (Luce 1959, Plackett 1975, ties after "
               "Davidson "
               "1970) with a weak prior, normal with a standard deviation of 2 in the log worth: "
               "sums of places would reward being ranked more often."),
      result->method);
}

char *
fm_panel_page_method (const FmPageResult *result)
{
  return with_counting (_ ("Page's L (Page 1963), one-sided, for the order stored with the plan."),
                        result->method);
}

char *
fm_panel_choice_method (FmChoiceKind kind)
{
  switch (kind) {
  case FM_CHOICE_TRIANGLE:
    return g_strdup (_ ("Triangle test (ISO 4120): exact binomial, chance 1/3, one-sided; "
                        "95 % interval by Clopper and Pearson (1934)."));
  case FM_CHOICE_DUO_TRIO:
    return g_strdup (_ ("Duo-trio test (ISO 10399): exact binomial, chance 1/2, one-sided; "
                        "95 % interval by Clopper and Pearson (1934)."));
  case FM_CHOICE_PAIRED_DIRECTIONAL:
    return g_strdup (_ ("Paired comparison (ISO 5495): exact binomial, chance 1/2, one-sided; "
                        "95 % interval by Clopper and Pearson (1934)."));
  case FM_CHOICE_PAIRED_PREFERENCE:
    return g_strdup (_ ("Paired preference (ISO 5495): exact binomial, chance 1/2, two-sided; "
                        "95 % interval by Clopper and Pearson (1934)."));
  }
  g_return_val_if_reached (NULL);
}

char *
fm_panel_liking_method (const FmAnovaResult *result)
{
  return g_strdup (
      result->is_balanced
          ? _ ("Analysis of variance of the scores with tasters as blocks; pairs by Tukey's "
               "studentized range, 95 % intervals.")
          : _ ("Analysis of variance with tasters as blocks, samples adjusted for the tasters who "
               "scored them (Cochran and Cox); pairs by Tukey and Kramer, 95 % intervals."));
}
