/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-sr28.c - the dataset against what was published about it
 *
 * Sources: USDA National Nutrient Database for Standard Reference, Release 18 and Release 28; USDA
 * Ground Beef Calculator equations. The tables stand in tests/reference/data, each with its source.
 */
#include "store/fm-food-store.h"

#include <math.h>
#include <string.h>

#define DB_PATH BUILDDIR "/data/sr28.db"
#define DATA_DIR SRCDIR "/tests/reference/data/"

/* Atwater factors of meat, kcal/g, printed in SR18 under each item (see energy_sr18.tsv). */
#define KCAL_PER_G_MEAT_PROTEIN 4.27
#define KCAL_PER_G_MEAT_FAT 9.02

static const struct {
  const char *ndb_no;
  double label_fat_pct;
} ground_beef[] = {
  { "23477", 3.0 },  { "23557", 5.0 },  { "23472", 7.0 },  { "23562", 10.0 },
  { "23567", 15.0 }, { "23572", 20.0 }, { "23577", 25.0 }, { "13498", 30.0 },
};

typedef void (*RowFunc) (FmFoodStore *store, char **cells);

static FmFoodStore *
open_store (void)
{
  g_autoptr (GError) error = NULL;
  FmFoodStore *store = fm_food_store_open (DB_PATH, &error);

  g_assert_no_error (error);
  return store;
}

static FmFood *
get_food (FmFoodStore *store, const char *ndb_no)
{
  g_autoptr (GError) error = NULL;
  FmFood *food = fm_food_store_get (store, ndb_no, &error);

  g_assert_no_error (error);
  return food;
}

static double
value (const FmFood *food, FmNutrient nutrient)
{
  return food->composition.per_100g[nutrient];
}

/* Calls @func for each line below the comments and the header. */
static void
for_each_row (const char *path, RowFunc func)
{
  g_autoptr (FmFoodStore) store = open_store ();
  g_autofree char *text = NULL;
  g_auto (GStrv) lines = NULL;
  gboolean header_seen = FALSE;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++) {
    g_auto (GStrv) cells = NULL;

    if (*lines[i] == '#' || *lines[i] == '\0')
      continue;
    if (!header_seen) {
      header_seen = TRUE;
      continue;
    }
    cells = g_strsplit (lines[i], "\t", -1);
    func (store, cells);
  }
}

/* Whole kcal are printed, and the amounts to two places: half a unit of each. */
static void
check_energy (FmFoodStore *store, char **cells)
{
  g_autoptr (FmFood) food = get_food (store, cells[0]);
  double kcal = KCAL_PER_G_MEAT_PROTEIN * value (food, FM_NUTRIENT_PROTEIN) +
                KCAL_PER_G_MEAT_FAT * value (food, FM_NUTRIENT_FAT);

  g_assert_cmpfloat (value (food, FM_NUTRIENT_CARBOHYDRATE), ==, 0.0);
  g_assert_cmpfloat_with_epsilon (kcal, value (food, FM_NUTRIENT_ENERGY_KCAL),
                                  0.5 + 0.005 * (KCAL_PER_G_MEAT_PROTEIN + KCAL_PER_G_MEAT_FAT));
}

static void
test_energy_sr18_factors (void)
{
  for_each_row (DATA_DIR "energy_sr18.tsv", check_energy);
}

static guint n_unchanged;

/* Later releases changed some rows; those that kept protein and fat must have kept the energy. */
static void
check_unchanged (FmFoodStore *store, char **cells)
{
  g_autoptr (FmFood) food = get_food (store, cells[0]);

  if (value (food, FM_NUTRIENT_PROTEIN) != g_ascii_strtod (cells[2], NULL) ||
      value (food, FM_NUTRIENT_FAT) != g_ascii_strtod (cells[3], NULL))
    return;
  g_assert_cmpfloat (value (food, FM_NUTRIENT_ENERGY_KCAL), ==, g_ascii_strtod (cells[4], NULL));
  n_unchanged++;
}

static void
test_rows_unchanged_since_sr18 (void)
{
  n_unchanged = 0;
  for_each_row (DATA_DIR "energy_sr18.tsv", check_unchanged);
  g_assert_cmpuint (n_unchanged, >=, 20);
}

static void
test_ground_beef_labels (void)
{
  g_autoptr (FmFoodStore) store = open_store ();

  for (guint i = 0; i < G_N_ELEMENTS (ground_beef); i++) {
    g_autoptr (FmFood) food = get_food (store, ground_beef[i].ndb_no);

    g_assert_cmpfloat (value (food, FM_NUTRIENT_FAT), ==, ground_beef[i].label_fat_pct);
    g_assert_true (food->is_raw);
  }
}

/* Half a unit of the last digit of a printed number. */
static double
half_digit (const char *printed)
{
  const char *point = strchr (printed, '.');

  return 0.5 * pow (10.0, point != NULL ? -(double)strlen (point + 1) : 0.0);
}

/* What the printed digits of an equation and of the table leave open. */
static double
regression_tolerance (FmNutrient nutrient, char **cells, double fat_g)
{
  const double rounding = half_digit (cells[1]) + half_digit (cells[2]) * fat_g;

  if (nutrient == FM_NUTRIENT_CHOLESTEROL)
    return rounding + 0.5; /* whole mg */
  if (nutrient == FM_NUTRIENT_POLYUNSATURATED_FAT || nutrient == FM_NUTRIENT_THIAMIN)
    return rounding + 0.0005; /* thousandths */
  return rounding + 0.005;    /* hundredths */
}

/* Left out, because the equations are straight lines of another release: saturated and
 * monounsaturated fat, which bend at both ends, and the cholesterol of 95 % lean, which was
 * measured anew. */
static void
check_regression (FmFoodStore *store, char **cells)
{
  FmNutrient nutrient = fm_nutrient_from_key (cells[0]);
  double intercept = g_ascii_strtod (cells[1], NULL);
  double slope = g_ascii_strtod (cells[2], NULL);

  g_assert_cmpint (nutrient, !=, FM_NUTRIENT_NONE);
  if (nutrient == FM_NUTRIENT_SATURATED_FAT || nutrient == FM_NUTRIENT_MONOUNSATURATED_FAT)
    return;
  for (guint i = 0; i < G_N_ELEMENTS (ground_beef); i++) {
    g_autoptr (FmFood) food = get_food (store, ground_beef[i].ndb_no);
    double expected = intercept + slope * value (food, FM_NUTRIENT_FAT);

    if (nutrient == FM_NUTRIENT_CHOLESTEROL && strcmp (ground_beef[i].ndb_no, "23557") == 0)
      continue;
    g_assert_cmpfloat_with_epsilon (
        value (food, nutrient), expected,
        regression_tolerance (nutrient, cells, value (food, FM_NUTRIENT_FAT)));
  }
}

static void
test_ground_beef_regression_usda (void)
{
  for_each_row (DATA_DIR "ground_beef_regression_usda.tsv", check_regression);
}

/* Figures of a second copy of Release 28 (ground_meats_sr28.tsv, read), every one as printed. */
static void
check_second_copy (FmFoodStore *store, char **cells)
{
  static const FmNutrient columns[] = {
    FM_NUTRIENT_ENERGY_KCAL, FM_NUTRIENT_PROTEIN,   FM_NUTRIENT_FAT,       FM_NUTRIENT_CHOLESTEROL,
    FM_NUTRIENT_SODIUM,      FM_NUTRIENT_POTASSIUM, FM_NUTRIENT_CALCIUM,   FM_NUTRIENT_IRON,
    FM_NUTRIENT_ZINC,        FM_NUTRIENT_THIAMIN,   FM_NUTRIENT_RIBOFLAVIN
  };
  g_autoptr (FmFood) food = get_food (store, cells[0]);

  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    if (*cells[i + 1] != '\0')
      g_assert_cmpfloat_with_epsilon (value (food, columns[i]), g_ascii_strtod (cells[i + 1], NULL),
                                      half_digit (cells[i + 1]));
}

static void
test_second_copy (void)
{
  for_each_row (DATA_DIR "ground_meats_sr28.tsv", check_second_copy);
}

/* Water, protein, fat, ash and carbohydrate by difference make up the whole of each ground beef. */
static void
test_ground_beef_proximates_add_up (void)
{
  g_autoptr (FmFoodStore) store = open_store ();

  for (guint i = 0; i < G_N_ELEMENTS (ground_beef); i++) {
    g_autoptr (FmFood) food = get_food (store, ground_beef[i].ndb_no);
    double sum = value (food, FM_NUTRIENT_WATER) + value (food, FM_NUTRIENT_PROTEIN) +
                 value (food, FM_NUTRIENT_FAT) + value (food, FM_NUTRIENT_ASH) +
                 value (food, FM_NUTRIENT_CARBOHYDRATE);

    g_assert_cmpfloat_with_epsilon (sum, 100.0, 1.0);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sr28/energy-by-the-factors-printed-in-sr18", test_energy_sr18_factors);
  g_test_add_func ("/sr28/rows-unchanged-since-sr18", test_rows_unchanged_since_sr18);
  g_test_add_func ("/sr28/fat-of-ground-beef-is-its-label", test_ground_beef_labels);
  g_test_add_func ("/sr28/usda-ground-beef-regression", test_ground_beef_regression_usda);
  g_test_add_func ("/sr28/second-copy", test_second_copy);
  g_test_add_func ("/sr28/ground-beef-adds-up", test_ground_beef_proximates_add_up);
  return g_test_run ();
}
