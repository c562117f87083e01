/* fm-panel-outlook-text.c - what a panel can and cannot show, before it tastes */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/statistics/fm-panel-text-private.h"

char *
fm_panel_outlook_rank_text (const FmPanelOutlook *outlook)
{
  g_autofree char *p = fm_panel_p_text (outlook->smallest_p);

  if (outlook->smallest_p <= FM_PANEL_ALPHA)
    return g_strdup_printf (_ ("If all tasters rank the samples alike it is %s."), p);
  return g_strdup_printf (_ ("Rank orders cannot separate these samples: even if all agree it is "
                             "%s. It takes at least %u tasters."),
                          p, outlook->tasters_for_05);
}

char *
fm_panel_outlook_triangle_text (const FmPanelOutlook *outlook)
{
  GString *text = g_string_new (NULL);
  if (outlook->triangle_critical == 0)
    g_string_append (text, _ ("A triangle test cannot show a difference at this size."));
  else
    g_string_append_printf (
        text,
        _ ("A triangle test needs %u of %u right; if half the panel can tell the samples apart "
           "it shows this in %.0f of 100 sessions, if 30 %% can, in %.0f."),
        outlook->triangle_critical, outlook->n_tasters, 100 * outlook->triangle_power_50,
        100 * outlook->triangle_power_30);
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
