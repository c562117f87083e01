/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-panel-outlook-text.c - what a panel can and cannot show, before it tastes */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/statistics/fm-panel-text-private.h"

/* How much likelier than full agreement "one taster turns two neighbours around, or none" is: the
 * rank sums that come next in distance */
static double
nearly_agreed_p (const FmPanelOutlook *outlook)
{
  const double n_turning = outlook->n_tasters > 2 ? outlook->n_tasters : 1;
  return outlook->smallest_p * (1 + n_turning * (outlook->n_samples - 1.0));
}

char *
fm_panel_outlook_rank_text (const FmPanelOutlook *outlook)
{
  g_autofree char *tasters = fm_panel_count_word_first (outlook->n_tasters);
  g_autofree char *samples = fm_panel_count_word (outlook->n_samples);
  g_autofree char *chance = fm_panel_odds_text (outlook->smallest_p);

  if (outlook->n_tasters < 2)
    return g_strdup_printf (_ ("One taster's rank order cannot separate these samples from chance. "
                               "It takes at least %u tasters."),
                            outlook->tasters_for_05);
  if (outlook->smallest_p > FM_PANEL_ALPHA)
    return g_strdup_printf (
        /* TRANSLATORS: "Two", "three", "1 chance in 6", tasters */
        _ ("%s tasters' rank orders cannot separate these %s: even if all give exactly the same "
           "order, that is %s. It takes at least %u tasters."),
        tasters, samples, chance, outlook->tasters_for_05);
  if (nearly_agreed_p (outlook) <= FM_PANEL_ALPHA)
    return g_strdup_printf (
        /* TRANSLATORS: "Five", "1 chance in 1,296" */
        _ ("%s tasters can show a difference without agreeing in everything; exactly the same "
           "order "
           "from all is %s."),
        tasters, chance);
  if (outlook->n_tasters == 2)
    return g_strdup_printf (_ ("Two tasters: only if both give exactly the same order, %s."),
                            chance);
  /* TRANSLATORS: "Three", "1 chance in 36" */
  return g_strdup_printf (_ ("%s tasters: only if all give exactly the same order, %s."), tasters,
                          chance);
}

char *
fm_panel_outlook_triangle_text (const FmPanelOutlook *outlook)
{
  g_autofree char *if_half = fm_number_format (100 * outlook->triangle_power_50, 0);
  g_autofree char *if_30 = fm_number_format (100 * outlook->triangle_power_30, 0);
  GString *text = g_string_new (NULL);
  if (outlook->triangle_critical == 0)
    g_string_append (text, _ ("A triangle test cannot show a difference at this size."));
  else
    g_string_append_printf (
        text,
        _ ("A triangle test needs %u of %u right; if half the panel can tell the samples apart "
           "it shows this in %s of 100 sessions, if 30 %% can, in %s."),
        outlook->triangle_critical, outlook->n_tasters, if_half, if_30);
  if (outlook->triangle_power_50 < 0.8 && outlook->triangle_n_power_80 > 0)
    g_string_append_printf (text, _ (" For 80 of 100 it takes %u answers."),
                            outlook->triangle_n_power_80);
  return g_string_free (text, FALSE);
}

char *
fm_panel_outlook_preference_text (const FmPanelOutlook *outlook)
{
  if (outlook->preference_critical == 0)
    return g_strdup (_ ("A paired preference cannot be shown, even if all agree."));
  return g_strdup_printf (_ ("A paired preference needs %u of %u for the same sample."),
                          outlook->preference_critical, outlook->n_tasters);
}

char *
fm_panel_outlook_text (const FmPanelOutlook *outlook)
{
  g_autofree char *rank = fm_panel_outlook_rank_text (outlook);
  g_autofree char *triangle = fm_panel_outlook_triangle_text (outlook);
  g_autofree char *preference = fm_panel_outlook_preference_text (outlook);
  return g_strjoin (" ", rank, triangle, preference, NULL);
}
