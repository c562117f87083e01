/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-names.c - a food is called alike in all blends of a notebook, and no version is changed */
#include "store/fm-names.h"

#include "store-fixture.h"

#define BLADE "Beef, chuck, blade roast, lean and fat, trimmed to 1/8 inch fat, all grades, raw"

static FmFood *
blade (const char *ndb_no)
{
  return fm_food_new (ndb_no, BLADE, "BEEF,CHUCK,BLADE RST,LN & FAT,1/8\"FAT,ALL GRDS,RAW");
}

static FmIngredient *
found_food (FmNotebook *notebook, const char *ndb_no)
{
  g_autoptr (FmFood) food = blade (ndb_no);
  g_autoptr (GError) error = NULL;
  FmIngredient *ingredient = fm_names_new_ingredient (notebook, food, &error);

  g_assert_no_error (error);
  return ingredient;
}

static void
assert_called (const FmFormula *formula, guint index, const char *name)
{
  g_assert_cmpstr (fm_formula_line (formula, index)->ingredient->name, ==, name);
  g_assert_cmpstr (fm_formula_line (formula, index)->ingredient->full_name, ==, BLADE);
}

static FmFormula *
load_draft (FmNotebook *notebook, gint64 blend_id)
{
  g_autoptr (GError) error = NULL;
  FmFormula *formula = fm_draft_load (notebook, blend_id, NULL, &error);

  g_assert_no_error (error);
  return formula;
}

static void
call (FmFormula *formula, guint index, const char *name)
{
  g_autoptr (FmIngredient) renamed =
      fm_ingredient_copy (fm_formula_line (formula, index)->ingredient);

  g_free (renamed->name);
  renamed->name = g_strdup (name);
  fm_formula_set_ingredient (formula, index, renamed);
}

static void
test_one_name_everywhere (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (fixture->path);
  g_autoptr (GError) error = NULL;
  const gint64 first = fm_blends_add (notebook, "First", &error);
  const gint64 second = fm_blends_add (notebook, "Second", &error);
  g_autoptr (FmIngredient) found = found_food (notebook, "13815");
  g_autoptr (FmFormula) formula = fm_formula_new ();

  fm_formula_add (formula, found, 500.0);
  assert_called (formula, 0, "Chuck blade, 1/8 in trim");
  const gint64 version = fm_versions_save (notebook, first, formula, "first", &error);
  g_assert_true (fm_draft_save (notebook, second, formula, &error));

  call (formula, 0, "House chuck");
  g_assert_true (fm_draft_save (notebook, first, formula, &error));
  g_assert_no_error (error);
  g_autoptr (FmFormula) other = load_draft (notebook, second);
  assert_called (other, 0, "House chuck");
  g_autoptr (FmFormula) frozen = fm_versions_load (notebook, version, &error);
  assert_called (frozen, 0, "House chuck");
  g_autoptr (FmIngredient) again = found_food (notebook, "13815");
  g_assert_cmpstr (again->name, ==, "House chuck");

  /* Another name is no other formula: the draft is as its version. */
  g_autofree char *before = fm_formula_to_json (frozen);
  call (frozen, 0, "Anything");
  g_autofree char *after = fm_formula_to_json (frozen);
  g_assert_cmpstr (before, ==, after);

  /* Taking the name back takes it back everywhere. */
  call (formula, 0, "Chuck blade, 1/8 in trim");
  g_assert_true (fm_draft_save (notebook, first, formula, &error));
  g_autoptr (FmFormula) last = load_draft (notebook, second);
  assert_called (last, 0, "Chuck blade, 1/8 in trim");
}

static void
test_two_of_one_name (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmNotebook) notebook = create_notebook (fixture->path);
  g_autoptr (GError) error = NULL;
  const gint64 blend = fm_blends_add (notebook, "Two", &error);
  g_autoptr (FmIngredient) first = found_food (notebook, "13815");
  g_autoptr (FmIngredient) second = found_food (notebook, "99001");
  g_autoptr (FmFormula) formula = fm_formula_new ();

  fm_formula_add (formula, first, 500.0);
  fm_formula_add (formula, second, 500.0);
  assert_called (formula, 0, "Chuck blade, 1/8 in trim");
  assert_called (formula, 1, "Chuck blade, 1/8 in trim (99001)");
  g_assert_true (fm_draft_save (notebook, blend, formula, &error));
  g_autoptr (FmFormula) again = load_draft (notebook, blend);
  assert_called (again, 1, "Chuck blade, 1/8 in trim (99001)");
  /* Alone in a blend it needs no number. */
  g_autoptr (FmIngredient) alone = found_food (notebook, "99001");
  g_assert_cmpstr (alone->name, ==, "Chuck blade, 1/8 in trim");
}

/* What was written before there were short names is read with them. */
static void
test_old_text (Fixture *fixture, gconstpointer data)
{
  g_autoptr (FmIngredient) ingredient = fm_ingredient_new (BLADE, FM_INGREDIENT_CUT);
  g_autoptr (FmFormula) formula = fm_formula_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *json = NULL;

  ingredient->provenance = FM_PROVENANCE_DATASET;
  ingredient->source_ref = g_strdup ("13815");
  ingredient->original_name = g_strdup ("BEEF,CHUCK");
  fm_formula_add (formula, ingredient, 500.0);
  json = fm_formula_to_json (formula);
  g_autoptr (FmFormula) read = fm_formula_from_json (json, &error);
  g_assert_no_error (error);
  assert_called (read, 0, "Chuck blade, 1/8 in trim");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  FIXTURE_TEST ("/names/one-name-everywhere", test_one_name_everywhere);
  FIXTURE_TEST ("/names/two-of-one-name", test_two_of_one_name);
  FIXTURE_TEST ("/names/old-text", test_old_text);
  return g_test_run ();
}
