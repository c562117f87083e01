/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* blends.h - small made-up ingredients and formulas for tests */
#pragma once

#include "core/formula/fm-formula.h"

#include <math.h>

/* An ingredient of which only the fat is known. */
static inline FmIngredient *
ingredient_with_fat (const char *name, double fat_g_per_100g)
{
  FmIngredient *ingredient = fm_ingredient_new (name, FM_INGREDIENT_CUT);
  ingredient->provenance = FM_PROVENANCE_ANALYSIS;
  ingredient->composition.per_100g[FM_NUTRIENT_FAT] = fat_g_per_100g;
  return ingredient;
}

/* Appends a line of a fresh ingredient. */
static inline guint
add_line (FmFormula *formula, const char *name, double fat_g_per_100g, double mass_g)
{
  g_autoptr (FmIngredient) ingredient = ingredient_with_fat (name, fat_g_per_100g);
  return fm_formula_add (formula, ingredient, mass_g);
}

/* 500 g lean at 10 % fat, 300 g plate at 30 %, 200 g backfat at 90 %. */
static inline FmFormula *
three_line_blend (void)
{
  FmFormula *formula = fm_formula_new ();
  add_line (formula, "Lean", 10.0, 500.0);
  add_line (formula, "Plate", 30.0, 300.0);
  add_line (formula, "Backfat", 90.0, 200.0);
  return formula;
}

static inline double
mass_of (const FmFormula *formula, guint index)
{
  return fm_formula_line (formula, index)->mass_g;
}

static inline const char *
name_of (const FmFormula *formula, guint index)
{
  return fm_formula_line (formula, index)->ingredient->name;
}

#define assert_near(a, b, tolerance) g_assert_cmpfloat_with_epsilon ((a), (b), (tolerance))
