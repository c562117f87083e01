/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-history.c - undo and redo by scripts of edits */
#include "blends.h"

/* Pushes the current state with the first line at @mass_g. */
static void
push_mass (FmHistory *history, double mass_g, const char *label, const char *merge_key)
{
  g_autoptr (FmFormula) next = fm_formula_copy (fm_history_current (history));
  g_assert_true (fm_formula_set_mass (next, 0, mass_g, NULL));
  fm_history_push (history, next, label, merge_key);
}

static double
current_mass (const FmHistory *history)
{
  return mass_of (fm_history_current (history), 0);
}

static FmHistory *
fresh_history (void)
{
  g_autoptr (FmFormula) formula = three_line_blend ();
  return fm_history_new (&fm_formula_history_kind, formula);
}

static void
test_nothing_to_undo (void)
{
  g_autoptr (FmHistory) history = fresh_history ();
  g_assert_false (fm_history_can_undo (history));
  g_assert_false (fm_history_can_redo (history));
  g_assert_null (fm_history_undo_label (history));
  g_assert_null (fm_history_redo_label (history));
  g_assert_true (fm_history_undo (history) == fm_history_current (history));
  g_assert_true (fm_history_redo (history) == fm_history_current (history));
}

static void
test_back_and_forth (void)
{
  g_autoptr (FmHistory) history = fresh_history ();
  push_mass (history, 100.0, "first", NULL);
  push_mass (history, 200.0, "second", NULL);
  g_assert_cmpstr (fm_history_undo_label (history), ==, "second");
  g_assert_cmpfloat (mass_of (fm_history_undo (history), 0), ==, 100.0);
  g_assert_cmpstr (fm_history_undo_label (history), ==, "first");
  g_assert_cmpstr (fm_history_redo_label (history), ==, "second");
  g_assert_cmpfloat (mass_of (fm_history_undo (history), 0), ==, 500.0);
  g_assert_false (fm_history_can_undo (history));
  fm_history_redo (history);
  g_assert_cmpfloat (mass_of (fm_history_redo (history), 0), ==, 200.0);
  g_assert_false (fm_history_can_redo (history));
}

static void
test_new_act_drops_redo (void)
{
  g_autoptr (FmHistory) history = fresh_history ();
  push_mass (history, 100.0, "first", NULL);
  push_mass (history, 200.0, "second", NULL);
  fm_history_undo (history);
  push_mass (history, 300.0, "third", NULL);
  g_assert_false (fm_history_can_redo (history));
  g_assert_cmpfloat (mass_of (fm_history_undo (history), 0), ==, 100.0);
}

static void
test_no_change_is_no_step (void)
{
  g_autoptr (FmHistory) history = fresh_history ();
  push_mass (history, 100.0, "first", NULL);
  fm_history_undo (history);
  push_mass (history, 500.0, "same as before", NULL);
  g_assert_false (fm_history_can_undo (history));
  g_assert_true (fm_history_can_redo (history));
  fm_history_push (history, fm_history_current (history), "itself", NULL);
  g_assert_false (fm_history_can_undo (history));
}

static void
test_typing_is_one_step (void)
{
  g_autoptr (FmHistory) history = fresh_history ();
  push_mass (history, 1.0, "mass", "mass:0");
  push_mass (history, 12.0, "mass", "mass:0");
  push_mass (history, 125.0, "mass", "mass:0");
  g_assert_cmpfloat (mass_of (fm_history_undo (history), 0), ==, 500.0);
  g_assert_cmpfloat (mass_of (fm_history_redo (history), 0), ==, 125.0);
}

static void
test_typed_back_is_no_step (void)
{
  g_autoptr (FmHistory) history = fresh_history ();
  push_mass (history, 100.0, "first", NULL);
  push_mass (history, 1.0, "mass", "mass:0");
  push_mass (history, 100.0, "mass", "mass:0");
  g_assert_cmpstr (fm_history_undo_label (history), ==, "first");
  g_assert_false (fm_history_can_redo (history));
  push_mass (history, 2.0, "mass", "mass:0");
  g_assert_cmpstr (fm_history_undo_label (history), ==, "mass");
  g_assert_cmpfloat (mass_of (fm_history_undo (history), 0), ==, 100.0);
}

static void
test_runs_end (void)
{
  g_autoptr (FmHistory) history = fresh_history ();
  push_mass (history, 1.0, "mass", "mass:0");
  fm_history_seal (history);
  push_mass (history, 2.0, "mass", "mass:0");
  push_mass (history, 3.0, "mass", "mass:1");
  push_mass (history, 4.0, "other", NULL);
  push_mass (history, 5.0, "other", NULL);
  g_assert_cmpfloat (mass_of (fm_history_undo (history), 0), ==, 4.0);
  g_assert_cmpfloat (mass_of (fm_history_undo (history), 0), ==, 3.0);
  g_assert_cmpfloat (mass_of (fm_history_undo (history), 0), ==, 2.0);
  g_assert_cmpfloat (mass_of (fm_history_undo (history), 0), ==, 1.0);
  push_mass (history, 6.0, "mass", "mass:0");
  g_assert_cmpfloat (mass_of (fm_history_undo (history), 0), ==, 1.0);
}

static void
test_pushed_value_is_copied (void)
{
  g_autoptr (FmHistory) history = fresh_history ();
  g_autoptr (FmFormula) next = fm_formula_copy (fm_history_current (history));
  fm_formula_set_mass (next, 0, 100.0, NULL);
  fm_history_push (history, next, "mass", NULL);
  fm_formula_set_mass (next, 0, 7.0, NULL);
  fm_formula_set_mass (next, 1, 8.0, NULL);
  g_assert_cmpfloat (current_mass (history), ==, 100.0);
  g_assert_cmpfloat (mass_of (fm_history_undo (history), 1), ==, 300.0);
}

/* One random edit of @formula; some may leave it as it is. */
static void
edit_at_random (FmFormula *formula, GRand *rand)
{
  guint n = fm_formula_n_lines (formula);
  guint at = n > 0 ? (guint)g_rand_int_range (rand, 0, (int)n) : 0;
  switch (n == 0 ? 0 : g_rand_int_range (rand, 0, 6)) {
  case 0:
    add_line (formula, "More", 20.0, g_rand_double_range (rand, 1.0, 100.0));
    break;
  case 1:
    fm_formula_remove (formula, at);
    break;
  case 2:
    fm_formula_move (formula, at, 0);
    break;
  case 3:
    fm_formula_set_share (formula, at, g_rand_double_range (rand, 0.0, 100.0), NULL);
    break;
  case 4:
    formula->brief->n_patties = g_rand_int_range (rand, 1, 100);
    break;
  default:
    fm_formula_set_mass (formula, at, g_rand_double_range (rand, 0.0, 900.0), NULL);
    break;
  }
}

static void
test_random_scripts (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (99);
  g_autoptr (FmHistory) history = fresh_history ();
  g_autoptr (GPtrArray) states = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_formula_free);
  g_ptr_array_add (states, fm_formula_copy (fm_history_current (history)));
  while (states->len < 400) {
    FmFormula *next = fm_formula_copy (fm_history_current (history));
    edit_at_random (next, rand);
    fm_history_push (history, next, "edit", NULL);
    if (fm_formula_equal (next, g_ptr_array_index (states, states->len - 1)))
      fm_formula_free (next);
    else
      g_ptr_array_add (states, next);
  }
  for (guint i = states->len - 1; i > 0; i--)
    g_assert_true (fm_formula_equal (fm_history_undo (history), g_ptr_array_index (states, i - 1)));
  g_assert_false (fm_history_can_undo (history));
  for (guint i = 1; i < states->len; i++)
    g_assert_true (fm_formula_equal (fm_history_redo (history), g_ptr_array_index (states, i)));
  g_assert_false (fm_history_can_redo (history));
}

static void
test_ten_thousand_steps_share_lines (void)
{
  g_autoptr (FmFormula) formula = fm_formula_new ();
  for (int i = 0; i < 30; i++)
    add_line (formula, "Line", 20.0, 10.0);
  g_autoptr (FmHistory) history = fm_history_new (&fm_formula_history_kind, formula);
  for (int i = 1; i <= 10000; i++)
    push_mass (history, i, "mass", NULL);
  const FmFormulaLine *last = fm_formula_line (fm_history_current (history), 29);
  for (int i = 10000; i > 0; i--) {
    g_assert_cmpfloat (current_mass (history), ==, i);
    g_assert_true (fm_formula_line (fm_history_undo (history), 29) == last);
  }
  g_assert_true (fm_formula_equal (fm_history_current (history), formula));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/history/nothing-to-undo", test_nothing_to_undo);
  g_test_add_func ("/history/back-and-forth", test_back_and_forth);
  g_test_add_func ("/history/new-act-drops-redo", test_new_act_drops_redo);
  g_test_add_func ("/history/no-change-is-no-step", test_no_change_is_no_step);
  g_test_add_func ("/history/typing-is-one-step", test_typing_is_one_step);
  g_test_add_func ("/history/typed-back-is-no-step", test_typed_back_is_no_step);
  g_test_add_func ("/history/runs-end", test_runs_end);
  g_test_add_func ("/history/pushed-value-is-copied", test_pushed_value_is_copied);
  g_test_add_func ("/history/random-scripts", test_random_scripts);
  g_test_add_func ("/history/ten-thousand-steps", test_ten_thousand_steps_share_lines);
  return g_test_run ();
}
