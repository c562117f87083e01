/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-allergen.c - the lists of two laws */
#include "core/composition/fm-allergen.h"

/* US 9: Federal Food, Drug, and Cosmetic Act 201(qq) with the FASTER Act of 2021. EU 14:
 * Regulation (EU) No 1169/2011, Annex II, where all cereals with gluten are one entry. Both read.
 */
static void
test_counts (void)
{
  guint n_us = 0;
  guint n_eu = 0;

  for (int i = 0; i < FM_N_ALLERGENS; i++) {
    n_us += (guint)fm_allergen_is_us ((FmAllergen)i);
    n_eu += (guint)fm_allergen_is_eu ((FmAllergen)i);
    g_assert_cmpint (fm_allergen_from_key (fm_allergen_key ((FmAllergen)i)), ==, i);
  }
  g_assert_cmpuint (n_us, ==, 9);
  g_assert_cmpuint (n_eu, ==, 14 + 1);
  g_assert_cmpint (fm_allergen_from_key ("gold"), ==, FM_N_ALLERGENS);
}

static void
test_join (void)
{
  g_autofree char *none = fm_allergens_join (0);
  g_autofree char *two = fm_allergens_join (FM_ALLERGEN_BIT (FM_ALLERGEN_MUSTARD) |
                                            FM_ALLERGEN_BIT (FM_ALLERGEN_MILK));

  g_assert_cmpstr (none, ==, "");
  g_assert_cmpstr (two, ==, "Milk, Mustard");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/allergen/counts", test_counts);
  g_test_add_func ("/allergen/join", test_join);
  return g_test_run ();
}
