/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-species.c - the kind of animal of every row of the dataset, and sets of kinds
 *
 * The table is the project's own reading of the dataset's groups and names, so these tests hold
 * its promises: no row of a meat group without a kind, and the rows that rules get wrong.
 */
#include "core/composition/fm-ingredient.h"

#include <string.h>

#define N_FOODS 8790

static const FmSpeciesSet any_poultry = FM_SPECIES_BIT (FM_SPECIES_CHICKEN) |
                                        FM_SPECIES_BIT (FM_SPECIES_TURKEY) |
                                        FM_SPECIES_BIT (FM_SPECIES_OTHER_POULTRY);

/* What a row of a meat group may be; 0 = no meat group. */
static FmSpeciesSet
allowed (const char *ndb_no)
{
  static const struct {
    const char *group;
    FmSpeciesSet set;
  } groups[] = {
    { "05", any_poultry },
    { "07", ~(FM_SPECIES_BIT (FM_SPECIES_UNKNOWN) | FM_SPECIES_BIT (FM_SPECIES_NONE)) },
    { "10", FM_SPECIES_BIT (FM_SPECIES_PORK) },
    { "13", FM_SPECIES_BIT (FM_SPECIES_BEEF) },
    { "15", FM_SPECIES_BIT (FM_SPECIES_FISH) | FM_SPECIES_BIT (FM_SPECIES_GAME) },
    { "17", FM_SPECIES_BIT (FM_SPECIES_LAMB) | FM_SPECIES_BIT (FM_SPECIES_VEAL) |
                FM_SPECIES_BIT (FM_SPECIES_BISON) | FM_SPECIES_BIT (FM_SPECIES_GOAT) |
                FM_SPECIES_BIT (FM_SPECIES_GAME) | FM_SPECIES_BIT (FM_SPECIES_OTHER_POULTRY) },
    { "23", FM_SPECIES_BIT (FM_SPECIES_BEEF) },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    if (g_str_has_prefix (ndb_no, groups[i].group))
      return groups[i].set;
  return 0;
}

static void
test_every_row (void)
{
  const char *path = SRCDIR "/data/sr28/foods.tsv";
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  guint n_foods = 0;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 1; lines[i] != NULL && lines[i][0] != '\0'; i++) {
    g_auto (GStrv) cells = g_strsplit (lines[i], "\t", 3);
    FmSpecies species = fm_species_of_ndb (cells[0]);
    FmSpeciesSet set = allowed (cells[0]);
    g_autofree char *description = g_ascii_strup (cells[1], -1);

    n_foods++;
    g_test_message ("%s %s: %s", cells[0], cells[1], fm_species_key (species));
    if (set != 0)
      g_assert_true (set & FM_SPECIES_BIT (species));
    /* A row of the meat groups that names a bird must not pass for other meat. */
    if (set != 0 && strstr (description, "TURKEY"))
      g_assert_true (fm_species_set_may_have_poultry (FM_SPECIES_BIT (species)));
    if (set != 0 && strstr (description, "CHICKEN"))
      g_assert_true (fm_species_set_may_have_poultry (FM_SPECIES_BIT (species)));
  }
  g_assert_cmpuint (n_foods, ==, N_FOODS);
}

/* Rows that a rule over names alone would get wrong. */
static void
test_awkward_rows (void)
{
  static const struct {
    const char *ndb_no;
    FmSpecies species;
  } rows[] = {
    { "02034", FM_SPECIES_NONE },          /* Poultry seasoning */
    { "01106", FM_SPECIES_NONE },          /* Milk, goat */
    { "01141", FM_SPECIES_NONE },          /* Egg, turkey */
    { "02047", FM_SPECIES_NONE },          /* Salt, table */
    { "14411", FM_SPECIES_NONE },          /* Water, tap */
    { "16106", FM_SPECIES_NONE },          /* Meat extender */
    { "43128", FM_SPECIES_NONE },          /* Chicken, meatless */
    { "04542", FM_SPECIES_CHICKEN },       /* Fat, chicken */
    { "04520", FM_SPECIES_LAMB },          /* Fat, mutton tallow */
    { "04002", FM_SPECIES_PORK },          /* Lard */
    { "05305", FM_SPECIES_TURKEY },        /* Ground turkey, raw */
    { "05332", FM_SPECIES_CHICKEN },       /* Chicken, ground, raw */
    { "05621", FM_SPECIES_OTHER_POULTRY }, /* Emu, ground, raw */
    { "07254", FM_SPECIES_TURKEY },        /* Turkey bacon */
    { "07974", FM_SPECIES_TURKEY },        /* Bacon, turkey */
    { "42128", FM_SPECIES_TURKEY },        /* Turkey ham */
    { "07008", FM_SPECIES_MIXED_MEAT },    /* Bologna, beef and pork */
    { "07962", FM_SPECIES_MIXED },         /* Frankfurter, meat and poultry */
    { "07949", FM_SPECIES_MIXED },         /* Frankfurter, meat */
    { "17111", FM_SPECIES_VEAL },          /* Veal, variety meats */
    { "17224", FM_SPECIES_LAMB },          /* Lamb, ground, raw */
    { "17330", FM_SPECIES_BISON },         /* Game meat, bison, ground, raw */
    { "17160", FM_SPECIES_GAME },          /* Game meat, buffalo, water */
    { "17152", FM_SPECIES_GAME },          /* Game meat, beefalo */
    { "17168", FM_SPECIES_GOAT },          /* Goat, raw */
    { "05111", FM_SPECIES_OTHER_POULTRY }, /* Canada goose */
    { "15139", FM_SPECIES_FISH },          /* Crustaceans, crab, blue, raw */
    { "00000", FM_SPECIES_UNKNOWN },       { "", FM_SPECIES_UNKNOWN },
    { "99999", FM_SPECIES_UNKNOWN },       { "5305", FM_SPECIES_UNKNOWN },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_test_message ("%s", rows[i].ndb_no);
    g_assert_cmpstr (fm_species_key (fm_species_of_ndb (rows[i].ndb_no)), ==,
                     fm_species_key (rows[i].species));
  }
  g_assert_cmpint (fm_species_of_ndb (NULL), ==, FM_SPECIES_UNKNOWN);
}

static void
test_sets (void)
{
  FmSpeciesSet salt = FM_SPECIES_BIT (FM_SPECIES_NONE);
  FmSpeciesSet beef = FM_SPECIES_BIT (FM_SPECIES_BEEF) | salt;
  FmSpeciesSet turkey = beef | FM_SPECIES_BIT (FM_SPECIES_TURKEY);
  FmSpeciesSet unknown = beef | FM_SPECIES_BIT (FM_SPECIES_UNKNOWN);
  g_autofree char *names = fm_species_set_join (turkey);
  g_autofree char *none = fm_species_set_join (salt);

  g_assert_true (fm_species_set_is_meatless (salt));
  g_assert_true (fm_species_set_is_meatless (0));
  g_assert_false (fm_species_set_is_meatless (unknown));
  g_assert_false (fm_species_set_may_have_poultry (beef));
  g_assert_true (fm_species_set_has_poultry (turkey));
  g_assert_false (fm_species_set_has_poultry (unknown));
  g_assert_true (fm_species_set_may_have_poultry (unknown));
  g_assert_cmpstr (names, ==, "Beef, Turkey");
  g_assert_cmpstr (none, ==, "No animal");
}

static void
test_keys (void)
{
  for (int i = 0; i < FM_N_SPECIES; i++)
    g_assert_cmpint (fm_species_from_key (fm_species_key ((FmSpecies)i)), ==, i);
  g_assert_cmpint (fm_species_from_key ("unicorn"), ==, FM_SPECIES_UNKNOWN);
  g_assert_cmpint (fm_species_from_key (NULL), ==, FM_SPECIES_UNKNOWN);
}

/* Salt is of no animal, and so is what the dataset says of its row; the rest has to be stated. */
static void
test_ingredient (void)
{
  g_autoptr (FmIngredient) salt = fm_ingredient_new ("Salt", FM_INGREDIENT_SALT);
  g_autoptr (FmIngredient) trim = fm_ingredient_new ("Trim", FM_INGREDIENT_TRIM);
  g_autoptr (FmFood) food = fm_food_new ("05305", "Ground turkey, raw", "GROUND TURKEY,RAW");
  g_autoptr (FmIngredient) turkey = fm_ingredient_new_from_food (food);
  g_autoptr (FmIngredient) changed = fm_ingredient_copy (turkey);

  g_assert_cmpint (salt->species, ==, FM_SPECIES_NONE);
  g_assert_cmpint (trim->species, ==, FM_SPECIES_UNKNOWN);
  g_assert_cmpint (turkey->species, ==, FM_SPECIES_TURKEY);
  changed->species = FM_SPECIES_BEEF;
  g_assert_false (fm_ingredient_equal (turkey, changed));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/species/every-row", test_every_row);
  g_test_add_func ("/species/awkward-rows", test_awkward_rows);
  g_test_add_func ("/species/sets", test_sets);
  g_test_add_func ("/species/keys", test_keys);
  g_test_add_func ("/species/ingredient", test_ingredient);
  return g_test_run ();
}
