/* fm-panel-text.c */
#include "core/statistics/fm-panel-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>

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

static char *
join_names (const char *const *names, const gboolean *wanted, guint n)
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

char *
fm_panel_p_text (double p)
{
  if (isnan (p))
    return g_strdup (_ ("p unknown"));
  if (p < 0.001)
    return g_strdup (_ ("p < 0.001"));
  /* never rounded across the line that the sentence is about */
  if (p > ALPHA && p < 0.0505)
    return g_strdup_printf (_ ("p = %.4f"), p);
  return g_strdup_printf (_ ("p = %.3f"), p);
}

/* The rank sums of the leaders are spoken of as a lead over the next sample */
static double
lead (const FmRankResult *result)
{
  double next = INFINITY;
  const double best = result->rank_sum[result->leader] - result->expected_sum[result->leader];
  for (guint s = 0; s < result->n_samples; s++) {
    const double away = result->rank_sum[s] - result->expected_sum[s];
    if (result->n_ranked[s] > 0 && away > best)
      next = MIN (next, away - best);
  }
  return next;
}

static char *
rank_leaders (const FmRankResult *result, const char *const *names)
{
  g_autofree gboolean *wanted = g_new0 (gboolean, result->n_samples);
  const double best = result->rank_sum[result->leader] - result->expected_sum[result->leader];
  for (guint s = 0; s < result->n_samples; s++)
    wanted[s] = result->n_ranked[s] > 0 &&
                fabs (result->rank_sum[s] - result->expected_sum[s] - best) < 1e-9;
  return join_names (names, wanted, result->n_samples);
}

static char *
rank_undecided (const FmRankResult *result, const char *const *names)
{
  g_autofree char *tasters = fm_panel_count_word_first (result->n_tasters);
  g_autofree char *samples = fm_panel_count_word (result->n_samples);
  g_autofree char *p = fm_panel_p_text (result->p);
  g_autofree char *leaders = rank_leaders (result, names);
  /* TRANSLATORS: "Three tasters cannot separate these four", more follows */
  g_autofree char *start =
      g_strdup_printf (ngettext ("%s taster cannot separate these %s",
                                 "%s tasters cannot separate these %s", result->n_tasters),
                       tasters, samples);

  if (result->n_leaders > 1)
    /* TRANSLATORS: the start, names of samples, "p = 0.1" */
    return g_strdup_printf (_ ("%s; %s share the lead (%s)."), start, leaders, p);
  /* TRANSLATORS: the start, name of a sample, rank points, "p = 0.1" */
  return g_strdup_printf (_ ("%s; %s led by %.3g in rank sum, which chance gives easily (%s)."),
                          start, leaders, lead (result), p);
}

char *
fm_panel_rank_sentence (const FmRankResult *result, const char *const *names)
{
  if (result->p > ALPHA)
    return rank_undecided (result, names);

  g_autofree char *tasters = fm_panel_count_word_first (result->n_tasters);
  g_autofree char *leaders = rank_leaders (result, names);
  g_autofree char *p = fm_panel_p_text (result->p);
  g_autofree gboolean *behind = g_new0 (gboolean, result->n_samples);
  guint n_behind = 0;
  for (guint s = 0; s < result->n_samples && !isnan (result->lsd); s++) {
    behind[s] = result->rank_sum[s] - result->rank_sum[result->leader] >= result->lsd;
    n_behind += behind[s];
  }
  g_autofree char *start =
      g_strdup_printf (ngettext ("%s taster tells these samples apart (%s)",
                                 "%s tasters tell these samples apart (%s)", result->n_tasters),
                       tasters, p);
  if (n_behind == 0 || result->n_leaders > 1)
    return g_strdup_printf (_ ("%s; %s came first, but no single sample is clearly behind it."),
                            start, leaders);
  g_autofree char *losers = join_names (names, behind, result->n_samples);
  return g_strdup_printf (_ ("%s; %s came first, clearly ahead of %s."), start, leaders, losers);
}

static char *
preference_sentence (const FmChoiceResult *result, const char *first, const char *second)
{
  const gboolean first_leads = 2 * result->n_right >= result->n;
  const char *winner = first_leads ? first : second, *loser = first_leads ? second : first;
  const guint votes = first_leads ? result->n_right : result->n - result->n_right;
  g_autofree char *p = fm_panel_p_text (result->p);

  if (2 * result->n_right == result->n)
    return g_strdup_printf (_ ("The tasters are split evenly between %s and %s."), first, second);
  if (result->p <= ALPHA)
    return g_strdup_printf (_ ("%s is preferred to %s: %u of %u chose it (%s)."), winner, loser,
                            votes, result->n, p);
  return g_strdup_printf (
      _ ("No preference is shown between %s and %s: %u of %u chose %s, which chance gives easily "
         "(%s)."),
      winner, loser, votes, result->n, winner, p);
}

char *
fm_panel_choice_sentence (const FmChoiceResult *result, const char *first, const char *second)
{
  if (result->kind == FM_CHOICE_PAIRED_PREFERENCE)
    return preference_sentence (result, first, second);

  g_autofree char *p = fm_panel_p_text (result->p);
  if (result->p <= ALPHA)
    return g_strdup_printf (
        _ ("The panel can tell the two apart: %u of %u answers were right (%s)."), result->n_right,
        result->n, p);
  const guint needed = fm_choice_critical (result->kind, result->n, ALPHA);
  if (needed == 0)
    return g_strdup_printf (
        ngettext ("%u answer is too few to show a difference even when it is right.",
                  "%u answers are too few to show a difference even when all are right.",
                  result->n),
        result->n);
  return g_strdup_printf (_ ("No difference is shown: %u of %u answers were right and %u were "
                             "needed (%s). That does not mean the two are alike."),
                          result->n_right, result->n, needed, p);
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
  g_autofree char *p = fm_panel_p_text (result->p_sample);
  if (n_behind == 0)
    return g_strdup_printf (_ ("The samples are not liked alike (%s); %s was liked most, but is "
                               "not clearly ahead of any single one."),
                            p, names[result->leader]);
  g_autofree char *losers = join_names (names, behind, result->n_samples);
  return g_strdup_printf (_ ("%s was liked most, clearly more than %s (%s)."),
                          names[result->leader], losers, p);
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
  g_autofree char *p = fm_panel_p_text (result->p_sample);
  return g_strdup_printf (
      ngettext ("%s taster's scores do not separate these %s; %s scored highest (%s).",
                "%s tasters' scores do not separate these %s; %s scored highest (%s).",
                result->n_tasters),
      tasters, samples, names[result->leader], p);
}

char *
fm_panel_page_sentence (const FmPageResult *result)
{
  g_autofree char *p = fm_panel_p_text (result->p);
  return g_strdup_printf (result->p <= ALPHA
                              ? _ ("The sheets follow the order written down before (%s).")
                              : _ ("The sheets do not show the order written down before (%s)."),
                          p);
}

char *
fm_panel_jar_sentence (const FmJarResult *result, const char *attribute)
{
  g_autofree char *counts =
      g_strdup_printf (_ ("%s: %u too little, %u just about right, %u too much."), attribute,
                       result->n_low, result->count[2], result->n_high);
  const gboolean low = result->enough_low && result->drop_low > 0;
  const gboolean high = result->enough_high && result->drop_high > 0;
  GString *text = g_string_new (counts);
  if (low)
    g_string_append_printf (text, _ (" Too little goes with %.1f less liking."), result->drop_low);
  if (high)
    g_string_append_printf (text, _ (" Too much goes with %.1f less liking."), result->drop_high);
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
          ? _ ("Friedman's test (Friedman 1937). Pairs by the least significant difference of "
               "rank sums (ISO 8587), only after a significant test.")
          : _ ("Durbin's test for incomplete blocks (Durbin 1951). Pairs by the least significant "
               "difference of rank sums, only after a significant test."),
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
