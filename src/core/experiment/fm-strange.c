/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-strange.c - measured values that physics objects to: said, never refused */
#include "core/experiment/fm-strange.h"

#include <glib/gi18n-lib.h>

#define STRANGE_RATIO 10.0

const char *
fm_strange_cooked (double raw_g, double cooked_g)
{
  return cooked_g > raw_g ? _ ("Heavier cooked than raw: check both masses.") : NULL;
}

const char *
fm_strange_core (double core_c, double surface_c)
{
  return core_c > surface_c ? _ ("The core is hotter than the surface: check both temperatures.")
                            : NULL;
}

const char *
fm_strange_patty (double mass_g, double planned_g)
{
  if (!(planned_g > 0.0))
    return NULL;
  if (mass_g >= STRANGE_RATIO * planned_g)
    return _ ("Ten times the planned patty or more: check the mass.");
  if (mass_g <= planned_g / STRANGE_RATIO)
    return _ ("A tenth of the planned patty or less: check the mass.");
  return NULL;
}
