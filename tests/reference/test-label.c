/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-label.c - labels and claims against panels worked out apart from the program
 *
 * Inputs are rows of USDA SR28; the rules those named in each table's first line.
 */
#include <math.h>
#include <string.h>

#include "core/label/fm-claim.h"
#include "core/label/fm-label-panel.h"
#include "store/fm-food-store.h"
#include "table.h"

static const struct {
  const char *name;
  FmLabelItem item;
  FmNutrient nutrient;
} names[] = {
  { "calories", FM_LABEL_ITEM_CALORIES, FM_NUTRIENT_ENERGY_KCAL },
  { "total_fat", FM_LABEL_ITEM_TOTAL_FAT, FM_NUTRIENT_FAT },
  { "cholesterol", FM_LABEL_ITEM_CHOLESTEROL, FM_NUTRIENT_CHOLESTEROL },
  { "sodium", FM_LABEL_ITEM_SODIUM, FM_NUTRIENT_SODIUM },
  { "total_carbohydrate", FM_LABEL_ITEM_CARBOHYDRATE, FM_NUTRIENT_CARBOHYDRATE },
  { "dietary_fibre", FM_LABEL_ITEM_FIBRE, FM_NUTRIENT_FIBRE },
  { "total_sugars", FM_LABEL_ITEM_SUGARS, FM_NUTRIENT_SUGARS },
  { "protein", FM_LABEL_ITEM_PROTEIN, FM_NUTRIENT_PROTEIN },
  { "calcium", FM_LABEL_ITEM_CALCIUM, FM_NUTRIENT_CALCIUM },
  { "iron", FM_LABEL_ITEM_IRON, FM_NUTRIENT_IRON },
  { "potassium", FM_LABEL_ITEM_POTASSIUM, FM_NUTRIENT_POTASSIUM },
  { "energy_kj", FM_LABEL_ITEM_ENERGY_KJ, FM_NUTRIENT_NONE },
  { "energy_kcal", FM_LABEL_ITEM_ENERGY_KCAL, FM_NUTRIENT_NONE },
  { "fat", FM_LABEL_ITEM_TOTAL_FAT, FM_NUTRIENT_FAT },
  { "saturates", FM_LABEL_ITEM_SATURATED_FAT, FM_NUTRIENT_SATURATED_FAT },
  { "carbohydrate", FM_LABEL_ITEM_AVAILABLE_CARBOHYDRATE, FM_NUTRIENT_CARBOHYDRATE },
  { "sugars", FM_LABEL_ITEM_SUGARS, FM_NUTRIENT_SUGARS },
  { "salt", FM_LABEL_ITEM_SALT, FM_NUTRIENT_NONE },
};

static guint
find_name (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (strcmp (names[i].name, name) == 0)
      return i;
  g_assert_not_reached ();
}

static const FmLabelRow *
find_row (FmLabelSetId set, FmLabelItem item)
{
  for (guint i = 0; i < fm_n_label_rows; i++)
    if (fm_label_rows[i].set == set && fm_label_rows[i].item == item)
      return &fm_label_rows[i];
  g_assert_not_reached ();
}

/* "0 or <0.5" allows two texts; "less than 5" is told with and without its unit. */
static void
assert_text (const char *text, const char *expected)
{
  g_auto (GStrv) allowed = g_strsplit (expected, " or ", 0);

  if (!g_strv_contains ((const char *const *)allowed, text))
    g_error ("shown %s, expected %s", text, expected);
}

static void
test_edges (void)
{
  g_autoptr (GPtrArray) rows = read_table ("label_rounding_edges.tsv", "\t");

  for (guint i = 0; i < rows->len; i++) {
    const gboolean us = strcmp (cell (rows, i, 0), "US") == 0;
    const FmLabelItem item = names[find_name (cell (rows, i, 1))].item;
    const FmLabelRow *row = find_row (us ? FM_LABEL_US_RETAIL : FM_LABEL_EU, item);
    const double amount = number (rows, i, 2);
    const FmLabelFigure figure = fm_label_round (row->rounding, amount);
    const double distance = fm_label_edge_distance (&figure, amount);

    assert_text (figure.text, cell (rows, i, 3));
    g_assert_true (isnan (distance) || distance >= -1e-9);
  }
}

static FmFormula *
new_blend (FmIngredient *ingredient)
{
  FmFormula *formula = fm_formula_new ();

  fm_formula_add (formula, ingredient, 1000.0);
  return formula;
}

/* One food of the American table: what the dataset does not tell is stated. */
static FmLabelPanel *
american_panel (const GPtrArray *rows, guint first)
{
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new ("Food", FM_INGREDIENT_CUT);
  g_autoptr (GError) error = NULL;
  const FmLabelInput input = { FM_LABEL_US_RETAIL, number (rows, first, 2), NAN, FALSE };
  FmLabelStated stated;

  fm_label_stated_init (&stated);
  for (int i = 0; i < FM_N_LABEL_ITEMS; i++)
    stated.per_100g[i] = 0.0;
  for (guint i = first; i < rows->len && strcmp (cell (rows, i, 0), cell (rows, first, 0)) == 0;
       i++)
    ingredient->composition.per_100g[names[find_name (cell (rows, i, 3))].nutrient] =
        number (rows, i, 4);
  g_autoptr (FmFormula) formula = new_blend (ingredient);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  FmLabelPanel *panel = fm_label_panel_new (formula, analysis, &input, &stated, &error);
  g_assert_no_error (error);
  return panel;
}

static void
test_american_panels (void)
{
  g_autoptr (GPtrArray) rows = read_table ("label_panels_us.tsv", "\t");

  for (guint i = 0; i < rows->len; i++) {
    guint first = i;

    while (first > 0 && strcmp (cell (rows, first - 1, 0), cell (rows, i, 0)) == 0)
      first--;
    g_autoptr (FmLabelPanel) panel = american_panel (rows, first);
    const FmLabelLine *line =
        fm_label_panel_line (panel, names[find_name (cell (rows, i, 3))].item);
    assert_text (line->figure.text, cell (rows, i, 6));
    if (*cell (rows, i, 5) != '\0')
      g_assert_cmpstr (line->share.text, ==, cell (rows, i, 5));
  }
}

static double
find_number (const GPtrArray *rows, const char *name, const char *item)
{
  for (guint i = 0; i < rows->len; i++)
    if (strcmp (cell (rows, i, 0), name) == 0 && strcmp (cell (rows, i, 2), item) == 0)
      return number (rows, i, 3);
  g_assert_not_reached ();
}

static FmLabelPanel *
european_panel (const GPtrArray *rows, const char *name)
{
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new ("Food", FM_INGREDIENT_CUT);
  const FmLabelInput input = { FM_LABEL_EU, 150.0, NAN, FALSE };
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (i >= find_name ("fat") && names[i].nutrient != FM_NUTRIENT_NONE)
      ingredient->composition.per_100g[names[i].nutrient] = find_number (rows, name, names[i].name);
  ingredient->composition.per_100g[FM_NUTRIENT_PROTEIN] = find_number (rows, name, "protein");
  ingredient->composition.per_100g[FM_NUTRIENT_FIBRE] = 0.0;
  ingredient->composition.per_100g[FM_NUTRIENT_SODIUM] =
      find_number (rows, name, "salt") * 1000.0 / 2.5;
  g_autoptr (FmFormula) formula = new_blend (ingredient);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  FmLabelPanel *panel = fm_label_panel_new (formula, analysis, &input, NULL, &error);
  g_assert_no_error (error);
  return panel;
}

static void
test_european_panels (void)
{
  g_autoptr (GPtrArray) rows = read_table ("label_panels_eu.tsv", "\t");

  for (guint i = 0; i < rows->len; i++) {
    g_autoptr (FmLabelPanel) panel = european_panel (rows, cell (rows, i, 0));
    const FmLabelLine *line =
        fm_label_panel_line (panel, names[find_name (cell (rows, i, 2))].item);

    g_assert_cmpfloat_with_epsilon (line->amount, number (rows, i, 3), 6e-3);
    assert_text (line->figure.text, cell (rows, i, 4));
    g_assert_cmpfloat_with_epsilon (line->portion_amount, line->amount * 1.5, 1e-9);
  }
}

/* FDA, Guide to Nutrition Labeling and Education Act Requirements, attachment 6: S11 to S13. */
static void
test_servings (void)
{
  gboolean is_about;

  g_assert_cmpfloat (fm_label_servings (454.0, 112.0, &is_about), ==, 4.0);
  g_assert_true (is_about);
  g_assert_cmpfloat (fm_label_servings (500.0, 112.0, &is_about), ==, 4.5);
  g_assert_cmpfloat (fm_label_servings (907.0, 112.0, &is_about), ==, 8.0);
  g_assert_cmpfloat (fm_label_servings (448.0, 112.0, &is_about), ==, 4.0);
  g_assert_false (is_about);
  g_assert_cmpint (fm_label_serving_units (57.0, 114.0), ==, FM_SERVING_SEVERAL);
  g_assert_cmpint (fm_label_serving_units (70.0, 114.0), ==, FM_SERVING_ONE_OR_TWO);
  g_assert_cmpint (fm_label_serving_units (77.0, 114.0), ==, FM_SERVING_ONE);
  g_assert_cmpint (fm_label_serving_units (228.0, 114.0), ==, FM_SERVING_ONE_IF_EATEN_AT_ONCE);
}

/* 21 CFR 101.9(c)(7)(ii); printed on milk (16 %) and on peanuts (7 %). */
static void
test_protein_share (void)
{
  static const struct {
    double protein_g, score;
    const char *text;
  } cases[] = { { 19.23, 0.92, "35" }, { 22.4, 0.92, "41" }, { 24.62, 1.0, "49" },
                { 8.0, 1.0, "16" },    { 7.0, 0.52, "7" },   { 10.0, 1.15, "20" } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    const double pct = fm_label_protein_share_pct (cases[i].protein_g, cases[i].score);

    g_assert_cmpstr (fm_label_round (FM_ROUNDING_DV_MACRO, pct).text, ==, cases[i].text);
  }
}

/* 21 CFR 101.9(c)(1)(i)(B), and pairs that others printed: 4 oz of 80/20 and of 85/15 beef. */
static void
test_calories (void)
{
  g_assert_cmpfloat_with_epsilon (fm_label_general_kcal (19.0, 0.0, 28.0), 328.0, 1e-9);
  g_assert_cmpstr (fm_label_round (FM_ROUNDING_ENERGY, 328.0).text, ==, "330");
  g_assert_cmpstr (fm_label_round (FM_ROUNDING_ENERGY, 234.5).text, ==, "230");
  g_assert_cmpstr (fm_label_round (FM_ROUNDING_ENERGY, 240.4).text, ==, "240");
  g_assert_cmpfloat_with_epsilon (fm_label_general_kcal (20.98, 0.0, 9.34), 168.0, 0.05);
  g_assert_cmpstr (fm_label_round (FM_ROUNDING_ENERGY, 287.0).text, ==, "290");
  g_assert_cmpstr (fm_label_round (FM_ROUNDING_FAT, 22.6).text, ==, "23");
  g_assert_cmpstr (fm_label_round (FM_ROUNDING_ENERGY, 33.0).text, ==, "35");
  g_assert_cmpstr (fm_label_round (FM_ROUNDING_DV_MACRO, 2.49).text, ==, "2");
}

static const char *
better_claim (const FmClaimInput *input, const char *best, const char *second)
{
  if (fm_claim_state (best, input) == FM_CLAIM_MET)
    return best;
  return fm_claim_state (second, input) == FM_CLAIM_MET ? second : "none";
}

static void
assert_claim (const FmClaimInput *input, const char *claim, const char *expected)
{
  const FmClaimState state = fm_claim_state (claim, input);

  g_assert_cmpstr (state == FM_CLAIM_MET ? "yes" : "no", ==, expected);
  g_assert_cmpint (state, !=, FM_CLAIM_NOT_KNOWN);
}

static void
check_claims (const GPtrArray *rows, guint i, const FmFormula *formula)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  const FmClaimInput meat = { FM_LABEL_US_MEAT, formula, analysis, NULL };
  const FmClaimInput retail = { FM_LABEL_US_RETAIL, formula, analysis, NULL };
  const FmClaimInput eu = { FM_LABEL_EU, formula, analysis, NULL };

  g_assert_cmpstr (better_claim (&meat, "extra lean", "lean"), ==, cell (rows, i, 5));
  assert_claim (&meat, "low fat", cell (rows, i, 6));
  assert_claim (&retail, "low sodium", cell (rows, i, 7));
  assert_claim (&eu, "low fat", cell (rows, i, 8));
  g_assert_cmpstr (better_claim (&eu, "high protein", "source of protein"), ==, cell (rows, i, 9));
  assert_claim (&eu, "low salt", cell (rows, i, 10));
}

/* The foods themselves out of the dataset; where it lacks fibre or carbohydrate, meat has none. */
static void
test_claims (void)
{
  g_autoptr (GPtrArray) rows = read_table ("claim_cases.tsv", "\t");
  g_autoptr (GError) error = NULL;
  g_autoptr (FmFoodStore) foods = fm_food_store_open (BUILDDIR "/data/sr28.db", &error);

  g_assert_no_error (error);
  for (guint i = 0; i < rows->len; i++) {
    g_autoptr (FmFood) food = fm_food_store_get (foods, cell (rows, i, 0), &error);
    g_autoptr (FmIngredient) ingredient = NULL;

    g_assert_no_error (error);
    ingredient = fm_ingredient_new_from_food (food);
    g_assert_cmpfloat_with_epsilon (fm_ingredient_fat_g_per_100g (ingredient), number (rows, i, 1),
                                    1e-9);
    g_autoptr (FmFormula) formula = new_blend (ingredient);
    check_claims (rows, i, formula);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/label/rounding-edges", test_edges);
  g_test_add_func ("/label/american-panels-of-sr28", test_american_panels);
  g_test_add_func ("/label/european-panels-of-sr28", test_european_panels);
  g_test_add_func ("/label/servings-fda-nlea-attachment-6", test_servings);
  g_test_add_func ("/label/protein-share", test_protein_share);
  g_test_add_func ("/label/calories", test_calories);
  g_test_add_func ("/label/claims-of-sr28-meats", test_claims);
  return g_test_run ();
}
