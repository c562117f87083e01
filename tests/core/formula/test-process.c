/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-process.c - the plan of grinding, seasoning, forming and heat */
#include "core/formula/fm-process.h"

#include <math.h>

#include "core/formula/fm-formula.h"

static const FmUnits metric = { 0 };

static FmProcess *
make_process (void)
{
  FmProcess *self = fm_process_new ();
  const double plates_mm[] = { 10.0, NAN, 4.5 };

  fm_process_set_plates (self, plates_mm, G_N_ELEMENTS (plates_mm));
  fm_process_set_words (self, FM_PROCESS_SURFACE, "Steel pan");
  fm_process_set_words (self, FM_PROCESS_STEPS, "Chill.\n\n  Grind. \nForm.\n");
  fm_process_add_seasoning (self, "Salt", FM_SEASON_AFTER_FORMING, TRUE);
  fm_process_add_seasoning (self, "Pepper", FM_SEASON_AFTER_GRINDING, FALSE);
  self->numbers[FM_PROCESS_SIDE_1] = 2.5;
  self->numbers[FM_PROCESS_TARGET_CORE] = 71.1;
  return self;
}

static void
assert_text (const FmProcess *self, FmProcessField field, const FmUnits *units, const char *wanted)
{
  g_autofree char *text = fm_process_field_text (self, field, units);

  g_assert_cmpstr (text, ==, wanted);
}

static void
test_texts (void)
{
  g_autoptr (FmProcess) process = make_process ();
  g_auto (GStrv) steps = fm_process_steps (process);
  const FmUnits us = { .fahrenheit = TRUE };

  assert_text (process, FM_PROCESS_PLATES, &metric, "10.0\u00a0mm, then 4.5\u00a0mm");
  assert_text (process, FM_PROCESS_SEASONINGS, &metric,
               "Salt: after forming, on the surface; Pepper: after grinding, mixed in");
  assert_text (process, FM_PROCESS_TARGET_CORE, &us, "160.0\u00a0°F");
  assert_text (process, FM_PROCESS_REST, &metric, NULL);
  g_assert_cmpuint (g_strv_length (steps), ==, 3);
  g_assert_cmpstr (steps[1], ==, "Grind.");
}

static void
test_copy_and_equal (void)
{
  g_autoptr (FmProcess) a = make_process ();
  g_autoptr (FmProcess) b = fm_process_copy (a);
  g_autoptr (FmProcess) empty = fm_process_new ();

  g_assert_true (fm_process_equal (a, b));
  g_assert_true (fm_process_is_empty (empty));
  g_assert_false (fm_process_is_empty (a));
  b->numbers[FM_PROCESS_SIDE_1] = NAN;
  g_assert_false (fm_process_equal (a, b));
  g_assert_true (fm_process_field_equal (a, b, FM_PROCESS_PLATES));
  g_array_index (b->plates_mm, double, 1) = 3.0;
  g_assert_false (fm_process_field_equal (a, b, FM_PROCESS_PLATES));
  ((FmSeasoning *)fm_process_seasoning (b, 0))->on_surface = FALSE;
  g_assert_false (fm_process_field_equal (a, b, FM_PROCESS_SEASONINGS));
}

static void
test_blanks_are_none (void)
{
  g_autoptr (FmProcess) process = make_process ();
  const double too_many[] = { 1, 2, 3, 4, 5, 6 };

  fm_process_set_words (process, FM_PROCESS_SURFACE, " \n");
  g_assert_null (process->words[FM_PROCESS_SURFACE]);
  fm_process_add_seasoning (process, "", FM_SEASON_AFTER_FORMING, TRUE);
  g_assert_cmpuint (process->seasonings->len, ==, 2);
  fm_process_set_plates (process, too_many, G_N_ELEMENTS (too_many));
  g_assert_cmpuint (process->plates_mm->len, ==, FM_PROCESS_MAX_PASSES);
}

/* Each field and moment has a name, and a word for files that is found again. */
static void
test_tables (void)
{
  for (int i = 0; i < FM_N_PROCESS_FIELDS; i++) {
    g_assert_nonnull (fm_process_field_name ((FmProcessField)i));
    for (int j = 0; j < i; j++)
      g_assert_cmpstr (fm_process_field ((FmProcessField)i)->key, !=,
                       fm_process_field ((FmProcessField)j)->key);
  }
  for (int i = 0; i < FM_N_SEASON_MOMENTS; i++)
    g_assert_cmpint (fm_season_moment_from_key (fm_season_moment_key ((FmSeasonMoment)i)), ==, i);
  g_assert_cmpint (fm_season_moment_from_key ("at noon"), ==, FM_N_SEASON_MOMENTS);
}

static void
test_a_formula_carries_it (void)
{
  g_autoptr (FmFormula) a = fm_formula_new ();
  g_autoptr (FmFormula) b = NULL;

  a->process->numbers[FM_PROCESS_REST] = 3.0;
  b = fm_formula_copy (a);
  g_assert_true (fm_formula_equal (a, b));
  b->process->numbers[FM_PROCESS_REST] = 4.0;
  g_assert_false (fm_formula_equal (a, b));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/process/texts", test_texts);
  g_test_add_func ("/process/copy-and-equal", test_copy_and_equal);
  g_test_add_func ("/process/blanks-are-none", test_blanks_are_none);
  g_test_add_func ("/process/tables", test_tables);
  g_test_add_func ("/process/a-formula-carries-it", test_a_formula_carries_it);
  return g_test_run ();
}
