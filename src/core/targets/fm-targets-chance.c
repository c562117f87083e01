/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-chance.c - how sure the fat of a blend is */
#include "core/targets/fm-targets-chance.h"

#include "core/formula/fm-analysis.h"
#include "core/base/fm-error.h"
#include "core/base/fm-number.h"
#include "core/base/fm-uncertainty.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MAX_SCALE_STEP_G 1e6

double
fm_normal_below (double mean, double u, double limit)
{
  if (isnan (mean) || isnan (u) || isnan (limit))
    return NAN;
  if (u > 0.0)
    return 0.5 * erfc ((mean - limit) / (u * M_SQRT2));
  if (mean == limit)
    return 0.5;
  return mean < limit ? 1.0 : 0.0;
}

static gboolean
check (const FmFormula *formula, double limit_pct, double scale_step_g, GError **error)
{
  if (!(fm_formula_total_g (formula) > 0.0)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY,
                 _ ("The blend weighs nothing yet. Type the mass of at least one line first."));
    return FALSE;
  }
  if (!isnan (limit_pct) && !(limit_pct >= 0.0 && limit_pct <= 100.0)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The fat limit must lie from 0 to 100 %%. Type it in %%."));
    return FALSE;
  }
  if (!(scale_step_g >= 0.0 && scale_step_g <= MAX_SCALE_STEP_G)) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("The step of the scale must be 0 g or more. Type it in grams."));
    return FALSE;
  }
  g_auto (GStrv) missing = fm_analysis_missing (formula, FM_NUTRIENT_FAT);
  if (!missing[0])
    return TRUE;
  g_autofree char *names = g_strjoinv ("; ", missing);
  g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE,
               _ ("The fat of these ingredients is not known: %s. Type it in their analysis."),
               names);
  return FALSE;
}

/* What the propagation needs of each line that weighs something. */
typedef struct {
  guint n;
  double *mass_g;
  double *fat;
  double *u_fat;
  double *u_mass_g;
  const char **identity;
} Lines;

static void
lines_init (Lines *self, const FmFormula *formula, double scale_step_g)
{
  guint n = fm_formula_n_lines (formula);
  *self = (Lines){ 0,
                   g_new0 (double, n),
                   g_new0 (double, n),
                   g_new0 (double, n),
                   g_new0 (double, n),
                   g_new0 (const char *, n) };
  for (guint i = 0; i < n; i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    if (!(line->mass_g > 0.0))
      continue;
    self->mass_g[self->n] = line->mass_g;
    self->fat[self->n] = fm_ingredient_fat_g_per_100g (line->ingredient);
    self->u_fat[self->n] = fm_ingredient_fat_u_g_per_100g (line->ingredient);
    self->u_mass_g[self->n] = scale_step_g / sqrt (12.0);
    self->identity[self->n++] = fm_ingredient_identity (line->ingredient);
  }
}

static void
lines_clear (Lines *self)
{
  g_free (self->mass_g);
  g_free (self->fat);
  g_free (self->u_fat);
  g_free (self->u_mass_g);
  g_free (self->identity);
}

/* Lines of one ingredient share its error. */
static double *
correlations (const Lines *lines)
{
  double *r = g_new0 (double, lines->n * lines->n);
  for (guint i = 0; i < lines->n; i++)
    for (guint j = 0; j < lines->n; j++)
      r[i * lines->n + j] = g_str_equal (lines->identity[i], lines->identity[j]) ? 1.0 : 0.0;
  return r;
}

static GStrv
names_without_u (const FmFormula *formula)
{
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    if (line->mass_g > 0.0 && isnan (fm_ingredient_fat_u_g_per_100g (line->ingredient)) &&
        g_hash_table_add (seen, line->ingredient->name))
      g_strv_builder_add (names, line->ingredient->name);
  }
  return g_strv_builder_end (names);
}

/* What the steps of the scale alone leave open, the fat of each part taken as exact. */
static double
weighing_u_pct (const Lines *lines)
{
  g_autofree double *exact = g_new0 (double, lines->n);
  return fm_uncertainty_mixture (lines->n, lines->mass_g, lines->fat, exact, lines->u_mass_g, NULL);
}

gboolean
fm_fat_chance_init (FmFatChance *self,
                    const FmFormula *formula,
                    double limit_pct,
                    double scale_step_g,
                    GError **error)
{
  if (!check (formula, limit_pct, scale_step_g, error))
    return FALSE;
  Lines lines;
  lines_init (&lines, formula, scale_step_g);
  g_autofree double *r = correlations (&lines);
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  *self = (FmFatChance){ .fat_pct = analysis->fat_pct };
  self->without_u = names_without_u (formula);
  self->u_weighing_pct = weighing_u_pct (&lines);
  self->u_pct =
      fm_uncertainty_mixture (lines.n, lines.mass_g, lines.fat, lines.u_fat, lines.u_mass_g, r);
  lines_clear (&lines);
  self->below = fm_normal_below (self->fat_pct, self->u_pct, limit_pct);
  return TRUE;
}

void
fm_fat_chance_clear (FmFatChance *self)
{
  g_clear_pointer (&self->without_u, g_strfreev);
}
