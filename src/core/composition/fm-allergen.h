/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-allergen.h - the allergens that two laws want named, as a set of bits
 *
 * United States: nine major food allergens (Federal Food, Drug, and Cosmetic Act, section 201(qq);
 * sesame since 2023 by the FASTER Act of 2021). European Union: fourteen substances (Regulation
 * (EU) No 1169/2011, Annex II). Wheat stands on both; the other cereals containing gluten on the
 * European list only, which counts all of them as one entry. What nobody stated is not stated,
 * which is never "none".
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  FM_ALLERGEN_MILK,
  FM_ALLERGEN_EGGS,
  FM_ALLERGEN_FISH,
  FM_ALLERGEN_CRUSTACEANS,
  FM_ALLERGEN_NUTS,
  FM_ALLERGEN_WHEAT,
  FM_ALLERGEN_PEANUTS,
  FM_ALLERGEN_SOYBEANS,
  FM_ALLERGEN_SESAME,
  FM_ALLERGEN_OTHER_GLUTEN, /* rye, barley, oats */
  FM_ALLERGEN_CELERY,
  FM_ALLERGEN_MUSTARD,
  FM_ALLERGEN_SULPHITES, /* above 10 mg/kg or 10 mg/l as total SO2 */
  FM_ALLERGEN_LUPIN,
  FM_ALLERGEN_MOLLUSCS,
  FM_N_ALLERGENS,
} FmAllergen;

/** A bit for each FmAllergen. */
typedef guint32 FmAllergenSet;

#define FM_ALLERGEN_BIT(allergen) ((FmAllergenSet)1 << (allergen))

const char *fm_allergen_name (FmAllergen allergen); /* translated */
/** Word for files: stable, not translated. */
const char *fm_allergen_key (FmAllergen allergen);
/** The allergen with this key, FM_N_ALLERGENS when there is none. */
FmAllergen fm_allergen_from_key (const char *key);
gboolean fm_allergen_is_us (FmAllergen allergen);
gboolean fm_allergen_is_eu (FmAllergen allergen);
/** Names joined by commas, those of @set; "" for the empty set. Returns: (transfer full). */
char *fm_allergens_join (FmAllergenSet set);

G_END_DECLS
