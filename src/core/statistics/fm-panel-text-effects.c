/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-panel-text-effects.c - how far tasters agree, and whether the serving position mattered */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/statistics/fm-panel-text-private.h"

char *
fm_panel_ordinal_word (guint index)
{
  static const char *const words[] = {
    N_ ("first"),   N_ ("second"), N_ ("third"), N_ ("fourth"), N_ ("fifth"),    N_ ("sixth"),
    N_ ("seventh"), N_ ("eighth"), N_ ("ninth"), N_ ("tenth"),  N_ ("eleventh"), N_ ("twelfth"),
  };
  return index < G_N_ELEMENTS (words) ? g_strdup (_ (words[index]))
                                      : g_strdup_printf ("%u.", index + 1);
}

/* Words for the mean correlation of two tasters: common practice, no source */
static const char *
agreement_word (double mean_spearman)
{
  if (mean_spearman > 1 - 1e-9)
    return _ ("The tasters agree fully");
  if (mean_spearman >= 0.6)
    return _ ("The tasters largely agree");
  if (mean_spearman >= 0.3)
    return _ ("The tasters agree in part");
  /* tasters who rank at random correlate a little below 0: -1 / (n - 1) when W is 0 */
  if (mean_spearman >= -0.3)
    return _ ("The tasters hardly agree");
  return _ ("The tasters pull in different directions");
}

char *
fm_panel_agreement_sentence (const FmRankResult *result)
{
  if (isnan (result->kendall_w) || isnan (result->mean_spearman))
    return NULL;
  /* TRANSLATORS: "The tasters agree in part" */
  return g_strdup_printf (_ ("%s on the order."), agreement_word (result->mean_spearman));
}

static double
known_p (double p)
{
  return isnan (p) ? 1 : p;
}

char *
fm_panel_position_sentence (const FmRankResult *rank,
                            const FmAnovaResult *liking,
                            gboolean is_balanced)
{
  const double rank_p = rank != NULL ? known_p (rank->p) : 1;
  const double liking_p = liking != NULL ? known_p (liking->p_sample) : 1;

  if (rank == NULL && liking == NULL)
    return NULL;
  const gboolean by_rank = rank_p <= liking_p && rank != NULL;
  /* two looks at one question: each gets half of the 5 % */
  const guint n_looks = rank != NULL && liking != NULL ? 2 : 1;
  const double p = MIN (1, n_looks * MIN (rank_p, liking_p));
  g_autofree char *chance = fm_panel_chance_text (p);
  if (p > FM_PANEL_ALPHA)
    return g_strdup_printf (_ ("No effect of the serving position is shown; chance gives as much "
                               "%s."),
                            chance);

  g_autofree char *ordinal = fm_panel_ordinal_word (by_rank ? rank->leader : liking->leader);
  /* TRANSLATORS: "in 2 of 1,000 sessions", "first" */
  g_autofree char *start = g_strdup_printf (
      _ ("The serving position mattered (chance gives as much %s): what was served "
         "%s did best."),
      chance, ordinal);
  if (is_balanced)
    return g_strdup_printf (_ ("%s The samples were spread evenly over the positions, so this "
                               "favours none of them."),
                            start);
  return g_strdup_printf (_ ("%s The samples were not spread evenly over the positions, so some of "
                             "it may be the samples, or some of their differences the position."),
                          start);
}
