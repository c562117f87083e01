/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-legal.c - limits that rules of law set for ground meat, beside what the blend has */
#include "core/formula/fm-legal.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/base/fm-units.h"

/* Arithmetic may leave a value this far beside a limit that it was made for. */
#define TOLERANCE_PCT 1e-9
#define MAX_DECIMALS 6

typedef enum { NO, YES, NOT_KNOWN } Answer;

static Answer
is_beef_alone (FmSpeciesSet set)
{
  const FmSpeciesSet beef = FM_SPECIES_BIT (FM_SPECIES_BEEF) | FM_SPECIES_BIT (FM_SPECIES_NONE);
  const FmSpeciesSet unknown = FM_SPECIES_BIT (FM_SPECIES_UNKNOWN);

  if ((set & ~(beef | unknown)) != 0)
    return NO;
  if ((set & unknown) != 0)
    return NOT_KNOWN;
  return (set & FM_SPECIES_BIT (FM_SPECIES_BEEF)) != 0 ? YES : NO;
}

static Answer
has_pork (FmSpeciesSet set)
{
  const FmSpeciesSet maybe = FM_SPECIES_BIT (FM_SPECIES_UNKNOWN) |
                             FM_SPECIES_BIT (FM_SPECIES_MIXED) |
                             FM_SPECIES_BIT (FM_SPECIES_MIXED_MEAT);

  if ((set & FM_SPECIES_BIT (FM_SPECIES_PORK)) != 0)
    return YES;
  return (set & maybe) != 0 ? NOT_KNOWN : NO;
}

static Answer
speaks_of (FmLegalMeat meat, FmSpeciesSet set)
{
  const Answer beef = is_beef_alone (set), pork = has_pork (set);

  if (fm_species_set_is_meatless (set) && (set & FM_SPECIES_BIT (FM_SPECIES_UNKNOWN)) == 0)
    return NO;
  switch (meat) {
  case FM_LEGAL_MEAT_ANY:
    return YES;
  case FM_LEGAL_MEAT_BEEF:
    return beef;
  case FM_LEGAL_MEAT_PORK:
    return pork;
  case FM_LEGAL_MEAT_OTHER:
    if (beef == YES || pork == YES)
      return NO;
    return beef == NOT_KNOWN || pork == NOT_KNOWN ? NOT_KNOWN : YES;
  }
  g_return_val_if_reached (NOT_KNOWN);
}

/* Only what comes from animals counts as meat protein; NaN when a part is not known. */
static double
collagen_pct (const FmFormula *formula)
{
  double collagen_g = 0.0, protein_g = 0.0;

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    const FmIngredient *ingredient = line->ingredient;

    if (!(line->mass_g > 0.0) || ingredient->species == FM_SPECIES_NONE)
      continue;
    if (ingredient->species == FM_SPECIES_UNKNOWN)
      return NAN;
    collagen_g += line->mass_g * fm_ingredient_collagen_g_per_100g (ingredient);
    protein_g += line->mass_g * ingredient->composition.per_100g[FM_NUTRIENT_PROTEIN];
  }
  return protein_g > 0.0 ? 100.0 * collagen_g / protein_g : (double)NAN;
}

static double
kinds_pct (const FmFormula *formula, FmIngredientKind first, FmIngredientKind second)
{
  double share_pct = 0.0;

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmIngredientKind kind = fm_formula_line (formula, i)->ingredient->kind;

    if (kind == first || kind == second)
      share_pct += fm_formula_share_pct (formula, i);
  }
  return share_pct;
}

static double
get_value (FmLegalFigure figure, const FmFormula *formula, const FmAnalysis *analysis)
{
  if (!(fm_formula_total_g (formula) > 0.0))
    return NAN;
  switch (figure) {
  case FM_LEGAL_FAT:
    return analysis->fat_pct;
  case FM_LEGAL_COLLAGEN:
    return collagen_pct (formula);
  case FM_LEGAL_SALT:
    return fm_analysis_value (analysis, FM_NUTRIENT_SODIUM) / 1000.0 * FM_SALT_PER_SODIUM;
  case FM_LEGAL_WATER_BINDER:
    return kinds_pct (formula, FM_INGREDIENT_WATER, FM_INGREDIENT_BINDER);
  case FM_LEGAL_ADDED_FAT:
    return kinds_pct (formula, FM_INGREDIENT_FAT, FM_INGREDIENT_FAT);
  }
  g_return_val_if_reached (NAN);
}

static gboolean
is_met (const FmLegalLimit *limit, double value_pct)
{
  return limit->must_be_below ? value_pct < limit->limit_pct - TOLERANCE_PCT
                              : value_pct <= limit->limit_pct + TOLERANCE_PCT;
}

FmLegalResult
fm_legal_judge (const FmLegalLimit *limit, const FmFormula *formula, const FmAnalysis *analysis)
{
  FmLegalResult result = { .limit = limit, .state = FM_LEGAL_UNKNOWN };
  const Answer answer = speaks_of (limit->meat, fm_formula_species (formula));

  result.value_pct = get_value (limit->figure, formula, analysis);
  result.margin_pct = limit->limit_pct - result.value_pct;
  if (answer == NO)
    result.state = FM_LEGAL_OTHER_MEAT;
  else if (answer == YES && !isnan (result.value_pct))
    result.state = is_met (limit, result.value_pct) ? FM_LEGAL_MET : FM_LEGAL_NOT_MET;
  return result;
}

static const char *
figure_name (FmLegalFigure figure)
{
  switch (figure) {
  case FM_LEGAL_FAT:
    return _ ("fat");
  case FM_LEGAL_COLLAGEN:
    return _ ("collagen of meat protein");
  case FM_LEGAL_SALT:
    return _ ("salt (sodium × 2.5)");
  case FM_LEGAL_WATER_BINDER:
    return _ ("water and binders");
  case FM_LEGAL_ADDED_FAT:
    return _ ("fat added as such");
  }
  g_return_val_if_reached ("");
}

/* Never rounded across the limit that it is held against. */
static char *
value_text (const FmLegalResult *result)
{
  const double value = result->value_pct, limit = result->limit->limit_pct;
  int decimals = 1;

  while (decimals < MAX_DECIMALS && fabs (value - limit) > TOLERANCE_PCT &&
         round (value * pow (10, decimals)) == round (limit * pow (10, decimals)))
    decimals++;
  return fm_number_format_unit (value, decimals, "%");
}

static char *
margin_text (const FmLegalResult *result)
{
  g_autofree char *margin = fm_number_format_unit (fabs (result->margin_pct), 1, "%");

  return g_strdup_printf (result->margin_pct < 0.0 ? _ ("%s over") : _ ("%s to spare"), margin);
}

static char *
limit_text (const FmLegalLimit *limit)
{
  g_autofree char *number = fm_number_to_edit (limit->limit_pct, 1);

  return g_strdup_printf (limit->must_be_below ? _ ("limit: below %s %%") : _ ("limit: %s %%"),
                          number);
}

char *
fm_legal_result_text (const FmLegalResult *result)
{
  const char *figure = figure_name (result->limit->figure);
  g_autofree char *limit = limit_text (result->limit);

  if (isnan (result->value_pct))
    /* TRANSLATORS: name of a food, "fat", "limit: 20 %" */
    return g_strdup_printf (_ ("%s: %s not known, %s – not known"), result->limit->designation,
                            figure, limit);
  g_autofree char *value = value_text (result);
  g_autofree char *margin = margin_text (result);
  const char *state = _ ("not known whether it is this kind of meat");
  if (result->state == FM_LEGAL_MET)
    state = _ ("met");
  else if (result->state == FM_LEGAL_NOT_MET)
    state = _ ("NOT met");
  /* TRANSLATORS: name of a food, "fat", "21.2 %", "limit: 20 %", "1.2 % over", "met" */
  return g_strdup_printf (_ ("%s: %s %s, %s, %s – %s"), result->limit->designation, figure, value,
                          limit, margin, state);
}

static void
append_source (GString *text, const FmLegalLimit *limit)
{
  g_autofree char *line =
      /* TRANSLATORS: section of a law, date of its text, how it was read */
      g_strdup_printf (_ ("%s (%s): %s.\n"), limit->source, limit->text_date, limit->how_read);

  if (g_strstr_len (text->str, -1, line) == NULL)
    g_string_append (text, line);
}

char *
fm_legal_text (const FmFormula *formula, const FmAnalysis *analysis, FmRuleSet set)
{
  GString *text = g_string_new (NULL);
  g_autoptr (GString) sources = g_string_new (NULL);

  if (set == FM_RULE_SET_NONE)
    return g_string_free (text, FALSE);
  for (guint i = 0; i < fm_n_legal_limits; i++) {
    const FmLegalLimit *limit = &fm_legal_limits[i];
    const FmLegalResult result = fm_legal_judge (limit, formula, analysis);

    if (limit->set != set || result.state == FM_LEGAL_OTHER_MEAT)
      continue;
    g_autofree char *line = fm_legal_result_text (&result);
    g_string_append_printf (text, "%s\n", line);
    append_source (sources, limit);
  }
  if (text->len == 0)
    g_string_append (text, _ ("No limit on record speaks of this blend.\n"));
  g_string_append_printf (
      text,
      _ ("\n%sFigures only, calculated from the ingredients: not checked against the law as it "
         "stands today, and no word on whether a name or a sale is allowed. A licensed "
         "professional "
         "or the authority must check."),
      sources->str);
  return g_string_free (text, FALSE);
}
