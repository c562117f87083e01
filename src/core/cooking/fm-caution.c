/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-caution.c - ground meat caution, by kind of animal */
#include "core/cooking/fm-caution.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/base/fm-units.h"

static FmHoldRow
ruling_row (FmSpeciesSet species)
{
  FmCookFood food = { species, NAN };
  FmHoldRow rows[FM_AUTHORITY_MAX_ROWS];

  fm_authority_rows (fm_authority_ruling (species), &food, rows);
  return rows[0];
}

const char *
fm_caution_text (void)
{
  return _ ("Undercooked ground meat can make people seriously ill: grinding carries bacteria from "
            "the surface to the core, and colour does not show doneness. USDA FSIS asks consumers "
            "for 71.1 °C (160 °F) in the core of ground meat and 73.9 °C (165 °F) of ground "
            "poultry. Local rules come first; for a kitchen that serves others, ask a licensed "
            "professional.");
}

gboolean
fm_caution_peak_meets (FmSpeciesSet species, double peak_core_c)
{
  FmHoldRow row = ruling_row (species);

  return isfinite (peak_core_c) && fm_hold_row_is_met (&row, peak_core_c);
}

char *
fm_caution_figure_text (FmSpeciesSet species)
{
  FmHoldRow row = ruling_row (species);
  g_autofree char *temp = fm_hold_row_temp_format (&row);

  /* Translators: temperature, authority and what it speaks of. */
  return g_strdup_printf (_ ("%s, %s"), temp, fm_authority_name (fm_authority_ruling (species)));
}

char *
fm_caution_reading_format (FmSpeciesSet species, double peak_core_c)
{
  FmHoldRow row = ruling_row (species);

  return fm_hold_row_reading_format (&row, peak_core_c);
}

char *
fm_caution_for_peak (FmSpeciesSet species, double peak_core_c)
{
  g_autofree char *figure = fm_caution_figure_text (species);

  if (!isfinite (peak_core_c))
    return g_strdup_printf (_ ("No core temperature is recorded. The figure that rules for this "
                               "blend: %s. Local rules come first."),
                            figure);
  g_autofree char *peak = fm_caution_reading_format (species, peak_core_c);
  if (!fm_caution_peak_meets (species, peak_core_c))
    return g_strdup_printf (_ ("Highest core reading %s: below the figure that rules for this "
                               "blend: %s. Undercooked ground meat can make people ill; local "
                               "rules come first."),
                            peak, figure);
  return g_strdup_printf (_ ("Highest core reading %s: meets the figure that rules for this blend: "
                             "%s. One reading may miss the coldest spot; local rules come first."),
                          peak, figure);
}
