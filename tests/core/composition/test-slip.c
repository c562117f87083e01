/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-slip.c - rows of the dataset whose figures cannot all be true, and how energy was counted
 *
 * data/sr28/slips.tsv is the list by tools/check-sr28, which shares nothing with the program. The
 * 29 ground meats counted by general factors: read from a second public copy of SR28, which prints
 * the factors of most rows.
 */
#include "core/composition/fm-slip.h"

#include <math.h>
#include <string.h>

#define N_FOODS 8790

static const char *const slip_names[] = { "mass", "fatty_acids", "energy" };

static GStrv
read_lines (const char *path)
{
  g_autofree char *text = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return g_strsplit (g_strchomp (text), "\n", -1);
}

static void
read_composition (FmComposition *self, char **cells)
{
  for (guint i = 0; i < FM_N_NUTRIENTS; i++)
    self->per_100g[i] = *cells[2 + i] != '\0' ? g_ascii_strtod (cells[2 + i], NULL) : (double)NAN;
}

/* "28377 mass" -> what the program does about it */
static GHashTable *
read_slips (void)
{
  GHashTable *slips = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_auto (GStrv) lines = read_lines (SRCDIR "/data/sr28/slips.tsv");

  for (guint i = 1; lines[i] != NULL; i++) {
    g_auto (GStrv) cells = g_strsplit (lines[i], "\t", -1);

    g_hash_table_insert (slips, g_strconcat (cells[0], " ", cells[1], NULL), g_strdup (cells[4]));
  }
  return slips;
}

static void
test_every_row (void)
{
  g_autoptr (GHashTable) slips = read_slips ();
  g_auto (GStrv) lines = read_lines (SRCDIR "/data/sr28/foods.tsv");
  guint n_foods = 0, n_slips = 0, n_dropped = 0;

  for (guint i = 1; lines[i] != NULL; i++, n_foods++) {
    g_auto (GStrv) cells = g_strsplit (lines[i], "\t", -1);
    g_autofree char *bread = g_strconcat (cells[0], " mass", NULL);
    FmComposition composition;

    read_composition (&composition, cells);
    for (guint slip = 0; slip < G_N_ELEMENTS (slip_names); slip++) {
      g_autofree char *key = g_strconcat (cells[0], " ", slip_names[slip], NULL);
      const gboolean found = (fm_composition_slips (&composition) & (1u << slip)) != 0;

      g_test_message ("%s", key);
      g_assert_cmpint (found, ==, g_hash_table_contains (slips, key));
      n_slips += found;
    }
    g_assert_cmpint (fm_slip_protein_is_dropped (cells[0]), ==,
                     g_strcmp0 (g_hash_table_lookup (slips, bread), "protein is not known") == 0);
    n_dropped += fm_slip_protein_is_dropped (cells[0]);
  }
  g_assert_cmpuint (n_foods, ==, N_FOODS);
  g_assert_cmpuint (n_slips, ==, g_hash_table_size (slips));
  g_assert_cmpuint (n_dropped, ==, 19);
}

static gboolean
is_general (int ndb_no)
{
  static const int rows[] = { 5305,  5306,  5332,  10972, 10973, 10974, 10975, 10976, 10977, 10978,
                              10979, 17148, 17149, 17353, 17370, 17371, 17424, 23293, 35172, 35173,
                              5662,  5663,  5664,  5665,  5666,  5667,  5668,  5669,  5670 };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (rows[i] == ndb_no)
      return TRUE;
  return FALSE;
}

static void
test_energy_of_ground_meats (void)
{
  g_auto (GStrv) lines = read_lines (SRCDIR "/data/sr28/foods.tsv");
  guint n_general = 0;

  for (guint i = 1; lines[i] != NULL; i++) {
    g_auto (GStrv) cells = g_strsplit (lines[i], "\t", -1);
    FmComposition composition;

    if (!is_general (atoi (cells[0])))
      continue;
    read_composition (&composition, cells);
    g_test_message ("%s %s", cells[0], cells[1]);
    g_assert_cmpint (fm_composition_energy_rule (&composition), ==, FM_ENERGY_RULE_GENERAL);
    n_general++;
  }
  g_assert_cmpuint (n_general, ==, 29);
}

static FmComposition
meat (double energy_kcal)
{
  FmComposition self;

  fm_composition_init_unknown (&self);
  self.per_100g[FM_NUTRIENT_WATER] = 62.0;
  self.per_100g[FM_NUTRIENT_PROTEIN] = 17.0;
  self.per_100g[FM_NUTRIENT_FAT] = 20.0;
  self.per_100g[FM_NUTRIENT_ASH] = 1.0;
  self.per_100g[FM_NUTRIENT_CARBOHYDRATE] = 0.0;
  self.per_100g[FM_NUTRIENT_ENERGY_KCAL] = energy_kcal;
  return self;
}

/* 4.27 x 17 + 9.02 x 20 = 252.99; 4 x 17 + 9 x 20 = 248. */
static void
test_rules (void)
{
  const FmComposition by_meat = meat (253), general = meat (248), other = meat (215);
  FmComposition not_known = meat (253);
  g_autofree char *none = fm_composition_slip_text (&by_meat);
  g_autofree char *energy = fm_composition_slip_text (&other);

  not_known.per_100g[FM_NUTRIENT_FAT] = NAN;
  g_assert_cmpint (fm_composition_energy_rule (&by_meat), ==, FM_ENERGY_RULE_MEAT);
  g_assert_cmpint (fm_composition_energy_rule (&general), ==, FM_ENERGY_RULE_GENERAL);
  g_assert_cmpint (fm_composition_energy_rule (&other), ==, FM_ENERGY_RULE_OTHER);
  g_assert_cmpint (fm_composition_energy_rule (&not_known), ==, FM_ENERGY_RULE_UNKNOWN);
  g_assert_null (none);
  g_assert_nonnull (strstr (energy, "215 kcal"));
  g_assert_nonnull (strstr (energy, "248 kcal"));
  g_assert_cmpuint (fm_composition_slips (&not_known), ==, 0);
}

static void
test_sentences (void)
{
  FmComposition self = meat (253);

  self.per_100g[FM_NUTRIENT_WATER] = 55.0;
  self.per_100g[FM_NUTRIENT_SATURATED_FAT] = 12.0;
  self.per_100g[FM_NUTRIENT_MONOUNSATURATED_FAT] = 9.5;
  g_autofree char *text = fm_composition_slip_text (&self);
  g_assert_nonnull (strstr (text, "add up to 93.0 g in 100 g"));
  g_assert_nonnull (strstr (text, "fatty acids add up to 21.50 g, the fat is 20.00 g"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/slip/every-row-of-the-dataset", test_every_row);
  g_test_add_func ("/slip/energy-of-ground-meats", test_energy_of_ground_meats);
  g_test_add_func ("/slip/rules-of-energy", test_rules);
  g_test_add_func ("/slip/sentences", test_sentences);
  return g_test_run ();
}
