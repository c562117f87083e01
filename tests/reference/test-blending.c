/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-blending.c - blends, conversions and costs against published cases
 *
 * Each table names its source. Mark "read" means that the figure was read in that document,
 * "computed" that the document poses the question without printing the answer, "memory" that the
 * figure is known but the document was not at hand.
 */
#include "core/formula/fm-analysis.h"
#include "core/base/fm-units.h"

#include "../core/blends.h"

/* Pearson square: parts of a leaner and a fatter meat that reach a fat target.
 * P1 Meat Calculations slide deck, FFA meats contest training (slideplayer.com 7660647): figures
 *    read, the deck leaves the answer blank, parts computed.
 * P2 sausage making forum post, 2007: read; 8 parts pork belly to 10 parts beef.
 * P3 US sausage blog (kosherdosher.blogspot.com), lean plus pure fat: read.
 * P4 the same blog, duck: read; the page prints a total of 2694.46 g, the true sum is 2698.46 g.
 * P5 US barbecue forum article (amazingribs.com): read; rounded there to 6.9 lb of fat.
 */
typedef struct {
  const char *path;
  double fat_a_pct, fat_b_pct, target_fat_pct;
  double parts_a, parts_b;
  double amount_a, amount_b;
  double amount_tolerance; /* half a unit of the last place printed */
} PearsonCase;

static const PearsonCase pearson_cases[] = {
  { "P1-meat-calculations-deck-computed", 10, 25, 20, 5, 10, 333.3, 666.7, 0.05 },
  { "P2-sausage-forum-2007-read", 30, 12, 20, 8, 10, 8, 10, 1e-9 },
  { "P3-sausage-blog-read", 0, 100, 40, 60, 40, 14, 9.33, 0.005 },
  { "P4-sausage-blog-duck-read", 0, 100, 35, 65, 35, 1754, 944.46, 0.005 },
  { "P5-barbecue-forum-read", 0, 100, 30, 70, 30, 16, 6.9, 0.05 },
};

static void
test_pearson (gconstpointer data)
{
  const PearsonCase *given = data;
  g_autoptr (FmFormula) formula = fm_formula_new ();
  add_line (formula, "A", given->fat_a_pct, given->parts_a);
  add_line (formula, "B", given->fat_b_pct, given->parts_b);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  assert_near (analysis->fat_pct, given->target_fat_pct, 1e-9);

  /* The same blend, scaled to the batch that the source asks for. */
  double batch = given->amount_a / given->parts_a * (given->parts_a + given->parts_b);
  g_assert_true (fm_formula_scale_to (formula, batch, NULL));
  assert_near (mass_of (formula, 1), given->amount_b,
               given->amount_tolerance * (1.0 + given->parts_b / given->parts_a));
}

/* Cost-minimising blends: the published amounts must cost what the source says and be as lean.
 * B1 Sullivan, Algebra and Trigonometry, 11th ed., chapter 12 problem 25: problem read, answer
 *    computed. B2 the same problem with older prices, solved on a study site: read.
 * B3 algebra.com question 1148051: amounts read, cost computed; fat content not given there.
 * B4 Meat Calculations slide deck, example 1: numbers read, answer computed; per 1000 lb.
 */
typedef struct {
  const char *path;
  double mass_per_unit_g; /* lb or kg */
  double amounts[3];
  double prices[3]; /* per that unit */
  double lean_pct[3];
  double cost;
  double blend_lean_pct; /* NaN = not part of the problem */
  double cost_tolerance;
} CostCase;

static const CostCase cost_cases[] = {
  { "B1-sullivan-12-25-computed",
    FM_G_PER_LB,
    { 120, 60, 0 },
    { 2.25, 1.35, 0 },
    { 75, 60, 0 },
    351.00,
    70,
    1e-6 },
  { "B2-study-site-read",
    FM_G_PER_LB,
    { 100, 50, 0 },
    { 0.75, 0.45, 0 },
    { 75, 60, 0 },
    97.50,
    70,
    1e-6 },
  { "B3-algebra-com-1148051-computed",
    1000.0,
    { 32, 8, 10 },
    { 6, 4, 2 },
    { NAN, NAN, NAN },
    244.0,
    NAN,
    1e-6 },
  { "B4-meat-calculations-deck-computed",
    FM_G_PER_LB,
    { 333.3, 666.7, 0 },
    { 0.99, 0.79, 0 },
    { 90, 75, 0 },
    856.67,
    80,
    0.02 },
};

static void
test_cost (gconstpointer data)
{
  const CostCase *given = data;
  g_autoptr (FmFormula) formula = fm_formula_new ();
  for (int i = 0; i < 3; i++) {
    if (given->amounts[i] <= 0.0)
      continue;
    guint at = add_line (formula, "Meat", 100.0 - given->lean_pct[i],
                         given->amounts[i] * given->mass_per_unit_g);
    fm_formula_line (formula, at)->ingredient->price_per_kg =
        given->prices[i] / given->mass_per_unit_g * 1000.0;
  }
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  assert_near (analysis->cost_per_kg * analysis->total_g / 1000.0, given->cost,
               given->cost_tolerance);
  if (isnan (given->blend_lean_pct))
    g_assert_true (isnan (analysis->lean_pct));
  else
    assert_near (analysis->lean_pct, given->blend_lean_pct, 0.01);
}

/* Chemical lean = 100 - fat %: AUS-MEAT terms, as an Australian laboratory tells them (read).
 * Lean point: 22 g fat in a 112 g serving is 20 % and so "80/20": consumer page of a large US
 * packer (read).
 */
static void
test_chemical_lean (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  add_line (formula, "Ground beef", 22.0 / 112.0 * 100.0, 112.0);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  g_autofree char *lean_point = fm_lean_point_format (analysis->fat_pct);
  g_assert_cmpstr (lean_point, ==, "80/20");
  assert_near (analysis->lean_pct, 100.0 - 22.0 / 112.0 * 100.0, 1e-9);
  assert_near (analysis->line_fat_g[0], 22.0, 1e-9);
}

/* Read: Regulation (EU) No 1169/2011, Annex I no 10 and 11, Annex VI Part B.
 * Memory: the thermochemical calorie, the international ounce, pound and inch.
 */
static void
test_conversion_constants (void)
{
  g_assert_cmpfloat (FM_PROTEIN_PER_NITROGEN, ==, 6.25);
  g_assert_cmpfloat (FM_SALT_PER_SODIUM, ==, 2.5);
  g_assert_cmpfloat (FM_COLLAGEN_PER_HYDROXYPROLINE, ==, 8.0);
  g_assert_cmpfloat (FM_KJ_PER_KCAL, ==, 4.184);
  g_assert_cmpfloat (FM_G_PER_OZ, ==, 28.349523125);
  g_assert_cmpfloat (FM_G_PER_LB, ==, 453.59237);
  g_assert_cmpfloat (FM_G_PER_OZ * 16.0, ==, FM_G_PER_LB);
  g_assert_cmpfloat (FM_MM_PER_INCH, ==, 25.4);
}

static double
edible_cost_per_kg (double price_per_kg, double ep_yield_pct)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  guint at = add_line (formula, "Striploin", 20.0, 1000.0);
  FmIngredient *striploin = fm_formula_line (formula, at)->ingredient;
  striploin->price_per_kg = price_per_kg;
  striploin->ep_yield_pct = ep_yield_pct;
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  return analysis->cost_per_kg;
}

/* Trade Calculations, Yield and Cost of Edible Product (Canadian cook training, 2007), examples
 * 1 to 3: striploin 5.2 kg as purchased, 4.6 kg edible, 88.5 % (read); $11.95/kg as purchased is
 * $13.51/kg edible, $13.50 with the rounded yield (question read, answer computed); 85 portions
 * of 170 g need 16.33 kg as purchased (question read, answer computed).
 */
static void
test_as_purchased_to_edible (void)
{
  double yield_pct = 4.6 / 5.2 * 100.0;
  assert_near (yield_pct, 88.5, 0.05);
  assert_near (edible_cost_per_kg (11.95, yield_pct), 13.51, 0.005);
  assert_near (edible_cost_per_kg (11.95, 88.5), 13.50, 0.005);
  /* At a price of 1 per kg the edible cost per kg is the purchased mass per edible mass. */
  assert_near (85 * 0.170 * edible_cost_per_kg (1.0, 88.5), 16.33, 0.005);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (pearson_cases); i++) {
    g_autofree char *path = g_strconcat ("/pearson-square/", pearson_cases[i].path, NULL);
    g_test_add_data_func (path, &pearson_cases[i], test_pearson);
  }
  for (gsize i = 0; i < G_N_ELEMENTS (cost_cases); i++) {
    g_autofree char *path = g_strconcat ("/blend-cost/", cost_cases[i].path, NULL);
    g_test_add_data_func (path, &cost_cases[i], test_cost);
  }
  g_test_add_func ("/chemical-lean/AUS-MEAT-and-packer-page-read", test_chemical_lean);
  g_test_add_func ("/conversion/EU-1169-2011-and-exact-units", test_conversion_constants);
  g_test_add_func ("/as-purchased-edible/Trade-Calculations-2007-C1-C3",
                   test_as_purchased_to_edible);
  return g_test_run ();
}
