/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-compare-csv.c - a comparison survives the way into a spreadsheet */
#include <locale.h>
#include <math.h>

#include "report/fm-compare-copy.h"
#include "report/fm-compare-csv.h"

static FmComparison *
comparison_of (const char *first_title, const char *ingredient_name)
{
  GPtrArray *items = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);

  for (guint i = 0; i < 2; i++) {
    g_autoptr (FmIngredient) beef = fm_ingredient_new (ingredient_name, FM_INGREDIENT_TRIM);
    FmFormula *formula = fm_formula_new ();

    beef->provenance = FM_PROVENANCE_ANALYSIS;
    beef->composition.per_100g[FM_NUTRIENT_FAT] = 20.0 + 2.5 * i;
    fm_formula_add (formula, beef, 500.0);
    g_ptr_array_add (items, fm_compare_item_new_version (i + 1, i == 0 ? first_title : "Second",
                                                         "s", NULL, formula, 0, NAN, NAN));
  }
  return fm_comparison_new (items);
}

static void
test_cites_and_units (void)
{
  g_autoptr (FmComparison) comparison = comparison_of ("First", "Chuck");
  g_autofree char *csv = fm_compare_csv (comparison, -1, NULL);

  g_assert_nonnull (strstr (csv, "USDA National Nutrient Database"));
  g_assert_nonnull (strstr (csv, "\"Section\",\"Quantity\",\"Unit\",\"First\",\"Second\"\r\n"));
  g_assert_nonnull (strstr (csv, "\"Fat, calculated\",\"%\",20.00,22.50\r\n"));
  g_assert_nonnull (strstr (csv, "\"Iron\",\"mg per 100 g raw\",,\r\n"));
}

static void
test_differences (void)
{
  g_autoptr (FmComparison) comparison = comparison_of ("First", "Chuck");
  g_autofree char *csv = fm_compare_csv (comparison, 1, NULL);

  g_assert_nonnull (strstr (csv, "Differences from: Second"));
  g_assert_nonnull (strstr (csv, "\"Fat, calculated\",\"%\",-2.50,22.50\r\n"));
}

static void
test_notice (void)
{
  g_autoptr (FmComparison) comparison = comparison_of ("First", "Chuck");
  g_autofree char *csv = fm_compare_csv (comparison, -1, "All made up.");

  g_assert_true (g_str_has_prefix (csv, "\"All made up.\"\r\n"));
}

static void
test_quoting (void)
{
  g_autoptr (FmComparison) comparison = comparison_of ("The \"best\", so far", "=1+1");
  g_autofree char *csv = fm_compare_csv (comparison, -1, NULL);

  g_assert_nonnull (strstr (csv, "\"The \"\"best\"\", so far\""));
  g_assert_nonnull (strstr (csv, "\"'=1+1\""));
  g_assert_null (strstr (csv, ",\"=1+1\""));
}

static void
test_same_width_everywhere (void)
{
  g_autoptr (FmComparison) comparison = comparison_of ("First", "Chuck");
  g_autofree char *csv = fm_compare_csv (comparison, -1, NULL);
  const char *table = strstr (csv, "\"Section\"");
  g_auto (GStrv) lines = g_strsplit (table, "\r\n", -1);

  for (guint i = 0; lines[i] != NULL && lines[i][0] != '\0'; i++) {
    gboolean quoted = FALSE;
    guint n_commas = 0;

    for (const char *c = lines[i]; *c != '\0'; c++) {
      quoted ^= *c == '"';
      n_commas += *c == ',' && !quoted;
    }
    g_assert_cmpuint (n_commas, ==, 4);
  }
}

static void
test_clipboard (void)
{
  g_autoptr (FmComparison) comparison = comparison_of ("First <1>", "Chuck");
  const FmCompareView all = { comparison, -1, FALSE, "All made up." };
  const FmCompareView differing = { comparison, 0, TRUE, NULL };
  g_autofree char *text = fm_compare_copy_text (&all);
  g_autofree char *html = fm_compare_copy_html (&all);
  g_autofree char *less = fm_compare_copy_text (&differing);

  g_assert_true (g_str_has_prefix (text, "All made up.\nQuantity\tFirst <1>\tSecond\n"));
  g_assert_nonnull (strstr (text, "\nFat, calculated, %\t20.0\t22.5\n"));
  g_assert_nonnull (strstr (text, "\nBatch, g\t500\t500\n"));
  g_assert_nonnull (strstr (html, "<th scope=\"col\">First &lt;1&gt;</th>"));
  g_assert_nonnull (strstr (html, "Fat, calculated, %</th><td align=\"right\">20.0</td>"));
  g_assert_nonnull (strstr (less, "\nFat, calculated, %\t20.0\t+2.5\n"));
  g_assert_null (strstr (less, "Batch"));
}

/* Notes of several lines stay in their cell. */
static void
test_clipboard_in_one_line (void)
{
  g_autoptr (FmComparison) comparison = comparison_of ("First", "Chuck");
  GPtrArray *items = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_compare_item_free);
  g_autoptr (FmComparison) noted = NULL;
  g_autofree char *text = NULL;

  for (guint i = 0; i < 2; i++) {
    FmFormula *formula = fm_formula_copy (fm_comparison_item (comparison, i)->formula);
    FmCompareItem *item =
        fm_compare_item_new_version (i + 1, "Noted", "s", NULL, formula, 1, NAN, NAN);

    fm_compare_item_set_findings (item, g_strdup ("Crumbly\tand\ndry"), NULL, 0);
    g_ptr_array_add (items, item);
  }
  noted = fm_comparison_new (items);
  text = fm_compare_copy_text (&(FmCompareView){ noted, -1, FALSE, NULL });
  g_assert_nonnull (strstr (text, "\nNotes\tCrumbly and dry\tCrumbly and dry\n"));
}

static void
test_paper (void)
{
  g_autoptr (FmComparison) comparison = comparison_of ("First", "Chuck");
  const FmCompareView view = { comparison, -1, TRUE, "All made up." };
  g_autoptr (FmBatchSheet) sheet = fm_compare_copy_sheet (&view);
  g_autofree char *text = fm_batch_sheet_text (sheet);

  g_assert_cmpstr (sheet->notice, ==, "All made up.");
  g_assert_nonnull (strstr (text, "A · First"));
  g_assert_nonnull (strstr (text, "B · Second"));
  g_assert_nonnull (strstr (text, "Fat, calculated, %"));
  g_assert_null (strstr (text, "Batch"));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/compare-csv/cites-and-units", test_cites_and_units);
  g_test_add_func ("/compare-csv/differences", test_differences);
  g_test_add_func ("/compare-csv/notice", test_notice);
  g_test_add_func ("/compare-csv/clipboard", test_clipboard);
  g_test_add_func ("/compare-csv/clipboard-in-one-line", test_clipboard_in_one_line);
  g_test_add_func ("/compare-csv/paper", test_paper);
  g_test_add_func ("/compare-csv/quoting", test_quoting);
  g_test_add_func ("/compare-csv/same-width-everywhere", test_same_width_everywhere);
  return g_test_run ();
}
