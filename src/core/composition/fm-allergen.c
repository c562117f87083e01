/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-allergen.c - the allergens that two laws want named */
#include "core/composition/fm-allergen.h"

#include <glib/gi18n-lib.h>

static const struct {
  const char *key;
  const char *name;
  gboolean us;
} allergens[FM_N_ALLERGENS] = {
  [FM_ALLERGEN_MILK] = { "milk", N_ ("Milk"), TRUE },
  [FM_ALLERGEN_EGGS] = { "eggs", N_ ("Eggs"), TRUE },
  [FM_ALLERGEN_FISH] = { "fish", N_ ("Fish"), TRUE },
  [FM_ALLERGEN_CRUSTACEANS] = { "crustaceans", N_ ("Crustaceans"), TRUE },
  [FM_ALLERGEN_NUTS] = { "nuts", N_ ("Tree nuts"), TRUE },
  [FM_ALLERGEN_WHEAT] = { "wheat", N_ ("Wheat (gluten)"), TRUE },
  [FM_ALLERGEN_PEANUTS] = { "peanuts", N_ ("Peanuts"), TRUE },
  [FM_ALLERGEN_SOYBEANS] = { "soybeans", N_ ("Soybeans"), TRUE },
  [FM_ALLERGEN_SESAME] = { "sesame", N_ ("Sesame"), TRUE },
  [FM_ALLERGEN_OTHER_GLUTEN] = { "other_gluten", N_ ("Rye, barley or oats (gluten)"), FALSE },
  [FM_ALLERGEN_CELERY] = { "celery", N_ ("Celery"), FALSE },
  [FM_ALLERGEN_MUSTARD] = { "mustard", N_ ("Mustard"), FALSE },
  [FM_ALLERGEN_SULPHITES] = { "sulphites", N_ ("Sulphur dioxide and sulphites"), FALSE },
  [FM_ALLERGEN_LUPIN] = { "lupin", N_ ("Lupin"), FALSE },
  [FM_ALLERGEN_MOLLUSCS] = { "molluscs", N_ ("Molluscs"), FALSE },
};

const char *
fm_allergen_name (FmAllergen allergen)
{
  return _ (allergens[allergen].name);
}

const char *
fm_allergen_key (FmAllergen allergen)
{
  return allergens[allergen].key;
}

FmAllergen
fm_allergen_from_key (const char *key)
{
  int i = 0;

  while (i < FM_N_ALLERGENS && g_strcmp0 (allergens[i].key, key) != 0)
    i++;
  return (FmAllergen)i;
}

gboolean
fm_allergen_is_us (FmAllergen allergen)
{
  return allergens[allergen].us;
}

/* All of the American nine are among the European fourteen. */
gboolean
fm_allergen_is_eu (FmAllergen allergen)
{
  return allergen < FM_N_ALLERGENS;
}

char *
fm_allergens_join (FmAllergenSet set)
{
  GString *text = g_string_new (NULL);

  for (int i = 0; i < FM_N_ALLERGENS; i++) {
    if ((set & FM_ALLERGEN_BIT (i)) == 0)
      continue;
    if (text->len > 0)
      g_string_append (text, ", ");
    g_string_append (text, fm_allergen_name ((FmAllergen)i));
  }
  return g_string_free (text, FALSE);
}
