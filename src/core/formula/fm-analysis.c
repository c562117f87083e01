/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-analysis.c - what a formula is made of, with its unknowns */
#include "core/formula/fm-analysis.h"

#include "core/base/fm-number.h"
#include "core/base/fm-uncertainty.h"

#include <math.h>
#include <string.h>

/* A pinch of unknown stuff, 0.05 g in a kilogram, does not make the blend unknown. */
#define FULL_COVERAGE_PCT 99.995

/* A mean over the lines that know a value. */
typedef struct {
  double sum;     /* mass x value */
  double known_g; /* mass of the lines that know it */
} Mean;

static void
mean_add (Mean *mean, double mass_g, double value)
{
  if (isnan (value))
    return;
  mean->sum += mass_g * value;
  mean->known_g += mass_g;
}

static gboolean
is_full (double covered_pct)
{
  return covered_pct >= FULL_COVERAGE_PCT;
}

static double
mean_if_full (const Mean *mean, double total_g)
{
  return total_g > 0.0 && is_full (mean->known_g / total_g * 100.0) ? mean->sum / total_g : NAN;
}

static double
declared_fat (const FmIngredient *ingredient)
{
  return isnan (ingredient->declared_fat_pct) ? fm_ingredient_fat_g_per_100g (ingredient)
                                              : ingredient->declared_fat_pct;
}

static void
fill_amounts (FmAnalysis *self, const FmFormula *formula)
{
  Mean means[FM_N_NUTRIENTS] = { 0 };
  for (guint i = 0; i < self->n_lines; i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    for (int n = 0; n < FM_N_NUTRIENTS; n++)
      mean_add (&means[n], line->mass_g, fm_ingredient_value (line->ingredient, (FmNutrient)n));
  }
  for (int n = 0; n < FM_N_NUTRIENTS; n++) {
    gboolean any = means[n].known_g > 0.0;
    self->amounts[n].known_g_per_100g = any ? means[n].sum / self->total_g : NAN;
    self->amounts[n].covered_pct = any ? means[n].known_g / self->total_g * 100.0 : 0.0;
  }
  self->amounts[FM_NUTRIENT_SODIUM].known_g_per_100g +=
      fm_brief_surface_sodium_mg_per_100g (formula->brief);
}

static void
fill_totals (FmAnalysis *self, const FmFormula *formula)
{
  Mean declared = { 0 };
  Mean price = { 0 };
  for (guint i = 0; i < self->n_lines; i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    mean_add (&declared, line->mass_g, declared_fat (line->ingredient));
    mean_add (&price, line->mass_g, fm_ingredient_edible_price_per_kg (line->ingredient));
  }
  self->fat_pct = fm_analysis_value (self, FM_NUTRIENT_FAT);
  self->lean_pct = 100.0 - self->fat_pct;
  self->declared_fat_pct = mean_if_full (&declared, self->total_g);
  self->cost_per_kg = mean_if_full (&price, self->total_g);
  self->known_cost_per_kg = price.known_g > 0.0 ? price.sum / self->total_g : NAN;
  self->cost_covered_pct = price.known_g > 0.0 ? price.known_g / self->total_g * 100.0 : 0.0;
}

static void
fill_lines (FmAnalysis *self, const FmFormula *formula)
{
  double known_fat_g = 0.0;
  for (guint i = 0; i < self->n_lines; i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    double fat_g = line->mass_g * fm_ingredient_fat_g_per_100g (line->ingredient) / 100.0;
    self->line_share_pct[i] = self->total_g > 0.0 ? line->mass_g / self->total_g * 100.0 : NAN;
    self->line_fat_g[i] = fat_g;
    known_fat_g += isnan (fat_g) ? 0.0 : fat_g;
  }
  for (guint i = 0; i < self->n_lines; i++)
    self->line_fat_share_pct[i] =
        known_fat_g > 0.0 ? self->line_fat_g[i] / known_fat_g * 100.0 : NAN;
}

/* Lines of one ingredient carry one error, r = 1: their contributions add before squaring. */
static GHashTable *
u_by_ingredient (const FmFormula *formula, double total_g)
{
  GHashTable *contributions = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    if (line->mass_g <= 0.0)
      continue;
    const char *identity = fm_ingredient_identity (line->ingredient);
    double *sum = g_hash_table_lookup (contributions, identity);
    if (!sum) {
      sum = g_new0 (double, 1);
      g_hash_table_insert (contributions, (gpointer)identity, sum);
    }
    *sum += line->mass_g / total_g * fm_ingredient_fat_u_g_per_100g (line->ingredient);
  }
  return contributions;
}

static double
fat_uncertainty (const FmAnalysis *self, const FmFormula *formula)
{
  if (isnan (self->fat_pct))
    return NAN;
  g_autoptr (GHashTable) contributions = u_by_ingredient (formula, self->total_g);
  guint n = g_hash_table_size (contributions);
  if (n == 0)
    return NAN;
  g_autofree double *weight = g_new (double, n);
  g_autofree double *u = g_new (double, n);
  GHashTableIter iter;
  gpointer value;
  guint i = 0;
  g_hash_table_iter_init (&iter, contributions);
  while (g_hash_table_iter_next (&iter, NULL, &value)) {
    weight[i] = 1.0;
    u[i++] = *(double *)value;
  }
  return fm_uncertainty_linear (n, weight, u, NULL);
}

FmAnalysis *
fm_analysis_new (const FmFormula *formula)
{
  FmAnalysis *self = g_new0 (FmAnalysis, 1);
  self->n_lines = fm_formula_n_lines (formula);
  self->total_g = fm_formula_total_g (formula);
  self->line_share_pct = g_new0 (double, self->n_lines);
  self->line_fat_g = g_new0 (double, self->n_lines);
  self->line_fat_share_pct = g_new0 (double, self->n_lines);
  fill_amounts (self, formula);
  fill_totals (self, formula);
  fill_lines (self, formula);
  self->fat_u_pct = fat_uncertainty (self, formula);
  return self;
}

void
fm_analysis_free (FmAnalysis *self)
{
  g_free (self->line_share_pct);
  g_free (self->line_fat_g);
  g_free (self->line_fat_share_pct);
  g_free (self);
}

double
fm_analysis_value (const FmAnalysis *self, FmNutrient nutrient)
{
  const FmAmount *amount = &self->amounts[nutrient];
  return is_full (amount->covered_pct) ? amount->known_g_per_100g : NAN;
}

typedef gboolean (*LacksFunc) (const FmIngredient *ingredient, FmNutrient nutrient);

static gboolean
lacks_value (const FmIngredient *ingredient, FmNutrient nutrient)
{
  return isnan (fm_ingredient_value (ingredient, nutrient));
}

static gboolean
lacks_price (const FmIngredient *ingredient, FmNutrient nutrient)
{
  return isnan (fm_ingredient_edible_price_per_kg (ingredient));
}

static GStrv
names_that_lack (const FmFormula *formula, LacksFunc lacks, FmNutrient nutrient)
{
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    if (line->mass_g > 0.0 && lacks (line->ingredient, nutrient) &&
        g_hash_table_add (seen, line->ingredient->name))
      g_strv_builder_add (names, line->ingredient->name);
  }
  return g_strv_builder_end (names);
}

GStrv
fm_analysis_missing (const FmFormula *formula, FmNutrient nutrient)
{
  return names_that_lack (formula, lacks_value, nutrient);
}

GStrv
fm_analysis_unpriced (const FmFormula *formula)
{
  return names_that_lack (formula, lacks_price, FM_NUTRIENT_NONE);
}

char *
fm_lean_point_format (double fat_pct)
{
  if (!(fat_pct >= 0.0 && fat_pct <= 100.0))
    return fm_number_format (NAN, 0);
  long fat = lround (fat_pct);
  return g_strdup_printf ("%ld/%ld", 100 - fat, fat);
}

double
fm_analysis_target_value (const FmAnalysis *self, const FmBrief *brief, FmTargetKind kind)
{
  const FmNutrient nutrient = fm_target_info (kind)->nutrient;
  const double amount =
      nutrient == FM_NUTRIENT_NONE ? self->cost_per_kg : fm_analysis_value (self, nutrient);

  return amount * fm_target_factor (kind, brief->patty_mass_g);
}
