/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-slip.c - whether the figures of a composition can all be true */
#include "core/composition/fm-slip.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

/* Three fatty acids in thousandths, fat in hundredths: half a digit of each. */
#define FATTY_ACIDS_ROUNDING_G 0.0065
/* Energy in whole kcal, protein and fat in hundredths of a gram. */
#define ENERGY_ROUNDING_KCAL 0.6
/* Sums of decimals miss theirs by this. */
#define BINARY_NOISE 1e-9

static double
get (const FmComposition *self, FmNutrient nutrient)
{
  return self->per_100g[nutrient];
}

static double
known_or_zero (double value)
{
  return isnan (value) ? 0.0 : value;
}

/* NaN unless all of them are known. */
static double
parts_g (const FmComposition *self)
{
  return get (self, FM_NUTRIENT_WATER) + get (self, FM_NUTRIENT_PROTEIN) +
         get (self, FM_NUTRIENT_FAT) + get (self, FM_NUTRIENT_ASH) +
         get (self, FM_NUTRIENT_CARBOHYDRATE);
}

static double
fatty_acids_g (const FmComposition *self)
{
  return known_or_zero (get (self, FM_NUTRIENT_SATURATED_FAT)) +
         known_or_zero (get (self, FM_NUTRIENT_MONOUNSATURATED_FAT)) +
         known_or_zero (get (self, FM_NUTRIENT_POLYUNSATURATED_FAT));
}

static double
counted_kcal (const FmComposition *self, double protein, double fat, double carbohydrate)
{
  return protein * get (self, FM_NUTRIENT_PROTEIN) + fat * get (self, FM_NUTRIENT_FAT) +
         carbohydrate * get (self, FM_NUTRIENT_CARBOHYDRATE);
}

static double
meat_kcal (const FmComposition *self)
{
  return counted_kcal (self, 4.27, 9.02, 3.87);
}

static double
general_kcal (const FmComposition *self)
{
  return counted_kcal (self, 4.0, 9.0, 4.0);
}

/* The distance to the nearest rule; NaN when it cannot be told. */
static double
energy_gap_kcal (const FmComposition *self)
{
  const double energy = get (self, FM_NUTRIENT_ENERGY_KCAL);
  const double fibre = known_or_zero (get (self, FM_NUTRIENT_FIBRE));
  const double general = general_kcal (self);
  const double rules[] = { meat_kcal (self), general, general - 2.0 * fibre,
                           general - 4.0 * fibre };
  double gap = NAN;

  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    gap = fmin (gap, fabs (energy - rules[i]));
  return gap;
}

guint
fm_composition_slips (const FmComposition *self)
{
  const double energy = get (self, FM_NUTRIENT_ENERGY_KCAL);
  guint slips = 0;

  if (fabs (parts_g (self) - 100.0) > FM_SLIP_MASS_G + BINARY_NOISE)
    slips |= FM_SLIP_MASS;
  if (fatty_acids_g (self) > get (self, FM_NUTRIENT_FAT) + FATTY_ACIDS_ROUNDING_G + BINARY_NOISE)
    slips |= FM_SLIP_FATTY_ACIDS;
  if (energy_gap_kcal (self) >
      fmax (ENERGY_ROUNDING_KCAL, FM_SLIP_ENERGY_PCT / 100.0 * known_or_zero (energy)) +
          BINARY_NOISE)
    slips |= FM_SLIP_ENERGY;
  return slips;
}

FmEnergyRule
fm_composition_energy_rule (const FmComposition *self)
{
  const double energy = get (self, FM_NUTRIENT_ENERGY_KCAL);
  const double meat = fabs (energy - meat_kcal (self));
  const double general = fabs (energy - general_kcal (self));

  if (isnan (meat))
    return FM_ENERGY_RULE_UNKNOWN;
  if (fmin (meat, general) > ENERGY_ROUNDING_KCAL)
    return FM_ENERGY_RULE_OTHER;
  return meat <= general ? FM_ENERGY_RULE_MEAT : FM_ENERGY_RULE_GENERAL;
}

const char *
fm_energy_rule_name (FmEnergyRule rule)
{
  switch (rule) {
  case FM_ENERGY_RULE_MEAT:
    return _ ("by the factors of meat: 4.27 kcal per g protein, 9.02 fat, 3.87 carbohydrate");
  case FM_ENERGY_RULE_GENERAL:
    return _ ("by the general factors: 4 kcal per g protein, 9 fat, 4 carbohydrate");
  case FM_ENERGY_RULE_OTHER:
    return _ ("neither by the factors of meat nor by the general ones");
  case FM_ENERGY_RULE_UNKNOWN:
    return _ ("not known by which factors");
  }
  g_return_val_if_reached ("");
}

static char *
mass_text (const FmComposition *self)
{
  g_autofree char *parts = fm_number_format (parts_g (self), 1);

  return g_strdup_printf (_ ("Water, protein, fat, ash and carbohydrate add up to %s g in 100 g. "
                             "Alcohol and acids, which stand in none of them, may be the reason."),
                          parts);
}

static char *
fatty_acids_text (const FmComposition *self)
{
  g_autofree char *acids = fm_number_format (fatty_acids_g (self), 2);
  g_autofree char *fat = fm_number_format (get (self, FM_NUTRIENT_FAT), 2);

  return g_strdup_printf (_ ("The fatty acids add up to %s g, the fat is %s g."), acids, fat);
}

static char *
energy_text (const FmComposition *self)
{
  g_autofree char *energy = fm_number_format (get (self, FM_NUTRIENT_ENERGY_KCAL), 0);
  g_autofree char *general = fm_number_format (general_kcal (self), 0);

  return g_strdup_printf (_ ("The energy is %s kcal; protein, fat and carbohydrate give %s kcal by "
                             "the general factors."),
                          energy, general);
}

char *
fm_composition_slip_text (const FmComposition *self)
{
  static char *(*const texts[]) (const FmComposition *) = { mass_text, fatty_acids_text,
                                                            energy_text };
  const guint slips = fm_composition_slips (self);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autofree char *line = slips & (1u << i) ? texts[i](self) : NULL;

    if (line != NULL)
      g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", line);
  }
  return text->len > 0 ? g_string_free (g_steal_pointer (&text), FALSE) : NULL;
}

gboolean
fm_slip_protein_is_dropped (const char *ndb_no)
{
  const guint64 number = ndb_no != NULL ? g_ascii_strtoull (ndb_no, NULL, 10) : 0;

  return number >= 28377 && number <= 28396 && number != 28381;
}
