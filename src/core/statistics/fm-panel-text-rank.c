/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-panel-text-rank.c - what rank orders say */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/statistics/fm-panel-text-private.h"

static char *
leaders (const FmRankResult *result, const char *const *names)
{
  g_autofree gboolean *wanted = g_new0 (gboolean, result->n_samples);
  gboolean is_shared;
  for (guint s = 0; s < result->n_samples; s++)
    wanted[s] = fm_rank_place (result, s, &is_shared) == 1;
  return fm_panel_join_names (names, wanted, result->n_samples);
}

/* Rank points between the leader and the next sample; no leader is behind itself */
static double
lead (const FmRankResult *result)
{
  const double best = result->rank_sum[result->leader] - result->expected_sum[result->leader];
  double next = INFINITY;
  for (guint s = 0; s < result->n_samples; s++)
    if (s != result->leader && result->n_ranked[s] > 0)
      next = MIN (next, result->rank_sum[s] - result->expected_sum[s] - best);
  return next;
}

/* Who is in front, as a clause; (transfer full) */
static char *
front (const FmRankResult *result, const char *const *names)
{
  if (result->n_leaders == 0)
    return g_strdup (
        _ ("nobody can be named first, since some samples were never compared with the "
           "others"));
  g_autofree char *first = leaders (result, names);
  if (result->n_leaders > 1)
    /* TRANSLATORS: names of samples */
    return g_strdup_printf (_ ("%s share the lead"), first);
  if (result->worth != NULL)
    return g_strdup_printf (_ ("%s is ahead of those it was compared with"), first);
  g_autofree char *points = fm_number_to_edit (lead (result), 1);
  /* TRANSLATORS: a sample, rank points */
  return g_strdup_printf (_ ("%s led by %s in rank sum"), first, points);
}

static char *
undecided (const FmRankResult *result, const char *const *names)
{
  g_autofree char *tasters = fm_panel_count_word_first (result->n_tasters);
  g_autofree char *samples = fm_panel_count_word (result->n_samples);
  g_autofree char *chance = fm_panel_chance_text (result->p);
  g_autofree char *who = front (result, names);
  /* TRANSLATORS: "Three tasters cannot separate these four", more follows */
  g_autofree char *start =
      g_strdup_printf (ngettext ("%s taster cannot separate these %s",
                                 "%s tasters cannot separate these %s", result->n_tasters),
                       tasters, samples);
  /* TRANSLATORS: the start, "731 led by 3 in rank sum", "in 15 of 100 sessions" */
  return g_strdup_printf (_ ("%s; %s, and chance gives orders this far apart %s."), start, who,
                          chance);
}

static char *
behind_leader (const FmRankResult *result, const char *const *names)
{
  g_autofree gboolean *behind = g_new0 (gboolean, result->n_samples);
  const double best = result->rank_sum[result->leader] - result->expected_sum[result->leader];
  guint n_behind = 0;
  for (guint s = 0; s < result->n_samples && !isnan (result->clear_distance); s++) {
    const double away = result->rank_sum[s] - result->expected_sum[s] - best;
    behind[s] = result->n_ranked[s] > 0 && away >= result->clear_distance - 1e-9;
    n_behind += behind[s];
  }
  return n_behind > 0 ? fm_panel_join_names (names, behind, result->n_samples) : NULL;
}

/* Who came first, as the end of a sentence; (transfer full) */
static char *
decided_end (const FmRankResult *result, const char *const *names)
{
  if (result->n_leaders == 0)
    return front (result, names);
  g_autofree char *first = leaders (result, names);
  g_autofree char *losers = result->n_leaders == 1 ? behind_leader (result, names) : NULL;
  if (result->worth != NULL)
    return g_strdup_printf (_ ("%s came first; how clearly is not told where tasters ranked "
                               "different samples"),
                            first);
  if (losers == NULL)
    return g_strdup_printf (_ ("%s came first, but no single sample is clearly behind it"), first);
  g_autofree char *distance = fm_number_to_edit (result->clear_distance, 1);
  /* TRANSLATORS: a sample, samples, rank points */
  return g_strdup_printf (_ ("%s came first, clearly ahead of %s (by %s in rank sum or more, a "
                             "distance that holds over all pairs)"),
                          first, losers, distance);
}

char *
fm_panel_rank_sentence (const FmRankResult *result, const char *const *names)
{
  if (result->p > FM_PANEL_ALPHA)
    return undecided (result, names);

  g_autofree char *tasters = fm_panel_count_word_first (result->n_tasters);
  g_autofree char *samples = fm_panel_count_word (result->n_samples);
  g_autofree char *chance = fm_panel_chance_text (result->p);
  g_autofree char *end = decided_end (result, names);
  g_autofree char *start =
      g_strdup_printf (ngettext ("%s taster sees a difference between these %s",
                                 "%s tasters see a difference between these %s", result->n_tasters),
                       tasters, samples);
  /* TRANSLATORS: "Three tasters see a difference between these four", "in 2 of 1,000 sessions",
   * "731 came first, clearly ahead of 962" */
  return g_strdup_printf (_ ("%s that chance gives %s; %s."), start, chance, end);
}
