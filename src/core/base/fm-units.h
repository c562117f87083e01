/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-units.h - exact conversion constants */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* International avoirdupois ounce and pound, and the inch: exact by definition (1959). */
#define FM_G_PER_OZ 28.349523125
#define FM_G_PER_LB 453.59237
#define FM_MM_PER_INCH 25.4
/* Thermochemical calorie, exact by definition. */
#define FM_KJ_PER_KCAL 4.184
/* Regulation (EU) No 1169/2011, Annex I, no 10 and no 11. */
#define FM_PROTEIN_PER_NITROGEN 6.25
#define FM_SALT_PER_SODIUM 2.5
/* SR28, row 02047, salt, table: 38,758 mg of sodium in 100 g. */
#define FM_SODIUM_MG_PER_G_SALT 387.58
/* Regulation (EU) No 1169/2011, Annex VI Part B: collagen from hydroxyproline. */
#define FM_COLLAGEN_PER_HYDROXYPROLINE 8.0

static inline double
fm_fahrenheit_to_celsius (double temp_f)
{
  return (temp_f - 32.0) / 1.8;
}

static inline double
fm_celsius_to_fahrenheit (double temp_c)
{
  return temp_c * 1.8 + 32.0;
}

G_END_DECLS
