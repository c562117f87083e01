/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-shopping.c - what to buy for several batches together */
#include "core/batch/fm-shopping.h"

#include "blends.h"
#include "core/base/fm-error.h"

static void
add_order (GArray *orders, const FmFormula *formula, int n_patties, double patty_mass_g)
{
  FmShoppingOrder order = { .formula = formula };

  fm_batch_plan_init (&order.plan, formula->brief);
  order.plan.n_patties = n_patties;
  order.plan.patty_mass_g = patty_mass_g;
  g_array_append_val (orders, order);
}

static const FmShoppingItem *
get_item (const FmShopping *shopping, guint index)
{
  return &g_array_index (shopping->items, FmShoppingItem, index);
}

/* 10 x 100 g and 3 x 45 g of the blend: 500 + 67.5 g lean; the sum alone is rounded up. */
static void
test_sum (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_autoptr (GArray) orders = g_array_new (FALSE, FALSE, sizeof (FmShoppingOrder));
  g_autoptr (GHashTable) suppliers = g_hash_table_new (g_str_hash, g_str_equal);
  FmIngredient *plate = fm_formula_line (formula, 1)->ingredient;

  fm_formula_line (formula, 0)->ingredient->price_per_kg = 10.0;
  plate->ep_yield_pct = 75.0;
  g_hash_table_insert (suppliers, (gpointer)fm_ingredient_identity (plate),
                       (gpointer) "Butcher (invented)");
  add_order (orders, formula, 10, 100.0);
  add_order (orders, formula, 3, 45.0);
  g_autoptr (FmShopping) shopping = fm_shopping_new (orders, suppliers, 10.0, NULL);
  g_assert_cmpuint (shopping->items->len, ==, 3);
  const FmShoppingItem *first = get_item (shopping, 0), *lean = get_item (shopping, 2);
  g_assert_cmpstr (first->supplier, ==, (gpointer) "Butcher (invented)");
  assert_near (first->purchased_g, 340.5 / 0.75, 1e-9);
  assert_near (first->bought_g, 460.0, 1e-9);
  g_assert_false (first->yield_assumed);
  g_assert_true (isnan (first->cost));
  g_assert_cmpstr (lean->ingredient->name, ==, "Lean");
  g_assert_null (lean->supplier);
  assert_near (lean->purchased_g, 567.5, 1e-9);
  assert_near (lean->bought_g, 570.0, 1e-9);
  assert_near (lean->cost, 5.675, 1e-9);
  assert_near (shopping->cost, 5.675, 1e-9);
  g_assert_false (shopping->is_cost_whole);
}

static void
test_nothing (void)
{
  g_autoptr (GArray) orders = g_array_new (FALSE, FALSE, sizeof (FmShoppingOrder));
  g_autoptr (GError) error = NULL;

  g_assert_null (fm_shopping_new (orders, NULL, 10.0, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/shopping/sum", test_sum);
  g_test_add_func ("/shopping/nothing", test_nothing);
  return g_test_run ();
}
