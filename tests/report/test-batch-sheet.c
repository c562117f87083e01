/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-batch-sheet.c - what stands on the batch sheet, and that it fits one page */
#include "report/fm-batch-sheet-paint.h"

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "core/cooking/fm-caution.h"
#include "store/demo/fm-demo.h"
#include "store/fm-versions.h"

static FmBatchSheetInput
input_for (const FmFormula *formula)
{
  FmBatchSheetInput input = { 0 };

  fm_batch_plan_init (&input.plan, formula->brief);
  input.notebook_name = "test.forcemeat";
  input.blend_name = "House";
  input.version_name = "version 3";
  input.currency = "€";
  input.method = FM_COOK_PATTY_PAN_BROILED;
  input.plan.grind_loss_pct = 4.0;
  input.plan.salt_pct = 1.5;
  input.plan.salt_price_per_kg = 1.0;
  input.plan.cook_yield_pct = 75.0;
  input.food = (FmCookFood){ FM_SPECIES_BIT (FM_SPECIES_BEEF), 20.0 };
  input.salt_minutes_before = 30.0;
  input.plate_mm = 4.5;
  input.grind_passes = 2;
  input.meat_temp_c = 2.0;
  return input;
}

/* 800 g chuck at 10 per kg and 80 % edible, 200 g fat at 2 per kg and no yield stated. */
static FmFormula *
new_formula (void)
{
  FmFormula *formula = fm_formula_new ();
  g_autoptr (FmIngredient) chuck = fm_ingredient_new ("Chuck", FM_INGREDIENT_CUT);
  g_autoptr (FmIngredient) fat = fm_ingredient_new ("Backfat", FM_INGREDIENT_FAT);

  chuck->price_per_kg = 10.0;
  chuck->ep_yield_pct = 80.0;
  fat->price_per_kg = 2.0;
  fat->allergens_known = TRUE;
  fat->allergens = FM_ALLERGEN_BIT (FM_ALLERGEN_MILK);
  formula->brief->n_patties = 10;
  formula->brief->patty_mass_g = 180.0;
  fm_formula_add (formula, chuck, 800.0);
  fm_formula_add (formula, fat, 200.0);
  return formula;
}

static char *
plain_text (const FmBatchSheet *sheet)
{
  g_autofree char *text = fm_batch_sheet_text (sheet);
  g_auto (GStrv) parts = g_strsplit (text, "\u00a0", -1);

  return g_strjoinv (" ", parts);
}

static void
assert_has (const char *text, const char *wanted)
{
  if (strstr (text, wanted) == NULL)
    g_error ("“%s” is not in:\n%s", wanted, text);
}

/* By hand: 10 x 180 / 0.96 = 1875 g edible; chuck 1500 g, bought 1875 g for 18.75; fat 375 g for
 * 0.75; 19.50 in all, 1.95 a patty; 135 g cooked, 1.95 / 1.35 = 1.44 for 100 g. */
static void
test_grams_and_costs (void)
{
  g_autoptr (FmFormula) formula = new_formula ();
  FmBatchSheetInput input = input_for (formula);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmBatchSheet) sheet = fm_batch_sheet_new (formula, &input, &error);

  g_assert_no_error (error);
  g_autofree char *text = plain_text (sheet);
  assert_has (text, "Batch sheet: House, version 3");
  assert_has (text, "10 patties of 180.0 g raw");
  assert_has (text, "Chuck; 80.0 %; 1500.0 g; 1880 g; €18.75");
  assert_has (text, "Backfat; 20.0 %; 375.0 g; 380 g; €0.75");
  assert_has (text, "Into the grinder; 1875.0 g; 2260 g; €19.50");
  assert_has (text, "Salt, 1.5 % of the ground mass, on top; 27.0 g; 30 g; €0.03");
  assert_has (text, "In all, with the salt on top; 2290 g; €19.53");
  assert_has (text, "rounded up to steps of 10 g");
  assert_has (text, "per raw patty €1.95, per cooked patty €1.95, per 100 g cooked €1.45");
  assert_has (text, "taken as edible: Backfat.");
  assert_has (text, "4.5 mm plate, 2 passes");
  assert_has (text, "2.0 °C (36 °F)");
  assert_has (text, "30 min before cooking: 27.0 g in all, 2.70 g for each patty");
  assert_has (text, fm_caution_text ());
  assert_has (text, "USDA National Nutrient Database");
}

/* The plates of all passes, unless the sheet is made for other passes than the version plans. */
static void
test_process_as_steps (void)
{
  g_autoptr (FmFormula) formula = new_formula ();
  FmBatchSheetInput input = input_for (formula);
  const double plates_mm[] = { 10.0, 4.5 };
  g_autoptr (FmBatchSheet) sheet = NULL;
  g_autoptr (FmBatchSheet) other = NULL;
  g_autofree char *text = NULL;
  g_autofree char *other_text = NULL;

  fm_process_set_plates (formula->process, plates_mm, G_N_ELEMENTS (plates_mm));
  fm_process_add_seasoning (formula->process, "Pepper", FM_SEASON_AT_THE_TURN, TRUE);
  fm_process_set_words (formula->process, FM_PROCESS_STEPS, "Press once.\nTurn once.");
  formula->process->numbers[FM_PROCESS_SIDE_1] = 2.5;
  sheet = fm_batch_sheet_new (formula, &input, NULL);
  text = plain_text (sheet);
  assert_has (text, "Grind through the plates 10.0 mm, then 4.5 mm");
  assert_has (text, "Season. Pepper: at the turn, on the surface.");
  assert_has (text, "First side: 2.50 min.");
  assert_has (text, "Press once.\nTurn once.\n");

  input.grind_passes = 1;
  other = fm_batch_sheet_new (formula, &input, NULL);
  other_text = plain_text (other);
  assert_has (other_text, "4.5 mm plate, 1 pass");
}

static void
test_not_stated_is_never_none (void)
{
  g_autoptr (FmFormula) formula = new_formula ();
  FmBatchSheetInput input = input_for (formula);
  g_autoptr (FmBatchSheet) sheet = fm_batch_sheet_new (formula, &input, NULL);
  g_autofree char *text = plain_text (sheet);

  assert_has (text, "Not stated: Chuck\n");
  assert_has (text, "Backfat: Milk\n");
  assert_has (text, "Check the label of each supplier.");
  assert_has (text, "Local rules decide");
}

/* A sheet for turkey names the figure for poultry beside the general caution. */
static void
test_turkey_figure (void)
{
  g_autoptr (FmFormula) formula = new_formula ();
  FmBatchSheetInput input = input_for (formula);

  input.food.species = FM_SPECIES_BIT (FM_SPECIES_TURKEY);
  g_autoptr (FmBatchSheet) sheet = fm_batch_sheet_new (formula, &input, NULL);
  g_autofree char *text = plain_text (sheet);
  assert_has (text, "The figure that rules for this blend: 73.9");
  assert_has (text, "USDA FSIS consumer chart, ground poultry.");
}

static void
test_unknowns_stay_unknown (void)
{
  g_autoptr (FmFormula) formula = new_formula ();
  FmBatchSheetInput input = input_for (formula);
  g_autoptr (FmIngredient) chuck = fm_ingredient_copy (fm_formula_line (formula, 0)->ingredient);
  g_autoptr (FmIngredient) fat = fm_ingredient_copy (fm_formula_line (formula, 1)->ingredient);

  chuck->price_per_kg = NAN;
  fm_formula_set_ingredient (formula, 0, chuck);
  fat->price_per_kg = 4.0;
  fm_formula_set_ingredient (formula, 1, fat);
  input.plan.cook_yield_pct = NAN;
  input.food.fat_pct = NAN;
  input.plan.salt_pct = NAN;
  input.plate_mm = input.meat_temp_c = input.salt_minutes_before = NAN;
  g_autoptr (FmBatchSheet) sheet = fm_batch_sheet_new (formula, &input, NULL);
  g_autofree char *text = plain_text (sheet);
  /* The fat alone: 1.50 for 10 patties. */
  assert_has (text, "Chuck; 80.0 %; 1500.0 g; 1880 g; —");
  assert_has (text, "Into the grinder; 1875.0 g; 2260 g; at least €1.50");
  assert_has (text, "per raw patty at least €0.15, per cooked patty at least €0.15, "
                    "per 100 g cooked not known. Without a price: Chuck\n");
  assert_has (text, "Cooked values need the fat of every ingredient");
  assert_has (text, "plate not planned");
  g_assert_null (strstr (text, "nan"));
}

/* A total that a cook adds up with a pencil is the total on the paper. */
static void
test_columns_add_up (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  double sum_g = 0.0, sum_pct = 0.0, sum_cost = 0.0;

  for (guint i = 0; i < 7; i++) {
    g_autoptr (FmIngredient) cut = fm_ingredient_new ("Cut", FM_INGREDIENT_CUT);

    cut->price_per_kg = 7.777 + i;
    fm_formula_add (formula, cut, 100.0 + i / 7.0);
  }
  FmBatchSheetInput input = input_for (formula);
  g_autoptr (FmBatchSheet) sheet = fm_batch_sheet_new (formula, &input, NULL);
  for (guint i = 0; i < sheet->rows->len; i++) {
    const FmSheetRow *row = g_ptr_array_index (sheet->rows, i);

    if (row->kind == FM_SHEET_TOTAL && g_str_equal (row->cells[0], "Into the grinder")) {
      g_assert_cmpfloat_with_epsilon (g_ascii_strtod (row->cells[2], NULL), sum_g, 1e-6);
      g_assert_cmpfloat_with_epsilon (
          g_ascii_strtod (row->cells[4] + strlen (input.currency), NULL), sum_cost, 1e-6);
      g_assert_cmpfloat_with_epsilon (sum_pct, 100.0, 1e-6);
      return;
    }
    if (row->kind != FM_SHEET_INGREDIENT)
      continue;
    sum_pct += g_ascii_strtod (row->cells[1], NULL);
    sum_g += g_ascii_strtod (row->cells[2], NULL);
    sum_cost += g_ascii_strtod (row->cells[4] + strlen (input.currency), NULL);
  }
  g_assert_not_reached ();
}

static void
test_no_price_at_all (void)
{
  g_autoptr (FmFormula) formula = new_formula ();
  FmBatchSheetInput input = input_for (formula);

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    g_autoptr (FmIngredient) copy = fm_ingredient_copy (fm_formula_line (formula, i)->ingredient);

    copy->price_per_kg = NAN;
    fm_formula_set_ingredient (formula, i, copy);
  }
  input.plan.salt_price_per_kg = NAN;
  g_autoptr (FmBatchSheet) sheet = fm_batch_sheet_new (formula, &input, NULL);
  g_assert_cmpstr (sheet->costs, ==,
                   "Cost per raw patty not known, per cooked patty not known, per 100 g cooked "
                   "not known. Without a price: Chuck; Backfat; salt on the surface");
}

static void
test_empty_blend (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  FmBatchSheetInput input = input_for (formula);
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_batch_sheet_new (formula, &input, &error));
  g_assert_nonnull (error);
}

static guint
count_pages (const FmBatchSheet *sheet)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  g_autoptr (FmSheetLayout) layout =
      fm_sheet_layout_new (sheet, cr, FM_A4_WIDTH_PT, FM_A4_HEIGHT_PT);

  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return fm_sheet_layout_n_pages (layout);
}

static void
test_many_lines_go_on (void)
{
  g_autoptr (FmFormula) formula = new_formula ();
  FmBatchSheetInput input = input_for (formula);

  for (guint i = 0; i < 100; i++) {
    g_autofree char *name = g_strdup_printf ("Trim number %u", i);
    g_autoptr (FmIngredient) trim = fm_ingredient_new (name, FM_INGREDIENT_TRIM);

    fm_formula_add (formula, trim, 100.0);
  }
  g_autoptr (FmBatchSheet) sheet = fm_batch_sheet_new (formula, &input, NULL);
  g_assert_cmpuint (count_pages (sheet), >, 1);
  g_assert_cmpuint (count_pages (sheet), <, 6);
}

/* Text of the PDF with all white space as single blanks; NULL without pdftotext. */
static char *
pdf_text (GBytes *pdf)
{
  g_autofree char *program = g_find_program_in_path ("pdftotext");
  g_autofree char *path = g_build_filename (g_get_tmp_dir (), "fm-sheet-XXXXXX", NULL);
  g_autofree char *text = NULL;
  const char *const argv[] = { "pdftotext", "-layout", path, "-", NULL };
  g_autoptr (GError) error = NULL;

  if (program == NULL)
    return NULL;
  g_close (g_mkstemp (path), NULL);
  g_file_set_contents (path, g_bytes_get_data (pdf, NULL), (gssize)g_bytes_get_size (pdf), &error);
  g_assert_no_error (error);
  g_spawn_sync (NULL, (char **)argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &text, NULL, NULL,
                &error);
  g_assert_no_error (error);
  g_unlink (path);
  g_autoptr (GRegex) blanks = g_regex_new ("[\\s\u00a0]+", 0, 0, NULL);
  return g_regex_replace_literal (blanks, text, -1, 0, " ", 0, NULL);
}

static void
check_demo_sheet (const FmFormula *formula)
{
  FmBatchSheetInput input = input_for (formula);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmBatch) batch = fm_batch_new (formula, &input.plan, &error);
  g_autoptr (FmBatchSheet) sheet = fm_batch_sheet_new (formula, &input, &error);

  g_assert_no_error (error);
  g_autoptr (GBytes) pdf = fm_batch_sheet_to_pdf (sheet, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (count_pages (sheet), ==, 1);
  g_autofree char *text = pdf_text (pdf);
  if (text == NULL) {
    g_test_skip ("pdftotext (poppler-utils) is not installed");
    return;
  }
  for (guint i = 0; i < batch->lines->len; i++) {
    g_autofree char *grams =
        g_strdup_printf ("%.0f g", g_array_index (batch->lines, FmBatchLine, i).bought_g);

    assert_has (text, grams);
  }
}

static void
test_demo_blends_fit_one_page (void)
{
  g_autofree char *foods_path = fm_food_store_default_path ();
  g_autofree char *folder = g_dir_make_tmp ("fm-sheet-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "demo.forcemeat", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmFoodStore) foods = fm_food_store_open (foods_path, &error);

  if (foods == NULL) {
    g_test_skip ("the food data are not built");
    return;
  }
  FmNotebook *notebook = fm_demo_create (path, foods, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (GPtrArray) blends = fm_blends_list (notebook, &error);
  for (guint i = 0; i < blends->len; i++) {
    const FmBlendInfo *blend = g_ptr_array_index (blends, i);
    g_autoptr (FmFormula) formula = fm_draft_load (notebook, blend->id, NULL, &error);

    g_assert_no_error (error);
    check_demo_sheet (formula);
  }
  fm_notebook_unref (notebook);
  g_unlink (path);
  g_rmdir (folder);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/batch-sheet/grams-and-costs", test_grams_and_costs);
  g_test_add_func ("/batch-sheet/process-as-steps", test_process_as_steps);
  g_test_add_func ("/batch-sheet/not-stated-is-never-none", test_not_stated_is_never_none);
  g_test_add_func ("/batch-sheet/turkey-figure", test_turkey_figure);
  g_test_add_func ("/batch-sheet/unknowns-stay-unknown", test_unknowns_stay_unknown);
  g_test_add_func ("/batch-sheet/columns-add-up", test_columns_add_up);
  g_test_add_func ("/batch-sheet/no-price-at-all", test_no_price_at_all);
  g_test_add_func ("/batch-sheet/empty-blend", test_empty_blend);
  g_test_add_func ("/batch-sheet/many-lines-go-on", test_many_lines_go_on);
  g_test_add_func ("/batch-sheet/demo-blends-fit-one-page", test_demo_blends_fit_one_page);
  return g_test_run ();
}
