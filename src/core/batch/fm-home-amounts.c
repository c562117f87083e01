/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-home-amounts.c - amounts that a reader at home can weigh, with the targets as they were */
#include "core/batch/fm-home-amounts.h"

#include <math.h>

#include "core/base/fm-number.h"
#include "core/base/fm-units.h"
#include "core/formula/fm-analysis.h"

/* An ingredient lighter than this many steps is rounded to the finest one instead. */
#define STEPS_OF_A_HEAVY_ONE 4.0
/* Of ounces. */
#define EIGHTHS 8.0

static const double steps_g[] = { 25.0, 10.0, 5.0, 1.0, 0.5, 0.1 };
static const double steps_oz[] = { 1.0, 0.5, 0.25, 0.125 };

static double
round_to (double mass_g, double step_g)
{
  return round (mass_g / step_g) * step_g;
}

/* The first of the steps from @from on that has enough of them in @mass_g, else the finest. */
static double
step_for (double mass_g, const double *steps, guint n, guint from, double unit_g)
{
  for (guint i = from; i < n; i++)
    if (mass_g >= STEPS_OF_A_HEAVY_ONE * steps[i] * unit_g)
      return steps[i] * unit_g;
  return steps[n - 1] * unit_g;
}

static FmFormula *
round_all (const FmFormula *exact, guint from, gboolean ounces)
{
  const double *steps = ounces ? steps_oz : steps_g;
  const guint n = ounces ? G_N_ELEMENTS (steps_oz) : G_N_ELEMENTS (steps_g);
  FmFormula *formula = fm_formula_copy (exact);

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    FmFormulaLine *line = fm_formula_line (formula, i);
    const double step_g = step_for (line->mass_g, steps, n, from, ounces ? FM_G_PER_OZ : 1.0);
    const double rounded_g = round_to (line->mass_g, step_g);

    /* A pinch does not vanish. */
    line->mass_g = rounded_g > 0.0 ? rounded_g : line->mass_g;
  }
  return formula;
}

static gboolean
targets_stand (const FmFormula *before, const FmFormula *after)
{
  g_autoptr (FmAnalysis) old = fm_analysis_new (before);
  g_autoptr (FmAnalysis) new = fm_analysis_new (after);
  const FmBrief *brief = before->brief;

  for (int i = 0; i < FM_N_TARGETS; i++) {
    const double was = fm_analysis_target_value (old, brief, (FmTargetKind)i);
    const double is = fm_analysis_target_value (new, brief, (FmTargetKind)i);

    if (fm_band_state (&brief->bands[i], was) != fm_band_state (&brief->bands[i], is))
      return FALSE;
  }
  return TRUE;
}

FmHomeAmounts *
fm_home_amounts_new (const FmFormula *formula, int n_patties, gboolean ounces, GError **error)
{
  const guint n_steps = ounces ? G_N_ELEMENTS (steps_oz) : G_N_ELEMENTS (steps_g);
  g_autoptr (FmFormula) exact = fm_formula_copy (formula);
  FmHomeAmounts *self;

  if (!fm_formula_scale_to (exact, n_patties * formula->brief->patty_mass_g, error))
    return NULL;
  self = g_new0 (FmHomeAmounts, 1);
  for (guint from = 0; from < n_steps && !self->holds; from++) {
    g_clear_pointer (&self->formula, fm_formula_free);
    self->formula = round_all (exact, from, ounces);
    self->step_g = ounces ? steps_oz[from] * FM_G_PER_OZ : steps_g[from];
    self->holds = targets_stand (exact, self->formula);
  }
  return self;
}

void
fm_home_amounts_free (FmHomeAmounts *self)
{
  fm_formula_free (self->formula);
  g_free (self);
}

/* Whole ounces and an eighth, a quarter ... as they are told. */
static char *
ounce_text (double mass_g)
{
  static const char *const parts[] = { "", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8" };
  const double eighths = round (mass_g / FM_G_PER_OZ * EIGHTHS);
  const int whole = (int)floor (eighths / EIGHTHS), rest = (int)fmod (eighths, EIGHTHS);

  if (eighths < 1.0)
    return fm_number_format_unit (mass_g, 1, "g");
  if (rest == 0)
    return g_strdup_printf ("%d oz", whole);
  return whole > 0 ? g_strdup_printf ("%d %s oz", whole, parts[rest])
                   : g_strdup_printf ("%s oz", parts[rest]);
}

char *
fm_home_amount_text (double mass_g, gboolean ounces)
{
  g_autofree char *number = NULL;

  if (ounces)
    return ounce_text (mass_g);
  number = fm_number_to_edit (mass_g, mass_g < 1.0 ? 2 : 1);
  return g_strdup_printf ("%s g", number);
}
