/* fm-panel-text-effects.c - how far tasters agree, and whether the serving position mattered */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
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
  g_autofree char *w = fm_number_format (result->kendall_w, 2);
  g_autofree char *rho = fm_number_format (result->mean_spearman, 2);
  /* TRANSLATORS: "The tasters agree in part", W, mean correlation */
  return g_strdup_printf (
      _ ("%s: Kendall's W is %s on a scale from 0 to 1, and two tasters' orders "
         "correlate by %s on average."),
      agreement_word (result->mean_spearman), w, rho);
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
  const gboolean by_rank = rank_p <= FM_PANEL_ALPHA;
  /* two looks at one question: each gets half of the 5 % */
  const double alpha = rank != NULL && liking != NULL ? FM_PANEL_ALPHA / 2 : FM_PANEL_ALPHA;
  g_autofree char *p = fm_panel_p_text (MIN (rank_p, liking_p));
  if (MIN (rank_p, liking_p) > alpha)
    return g_strdup_printf (_ ("The serving position shows no effect (%s)."), p);

  const guint ahead = by_rank && rank_p <= liking_p ? rank->leader : liking->leader;
  g_autofree char *ordinal = fm_panel_ordinal_word (ahead);
  g_autofree char *start = g_strdup_printf (
      _ ("The serving position mattered (%s): the cup served %s did best."), p, ordinal);
  if (is_balanced)
    return g_strdup_printf (_ ("%s The samples were spread evenly over the positions, so this "
                               "favours none of them."),
                            start);
  return g_strdup_printf (_ ("%s The samples were not spread evenly over the positions, so some of "
                             "it may be the samples, or some of their differences the position."),
                          start);
}
