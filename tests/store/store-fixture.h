/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* store-fixture.h - a folder for each test, and formulas to put into notebooks */
#pragma once

#include <ftw.h>
#include <glib/gstdio.h>
#include <math.h>
#include <unistd.h>

#include "store/fm-versions.h"

typedef struct {
  char *folder;
  char *path; /* of a notebook that is not there yet */
} Fixture;

static inline void
fixture_set_up (Fixture *self, gconstpointer data)
{
  self->folder = g_dir_make_tmp ("fm-store-XXXXXX", NULL);
  g_assert_nonnull (self->folder);
  self->path = g_build_filename (self->folder, "test.forcemeat", NULL);
}

static inline int
remove_one (const char *path, const struct stat *info, int flag, struct FTW *walk)
{
  return remove (path);
}

static inline void
fixture_tear_down (Fixture *self, gconstpointer data)
{
  nftw (self->folder, remove_one, 8, FTW_DEPTH | FTW_PHYS);
  g_free (self->folder);
  g_free (self->path);
}

#define FIXTURE_TEST(name, function)                                                               \
  g_test_add (name, Fixture, NULL, fixture_set_up, function, fixture_tear_down)

static inline FmNotebook *
create_notebook (const char *path)
{
  g_autoptr (GError) error = NULL;
  FmNotebook *notebook = fm_notebook_create (path, &error);

  g_assert_no_error (error);
  g_assert_nonnull (notebook);
  return notebook;
}

static inline FmNotebook *
open_notebook (const char *path)
{
  g_autoptr (GError) error = NULL;
  FmNotebook *notebook = fm_notebook_open (path, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (notebook);
  return notebook;
}

static inline gint64
add_blend (FmNotebook *notebook, const char *name)
{
  g_autoptr (GError) error = NULL;
  gint64 id = fm_blends_add (notebook, name, &error);

  g_assert_no_error (error);
  g_assert_cmpint (id, >, 0);
  return id;
}

static inline FmIngredient *
new_ingredient (const char *name, double fat_g_per_100g)
{
  FmIngredient *ingredient = fm_ingredient_new (name, FM_INGREDIENT_CUT);

  ingredient->provenance = FM_PROVENANCE_ANALYSIS;
  ingredient->composition.per_100g[FM_NUTRIENT_FAT] = fat_g_per_100g;
  return ingredient;
}

static inline FmFormula *
new_formula (double lean_g, double fat_g)
{
  FmFormula *formula = fm_formula_new ();
  g_autoptr (FmIngredient) lean = new_ingredient ("Shoulder", 10.0);
  g_autoptr (FmIngredient) fat = new_ingredient ("Back fat", 80.0);

  fm_formula_add (formula, lean, lean_g);
  fm_formula_add (formula, fat, fat_g);
  return formula;
}

static inline gint64
save_version (FmNotebook *notebook, gint64 blend_id, const FmFormula *formula, const char *reason)
{
  g_autoptr (GError) error = NULL;
  gint64 id = fm_versions_save (notebook, blend_id, formula, reason, &error);

  g_assert_no_error (error);
  g_assert_cmpint (id, >, 0);
  return id;
}

/* Mostly ordinary values, with unknowns and awkward ones among them. */
static inline double
random_value (double max)
{
  switch (g_test_rand_int_range (0, 8)) {
  case 0:
    return (double)NAN;
  case 1:
    return 0.0;
  case 2:
    return max;
  case 3:
    return pow (10.0, -g_test_rand_int_range (1, 300));
  case 4:
    return g_test_rand_int_range (0, (int)MIN (max, 1e6));
  default:
    return g_test_rand_double_range (0.0, max);
  }
}

static inline char *
random_text (void)
{
  static const char *const pieces[] = { "chuck ", "\"", "\\",   "\n", "é",
                                        "脂",     "{[", "\x01", "/*", "" };
  GString *text = g_string_new ("x");

  if (g_test_rand_int_range (0, 5) == 0)
    return g_string_free (text, TRUE);
  for (int i = g_test_rand_int_range (0, 6); i > 0; i--)
    g_string_append (text, pieces[g_test_rand_int_range (0, G_N_ELEMENTS (pieces))]);
  return g_string_free (text, FALSE);
}

static inline FmIngredient *
random_ingredient (void)
{
  FmIngredient *ingredient = fm_ingredient_new ("x", FM_INGREDIENT_OTHER);

  g_free (ingredient->name);
  do
    ingredient->name = random_text ();
  while (ingredient->name == NULL);
  ingredient->kind = (FmIngredientKind)g_test_rand_int_range (0, FM_INGREDIENT_OTHER + 1);
  ingredient->species = (FmSpecies)g_test_rand_int_range (0, FM_N_SPECIES);
  ingredient->provenance = (FmProvenance)g_test_rand_int_range (0, FM_PROVENANCE_NONE + 1);
  ingredient->source_ref = random_text ();
  ingredient->original_name = random_text ();
  ingredient->declared_fat_pct = random_value (100.0);
  ingredient->fat_u_g_per_100g = random_value (100.0);
  ingredient->collagen_g_per_100g = random_value (100.0);
  ingredient->price_per_kg = random_value (1e6);
  ingredient->ep_yield_pct = g_test_rand_bit () ? g_test_rand_double_range (1.0, 100.0) : NAN;
  for (int i = 0; i < FM_N_NUTRIENTS; i++)
    ingredient->composition.per_100g[i] = random_value (100.0);
  return ingredient;
}

static inline FmFormula *
random_formula (void)
{
  FmFormula *formula = fm_formula_new ();

  formula->brief->patty_mass_g = g_test_rand_double_range (0.1, FM_MAX_PATTY_MASS_G);
  formula->brief->n_patties = g_test_rand_int_range (1, FM_MAX_N_PATTIES + 1);
  formula->brief->rules = (FmRuleSet)g_test_rand_int_range (0, FM_N_RULE_SETS);
  formula->brief->doneness = random_text ();
  formula->brief->notes = random_text ();
  for (int i = 0; i < FM_N_TARGETS; i++)
    formula->brief->bands[i] = (FmBand){ random_value (100.0), random_value (100.0) };
  for (int i = g_test_rand_int_range (0, 12); i > 0; i--) {
    g_autoptr (FmIngredient) ingredient = random_ingredient ();
    double mass_g = random_value (FM_MAX_LINE_MASS_G);
    guint index = fm_formula_add (formula, ingredient, isnan (mass_g) ? 1.0 : mass_g);
    FmFormulaLine *line = fm_formula_line (formula, index);

    line->locked = g_test_rand_bit ();
    line->min_share_pct = random_value (100.0);
    line->max_share_pct = random_value (100.0);
    line->note = random_text ();
  }
  return formula;
}
