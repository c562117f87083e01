/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-hold-table.c - each authority's hold table against the published rows */
#include "core/heat/fm-hold-table.h"

#include <string.h>

#include "core/base/fm-units.h"
#include "table.h"

#define BIT(kind) FM_SPECIES_BIT (FM_SPECIES_##kind)

static const FmCookFood beef = { BIT (BEEF), 20.0 };

static void
assert_row (
    FmAuthority authority, const FmCookFood *food, double temp_f, double temp_c, double hold_s)
{
  FmHoldRow rows[FM_AUTHORITY_MAX_ROWS];
  guint n_rows = fm_authority_rows (authority, food, rows);

  for (guint i = 0; i < n_rows; i++)
    if (rows[i].temp_f == temp_f) {
      g_assert_cmpfloat (rows[i].temp_c, ==, temp_c);
      g_assert_cmpfloat (rows[i].hold_s, ==, hold_s);
      g_assert_cmpfloat (fm_hold_required_s (authority, food, fm_fahrenheit_to_celsius (temp_f)),
                         ==, hold_s);
      return;
    }
  g_error ("%s: no row of %g F", fm_authority_name (authority), temp_f);
}

static void
assert_n_rows (FmAuthority authority, const FmCookFood *food, guint expected)
{
  FmHoldRow rows[FM_AUTHORITY_MAX_ROWS];

  g_assert_cmpuint (fm_authority_rows (authority, food, rows), ==, expected);
}

/* FSIS-GD-2021-14, tables 2 and 6, read. */
static void
test_fsis_2021_meat (void)
{
  g_autoptr (GPtrArray) rows = read_table ("fsis_2021_meat.tsv", "\t");
  static const FmAuthority columns[] = { FM_AUTHORITY_FSIS_PATTIES, FM_AUTHORITY_FSIS_6_5,
                                         FM_AUTHORITY_FSIS_7 };

  for (guint column = 0; column < G_N_ELEMENTS (columns); column++) {
    for (guint i = 0; i < rows->len; i++)
      assert_row (columns[column], &beef, number (rows, i, 0), number (rows, i, 1),
                  number (rows, i, 2 + column));
    assert_n_rows (columns[column], &beef, rows->len);
  }
}

/* The table of 1999: its 6.5 and 7 log columns stand unchanged in that of 2021. */
static void
test_appendix_a_1999 (void)
{
  g_autoptr (GPtrArray) rows = read_table ("cook_lethality_appendix_a.tsv", "\t");

  for (guint i = 0; i < rows->len; i++) {
    assert_row (FM_AUTHORITY_FSIS_6_5, &beef, number (rows, i, 0), number (rows, i, 1),
                number (rows, i, 2));
    assert_row (FM_AUTHORITY_FSIS_7, &beef, number (rows, i, 0), number (rows, i, 1),
                number (rows, i, 3));
  }
}

/* FSIS-GD-2021-14, tables 3 and 4, read: every cell of both kinds. */
static void
test_fsis_2021_poultry (void)
{
  g_autoptr (GPtrArray) rows = read_table ("fsis_2021_poultry.tsv", "\t");

  for (guint fat = 1; fat <= 12; fat++)
    for (guint i = 0; i < rows->len; i++) {
      gboolean turkey = strcmp (cell (rows, i, 0), "turkey") == 0;
      FmCookFood food = { turkey ? BIT (TURKEY) : BIT (CHICKEN), fat };

      assert_row (FM_AUTHORITY_FSIS_POULTRY, &food, number (rows, i, 1), number (rows, i, 2),
                  number (rows, i, 2 + fat));
    }
}

/* The same, pp. 36 and 39: the longer time for several kinds, 12 % for more or unknown fat, and
 * between columns the one above. */
static void
test_fsis_2021_poultry_choice (void)
{
  static const FmSpeciesSet mixtures[] = { BIT (CHICKEN) | BIT (TURKEY), BIT (OTHER_POULTRY),
                                           BIT (TURKEY) | BIT (BEEF), BIT (UNKNOWN) };
  const FmCookFood turkey_12 = { BIT (TURKEY), 12.0 };
  const FmCookFood chicken_12 = { BIT (CHICKEN), 12.0 };
  const FmCookFood turkey_fat = { BIT (TURKEY), 20.0 };
  const FmCookFood turkey_unknown = { BIT (TURKEY), NAN };
  const FmCookFood turkey_7_6 = { BIT (TURKEY) | BIT (NONE), 7.6 };
  const FmCookFood turkey_8 = { BIT (TURKEY), 8.0 };

  for (double temp_c = 58.0; temp_c < 73.8; temp_c += 0.3) {
    double turkey_s = fm_hold_required_s (FM_AUTHORITY_FSIS_POULTRY, &turkey_12, temp_c);
    double chicken_s = fm_hold_required_s (FM_AUTHORITY_FSIS_POULTRY, &chicken_12, temp_c);

    g_assert_cmpfloat (fm_hold_required_s (FM_AUTHORITY_FSIS_POULTRY, &turkey_fat, temp_c), ==,
                       turkey_s);
    g_assert_cmpfloat (fm_hold_required_s (FM_AUTHORITY_FSIS_POULTRY, &turkey_unknown, temp_c), ==,
                       turkey_s);
    g_assert_cmpfloat (fm_hold_required_s (FM_AUTHORITY_FSIS_POULTRY, &turkey_7_6, temp_c), >=,
                       fm_hold_required_s (FM_AUTHORITY_FSIS_POULTRY, &turkey_8, temp_c));
    for (guint i = 0; i < G_N_ELEMENTS (mixtures); i++) {
      const FmCookFood mixture = { mixtures[i], 12.0 };
      g_assert_cmpfloat (fm_hold_required_s (FM_AUTHORITY_FSIS_POULTRY, &mixture, temp_c), ==,
                         fmax (turkey_s, chicken_s));
    }
  }
}

/* FDA Food Code 3-401.11 and the USDA FSIS consumer chart (read). UK FSA: only the rows that were
 * seen retold (70, 75 and 80 °C); those from memory are in no table. */
static void
test_food_code_and_others (void)
{
  g_autoptr (GPtrArray) rows = read_table ("cook_food_code.tsv", "\t");

  for (guint i = 0; i < rows->len; i++) {
    const char *body = cell (rows, i, 0);
    gboolean poultry = strstr (cell (rows, i, 1), "poultry") != NULL;
    FmAuthority authority = FM_AUTHORITY_UK;

    if (strcmp (body, "FDA") == 0)
      authority = poultry ? FM_AUTHORITY_FOOD_CODE_POULTRY : FM_AUTHORITY_FOOD_CODE;
    else if (strcmp (body, "USDA FSIS") == 0)
      authority = poultry ? FM_AUTHORITY_CONSUMER_POULTRY : FM_AUTHORITY_CONSUMER;
    if (authority == FM_AUTHORITY_UK && number (rows, i, 2) < 70)
      g_assert_true (isnan (fm_hold_required_s (authority, &beef, number (rows, i, 2))));
    else
      assert_row (authority, &beef, number (rows, i, 3), number (rows, i, 2), number (rows, i, 5));
  }
  assert_n_rows (FM_AUTHORITY_CONSUMER, &beef, 1);
  assert_n_rows (FM_AUTHORITY_CONSUMER_POULTRY, &beef, 1);
  assert_n_rows (FM_AUTHORITY_FOOD_CODE, &beef, 4);
  assert_n_rows (FM_AUTHORITY_UK, &beef, 3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hold-table/fsis-2021-meat", test_fsis_2021_meat);
  g_test_add_func ("/hold-table/fsis-appendix-a-1999", test_appendix_a_1999);
  g_test_add_func ("/hold-table/fsis-2021-poultry", test_fsis_2021_poultry);
  g_test_add_func ("/hold-table/fsis-2021-poultry-choice", test_fsis_2021_poultry_choice);
  g_test_add_func ("/hold-table/food-code-3-401.11-and-others", test_food_code_and_others);
  return g_test_run ();
}
