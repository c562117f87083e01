/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-panel-text-chance.c - chances in words */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/statistics/fm-panel-text-private.h"

#define MAX_DECIMALS 8

char *
fm_panel_p_text (double p)
{
  if (isnan (p))
    return g_strdup (_ ("p unknown"));
  if (p < 0.001)
    return g_strdup (_ ("p < 0.001"));
  /* never rounded across the line that the sentence is about */
  int decimals = 3;
  while (decimals < MAX_DECIMALS && p > FM_PANEL_ALPHA &&
         round (p * pow (10, decimals)) <= FM_PANEL_ALPHA * pow (10, decimals))
    decimals++;
  g_autofree char *number = fm_number_format (p, decimals);
  return g_strdup_printf (_ ("p = %s"), number);
}

char *
fm_panel_chance_text (double p)
{
  const double per_thousand = round (1000 * p), per_hundred = round (100 * p);
  g_autofree char *of_thousand = fm_number_format (per_thousand, 0);
  g_autofree char *of_hundred = fm_number_format (per_hundred, 0);

  if (isnan (p))
    return g_strdup (_ ("in an unknown share of sessions"));
  if (p < 0.001)
    return g_strdup (_ ("in fewer than 1 of 1,000 sessions"));
  if (p > FM_PANEL_ALPHA && per_thousand <= 1000 * FM_PANEL_ALPHA)
    return g_strdup (_ ("in a little over 50 of 1,000 sessions"));
  if (p < 0.1)
    return g_strdup_printf (_ ("in %s of 1,000 sessions"), of_thousand);
  if (per_hundred < 100)
    return g_strdup_printf (_ ("in %s of 100 sessions"), of_hundred);
  return g_strdup (p < 1 ? _ ("in nearly every session") : _ ("in every session"));
}

char *
fm_panel_odds_text (double p)
{
  g_autofree char *number = fm_number_format (1 / p, 0);

  if (p < 1e-6)
    return g_strdup (_ ("less than 1 chance in a million"));
  return g_strdup_printf (_ ("1 chance in %s"), number);
}
