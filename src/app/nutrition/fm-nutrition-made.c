/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-made.c - an experiment as it was made, in a few words above its nutrients */
#include "app/nutrition/fm-nutrition-made.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "core/base/fm-number.h"

static char *
cost_text (const FmAnalysis *analysis)
{
  g_autofree char *cost =
      fm_number_format_unit (analysis->known_cost_per_kg, 2, fm_notebook_units ()->currency);

  if (isnan (analysis->known_cost_per_kg))
    return g_strdup (_ ("cost not known"));
  if (isnan (analysis->cost_per_kg))
    return g_strdup_printf (_ ("at least %s per kg"), cost);
  return g_strdup_printf (_ ("%s per kg"), cost);
}

static char *
loss_text (double cook_loss_pct)
{
  g_autofree char *loss = fm_number_format_unit (cook_loss_pct, 1, "%");

  if (isnan (cook_loss_pct))
    return g_strdup (_ ("cook loss not measured"));
  return g_strdup_printf (_ ("cook loss %s as measured"), loss);
}

char *
fm_nutrition_made_text (const FmCompareItem *made)
{
  g_autofree char *number = fm_number_format_unit (made->analysis->fat_pct, 1, "%");
  g_autofree char *fat = isnan (made->analysis->fat_pct) ? g_strdup (_ ("fat not known"))
                                                         : g_strdup_printf (_ ("fat %s"), number);
  g_autofree char *cost = cost_text (made->analysis);
  g_autofree char *loss = loss_text (made->cook_loss_pct);

  /* Translators: title of an experiment, then its fat, cost and cook loss in words. */
  return g_strdup_printf (made->as_weighed
                              ? _ ("%s, as weighed: %s, %s, %s.")
                              : _ ("%s, as planned, since not every line is weighed: %s, %s, %s."),
                          made->title, fat, cost, loss);
}
