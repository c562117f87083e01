/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-derivation.c - where a figure of a blend comes from, as text that can be copied */
#include "core/formula/fm-derivation.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/base/fm-units.h"
#include "core/composition/fm-slip.h"

/* Enough digits to follow a sum by hand. */
#define MASS_DECIMALS 1
#define SUM_DECIMALS 3

typedef double (*IngredientValue) (const FmIngredient *ingredient);

/* "USDA SR28, row 23572", "declared by the supplier" ... */
static char *
origin_text (const FmIngredient *ingredient)
{
  const char *ref = ingredient->source_ref;

  if (ingredient->provenance == FM_PROVENANCE_DATASET && ref != NULL)
    return g_strdup_printf (_ ("USDA SR28, row %s"), ref);
  if (ref != NULL)
    return g_strdup_printf ("%s, %s", fm_provenance_name (ingredient->provenance), ref);
  return g_strdup (fm_provenance_name (ingredient->provenance));
}

static void
add_paragraph (GString *text, const char *paragraph)
{
  g_string_append_printf (text, "%s%s", text->len > 0 ? "\n\n" : "", paragraph);
}

/* "Chuck (USDA SR28, row 23572): 820.0 g × 20.00 g per 100 g = 164.000 g" */
static void
add_line (GString *text, const FmFormulaLine *line, double value, const FmNutrientInfo *info)
{
  g_autofree char *origin = origin_text (line->ingredient);
  g_autofree char *mass = fm_number_format (line->mass_g, MASS_DECIMALS);
  g_autofree char *per_100g = fm_number_format (value, info->display_decimals + 2);
  g_autofree char *part = fm_number_format (line->mass_g * value / 100.0, SUM_DECIMALS);

  g_string_append_printf (text, "\n%s (%s): ", line->ingredient->name, origin);
  if (isnan (value))
    /* Translators: a mass in grams */
    g_string_append_printf (text, _ ("%s g, not known"), mass);
  else
    /* Translators: "820.0 g × 20.00 mg per 100 g = 164.000 mg" */
    g_string_append_printf (text, _ ("%s g × %s %s per 100 g = %s %s"), mass, per_100g, info->unit,
                            part, info->unit);
}

static void
add_surface_salt (GString *text, const FmBrief *brief)
{
  const double sodium_mg = fm_brief_surface_sodium_mg_per_100g (brief);
  g_autofree char *share = fm_number_format (brief->surface_salt_pct, 2);
  g_autofree char *factor = fm_number_format (FM_SODIUM_MG_PER_G_SALT, 2);
  g_autofree char *sodium = fm_number_format (sodium_mg, SUM_DECIMALS);

  if (!(sodium_mg > 0.0))
    return;
  g_string_append_printf (text,
                          /* Translators: "0.50 g × 387.58 mg per g = 193.790 mg" */
                          _ ("\nSalt on the surface, on 100 g of blend (USDA SR28, row 02047): "
                             "%s g × %s mg per g = %s mg"),
                          share, factor, sodium);
}

/* The sum of what is known over the whole mass. */
static void
add_mean (GString *text,
          const FmFormula *formula,
          const FmAnalysis *analysis,
          const FmNutrientInfo *info,
          const FmAmount *amount)
{
  const double known = amount->covered_pct > 0.0 ? amount->known_g_per_100g : (double)NAN;
  const double on_top = info == fm_nutrient_info (FM_NUTRIENT_SODIUM)
                            ? fm_brief_surface_sodium_mg_per_100g (formula->brief)
                            : 0.0;
  g_autofree char *sum =
      fm_number_format ((known - on_top) * analysis->total_g / 100.0, SUM_DECIMALS);
  g_autofree char *total = fm_number_format (analysis->total_g, MASS_DECIMALS);
  g_autofree char *value = fm_number_format (known, info->display_decimals + 2);

  if (isnan (known)) {
    add_paragraph (text, _ ("Nothing of it is known, so there is no figure."));
    return;
  }
  add_paragraph (text, "");
  if (on_top > 0.0)
    g_string_append_printf (
        text, _ ("Sum of the ingredients %s %s ÷ %s g × 100, and the salt: %s %s in 100 g"), sum,
        info->unit, total, value, info->unit);
  else
    g_string_append_printf (text, _ ("Sum %s %s ÷ %s g × 100 = %s %s in 100 g"), sum, info->unit,
                            total, value, info->unit);
}

static void
add_unknown (GString *text, const FmFormula *formula, FmNutrient nutrient, const FmAmount *amount)
{
  g_auto (GStrv) missing = fm_analysis_missing (formula, nutrient);
  g_autofree char *names = g_strjoinv (", ", missing);
  g_autofree char *covered = fm_number_format (amount->covered_pct, 1);
  g_autofree char *paragraph =
      g_strdup_printf (_ ("Not known for %s: the figure covers %s %% of the mass, so the true one "
                          "is at least this. What is not known is never counted as zero."),
                       names, covered);

  if (missing[0] != NULL)
    add_paragraph (text, paragraph);
}

static double
fat_u (const FmIngredient *ingredient)
{
  return fm_ingredient_fat_u_g_per_100g (ingredient);
}

static void
add_fat_uncertainty (GString *text, const FmFormula *formula, const FmAnalysis *analysis)
{
  g_autofree char *u = fm_number_format (analysis->fat_u_pct, SUM_DECIMALS);

  add_paragraph (text, _ ("Standard uncertainty of the fat, g per 100 g of each ingredient:"));
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    g_autofree char *value = fm_number_format (fat_u (line->ingredient), 2);

    g_string_append_printf (text, "\n%s: %s", line->ingredient->name,
                            isnan (fat_u (line->ingredient)) ? _ ("not known") : value);
  }
  if (isnan (analysis->fat_u_pct))
    add_paragraph (text, _ ("One of them is not known, so that of the blend is not known."));
  else
    add_paragraph (text, "");
  if (!isnan (analysis->fat_u_pct))
    g_string_append_printf (text,
                            _ ("Together, each by its share of the mass, as independent errors: "
                               "%s %% (JCGM 100:2008, 5.1.2)"),
                            u);
}

static void
add_energy_rules (GString *text, const FmFormula *formula)
{
  add_paragraph (text, _ ("The energy of each row stands as the row has it. It was counted:"));
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmIngredient *ingredient = fm_formula_line (formula, i)->ingredient;

    g_string_append_printf (
        text, "\n%s: %s", ingredient->name,
        fm_energy_rule_name (fm_composition_energy_rule (&ingredient->composition)));
  }
}

static void
add_sources (GString *text, const FmFormula *formula)
{
  g_autofree char *doubts = fm_derivation_doubts (formula);

  if (doubts != NULL) {
    add_paragraph (text, _ ("Rows whose figures cannot all be true; they stand as they are:"));
    g_string_append_printf (text, "\n%s", doubts);
  }
  add_paragraph (text,
                 _ ("USDA SR28: US Department of Agriculture, National Nutrient Database for "
                    "Standard Reference, Release 28 (2015, revised May 2016). Its figures are "
                    "means; the piece on the table differs."));
}

static void
append_nutrient (GString *text,
                 const FmFormula *formula,
                 const FmAnalysis *analysis,
                 FmNutrient nutrient)
{
  const FmNutrientInfo *info = fm_nutrient_info (nutrient);
  const FmAmount *amount = &analysis->amounts[nutrient];

  g_string_append_printf (text,
                          _ ("%s in 100 g of the raw blend: each ingredient's mass times its "
                             "own figure, over the whole mass."),
                          fm_nutrient_name (nutrient));
  g_string_append_c (text, '\n');
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);

    add_line (text, line, fm_ingredient_value (line->ingredient, nutrient), info);
  }
  if (nutrient == FM_NUTRIENT_SODIUM)
    add_surface_salt (text, formula->brief);
  add_mean (text, formula, analysis, info, amount);
  add_unknown (text, formula, nutrient, amount);
  if (nutrient == FM_NUTRIENT_FAT)
    add_fat_uncertainty (text, formula, analysis);
  if (nutrient == FM_NUTRIENT_ENERGY_KCAL)
    add_energy_rules (text, formula);
}

char *
fm_derivation_nutrient (const FmFormula *formula, const FmAnalysis *analysis, FmNutrient nutrient)
{
  GString *text = g_string_new (NULL);

  append_nutrient (text, formula, analysis, nutrient);
  add_sources (text, formula);
  return g_string_free (text, FALSE);
}

char *
fm_derivation_lean (const FmFormula *formula, const FmAnalysis *analysis)
{
  g_autofree char *fat = fm_derivation_nutrient (formula, analysis, FM_NUTRIENT_FAT);
  g_autofree char *fat_pct = fm_number_format (analysis->fat_pct, 2);
  g_autofree char *lean_pct = fm_number_format (analysis->lean_pct, 2);
  g_autofree char *point = fm_lean_point_format (analysis->fat_pct);
  g_autofree char *declared = fm_lean_point_format (analysis->declared_fat_pct);
  GString *text = g_string_new (NULL);

  g_string_append_printf (text,
                          _ ("Chemical lean is what is not fat: 100 − %s = %s %%. As a lean point, "
                             "rounded to whole per cent: %s."),
                          fat_pct, lean_pct, point);
  add_paragraph (text, "");
  g_string_append_printf (text,
                          _ ("By declared lean points where an ingredient has one, else by its "
                             "figure of fat: %s."),
                          declared);
  add_paragraph (text, fat);
  return g_string_free (text, FALSE);
}

static void
add_price (GString *text, const FmFormulaLine *line)
{
  const FmIngredient *ingredient = line->ingredient;
  const double yield_pct = isnan (ingredient->ep_yield_pct) ? 100.0 : ingredient->ep_yield_pct;
  const double edible_price = fm_ingredient_edible_price_per_kg (ingredient);
  g_autofree char *mass = fm_number_format (line->mass_g / 1000.0, 4);
  g_autofree char *price = fm_number_format (ingredient->price_per_kg, 2);
  g_autofree char *yield = fm_number_format (yield_pct, 1);
  g_autofree char *part = fm_number_format (line->mass_g / 1000.0 * edible_price, SUM_DECIMALS);

  g_string_append_printf (text, "\n%s: ", ingredient->name);
  if (isnan (edible_price))
    g_string_append_printf (text, _ ("%s kg, no price"), mass);
  else
    /* Translators: "0.8200 kg × 8.50 per kg as purchased ÷ 95.0 % edible = 7.337" */
    g_string_append_printf (text, _ ("%s kg × %s per kg as purchased ÷ %s %% edible = %s"), mass,
                            price, yield, part);
}

char *
fm_derivation_cost (const FmFormula *formula, const FmAnalysis *analysis)
{
  g_autofree char *total = fm_number_format (analysis->total_g / 1000.0, 4);
  g_autofree char *cost = fm_number_format (analysis->cost_per_kg, SUM_DECIMALS);
  GString *text = g_string_new (_ ("What a kilogram of the blend costs, by the price of each "
                                   "ingredient as purchased and what of it can be eaten. Salt on "
                                   "the surface is not in it."));

  g_string_append_c (text, '\n');
  for (guint i = 0; i < fm_formula_n_lines (formula); i++)
    add_price (text, fm_formula_line (formula, i));
  add_paragraph (text, "");
  if (isnan (analysis->cost_per_kg))
    g_string_append (text, _ ("Without every price there is no figure."));
  else
    g_string_append_printf (text, _ ("Their sum ÷ %s kg = %s per kg"), total, cost);
  return g_string_free (text, FALSE);
}

/* "Fat: 20.12 %, within the band 18-22" and, for a patty, what it was multiplied with. */
static void
append_target (GString *text,
               const FmFormula *formula,
               const FmAnalysis *analysis,
               FmTargetKind kind)
{
  const FmTargetInfo *info = fm_target_info (kind);
  const FmBand *band = &formula->brief->bands[kind];
  const double value = fm_analysis_target_value (analysis, formula->brief, kind);
  g_autofree char *number = fm_number_format_unit (value, info->decimals + 2, info->unit);
  g_autofree char *standing = fm_band_describe (band, value, info->decimals, info->unit);
  g_autofree char *patty = fm_number_format (formula->brief->patty_mass_g, MASS_DECIMALS);

  g_string_append_printf (text, "%s%s: %s; %s", text->len > 0 ? "\n\n" : "", fm_target_name (kind),
                          number, standing);
  if (info->is_per_patty && info->nutrient != FM_NUTRIENT_NONE)
    g_string_append_printf (text, _ ("\nWhat is in 100 g × %s g of a raw patty ÷ 100"), patty);
  else if (info->is_per_patty)
    g_string_append_printf (text, _ ("\nThe cost of a kilogram × %s g of a raw patty ÷ 1000"),
                            patty);
}

char *
fm_derivation_targets (const FmFormula *formula, const FmAnalysis *analysis)
{
  gboolean is_told[FM_N_NUTRIENTS] = { FALSE };
  gboolean has_cost = FALSE;
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < FM_N_TARGETS; i++) {
    const FmNutrient nutrient = fm_target_info ((FmTargetKind)i)->nutrient;

    if (fm_band_state (&formula->brief->bands[i], 0.0) == FM_BAND_NONE)
      continue;
    append_target (text, formula, analysis, (FmTargetKind)i);
    if (nutrient == FM_NUTRIENT_NONE)
      has_cost = TRUE;
    else
      is_told[nutrient] = TRUE;
  }
  for (guint i = 0; i < FM_N_NUTRIENTS; i++) {
    if (!is_told[i])
      continue;
    add_paragraph (text, "");
    append_nutrient (text, formula, analysis, (FmNutrient)i);
  }
  if (has_cost) {
    g_autofree char *cost = fm_derivation_cost (formula, analysis);
    add_paragraph (text, cost);
  }
  add_sources (text, formula);
  return g_string_free (text, FALSE);
}

char *
fm_derivation_mass (const FmFormula *formula, const FmAnalysis *analysis)
{
  const FmBrief *brief = formula->brief;
  g_autofree char *total = fm_number_format (analysis->total_g, MASS_DECIMALS);
  g_autofree char *patty = fm_number_format (brief->patty_mass_g, MASS_DECIMALS);
  g_autofree char *made = fm_number_format (analysis->total_g / brief->patty_mass_g, 2);
  GString *text = g_string_new (_ ("The masses of the lines:"));

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    g_autofree char *mass = fm_number_format (line->mass_g, MASS_DECIMALS);

    g_string_append_printf (text, "\n%s: %s g", line->ingredient->name, mass);
  }
  add_paragraph (text, "");
  g_string_append_printf (text,
                          _ ("Together %s g. At %s g a patty, which the brief plans, they make %s "
                             "patties; losses are not in it."),
                          total, patty, made);
  return g_string_free (text, FALSE);
}

static char *
doubt_of (const FmIngredient *ingredient)
{
  g_autofree char *slips = fm_composition_slip_text (&ingredient->composition);

  if (slips != NULL)
    return g_strdup_printf ("%s: %s", ingredient->name, g_strdelimit (slips, "\n", ' '));
  if (ingredient->provenance == FM_PROVENANCE_DATASET &&
      fm_slip_protein_is_dropped (ingredient->source_ref))
    return g_strdup_printf (
        _ ("%s: the dataset gives 0.01 g protein, and the parts of the row fall "
           "short by grams; its protein counts as not known."),
        ingredient->name);
  return NULL;
}

char *
fm_derivation_doubts (const FmFormula *formula)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);
    g_autofree char *doubt = doubt_of (line->ingredient);

    if (doubt == NULL || !(line->mass_g > 0.0) ||
        !g_hash_table_add (seen, (gpointer)fm_ingredient_identity (line->ingredient)))
      continue;
    g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", doubt);
  }
  return text->len > 0 ? g_string_free (g_steal_pointer (&text), FALSE) : NULL;
}
