/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-reprice.c - what a version costs at other prices than its own */
#include "core/batch/fm-reprice.h"

#include "blends.h"

static const FmRepriceLine *
get_line (const FmReprice *reprice, guint index)
{
  return &g_array_index (reprice->lines, FmRepriceLine, index);
}

/* 50 % lean 10 -> 12 a kg, 30 % plate 6 -> 4 at 75 % yield, 20 % backfat of 3 that nobody noted:
 * 5 + 2.4 + 0.6 = 8 then, 6 + 1.6 + 0.6 = 8.2 now. */
static void
test_change (void)
{
  static const double lean_now = 12.0, plate_now = 4.0;
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_autoptr (GHashTable) today = g_hash_table_new (g_str_hash, g_str_equal);
  FmIngredient *lean = fm_formula_line (formula, 0)->ingredient;
  FmIngredient *plate = fm_formula_line (formula, 1)->ingredient;

  lean->price_per_kg = 10.0;
  plate->price_per_kg = 6.0;
  plate->ep_yield_pct = 75.0;
  fm_formula_line (formula, 2)->ingredient->price_per_kg = 3.0;
  g_hash_table_insert (today, (gpointer)fm_ingredient_identity (lean), (gpointer)&lean_now);
  g_hash_table_insert (today, (gpointer)fm_ingredient_identity (plate), (gpointer)&plate_now);
  g_autoptr (FmReprice) reprice = fm_reprice_new (formula, today, NULL);
  assert_near (reprice->then, 8.0, 1e-9);
  assert_near (reprice->now, 8.2, 1e-9);
  assert_near (reprice->change, 0.2, 1e-9);
  g_assert_true (reprice->is_whole);
  g_assert_cmpstr (get_line (reprice, 0)->ingredient->name, ==, "Lean");
  assert_near (get_line (reprice, 1)->change, -0.8, 1e-9);
  g_assert_true (get_line (reprice, 2)->is_own_price);
}

/* A price on one side only is no change, and the sum says that it is not whole. */
static void
test_unknown (void)
{
  static const double lean_now = 12.0;
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_autoptr (GHashTable) today = g_hash_table_new (g_str_hash, g_str_equal);

  g_hash_table_insert (today,
                       (gpointer)fm_ingredient_identity (fm_formula_line (formula, 0)->ingredient),
                       (gpointer)&lean_now);
  g_autoptr (FmReprice) reprice = fm_reprice_new (formula, today, NULL);
  g_assert_true (isnan (reprice->then));
  assert_near (reprice->now, 6.0, 1e-9);
  g_assert_true (isnan (reprice->change));
  g_assert_false (reprice->is_whole);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reprice/change", test_change);
  g_test_add_func ("/reprice/unknown", test_unknown);
  return g_test_run ();
}
