/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-species.c - the kind of animal that a food comes from */
#include "core/composition/fm-species.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "core/composition/fm-species-table.h"

#define NDB_DIGITS 5
#define POULTRY                                                                                    \
  (FM_SPECIES_BIT (FM_SPECIES_CHICKEN) | FM_SPECIES_BIT (FM_SPECIES_TURKEY) |                      \
   FM_SPECIES_BIT (FM_SPECIES_OTHER_POULTRY))
#define OPEN (FM_SPECIES_BIT (FM_SPECIES_UNKNOWN) | FM_SPECIES_BIT (FM_SPECIES_MIXED))

static const struct {
  const char *key;
  const char *name;
} kinds[FM_N_SPECIES] = {
  [FM_SPECIES_UNKNOWN] = { "unknown", N_ ("Not stated") },
  [FM_SPECIES_NONE] = { "none", N_ ("No animal") },
  [FM_SPECIES_BEEF] = { "beef", N_ ("Beef") },
  [FM_SPECIES_VEAL] = { "veal", N_ ("Veal") },
  [FM_SPECIES_BISON] = { "bison", N_ ("Bison") },
  [FM_SPECIES_PORK] = { "pork", N_ ("Pork") },
  [FM_SPECIES_LAMB] = { "lamb", N_ ("Lamb or mutton") },
  [FM_SPECIES_GOAT] = { "goat", N_ ("Goat") },
  [FM_SPECIES_GAME] = { "game", N_ ("Game") },
  [FM_SPECIES_CHICKEN] = { "chicken", N_ ("Chicken") },
  [FM_SPECIES_TURKEY] = { "turkey", N_ ("Turkey") },
  [FM_SPECIES_OTHER_POULTRY] = { "other_poultry", N_ ("Other poultry") },
  [FM_SPECIES_FISH] = { "fish", N_ ("Fish or shellfish") },
  [FM_SPECIES_MIXED_MEAT] = { "mixed_meat", N_ ("Several meats, no poultry") },
  [FM_SPECIES_MIXED] = { "mixed", N_ ("Several kinds, may hold poultry") },
};

const char *
fm_species_name (FmSpecies species)
{
  return _ (kinds[species].name);
}

const char *
fm_species_key (FmSpecies species)
{
  return kinds[species].key;
}

FmSpecies
fm_species_from_key (const char *key)
{
  for (int i = 0; i < FM_N_SPECIES; i++)
    if (g_strcmp0 (kinds[i].key, key) == 0)
      return (FmSpecies)i;
  return FM_SPECIES_UNKNOWN;
}

FmSpecies
fm_species_of_ndb (const char *ndb_no)
{
  guint64 number;
  guint low = 0;
  guint high = fm_n_species_runs;

  if (ndb_no == NULL || strlen (ndb_no) != NDB_DIGITS ||
      !g_ascii_string_to_unsigned (ndb_no, 10, 1, 99999, &number, NULL))
    return FM_SPECIES_UNKNOWN;
  while (low < high) {
    guint middle = (low + high) / 2;
    const FmSpeciesRun *run = &fm_species_runs[middle];

    if (number >= run->first_ndb && number <= run->last_ndb)
      return run->species;
    if (number < run->first_ndb)
      high = middle;
    else
      low = middle + 1;
  }
  return FM_SPECIES_UNKNOWN;
}

gboolean
fm_species_set_has_poultry (FmSpeciesSet set)
{
  return (set & POULTRY) != 0;
}

gboolean
fm_species_set_may_have_poultry (FmSpeciesSet set)
{
  return (set & (POULTRY | OPEN)) != 0;
}

gboolean
fm_species_set_is_meatless (FmSpeciesSet set)
{
  return (set & ~FM_SPECIES_BIT (FM_SPECIES_NONE)) == 0;
}

char *
fm_species_set_join (FmSpeciesSet set)
{
  GString *text = g_string_new (NULL);

  if (!fm_species_set_is_meatless (set))
    set &= ~FM_SPECIES_BIT (FM_SPECIES_NONE);
  for (int i = 0; i < FM_N_SPECIES; i++) {
    if ((set & FM_SPECIES_BIT (i)) == 0)
      continue;
    if (text->len > 0)
      g_string_append (text, ", ");
    g_string_append (text, fm_species_name ((FmSpecies)i));
  }
  return g_string_free (text, FALSE);
}
