/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-head-figures.c - the table of the figures at the head of a formula */
#include "app/formula/fm-head-figures.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "core/base/fm-number.h"
#include "core/formula/fm-derivation.h"

/* Two-sided 95 % of the normal distribution. */
#define COVERAGE_FACTOR_95 1.96

static char *
per_patty (const char *amount)
{
  return g_strdup_printf (_ ("%s per patty"), amount);
}

static gboolean
say_total (const FmFormula *formula, const FmAnalysis *analysis, FmHeadText *text)
{
  g_autofree char *made = fm_number_format (analysis->total_g / formula->brief->patty_mass_g, 1);

  text->value = fm_notebook_text (FM_MEASURE_MASS, analysis->total_g, 1);
  /* TRANSLATORS: how many patties the lines make. */
  text->note = g_strdup_printf (_ ("makes %s patties"), made);
  return TRUE;
}

static gboolean
say_batch (const FmFormula *formula, const FmAnalysis *analysis, FmHeadText *text)
{
  const FmBrief *brief = formula->brief;
  g_autofree char *patty = fm_notebook_text (FM_MEASURE_MASS, brief->patty_mass_g, 1);

  text->caption = g_strdup_printf (
      ngettext ("For %d patty", "For %d patties", (gulong)brief->n_patties), brief->n_patties);
  text->value = fm_notebook_text (FM_MEASURE_MASS, brief->patty_mass_g * brief->n_patties, 1);
  text->note = per_patty (patty);
  return TRUE;
}

static char *
nutrient_text (const FmAnalysis *analysis, FmNutrient nutrient, int decimals, const char *unit)
{
  const double value = fm_analysis_value (analysis, nutrient);
  const FmAmount *amount = &analysis->amounts[nutrient];
  g_autofree char *known = NULL;

  if (!isnan (value) || !(amount->covered_pct > 0.0))
    return fm_number_format_unit (value, decimals, unit);
  known = fm_number_format_unit (amount->known_g_per_100g, decimals, unit);
  /* TRANSLATORS: the known part of a figure; the rest is not known. */
  return g_strdup_printf (_ ("≥ %s"), known);
}

static gboolean
say_fat (const FmFormula *formula, const FmAnalysis *analysis, FmHeadText *text)
{
  const double half = COVERAGE_FACTOR_95 * analysis->fat_u_pct;
  g_autofree char *low = fm_number_format (MAX (0.0, analysis->fat_pct - half), 1);
  g_autofree char *high = fm_number_format (MIN (100.0, analysis->fat_pct + half), 1);

  if (!isnan (half))
    text->note = g_strdup_printf (_ ("95 %%: %s to %s %%"), low, high);
  return TRUE;
}

static gboolean
say_lean (const FmFormula *formula, const FmAnalysis *analysis, FmHeadText *text)
{
  g_autofree char *lean = fm_number_format_unit (analysis->lean_pct, 1, "%");
  g_autofree char *point = fm_lean_point_format (analysis->fat_pct);
  g_autofree char *declared = fm_lean_point_format (analysis->declared_fat_pct);

  /* TRANSLATORS: chemical lean, then the same as a lean point. */
  text->value =
      isnan (analysis->lean_pct) ? g_strdup (lean) : g_strdup_printf (_ ("%s = %s"), lean, point);
  if (!isnan (analysis->declared_fat_pct) && g_strcmp0 (declared, point) != 0)
    text->note = g_strdup_printf (_ ("declared: %s"), declared);
  return TRUE;
}

static gboolean
say_energy (const FmFormula *formula, const FmAnalysis *analysis, FmHeadText *text)
{
  const double kcal = fm_analysis_value (analysis, FM_NUTRIENT_ENERGY_KCAL);
  g_autofree char *patty =
      fm_number_format_unit (kcal * formula->brief->patty_mass_g / 100.0, 0, _ ("kcal"));

  if (!isnan (kcal))
    text->note = per_patty (patty);
  return TRUE;
}

/* "at least" as long as a price is missing; without any price a dash. */
static char *
cost_text (const FmAnalysis *analysis, double kilograms)
{
  const char *currency = fm_notebook_units ()->currency;
  g_autofree char *known =
      fm_number_format_unit (analysis->known_cost_per_kg * kilograms, 2, currency);

  if (!isnan (analysis->cost_per_kg) || isnan (analysis->known_cost_per_kg))
    return g_steal_pointer (&known);
  /* TRANSLATORS: the part of a cost that is known, as in "at least 4.10 EUR". */
  return g_strdup_printf (_ ("at least %s"), known);
}

static gboolean
say_cost (const FmFormula *formula, const FmAnalysis *analysis, FmHeadText *text)
{
  g_autofree char *patty = cost_text (analysis, formula->brief->patty_mass_g / 1000.0);

  text->value = cost_text (analysis, 1.0);
  text->note =
      isnan (analysis->known_cost_per_kg) ? g_strdup (_ ("no prices yet")) : per_patty (patty);
  return TRUE;
}

static gboolean
say_targets (const FmFormula *formula, const FmAnalysis *analysis, FmHeadText *text)
{
  guint n_set = 0;
  guint n_met = 0;

  for (guint i = 0; i < FM_N_TARGETS; i++) {
    const double now = fm_analysis_target_value (analysis, formula->brief, (FmTargetKind)i);
    const FmBandState state = fm_band_state (&formula->brief->bands[i], now);

    n_set += state != FM_BAND_NONE;
    n_met += state == FM_BAND_WITHIN;
  }
  /* TRANSLATORS: how many target bands the blend meets, of how many that are set. */
  text->value =
      n_set > 0 ? g_strdup_printf (_ ("%u of %u met"), n_met, n_set) : g_strdup (_ ("none set"));
  return TRUE;
}

static const FmHeadFigure figures[] = {
  { N_ ("Total"), FM_NUTRIENT_NONE, 0, NULL, say_total, NULL, FALSE },
  { NULL, FM_NUTRIENT_NONE, 0, NULL, say_batch, NULL, FALSE },
  { N_ ("Fat, calculated"), FM_NUTRIENT_FAT, 1, "%", say_fat, NULL, FALSE },
  { N_ ("Lean, calculated"), FM_NUTRIENT_NONE, 0, NULL, say_lean, fm_derivation_lean, FALSE },
  { N_ ("Protein"), FM_NUTRIENT_PROTEIN, 1, "%", NULL, NULL, FALSE },
  { N_ ("Moisture"), FM_NUTRIENT_WATER, 1, "%", NULL, NULL, FALSE },
  { N_ ("Energy/100 g, raw"), FM_NUTRIENT_ENERGY_KCAL, 0, N_ ("kcal"), say_energy, NULL, FALSE },
  { N_ ("Cost per kg, edible"), FM_NUTRIENT_NONE, 0, NULL, say_cost, fm_derivation_cost, FALSE },
  { N_ ("Targets"), FM_NUTRIENT_NONE, 0, NULL, say_targets, fm_derivation_targets, TRUE },
};

void
fm_head_text_clear (FmHeadText *self)
{
  g_clear_pointer (&self->caption, g_free);
  g_clear_pointer (&self->value, g_free);
  g_clear_pointer (&self->note, g_free);
}

const FmHeadFigure *
fm_head_figures (guint *n)
{
  *n = G_N_ELEMENTS (figures);
  return figures;
}

gboolean
fm_head_figure_say (const FmHeadFigure *self,
                    const FmFormula *formula,
                    const FmAnalysis *analysis,
                    FmHeadText *text)
{
  *text = (FmHeadText){ NULL, NULL, NULL };
  if (self->say != NULL && !self->say (formula, analysis, text)) {
    fm_head_text_clear (text);
    return FALSE;
  }
  if (text->caption == NULL)
    text->caption = g_strdup (_ (self->caption));
  if (text->value == NULL)
    text->value = nutrient_text (analysis, self->nutrient, self->decimals, _ (self->unit));
  return TRUE;
}

char *
fm_head_figure_derivation (const FmHeadFigure *self, const FmFormula *formula)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);

  if (self->derive != NULL)
    return self->derive (formula, analysis);
  if (self->nutrient != FM_NUTRIENT_NONE)
    return fm_derivation_nutrient (formula, analysis, self->nutrient);
  return fm_derivation_mass (formula, analysis);
}
