/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-legal.c - limits of law beside what a blend has, against data/legal/limits.tsv */
#include "core/formula/fm-legal.h"

#include <stdlib.h>
#include <string.h>

#include "blends.h"

#define COLLAGEN_OF 20.0 /* g protein per 100 g in these blends */

static FmIngredient *
ingredient_of (const FmFormula *formula, guint index)
{
  return fm_formula_line (formula, index)->ingredient;
}

/* 100 g of one meat with a known fat, protein, collagen and sodium. */
static FmFormula *
new_meat (FmSpecies species, double fat_pct, double collagen_pct, double sodium_mg)
{
  FmFormula *formula = fm_formula_new ();
  FmIngredient *meat;

  add_line (formula, "Meat", fat_pct, 100.0);
  meat = ingredient_of (formula, 0);
  meat->species = species;
  meat->composition.per_100g[FM_NUTRIENT_PROTEIN] = COLLAGEN_OF;
  meat->composition.per_100g[FM_NUTRIENT_SODIUM] = sodium_mg;
  meat->collagen_g_per_100g = COLLAGEN_OF * collagen_pct / 100.0;
  return formula;
}

static FmLegalResult
judge (const FmLegalLimit *limit, const FmFormula *formula)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);

  return fm_legal_judge (limit, formula, analysis);
}

/* Another ingredient of @kind that makes up @share_pct of the blend. */
static void
add_share (FmFormula *formula, FmIngredientKind kind, double share_pct)
{
  FmIngredient *added;

  add_line (formula, "Added", 0.0, 100.0 * share_pct / (100.0 - share_pct));
  added = ingredient_of (formula, 1);
  added->kind = kind;
  added->species = FM_SPECIES_NONE;
}

static FmSpecies
meat_of (FmLegalMeat meat)
{
  if (meat == FM_LEGAL_MEAT_PORK)
    return FM_SPECIES_PORK;
  return meat == FM_LEGAL_MEAT_OTHER ? FM_SPECIES_LAMB : FM_SPECIES_BEEF;
}

static FmFormula *
blend_with (const FmLegalLimit *limit, double value_pct)
{
  const FmSpecies species = meat_of (limit->meat);
  FmFormula *formula;

  switch (limit->figure) {
  case FM_LEGAL_FAT:
    return new_meat (species, value_pct, 5.0, 60.0);
  case FM_LEGAL_COLLAGEN:
    return new_meat (species, 5.0, value_pct, 60.0);
  case FM_LEGAL_SALT:
    return new_meat (species, 5.0, 5.0, value_pct * 1000.0 / 2.5);
  case FM_LEGAL_WATER_BINDER:
  case FM_LEGAL_ADDED_FAT:
    formula = new_meat (species, 5.0, 5.0, 60.0);
    if (value_pct > 0.0)
      add_share (formula,
                 limit->figure == FM_LEGAL_ADDED_FAT ? FM_INGREDIENT_FAT : FM_INGREDIENT_BINDER,
                 value_pct);
    return formula;
  }
  g_assert_not_reached ();
}

static FmLegalState
state_at (const FmLegalLimit *limit, double value_pct)
{
  g_autoptr (FmFormula) formula = blend_with (limit, value_pct);
  const FmLegalResult result = judge (limit, formula);

  assert_near (result.value_pct, value_pct, 1e-9);
  assert_near (result.margin_pct, limit->limit_pct - value_pct, 1e-9);
  return result.state;
}

/* Each row of the file is met up to its figure, and not a hair above; "<" not at it either. */
static void
test_rows (void)
{
  g_autofree char *text = NULL;
  g_auto (GStrv) rows = NULL;
  g_autoptr (GError) error = NULL;

  g_file_get_contents (SRCDIR "/data/legal/limits.tsv", &text, NULL, &error);
  g_assert_no_error (error);
  rows = g_strsplit (g_strchomp (text), "\n", -1);
  g_assert_cmpuint (g_strv_length (rows) - 1, ==, fm_n_legal_limits);
  for (guint i = 0; i < fm_n_legal_limits; i++) {
    const FmLegalLimit *limit = &fm_legal_limits[i];
    g_auto (GStrv) cells = g_strsplit (rows[i + 1], "\t", -1);
    const double figure = g_ascii_strtod (cells[5], NULL);

    g_assert_cmpstr (fm_rule_set_key (limit->set), ==, cells[0]);
    g_assert_cmpstr (limit->designation, ==, cells[1]);
    g_assert_cmpfloat (limit->limit_pct, ==, figure);
    g_assert_cmpint (state_at (limit, figure), ==,
                     g_str_equal (cells[4], "<") ? FM_LEGAL_NOT_MET : FM_LEGAL_MET);
    g_assert_cmpint (state_at (limit, figure + 0.001), ==, FM_LEGAL_NOT_MET);
    if (figure > 0.0)
      g_assert_cmpint (state_at (limit, figure - 0.001), ==, FM_LEGAL_MET);
    g_assert_true (*limit->source != '\0' && *limit->text_date != '\0' && *limit->how_read != '\0');
  }
}

/* Where the collection of published figures is at hand, the EU figures are those of it. */
static void
test_published_eu_figures (void)
{
  g_autofree char *text = NULL;
  g_auto (GStrv) rows = NULL;
  guint n_found = 0;

  if (!g_file_get_contents (SRCDIR "/../shared/reference/eu_minced_meat.tsv", &text, NULL, NULL)) {
    g_test_skip ("the published figures are not here");
    return;
  }
  rows = g_strsplit (text, "\n", -1);
  for (guint i = 1; rows[i] != NULL; i++) {
    g_auto (GStrv) cells = g_strsplit (rows[i], "\t", -1);

    for (guint k = 0; g_strv_length (cells) >= 3 && k < fm_n_legal_limits; k++) {
      const FmLegalLimit *limit = &fm_legal_limits[k];

      if (!g_str_equal (limit->designation, cells[0]))
        continue;
      n_found++;
      g_assert_cmpfloat (limit->limit_pct, ==, atof (cells[limit->figure == FM_LEGAL_FAT ? 1 : 2]));
    }
  }
  g_assert_cmpuint (n_found, ==, 8);
}

static const FmLegalLimit *
find_limit (const char *designation, FmLegalFigure figure)
{
  for (guint i = 0; i < fm_n_legal_limits; i++)
    if (g_str_equal (fm_legal_limits[i].designation, designation) &&
        fm_legal_limits[i].figure == figure)
      return &fm_legal_limits[i];
  g_assert_not_reached ();
}

/* Collagen that one meat lacks is not known of the blend; of salt there is none to lack. */
static void
test_unknown_stays_unknown (void)
{
  const FmLegalLimit *limit = find_limit ("minced pure beef", FM_LEGAL_COLLAGEN);
  g_autoptr (FmFormula) formula = new_meat (FM_SPECIES_BEEF, 10.0, 8.0, 60.0);

  add_share (formula, FM_INGREDIENT_SALT, 1.5);
  g_assert_cmpint (judge (limit, formula).state, ==, FM_LEGAL_MET);
  ingredient_of (formula, 0)->collagen_g_per_100g = NAN;
  const FmLegalResult lacking = judge (limit, formula);
  g_autofree char *text = fm_legal_result_text (&lacking);
  g_assert_cmpint (lacking.state, ==, FM_LEGAL_UNKNOWN);
  g_assert_cmpstr (text, ==,
                   "minced pure beef: collagen of meat protein not known, limit: 15 % – not known");
}

static void
test_other_meat (void)
{
  const FmLegalLimit *beef = find_limit ("minced pure beef", FM_LEGAL_FAT);
  const FmLegalLimit *pork = find_limit ("minced meat containing pigmeat", FM_LEGAL_FAT);
  const FmLegalLimit *other = find_limit ("minced meat of other species", FM_LEGAL_FAT);
  g_autoptr (FmFormula) formula = new_meat (FM_SPECIES_LAMB, 10.0, 8.0, 60.0);

  g_assert_cmpint (judge (beef, formula).state, ==, FM_LEGAL_OTHER_MEAT);
  g_assert_cmpint (judge (pork, formula).state, ==, FM_LEGAL_OTHER_MEAT);
  g_assert_cmpint (judge (other, formula).state, ==, FM_LEGAL_MET);
  ingredient_of (formula, 0)->species = FM_SPECIES_UNKNOWN;
  g_assert_cmpint (judge (beef, formula).state, ==, FM_LEGAL_UNKNOWN);
  g_assert_cmpint (judge (pork, formula).state, ==, FM_LEGAL_UNKNOWN);
  g_assert_cmpint (judge (other, formula).state, ==, FM_LEGAL_UNKNOWN);
  ingredient_of (formula, 0)->species = FM_SPECIES_NONE;
  g_assert_cmpint (judge (other, formula).state, ==, FM_LEGAL_OTHER_MEAT);
}

/* No set, no text; a set names who must check and never says that anything is legal. */
static void
test_text (void)
{
  g_autoptr (FmFormula) formula = new_meat (FM_SPECIES_BEEF, 20.04, 8.0, 60.0);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  g_autofree char *none = fm_legal_text (formula, analysis, FM_RULE_SET_NONE);
  g_autofree char *eu = fm_legal_text (formula, analysis, FM_RULE_SET_EU);
  g_autofree char *us = fm_legal_text (formula, analysis, FM_RULE_SET_US);

  g_assert_cmpstr (none, ==, "");
  /* never rounded onto the limit that it misses */
  g_assert_nonnull (strstr (eu, "minced pure beef: fat 20.04"));
  g_assert_nonnull (strstr (eu, "NOT met"));
  g_assert_null (strstr (eu, "pigmeat"));
  g_assert_nonnull (strstr (eu, "25 October 2011"));
  g_assert_nonnull (strstr (us, "hamburger: fat 20.0"));
  g_assert_nonnull (strstr (us, "licensed professional"));
  g_assert_null (strstr (us, "legal"));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/legal/rows", test_rows);
  g_test_add_func ("/legal/published-eu-figures", test_published_eu_figures);
  g_test_add_func ("/legal/unknown-stays-unknown", test_unknown_stays_unknown);
  g_test_add_func ("/legal/other-meat", test_other_meat);
  g_test_add_func ("/legal/text", test_text);
  return g_test_run ();
}
