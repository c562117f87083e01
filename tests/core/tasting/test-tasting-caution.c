/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-tasting-caution.c - what is said of samples before somebody eats them */
#include <math.h>
#include <string.h>

#include "core/tasting/fm-tasting-caution.h"

#define BIT(kind) FM_SPECIES_BIT (FM_SPECIES_##kind)

static FmTastingCaution *
add (GPtrArray *cautions, const char *name, FmSpeciesSet species, double peak_core_c)
{
  FmTastingCaution *caution = fm_tasting_caution_new (name);

  caution->species = species;
  caution->peak_core_c = peak_core_c;
  caution->n_parts = 2;
  g_ptr_array_add (cautions, caution);
  return caution;
}

static GPtrArray *
new_cautions (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify)fm_tasting_caution_free);
}

static void
assert_says (char *text, const char *part)
{
  if (strstr (text, part) == NULL)
    g_error ("“%s” lacks “%s”", text, part);
  g_free (text);
}

/* 72 °C is above the figure for beef and below that for poultry; without a reading, or without a
 * kind of animal, nothing is met at 72 °C. */
static void
test_core (void)
{
  g_autoptr (GPtrArray) cautions = new_cautions ();
  FmTastingCaution *beef = add (cautions, "Beef", BIT (BEEF) | BIT (NONE), 72.0);
  FmTastingCaution *turkey = add (cautions, "Turkey", BIT (TURKEY), 72.0);
  FmTastingCaution *raw = add (cautions, "Unread", BIT (BEEF), NAN);
  FmTastingCaution *unknown = add (cautions, "Odd", 0, 72.0);

  g_assert_true (fm_tasting_caution_is_on_record (beef));
  g_assert_false (fm_tasting_caution_is_on_record (turkey));
  g_assert_false (fm_tasting_caution_is_on_record (raw));
  g_assert_false (fm_tasting_caution_is_on_record (unknown));
  g_assert_false (fm_tasting_cautions_are_on_record (cautions));
  assert_says (fm_tasting_caution_text (beef),
               "Beef (Beef): highest core reading 72.0 °C (162 °F), not below 71.1 °C (160 °F), "
               "USDA FSIS consumer chart, ground meat.");
  assert_says (fm_tasting_caution_text (turkey), "BELOW 73.9 °C (165 °F), USDA FSIS consumer "
                                                 "chart, ground poultry.");
  assert_says (fm_tasting_caution_text (raw), "no core reading; the figure that rules: 71.1 °C");
  assert_says (fm_tasting_caution_text (unknown), "Odd (animal not known)");
  assert_says (fm_tasting_caution_text (unknown), "BELOW 73.9 °C");
  assert_says (fm_tasting_cautions_tally (cautions), "1 of 4 samples has no core reading. ");
  assert_says (fm_tasting_cautions_tally (cautions), "2 of 4 samples were read below");
}

/* A reading that misses the figure by a hair never prints as the figure. */
static void
test_hair (void)
{
  g_autoptr (GPtrArray) cautions = new_cautions ();
  FmTastingCaution *beef = add (cautions, "Beef", BIT (BEEF), 71.04);

  assert_says (fm_tasting_caution_text (beef), "highest core reading 71.0 °C (159 °F), BELOW");
}

/* What nobody stated is not stated, never "none". */
static void
test_allergens (void)
{
  g_autoptr (GPtrArray) cautions = new_cautions ();
  FmTastingCaution *stated = add (cautions, "Stated", BIT (BEEF), 75.0);
  FmTastingCaution *partly = add (cautions, "Partly", BIT (BEEF), 75.0);
  FmTastingCaution *silent = add (cautions, "Silent", BIT (BEEF), 75.0);
  FmTastingCaution *empty = add (cautions, "Empty", BIT (BEEF), 75.0);

  partly->allergens = FM_ALLERGEN_BIT (FM_ALLERGEN_MUSTARD) | FM_ALLERGEN_BIT (FM_ALLERGEN_MILK);
  partly->n_unstated = 1;
  silent->n_unstated = 2;
  empty->n_parts = 0;
  g_assert_true (fm_tasting_caution_is_on_record (stated));
  g_assert_false (fm_tasting_caution_is_on_record (partly));
  g_assert_false (fm_tasting_caution_is_on_record (silent));
  g_assert_false (fm_tasting_caution_is_on_record (empty));
  assert_says (fm_tasting_caution_text (stated), "Allergens: none of the listed ones, as stated.");
  assert_says (fm_tasting_caution_text (partly),
               "Allergens: Milk, Mustard; not stated for 1 of its ingredients.");
  assert_says (fm_tasting_caution_text (silent), "Allergens: not stated.");
  assert_says (fm_tasting_caution_text (empty), "Allergens: not stated.");
  assert_says (fm_tasting_cautions_tally (cautions),
               "Allergens stated for the samples: Milk, Mustard. For 3 of 4 samples allergens are "
               "not all stated: any may be in them. ");
  g_ptr_array_set_size (cautions, 1);
  assert_says (fm_tasting_cautions_tally (cautions),
               "Allergens stated for the samples: none of the listed ones. ");
}

/* What tasters read names no sample; a figure comes with its edition, once. */
static void
test_tally_names_nobody (void)
{
  g_autoptr (GPtrArray) cautions = new_cautions ();

  add (cautions, "Secret draft", BIT (BEEF), NAN)->is_outside = TRUE;
  add (cautions, "Secret rival", BIT (BEEF), 60.0);
  g_autofree char *tally = fm_tasting_cautions_tally (cautions);
  g_autofree char *figures = fm_tasting_cautions_figures (cautions);
  const char *first = strstr (figures, "Minimum Internal Temperature Chart");

  g_assert_null (strstr (tally, "Secret"));
  g_assert_null (strstr (figures, "Secret"));
  g_assert_nonnull (first);
  g_assert_null (strstr (first + 1, "Minimum Internal Temperature Chart"));
  g_assert_nonnull (strstr (figures, "licensed professional"));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tasting-caution/core", test_core);
  g_test_add_func ("/tasting-caution/hair", test_hair);
  g_test_add_func ("/tasting-caution/allergens", test_allergens);
  g_test_add_func ("/tasting-caution/tally-names-nobody", test_tally_names_nobody);
  return g_test_run ();
}
