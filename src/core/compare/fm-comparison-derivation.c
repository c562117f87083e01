/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-comparison-derivation.c - where the figures of a row come from, as text that can be copied */
#include "core/compare/fm-comparison-derivation.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-number.h"
#include "core/formula/fm-derivation.h"

#define NUTRIENT_PREFIX "nutrient_"
#define INGREDIENT_PREFIX "ingredient:"

/* FM_NUTRIENT_NONE for a row that is no nutrient. */
static FmNutrient
nutrient_of (const char *key)
{
  if (g_str_has_prefix (key, NUTRIENT_PREFIX))
    return fm_nutrient_from_key (key + strlen (NUTRIENT_PREFIX));
  return g_str_equal (key, "fat") ? FM_NUTRIENT_FAT : FM_NUTRIENT_NONE;
}

static char *
masses_note (const FmCompareItem *item)
{
  if (item->kind == FM_COMPARE_DRAFT)
    return g_strdup (_ ("By the masses of the draft."));
  if (item->kind == FM_COMPARE_VERSION)
    return g_strdup (_ ("By the masses of the version."));
  return g_strdup (item->as_weighed ? _ ("By the masses weighed in the experiment.")
                                    : _ ("By the masses of its version: not every line was "
                                         "weighed in the experiment."));
}

static char *
recorded_note (const FmCompareItem *item)
{
  if (item->kind == FM_COMPARE_EXPERIMENT)
    return g_strdup (_ ("As recorded in the experiment."));
  if (item->kind == FM_COMPARE_DRAFT)
    return g_strdup (_ ("Only a saved version has experiments."));
  return g_strdup_printf (ngettext ("Mean of what was recorded in %u experiment of the version.",
                                    "Mean of what was recorded in %u experiments of the version.",
                                    item->n_experiments),
                          item->n_experiments);
}

static char *
liking_note (const FmCompareItem *item)
{
  return g_strdup_printf (ngettext ("Mean of the scores in opened blind tastings, %u taster.",
                                    "Mean of the scores in opened blind tastings, %u tasters.",
                                    item->n_tasters),
                          item->n_tasters);
}

static char *
share_note (const FmCompareItem *item, const FmCompareRow *row)
{
  const char *identity = row->key + strlen (INGREDIENT_PREFIX);
  g_autofree char *total = fm_number_format (item->analysis->total_g, 1);
  double mass_g = 0.0;

  for (guint i = 0; i < fm_formula_n_lines (item->formula); i++) {
    const FmFormulaLine *line = fm_formula_line (item->formula, i);

    if (g_str_equal (fm_ingredient_identity (line->ingredient), identity))
      mass_g += line->mass_g;
  }
  g_autofree char *mass = fm_number_format (mass_g, 1);
  /* TRANSLATORS: masses in g */
  return g_strdup_printf (_ ("%s g ÷ %s g × 100"), mass, total);
}

static char *
loss_note (const FmCompareItem *item)
{
  g_autofree char *fat = fm_number_format (item->analysis->fat_pct, 2);

  return g_strdup_printf (
      _ ("Predicted from a fat of %s %% by what pairs of raw and cooked rows of "
         "USDA SR28 for this kind of animal lost; outside their range it is "
         "not known."),
      fat);
}

/* The paragraph under a column's value. */
static char *
column_text (const FmCompareItem *item, const FmCompareRow *row)
{
  const FmNutrient nutrient = nutrient_of (row->key);

  if (row->section == FM_COMPARE_SECTION_FINDINGS)
    return g_strdup (_ ("As recorded with its experiments and in opened blind tastings."));
  if (row->texts != NULL)
    return g_strdup (_ ("As the process of the formula plans it, in the cook's own words."));
  if (nutrient != FM_NUTRIENT_NONE)
    return fm_derivation_nutrient (item->formula, item->analysis, nutrient);
  if (g_str_has_prefix (row->key, INGREDIENT_PREFIX))
    return share_note (item, row);
  if (g_str_equal (row->key, "liking") || g_str_equal (row->key, "tasters"))
    return liking_note (item);
  if (g_str_equal (row->key, "predicted_loss"))
    return loss_note (item);
  if (row->section == FM_COMPARE_SECTION_FAT_LEAN)
    return fm_derivation_lean (item->formula, item->analysis);
  if (row->section == FM_COMPARE_SECTION_COST)
    return fm_derivation_cost (item->formula, item->analysis);
  if (g_str_equal (row->key, "batch") || g_str_equal (row->key, "planned_patty"))
    return fm_derivation_mass (item->formula, item->analysis);
  return recorded_note (item);
}

static void
add_column (GString *text, const FmComparison *self, const FmCompareRow *row, guint i)
{
  const FmCompareItem *item = fm_comparison_item (self, i);
  g_autofree char *value = fm_compare_row_text (row, i, -1);
  g_autofree char *masses = masses_note (item);
  g_autofree char *paragraph = column_text (item, row);

  g_string_append_printf (text, "%s: %s %s\n%s\n%s\n\n", item->title, value, row->unit, masses,
                          paragraph);
}

static void
add_difference (
    GString *text, const FmComparison *self, const FmCompareRow *row, guint i, guint reference)
{
  g_autofree char *of = fm_number_format (row->values[i], row->decimals + 2);
  g_autofree char *from = fm_number_format (row->values[reference], row->decimals + 2);
  g_autofree char *rest =
      fm_number_format (row->values[i] - row->values[reference], row->decimals + 2);

  if (i == reference)
    return;
  if (isnan (row->values[i] - row->values[reference]))
    g_string_append_printf (text,
                            _ ("%s: one of the two is not known, so neither is the "
                               "difference.\n"),
                            fm_comparison_item (self, i)->title);
  else
    g_string_append_printf (text, "%s: %s − %s = %s\n", fm_comparison_item (self, i)->title, of,
                            from, rest);
}

char *
fm_comparison_derivation (const FmComparison *self, const FmCompareRow *row, int reference)
{
  const guint n = fm_comparison_n_items (self);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    add_column (text, self, row, i);
  if (reference >= 0 && (guint)reference < n) {
    g_string_append_printf (text, _ ("Differences from %s:\n"),
                            fm_comparison_item (self, (guint)reference)->title);
    for (guint i = 0; i < n; i++)
      add_difference (text, self, row, i, (guint)reference);
  }
  return g_string_free (text, FALSE);
}
