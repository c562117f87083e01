/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-species.h - the kind of animal that a food comes from
 *
 * Figures of authorities for the core of ground meat differ by kind, so every ingredient has one.
 * For rows of the food-composition dataset it follows from data/sr28/species.tsv, a reviewed list
 * of rules and single rows over food group and name. What nobody stated is unknown, which is never
 * "no animal", and may be poultry.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  FM_SPECIES_UNKNOWN,
  FM_SPECIES_NONE, /* no flesh of an animal: plants, milk, eggs, salt, water */
  FM_SPECIES_BEEF,
  FM_SPECIES_VEAL,
  FM_SPECIES_BISON,
  FM_SPECIES_PORK,
  FM_SPECIES_LAMB, /* and mutton */
  FM_SPECIES_GOAT,
  FM_SPECIES_GAME,
  FM_SPECIES_CHICKEN,
  FM_SPECIES_TURKEY,
  FM_SPECIES_OTHER_POULTRY, /* other birds, ratites too, or several kinds of poultry */
  FM_SPECIES_FISH,          /* and shellfish */
  FM_SPECIES_MIXED_MEAT,    /* several of beef to game, no poultry */
  FM_SPECIES_MIXED,         /* several or unstated kinds: may hold poultry */
  FM_N_SPECIES,
} FmSpecies;

/** A bit for each FmSpecies. */
typedef guint32 FmSpeciesSet;

#define FM_SPECIES_BIT(species) ((FmSpeciesSet)1 << (species))

const char *fm_species_name (FmSpecies species); /* translated */
/** Word for files: stable, not translated. */
const char *fm_species_key (FmSpecies species);
/** FM_SPECIES_UNKNOWN when no kind has this key. */
FmSpecies fm_species_from_key (const char *key);
/** Kind of a dataset row; FM_SPECIES_UNKNOWN when @ndb_no is no number of the dataset. */
FmSpecies fm_species_of_ndb (const char *ndb_no);

/** Poultry is in it for certain. */
gboolean fm_species_set_has_poultry (FmSpeciesSet set);
/** Poultry is in it, or may be: a part is of several or unknown kinds. */
gboolean fm_species_set_may_have_poultry (FmSpeciesSet set);
/** No animal at all is known in it; also TRUE for the empty set. */
gboolean fm_species_set_is_meatless (FmSpeciesSet set);
/** Names of the kinds joined by commas, "no animal" left out where there are others.
 * Translated. Returns: (transfer full). */
char *fm_species_set_join (FmSpeciesSet set);

G_END_DECLS
