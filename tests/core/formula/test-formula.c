/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-formula.c - editing the lines of a blend */
#include "core/base/fm-error.h"
#include "core/formula/fm-formula.h"

#include "blends.h"

#include <string.h>

static void
assert_masses (const FmFormula *formula, double a, double b, double c)
{
  assert_near (mass_of (formula, 0), a, 1e-9);
  assert_near (mass_of (formula, 1), b, 1e-9);
  assert_near (mass_of (formula, 2), c, 1e-9);
}

static void
assert_share_fails (FmFormula *formula, guint index, double share_pct, FmCoreError code)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmFormula) before = fm_formula_copy (formula);
  g_assert_false (fm_formula_set_share (formula, index, share_pct, &error));
  g_assert_error (error, FM_CORE_ERROR, (int)code);
  g_assert_true (fm_formula_equal (formula, before));
}

static void
test_set_mass (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_assert_true (fm_formula_set_mass (formula, 0, 0.0, NULL));
  g_assert_true (fm_formula_set_mass (formula, 0, FM_MAX_LINE_MASS_G, NULL));
  const double bad[] = { -0.001, NAN, INFINITY, -INFINITY, 1.1e7 };
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (GError) error = NULL;
    g_assert_false (fm_formula_set_mass (formula, 1, bad[i], &error));
    g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
    g_assert_nonnull (strstr (error->message, "Plate"));
    g_assert_cmpfloat (mass_of (formula, 1), ==, 300.0);
  }
}

static void
test_add_refuses_unusable_mass (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_assert_cmpuint (add_line (formula, "A", 10.0, NAN), ==, 0);
  g_assert_cmpuint (add_line (formula, "B", 10.0, -5.0), ==, 1);
  g_assert_cmpfloat (fm_formula_total_g (formula), ==, 0.0);
  g_assert_true (isnan (fm_formula_share_pct (formula, 0)));
}

static void
test_set_share_in_proportion (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_assert_true (fm_formula_set_share (formula, 0, 60.0, NULL));
  assert_masses (formula, 600.0, 240.0, 160.0);
  assert_near (fm_formula_share_pct (formula, 0), 60.0, 1e-9);
}

static void
test_set_share_beside_a_lock (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  fm_formula_line (formula, 1)->locked = TRUE;
  g_assert_true (fm_formula_set_share (formula, 0, 60.0, NULL));
  assert_masses (formula, 600.0, 300.0, 100.0);
  g_assert_true (fm_formula_set_share (formula, 0, 70.0, NULL));
  assert_masses (formula, 700.0, 300.0, 0.0);
  assert_share_fails (formula, 0, 70.1, FM_CORE_ERROR_LOCKED);
  g_assert_true (fm_formula_set_share (formula, 0, 50.0, NULL));
  assert_masses (formula, 500.0, 300.0, 200.0);
}

static void
test_set_share_all_others_locked (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  fm_formula_line (formula, 1)->locked = TRUE;
  fm_formula_line (formula, 2)->locked = TRUE;
  assert_share_fails (formula, 0, 40.0, FM_CORE_ERROR_LOCKED);
  assert_share_fails (formula, 0, 60.0, FM_CORE_ERROR_LOCKED);
  g_assert_true (fm_formula_set_share (formula, 0, 50.0, NULL));
}

static void
test_set_share_of_a_locked_line (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  fm_formula_line (formula, 0)->locked = TRUE;
  g_assert_true (fm_formula_set_share (formula, 0, 60.0, NULL));
  assert_masses (formula, 600.0, 240.0, 160.0);
  g_assert_true (fm_formula_line (formula, 0)->locked);
}

static void
test_set_share_over_weightless_lines (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_assert_true (fm_formula_set_share (formula, 0, 100.0, NULL));
  assert_masses (formula, 1000.0, 0.0, 0.0);
  g_assert_true (fm_formula_set_share (formula, 0, 50.0, NULL));
  assert_masses (formula, 500.0, 250.0, 250.0);
}

static void
test_set_share_bad_input (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  const double bad[] = { -0.1, 100.1, NAN, INFINITY };
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    assert_share_fails (formula, 0, bad[i], FM_CORE_ERROR_OUT_OF_RANGE);

  g_autoptr (FmFormula) weightless = fm_formula_new ();
  add_line (weightless, "A", 10.0, 0.0);
  add_line (weightless, "B", 10.0, 0.0);
  assert_share_fails (weightless, 0, 50.0, FM_CORE_ERROR_EMPTY);

  g_autoptr (FmFormula) single = fm_formula_new ();
  add_line (single, "A", 10.0, 100.0);
  assert_share_fails (single, 0, 50.0, FM_CORE_ERROR_LOCKED);
  g_assert_true (fm_formula_set_share (single, 0, 100.0, NULL));
}

static void
test_scale (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  fm_formula_line (formula, 1)->locked = TRUE;
  g_assert_true (fm_formula_scale_to (formula, 1080.0, NULL));
  assert_masses (formula, 540.0, 324.0, 216.0);

  const double bad[] = { 0.0, -1.0, NAN, INFINITY, 1e12 };
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (GError) error = NULL;
    g_assert_false (fm_formula_scale_to (formula, bad[i], &error));
    g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE);
    assert_masses (formula, 540.0, 324.0, 216.0);
  }

  g_autoptr (GError) error = NULL;
  g_autoptr (FmFormula) empty = fm_formula_new ();
  g_assert_false (fm_formula_scale_to (empty, 100.0, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
}

static void
test_move_and_remove (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  fm_formula_move (formula, 0, 2);
  g_assert_cmpstr (name_of (formula, 0), ==, "Plate");
  g_assert_cmpstr (name_of (formula, 2), ==, "Lean");
  fm_formula_move (formula, 2, 0);
  g_assert_cmpstr (name_of (formula, 0), ==, "Lean");
  fm_formula_move (formula, 1, 1);
  fm_formula_remove (formula, 1);
  g_assert_cmpuint (fm_formula_n_lines (formula), ==, 2);
  g_assert_cmpstr (name_of (formula, 1), ==, "Backfat");
}

static void
test_copy_and_equal (void)
{
  g_autoptr (FmFormula) a = three_line_blend ();
  fm_formula_line (a, 0)->note = g_strdup ("coarse");
  g_autoptr (FmFormula) b = fm_formula_copy (a);
  g_assert_true (fm_formula_equal (a, b));
  g_assert_true (fm_formula_line (a, 0)->ingredient == fm_formula_line (b, 0)->ingredient);
  fm_formula_line (b, 0)->mass_g = 1.0;
  g_assert_cmpfloat (mass_of (a, 0), ==, 500.0);
  g_assert_false (fm_formula_equal (a, b));
  fm_formula_line (b, 0)->mass_g = 500.0;
  fm_formula_line (b, 0)->max_share_pct = 60.0;
  g_assert_false (fm_formula_equal (a, b));
  fm_formula_line (b, 0)->max_share_pct = NAN;
  b->brief->patty_mass_g = 150.0;
  g_assert_false (fm_formula_equal (a, b));
}

static void
test_set_ingredient_keeps_the_line (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_autofree char *id = g_strdup (fm_formula_line (formula, 1)->id);
  g_autoptr (FmIngredient) other = ingredient_with_fat ("Navel", 35.0);
  fm_formula_line (formula, 1)->locked = TRUE;
  fm_formula_set_ingredient (formula, 1, other);
  fm_formula_set_ingredient (formula, 1, fm_formula_line (formula, 1)->ingredient);
  g_assert_cmpstr (name_of (formula, 1), ==, "Navel");
  g_assert_cmpstr (fm_formula_line (formula, 1)->id, ==, id);
  g_assert_cmpfloat (mass_of (formula, 1), ==, 300.0);
  g_assert_true (fm_formula_line (formula, 1)->locked);
}

static void
test_merge (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_autoptr (FmIngredient) lean = fm_ingredient_ref (fm_formula_line (formula, 0)->ingredient);
  guint again = fm_formula_add (formula, lean, 50.0);
  fm_formula_line (formula, again)->locked = TRUE;
  fm_formula_line (formula, again)->note = g_strdup ("from the second lot");
  fm_formula_add (formula, lean, 25.0);
  g_assert_cmpuint (fm_formula_n_duplicates (formula), ==, 2);
  g_assert_cmpuint (fm_formula_merge_duplicates (formula), ==, 2);
  g_assert_cmpuint (fm_formula_n_lines (formula), ==, 3);
  assert_masses (formula, 575.0, 300.0, 200.0);
  g_assert_true (fm_formula_line (formula, 0)->locked);
  g_assert_cmpstr (fm_formula_line (formula, 0)->note, ==, "from the second lot");
  g_assert_cmpuint (fm_formula_n_duplicates (formula), ==, 0);
}

static void
test_merge_keeps_limits_honest (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (FmIngredient) lean = ingredient_with_fat ("Lean", 10.0);
  fm_formula_add (formula, lean, 50.0);
  fm_formula_add (formula, lean, 50.0);
  fm_formula_line (formula, 0)->min_share_pct = 10.0;
  fm_formula_line (formula, 1)->min_share_pct = 15.0;
  fm_formula_line (formula, 1)->max_share_pct = 40.0;
  fm_formula_merge_duplicates (formula);
  g_assert_cmpfloat (fm_formula_line (formula, 0)->min_share_pct, ==, 25.0);
  g_assert_true (isnan (fm_formula_line (formula, 0)->max_share_pct));
}

static void
test_merge_leaves_other_analyses_apart (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  g_autoptr (FmIngredient) newer = fm_ingredient_copy (fm_formula_line (formula, 0)->ingredient);
  newer->composition.per_100g[FM_NUTRIENT_FAT] = 12.0;
  fm_formula_add (formula, newer, 50.0);
  g_assert_cmpuint (fm_formula_merge_duplicates (formula), ==, 0);
  g_assert_cmpuint (fm_formula_n_lines (formula), ==, 4);
}

static void
test_random_shares_keep_total_and_locks (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260101);
  for (int round = 0; round < 500; round++) {
    g_autoptr (FmFormula) formula = three_line_blend ();
    add_line (formula, "Salt", 0.0, g_rand_double_range (rand, 1.0, 30.0));
    fm_formula_line (formula, 3)->locked = TRUE;
    double total_g = fm_formula_total_g (formula);
    double salt_g = mass_of (formula, 3);
    for (int step = 0; step < 20; step++) {
      guint index = (guint)g_rand_int_range (rand, 0, 3);
      fm_formula_set_share (formula, index, g_rand_double_range (rand, 0.0, 100.0), NULL);
      assert_near (fm_formula_total_g (formula), total_g, total_g * 1e-9);
      g_assert_cmpfloat (mass_of (formula, 3), ==, salt_g);
      for (guint i = 0; i < 4; i++)
        g_assert_cmpfloat (mass_of (formula, i), >=, 0.0);
    }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/formula/set-mass", test_set_mass);
  g_test_add_func ("/formula/add-refuses-unusable-mass", test_add_refuses_unusable_mass);
  g_test_add_func ("/formula/set-share/in-proportion", test_set_share_in_proportion);
  g_test_add_func ("/formula/set-share/beside-a-lock", test_set_share_beside_a_lock);
  g_test_add_func ("/formula/set-share/all-others-locked", test_set_share_all_others_locked);
  g_test_add_func ("/formula/set-share/of-a-locked-line", test_set_share_of_a_locked_line);
  g_test_add_func ("/formula/set-share/weightless-lines", test_set_share_over_weightless_lines);
  g_test_add_func ("/formula/set-share/bad-input", test_set_share_bad_input);
  g_test_add_func ("/formula/set-share/random", test_random_shares_keep_total_and_locks);
  g_test_add_func ("/formula/scale", test_scale);
  g_test_add_func ("/formula/move-and-remove", test_move_and_remove);
  g_test_add_func ("/formula/copy-and-equal", test_copy_and_equal);
  g_test_add_func ("/formula/set-ingredient", test_set_ingredient_keeps_the_line);
  g_test_add_func ("/formula/merge/masses-and-locks", test_merge);
  g_test_add_func ("/formula/merge/limits", test_merge_keeps_limits_honest);
  g_test_add_func ("/formula/merge/other-analyses", test_merge_leaves_other_analyses_apart);
  return g_test_run ();
}
