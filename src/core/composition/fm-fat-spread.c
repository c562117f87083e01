/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-fat-spread.c - how much the fat of a cut is known to vary between samples */
#include "core/composition/fm-fat-spread.h"

#include "core/base/fm-number.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Read. Of 10084 and 10077 Release 28 has other means, so they are left out. */
static const FmFatSpread spreads[] = {
  { "10004", 88.69, 0.262, 96 }, /* pork, backfat, raw */
  { "10005", 53.01, 0.684, 33 }, /* pork, belly, raw */
  { "10010", 5.41, 0.190, 51 },  /* pork, leg, whole, lean only, raw */
  { "10105", 69.61, 1.951, 8 },  /* pork, jowl, raw */
  { "10219", 21.19, 1.549, 12 }, /* pork, ground, raw */
  { "10220", 20.77, 0.975, 13 }, /* pork, ground, cooked */
  { "17003", 5.25, 0.226, 45 },  /* lamb, composite, lean only, raw */
  { "17005", 70.61, 1.486, 30 }, /* lamb, composite, separable fat, raw */
  { "17090", 2.87, 0.091, 12 },  /* veal, composite, lean only, raw */
  { "17156", 1.84, 0.158, 33 },  /* bison, lean only, raw */
  { "17284", 68.87, 1.254, 6 },  /* lamb, Australian, separable fat, raw */
  { "17330", 15.93, 0.970, 6 },  /* bison, ground, raw */
  { "17331", 15.13, 1.109, 6 },  /* bison, ground, cooked */
  { "17338", 8.82, 1.422, 5 },   /* elk, ground, raw */
  { "17339", 8.74, 0.816, 5 },   /* elk, ground, cooked */
  { "17343", 7.13, 0.351, 6 },   /* deer, ground, raw */
  { "17344", 8.22, 0.296, 6 },   /* deer, ground, cooked */
};

const FmFatSpread *
fm_fat_spreads (guint *n_spreads)
{
  *n_spreads = G_N_ELEMENTS (spreads);
  return spreads;
}

const FmFatSpread *
fm_fat_spread_of (const FmIngredient *ingredient)
{
  if (ingredient->provenance != FM_PROVENANCE_DATASET)
    return NULL;
  for (gsize i = 0; i < G_N_ELEMENTS (spreads); i++)
    if (g_strcmp0 (spreads[i].ndb_no, ingredient->source_ref) == 0)
      return &spreads[i];
  return NULL;
}

double
fm_fat_spread_sd_g (const FmFatSpread *self)
{
  return self->standard_error_g * sqrt (self->n_samples);
}

gboolean
fm_fat_spread_is_taken (const FmIngredient *ingredient)
{
  const FmFatSpread *spread = fm_fat_spread_of (ingredient);

  /* A figure that was typed holds as many decimals as the field shows. */
  return spread && fabs (ingredient->fat_u_g_per_100g - fm_fat_spread_sd_g (spread)) < 0.0005;
}

char *
fm_fat_spread_describe (const FmFatSpread *self)
{
  g_autofree char *sd = fm_number_format_unit (fm_fat_spread_sd_g (self), 2, "g");

  /* Translators: standard deviation with its unit, number of samples */
  return g_strdup_printf (ngettext ("%s over %u sample (USDA SR18, 2005)",
                                    "%s over %u samples (USDA SR18, 2005)", self->n_samples),
                          sd, self->n_samples);
}
