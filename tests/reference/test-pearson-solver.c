/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-pearson-solver.c - squares, least-cost blends and edible yields of published cases
 *
 * P1 Meat Calculations slide deck, FFA meats contest training (slideplayer.com 7660647): numbers
 *    read, answer computed. P2 sausage making forum, 2007: read. P3, P4 US sausage blog
 *    (kosherdosher.blogspot.com): read. P5 US barbecue forum article (amazingribs.com): read.
 * B1 Sullivan, Algebra and Trigonometry, 11th ed., chapter 12 problem 25: problem read, answer
 *    computed. B2 the same with older prices, study site: read. B4 = P1 with prices.
 * C1-C3 Trade Calculations, Yield and Cost of Edible Product (Canadian cook training, 2007):
 *    figures read, answers of C2 and C3 computed.
 */
#include "core/batch/fm-batch.h"
#include "core/targets/fm-pearson.h"
#include "core/targets/fm-targets.h"
#include "core/base/fm-units.h"

#include "../core/blends.h"

typedef struct {
  const char *path;
  double a_pct, b_pct, target_pct, a_parts, b_parts, a, b, tolerance;
} PearsonCase;

static const PearsonCase pearson_cases[] = {
  { "P1-computed", 10, 25, 20, 5, 10, 333.3, 666.7, 0.1 },
  { "P2-read", 30, 12, 20, 8, 10, 8, 10, 1e-9 },
  { "P3-read", 0, 100, 40, 60, 40, 14, 9.33, 0.005 },
  { "P4-read", 0, 100, 35, 65, 35, 1754, 944.46, 0.005 },
  { "P5-read", 0, 100, 30, 70, 30, 16, 6.9, 0.05 },
};

static FmTargets *
two (const double *fat, const double *price, double total_g, FmBand band)
{
  FmTargets *targets = fm_targets_new (total_g);
  for (int i = 0; i < 2; i++) {
    g_autoptr (FmIngredient) ingredient = ingredient_with_fat (i ? "B" : "A", fat[i]);
    ingredient->price_per_kg = price[i];
    fm_targets_add_candidate (targets, ingredient);
  }
  fm_targets_add_nutrient (targets, FM_NUTRIENT_FAT, band);
  return targets;
}

/* The square and the linear program must give the same blend, and that of the source. */
static void
test_pearson (gconstpointer data)
{
  const PearsonCase *given = data;
  FmPearson square;
  g_assert_true (fm_pearson_init (&square, given->a_pct, given->b_pct, given->target_pct, NULL));
  assert_near (square.a_parts, given->a_parts, 1e-9);
  assert_near (square.b_parts, given->b_parts, 1e-9);
  assert_near (fm_pearson_b_for_a (&square, given->a), given->b, given->tolerance);

  const double fat[] = { given->a_pct, given->b_pct };
  const double price[] = { 1.0, 2.0 };
  FmBand band = { given->target_pct, given->target_pct };
  g_autoptr (FmTargets) targets = two (fat, price, 1000.0, band);
  g_autoptr (FmTargetsResult) result = fm_targets_solve (targets, NULL);
  assert_near (result->share_pct[0], square.a_share_pct, 1e-9);
  assert_near (result->share_pct[1], square.b_share_pct, 1e-9);
}

static void
check_cost (const double *fat,
            const double *price_per_lb,
            double total_lb,
            double max_fat_pct,
            double min_b_lb,
            const double *amount_lb,
            double cost)
{
  const double price[] = { price_per_lb[0] * 1000.0 / FM_G_PER_LB,
                           price_per_lb[1] * 1000.0 / FM_G_PER_LB };
  g_autoptr (FmTargets) targets =
      two (fat, price, total_lb * FM_G_PER_LB, (FmBand){ NAN, max_fat_pct });
  FmCandidate *b = g_ptr_array_index (targets->candidates, 1);
  b->min_share_pct = min_b_lb / total_lb * 100.0;
  g_autoptr (FmTargetsResult) result = fm_targets_solve (targets, NULL);
  g_assert_true (result->met);
  for (int i = 0; i < 2; i++)
    assert_near (result->mass_g[i] / FM_G_PER_LB, amount_lb[i], 0.05);
  assert_near (result->cost_per_kg * result->total_g / 1000.0, cost, 0.005);
}

static void
test_least_cost (void)
{
  const double fat[] = { 25, 40 };
  const double b1[] = { 2.25, 1.35 }, b1_lb[] = { 120, 60 };
  const double b2[] = { 0.75, 0.45 }, b2_lb[] = { 100, 50 };
  check_cost (fat, b1, 180, 30, 50, b1_lb, 351.00);
  check_cost (fat, b2, 150, 30, 50, b2_lb, 97.50);
  const double b4_fat[] = { 10, 25 }, b4[] = { 0.99, 0.79 }, b4_lb[] = { 333.3, 666.7 };
  check_cost (b4_fat, b4, 1000, 20, 0, b4_lb, 856.67);
}

static void
test_edible_yield (void)
{
  assert_near (4.6 / 5.2 * 100.0, 88.5, 0.05);
  assert_near (fm_batch_edible_g (1000.0, 88.5), 885.0, 1e-9);
  assert_near (fm_batch_purchased_g (85 * 170.0, 88.5), 16330.0, 5.0);
  g_autoptr (FmIngredient) striploin = ingredient_with_fat ("Striploin", 10.0);
  striploin->price_per_kg = 11.95;
  striploin->ep_yield_pct = 88.5;
  assert_near (fm_ingredient_edible_price_per_kg (striploin), 13.50, 0.005);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (pearson_cases); i++) {
    g_autofree char *path = g_strdup_printf ("/pearson-solver/%s", pearson_cases[i].path);
    g_test_add_data_func (path, &pearson_cases[i], test_pearson);
  }
  g_test_add_func ("/least-cost/B1-B2-B4", test_least_cost);
  g_test_add_func ("/edible-yield/C1-C3", test_edible_yield);
  return g_test_run ();
}
