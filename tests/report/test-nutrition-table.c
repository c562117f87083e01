/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-nutrition-table.c - the nutrients of a portion as a table: text, CSV, paper */
#include "report/fm-nutrition-table.h"

#include <math.h>

typedef struct {
  FmAmount amounts[FM_N_NUTRIENTS];
  FmNutritionText texts[FM_N_NUTRIENTS];
  FmNutritionTable table;
} Fixture;

/* Fat is known for all of it, sodium for a part, nothing else at all. */
static void
set_up (Fixture *fixture, gconstpointer data)
{
  for (guint i = 0; i < FM_N_NUTRIENTS; i++)
    fixture->amounts[i] = (FmAmount){ NAN, 0.0 };
  fixture->amounts[FM_NUTRIENT_FAT] = (FmAmount){ 20.0, 100.0 };
  fixture->amounts[FM_NUTRIENT_SODIUM] = (FmAmount){ 60.0, 50.0 };
  for (guint i = 0; i < FM_N_NUTRIENTS; i++)
    fm_nutrition_text_init (&fixture->texts[i], (FmNutrient)i, &fixture->amounts[i], 180.0, NULL);
  fixture->table = (FmNutritionTable){ "Pan patty, version 3",
                                       "One raw patty, 180 g",
                                       "Half is known",
                                       fixture->amounts,
                                       fixture->texts,
                                       180.0,
                                       FALSE };
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  for (guint i = 0; i < FM_N_NUTRIENTS; i++)
    fm_nutrition_text_clear (&fixture->texts[i]);
}

static void
test_text_has_what_is_known (Fixture *fixture, gconstpointer data)
{
  g_autofree char *text = fm_nutrition_table_text (&fixture->table);

  g_assert_cmpstr (text, ==,
                   "Pan patty, version 3\nOne raw patty, 180 g\nHalf is known\n"
                   "Total fat\t36.0\u00a0g\nSodium\tat least 108\u00a0mg\n");
}

static void
test_csv_leaves_cells_empty (Fixture *fixture, gconstpointer data)
{
  g_autofree char *csv = fm_nutrition_table_csv (&fixture->table);

  g_assert_nonnull (strstr (csv, "36.00"));
  g_assert_nonnull (strstr (csv, "108.0"));
  g_assert_null (strstr (csv, "nan"));
  /* Unknown is an empty cell, not 0, and each nutrient has a row. */
  g_assert_nonnull (strstr (csv, "Zinc"));
  g_assert_nonnull (strstr (csv, ",,"));
}

static void
test_paper_names_what_it_is_of (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmBatchSheet) sheet = fm_nutrition_table_sheet (&fixture->table);
  g_autofree char *text = fm_batch_sheet_text (sheet);

  g_assert_nonnull (strstr (text, "Pan patty, version 3"));
  g_assert_nonnull (strstr (text, "36.0\u00a0g"));
  g_assert_null (strstr (text, "Zinc"));
  g_assert_null (strstr (text, "Daily Value"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/nutrition-table/text-has-what-is-known", Fixture, NULL, set_up,
              test_text_has_what_is_known, tear_down);
  g_test_add ("/nutrition-table/csv-leaves-cells-empty", Fixture, NULL, set_up,
              test_csv_leaves_cells_empty, tear_down);
  g_test_add ("/nutrition-table/paper-names-what-it-is-of", Fixture, NULL, set_up,
              test_paper_names_what_it_is_of, tear_down);
  return g_test_run ();
}
