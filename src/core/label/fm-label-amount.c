/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-amount.c - what a blend holds of each thing that labels tell */
#include "core/label/fm-label-amount.h"

#include <math.h>

#include "core/base/fm-units.h"

#define FAT_KCAL_PER_G 9.0
#define OTHER_KCAL_PER_G 4.0
#define FIBRE_KCAL_PER_G 2.0
#define FAT_KJ_PER_G 37.0
#define OTHER_KJ_PER_G 17.0
#define FIBRE_KJ_PER_G 8.0

double
fm_label_general_kcal (double protein_g, double carbohydrate_g, double fat_g)
{
  return OTHER_KCAL_PER_G * (protein_g + carbohydrate_g) + FAT_KCAL_PER_G * fat_g;
}

static double
calories (const FmAnalysis *analysis)
{
  const double stated = fm_analysis_value (analysis, FM_NUTRIENT_ENERGY_KCAL);

  return !isnan (stated)
             ? stated
             : fm_label_general_kcal (fm_analysis_value (analysis, FM_NUTRIENT_PROTEIN),
                                      fm_analysis_value (analysis, FM_NUTRIENT_CARBOHYDRATE),
                                      fm_analysis_value (analysis, FM_NUTRIENT_FAT));
}

static double
calories_from_fat (const FmAnalysis *analysis)
{
  return FAT_KCAL_PER_G * fm_analysis_value (analysis, FM_NUTRIENT_FAT);
}

/* Analyses of their own may put the fibre above what the difference leaves. */
static double
available_carbohydrate (const FmAnalysis *analysis)
{
  const double left = fm_analysis_value (analysis, FM_NUTRIENT_CARBOHYDRATE) -
                      fm_analysis_value (analysis, FM_NUTRIENT_FIBRE);

  return left < 0.0 ? 0.0 : left;
}

static double
european_energy (const FmAnalysis *analysis, double other, double fat, double fibre)
{
  return other * (fm_analysis_value (analysis, FM_NUTRIENT_PROTEIN) +
                  available_carbohydrate (analysis)) +
         fat * fm_analysis_value (analysis, FM_NUTRIENT_FAT) +
         fibre * fm_analysis_value (analysis, FM_NUTRIENT_FIBRE);
}

static double
energy_kj (const FmAnalysis *analysis)
{
  return european_energy (analysis, OTHER_KJ_PER_G, FAT_KJ_PER_G, FIBRE_KJ_PER_G);
}

static double
energy_kcal (const FmAnalysis *analysis)
{
  return european_energy (analysis, OTHER_KCAL_PER_G, FAT_KCAL_PER_G, FIBRE_KCAL_PER_G);
}

static double
salt (const FmAnalysis *analysis)
{
  return fm_analysis_value (analysis, FM_NUTRIENT_SODIUM) / 1000.0 * FM_SALT_PER_SODIUM;
}

/* A part of a nutrient is known only where there is none of the whole. */
static double
trans_fat (const FmAnalysis *analysis)
{
  return fm_analysis_value (analysis, FM_NUTRIENT_FAT) == 0.0 ? 0.0 : (double)NAN;
}

static double
added_sugars (const FmAnalysis *analysis)
{
  return fm_analysis_value (analysis, FM_NUTRIENT_SUGARS) == 0.0 ? 0.0 : (double)NAN;
}

#define N_FROM 4

/* Each is one nutrient, or is worked out of @n_from of them, or is an unknown part of the first. */
static const struct {
  guint n_from;
  FmNutrient from[N_FROM];
  double (*work_out) (const FmAnalysis *analysis); /* NULL: the nutrient itself */
  gboolean is_part;
} items[FM_N_LABEL_ITEMS] = {
  [FM_LABEL_ITEM_CALORIES] = { 1, { FM_NUTRIENT_ENERGY_KCAL }, calories, FALSE },
  [FM_LABEL_ITEM_CALORIES_FROM_FAT] = { 1, { FM_NUTRIENT_FAT }, calories_from_fat, FALSE },
  [FM_LABEL_ITEM_ENERGY_KJ] = { 4,
                                { FM_NUTRIENT_PROTEIN, FM_NUTRIENT_FAT, FM_NUTRIENT_CARBOHYDRATE,
                                  FM_NUTRIENT_FIBRE },
                                energy_kj,
                                FALSE },
  [FM_LABEL_ITEM_ENERGY_KCAL] = { 4,
                                  { FM_NUTRIENT_PROTEIN, FM_NUTRIENT_FAT, FM_NUTRIENT_CARBOHYDRATE,
                                    FM_NUTRIENT_FIBRE },
                                  energy_kcal,
                                  FALSE },
  [FM_LABEL_ITEM_TOTAL_FAT] = { 1, { FM_NUTRIENT_FAT }, NULL, FALSE },
  [FM_LABEL_ITEM_SATURATED_FAT] = { 1, { FM_NUTRIENT_SATURATED_FAT }, NULL, FALSE },
  [FM_LABEL_ITEM_TRANS_FAT] = { 1, { FM_NUTRIENT_FAT }, trans_fat, TRUE },
  [FM_LABEL_ITEM_MONOUNSATURATED_FAT] = { 1, { FM_NUTRIENT_MONOUNSATURATED_FAT }, NULL, FALSE },
  [FM_LABEL_ITEM_POLYUNSATURATED_FAT] = { 1, { FM_NUTRIENT_POLYUNSATURATED_FAT }, NULL, FALSE },
  [FM_LABEL_ITEM_CHOLESTEROL] = { 1, { FM_NUTRIENT_CHOLESTEROL }, NULL, FALSE },
  [FM_LABEL_ITEM_SODIUM] = { 1, { FM_NUTRIENT_SODIUM }, NULL, FALSE },
  [FM_LABEL_ITEM_SALT] = { 1, { FM_NUTRIENT_SODIUM }, salt, FALSE },
  [FM_LABEL_ITEM_CARBOHYDRATE] = { 1, { FM_NUTRIENT_CARBOHYDRATE }, NULL, FALSE },
  [FM_LABEL_ITEM_AVAILABLE_CARBOHYDRATE] = { 2,
                                             { FM_NUTRIENT_CARBOHYDRATE, FM_NUTRIENT_FIBRE },
                                             available_carbohydrate,
                                             FALSE },
  [FM_LABEL_ITEM_FIBRE] = { 1, { FM_NUTRIENT_FIBRE }, NULL, FALSE },
  [FM_LABEL_ITEM_SUGARS] = { 1, { FM_NUTRIENT_SUGARS }, NULL, FALSE },
  [FM_LABEL_ITEM_ADDED_SUGARS] = { 1, { FM_NUTRIENT_SUGARS }, added_sugars, TRUE },
  [FM_LABEL_ITEM_PROTEIN] = { 1, { FM_NUTRIENT_PROTEIN }, NULL, FALSE },
  [FM_LABEL_ITEM_VITAMIN_A_IU] = { 1, { FM_NUTRIENT_VITAMIN_A_IU }, NULL, FALSE },
  [FM_LABEL_ITEM_VITAMIN_C] = { 1, { FM_NUTRIENT_VITAMIN_C }, NULL, FALSE },
  [FM_LABEL_ITEM_VITAMIN_D] = { 1, { FM_NUTRIENT_VITAMIN_D_MCG }, NULL, FALSE },
  [FM_LABEL_ITEM_CALCIUM] = { 1, { FM_NUTRIENT_CALCIUM }, NULL, FALSE },
  [FM_LABEL_ITEM_IRON] = { 1, { FM_NUTRIENT_IRON }, NULL, FALSE },
  [FM_LABEL_ITEM_POTASSIUM] = { 1, { FM_NUTRIENT_POTASSIUM }, NULL, FALSE },
};

void
fm_label_stated_init (FmLabelStated *self)
{
  for (int i = 0; i < FM_N_LABEL_ITEMS; i++)
    self->per_100g[i] = NAN;
  self->protein_quality = NAN;
}

static double
calculate (FmLabelItem item, const FmAnalysis *analysis)
{
  return items[item].work_out != NULL ? items[item].work_out (analysis)
                                      : fm_analysis_value (analysis, items[item].from[0]);
}

double
fm_label_amount (FmLabelItem item,
                 const FmFormula *formula,
                 const FmAnalysis *analysis,
                 const FmLabelStated *stated)
{
  const double calculated =
      fm_formula_total_g (formula) > 0.0 ? calculate (item, analysis) : (double)NAN;

  return isnan (calculated) && stated != NULL ? stated->per_100g[item] : calculated;
}

gboolean
fm_label_amount_is_stated (FmLabelItem item,
                           const FmFormula *formula,
                           const FmAnalysis *analysis,
                           const FmLabelStated *stated)
{
  return isnan (fm_label_amount (item, formula, analysis, NULL)) &&
         !isnan (fm_label_amount (item, formula, analysis, stated));
}

double
fm_label_amount_u (FmLabelItem item, const FmAnalysis *analysis)
{
  if (item == FM_LABEL_ITEM_TOTAL_FAT)
    return analysis->fat_u_pct;
  return item == FM_LABEL_ITEM_CALORIES_FROM_FAT ? FAT_KCAL_PER_G * analysis->fat_u_pct
                                                 : (double)NAN;
}

static gboolean
lacks (const FmIngredient *ingredient, FmLabelItem item)
{
  gboolean lacking = FALSE;

  for (guint i = 0; i < items[item].n_from; i++) {
    const double value = fm_ingredient_value (ingredient, items[item].from[i]);

    lacking = lacking || isnan (value) || (items[item].is_part && value != 0.0);
  }
  return lacking;
}

GStrv
fm_label_amount_missing (FmLabelItem item, const FmFormula *formula)
{
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    const FmFormulaLine *line = fm_formula_line (formula, i);

    if (line->mass_g > 0.0 && lacks (line->ingredient, item) &&
        g_hash_table_add (seen, line->ingredient->name))
      g_strv_builder_add (names, line->ingredient->name);
  }
  return g_strv_builder_end (names);
}
