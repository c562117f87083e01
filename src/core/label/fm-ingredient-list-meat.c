/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-list-meat.c - what is meat on a label, and how much fat and collagen it may have */
#include <math.h>

#include "core/label/fm-ingredient-list-private.h"

/* Words of a label, which follow the law and not the language of the program. */
static const struct {
  const char *meat;
  const char *fat;
  double fat_limit_pct; /* Annex VII Part B no 17 */
  double collagen_limit_pct;
} kinds[FM_N_SPECIES] = {
  [FM_SPECIES_BEEF] = { "beef", "beef fat", 25.0, 25.0 },
  [FM_SPECIES_VEAL] = { "veal", "veal fat", 25.0, 25.0 },
  [FM_SPECIES_BISON] = { "bison", "bison fat", 25.0, 25.0 },
  [FM_SPECIES_PORK] = { "pork", "pork fat", 30.0, 25.0 },
  [FM_SPECIES_LAMB] = { "lamb", "lamb fat", 25.0, 25.0 },
  [FM_SPECIES_GOAT] = { "goat", "goat fat", 25.0, 25.0 },
  [FM_SPECIES_CHICKEN] = { "chicken", "chicken fat", 15.0, 10.0 },
  [FM_SPECIES_TURKEY] = { "turkey", "turkey fat", 15.0, 10.0 },
};

const char *
fm_meat_word (FmSpecies species)
{
  return kinds[species].meat;
}

const char *
fm_meat_fat_word (FmSpecies species)
{
  return kinds[species].fat;
}

double
fm_meat_fat_limit_pct (FmSpecies species)
{
  return kinds[species].meat != NULL ? kinds[species].fat_limit_pct : (double)NAN;
}

double
fm_meat_collagen_limit_pct (FmSpecies species)
{
  return kinds[species].meat != NULL ? kinds[species].collagen_limit_pct : (double)NAN;
}

gboolean
fm_list_entry_is_meat (const FmListEntry *entry)
{
  return entry->species != FM_SPECIES_NONE && entry->species != FM_SPECIES_UNKNOWN &&
         (entry->kind == FM_INGREDIENT_CUT || entry->kind == FM_INGREDIENT_TRIM);
}

double
fm_meat_that_counts_g (double mass_g, double fat_pct, double limit_pct)
{
  if (fat_pct <= limit_pct)
    return mass_g;
  return mass_g * (100.0 - fat_pct) / (100.0 - limit_pct);
}

double
fm_connective_tissue_pct (double collagen_pct)
{
  return collagen_pct * 37.0 / 8.0;
}
