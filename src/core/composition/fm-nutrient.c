/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrient.c - names, units, groups and Daily Values of the nutrients */
#include "core/composition/fm-nutrient.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NO_DV ((double)NAN)

/* Daily Values: FDA 2016 set, see the header. */
static const FmNutrientInfo infos[FM_N_NUTRIENTS] = {
  [FM_NUTRIENT_WATER] = { "water", N_ ("Water"), "g", FM_NUTRIENT_GROUP_ENERGY_MACRO, 1, NO_DV },
  [FM_NUTRIENT_ENERGY_KCAL] = { "energy_kcal", N_ ("Energy"), "kcal",
                                FM_NUTRIENT_GROUP_ENERGY_MACRO, 0, NO_DV },
  /* A percentage of protein must be corrected for its quality, 21 CFR 101.9(c)(7)(i) to (iii),
   * which the dataset does not tell: none is given. */
  [FM_NUTRIENT_PROTEIN] = { "protein", N_ ("Protein"), "g", FM_NUTRIENT_GROUP_ENERGY_MACRO, 1,
                            NO_DV },
  [FM_NUTRIENT_FAT] = { "fat", N_ ("Total fat"), "g", FM_NUTRIENT_GROUP_ENERGY_MACRO, 1, 78.0 },
  [FM_NUTRIENT_ASH] = { "ash", N_ ("Ash"), "g", FM_NUTRIENT_GROUP_ENERGY_MACRO, 1, NO_DV },
  [FM_NUTRIENT_CARBOHYDRATE] = { "carbohydrate", N_ ("Carbohydrate, by difference"), "g",
                                 FM_NUTRIENT_GROUP_ENERGY_MACRO, 1, 275.0 },
  [FM_NUTRIENT_FIBRE] = { "fibre", N_ ("Dietary fibre"), "g", FM_NUTRIENT_GROUP_ENERGY_MACRO, 1,
                          28.0 },
  [FM_NUTRIENT_SUGARS] = { "sugars", N_ ("Total sugars"), "g", FM_NUTRIENT_GROUP_ENERGY_MACRO, 1,
                           NO_DV },
  [FM_NUTRIENT_CALCIUM] = { "calcium", N_ ("Calcium"), "mg", FM_NUTRIENT_GROUP_MINERALS, 0,
                            1300.0 },
  [FM_NUTRIENT_IRON] = { "iron", N_ ("Iron"), "mg", FM_NUTRIENT_GROUP_MINERALS, 2, 18.0 },
  [FM_NUTRIENT_MAGNESIUM] = { "magnesium", N_ ("Magnesium"), "mg", FM_NUTRIENT_GROUP_MINERALS, 0,
                              420.0 },
  [FM_NUTRIENT_PHOSPHORUS] = { "phosphorus", N_ ("Phosphorus"), "mg", FM_NUTRIENT_GROUP_MINERALS, 0,
                               1250.0 },
  [FM_NUTRIENT_POTASSIUM] = { "potassium", N_ ("Potassium"), "mg", FM_NUTRIENT_GROUP_MINERALS, 0,
                              4700.0 },
  [FM_NUTRIENT_SODIUM] = { "sodium", N_ ("Sodium"), "mg", FM_NUTRIENT_GROUP_MINERALS, 0, 2300.0 },
  [FM_NUTRIENT_ZINC] = { "zinc", N_ ("Zinc"), "mg", FM_NUTRIENT_GROUP_MINERALS, 2, 11.0 },
  [FM_NUTRIENT_COPPER] = { "copper", N_ ("Copper"), "mg", FM_NUTRIENT_GROUP_MINERALS, 3, 0.9 },
  [FM_NUTRIENT_MANGANESE] = { "manganese", N_ ("Manganese"), "mg", FM_NUTRIENT_GROUP_MINERALS, 3,
                              2.3 },
  [FM_NUTRIENT_SELENIUM] = { "selenium", N_ ("Selenium"), "mcg", FM_NUTRIENT_GROUP_MINERALS, 1,
                             55.0 },
  [FM_NUTRIENT_VITAMIN_C] = { "vitamin_c", N_ ("Vitamin C"), "mg", FM_NUTRIENT_GROUP_VITAMINS, 1,
                              90.0 },
  [FM_NUTRIENT_THIAMIN] = { "thiamin", N_ ("Thiamin"), "mg", FM_NUTRIENT_GROUP_VITAMINS, 3, 1.2 },
  [FM_NUTRIENT_RIBOFLAVIN] = { "riboflavin", N_ ("Riboflavin"), "mg", FM_NUTRIENT_GROUP_VITAMINS, 3,
                               1.3 },
  [FM_NUTRIENT_NIACIN] = { "niacin", N_ ("Niacin"), "mg", FM_NUTRIENT_GROUP_VITAMINS, 2, 16.0 },
  [FM_NUTRIENT_PANTOTHENIC_ACID] = { "pantothenic_acid", N_ ("Pantothenic acid"), "mg",
                                     FM_NUTRIENT_GROUP_VITAMINS, 2, 5.0 },
  [FM_NUTRIENT_VITAMIN_B6] = { "vitamin_b6", N_ ("Vitamin B6"), "mg", FM_NUTRIENT_GROUP_VITAMINS, 3,
                               1.7 },
  [FM_NUTRIENT_FOLATE_TOTAL] = { "folate_total", N_ ("Folate, total"), "mcg",
                                 FM_NUTRIENT_GROUP_VITAMINS, 0, NO_DV },
  [FM_NUTRIENT_FOLIC_ACID] = { "folic_acid", N_ ("Folic acid"), "mcg", FM_NUTRIENT_GROUP_VITAMINS,
                               0, NO_DV },
  [FM_NUTRIENT_FOLATE_FOOD] = { "folate_food", N_ ("Folate, food"), "mcg",
                                FM_NUTRIENT_GROUP_VITAMINS, 0, NO_DV },
  [FM_NUTRIENT_FOLATE_DFE] = { "folate_dfe", N_ ("Folate, dietary folate equivalents"), "mcg",
                               FM_NUTRIENT_GROUP_VITAMINS, 0, 400.0 },
  [FM_NUTRIENT_CHOLINE] = { "choline", N_ ("Choline"), "mg", FM_NUTRIENT_GROUP_VITAMINS, 1, 550.0 },
  [FM_NUTRIENT_VITAMIN_B12] = { "vitamin_b12", N_ ("Vitamin B12"), "mcg",
                                FM_NUTRIENT_GROUP_VITAMINS, 2, 2.4 },
  [FM_NUTRIENT_VITAMIN_A_IU] = { "vitamin_a_iu", N_ ("Vitamin A, international units"), "IU",
                                 FM_NUTRIENT_GROUP_VITAMINS, 0, NO_DV },
  [FM_NUTRIENT_VITAMIN_A_RAE] = { "vitamin_a_rae", N_ ("Vitamin A, retinol activity equivalents"),
                                  "mcg", FM_NUTRIENT_GROUP_VITAMINS, 0, 900.0 },
  [FM_NUTRIENT_RETINOL] = { "retinol", N_ ("Retinol"), "mcg", FM_NUTRIENT_GROUP_VITAMINS, 0,
                            NO_DV },
  [FM_NUTRIENT_CAROTENE_ALPHA] = { "carotene_alpha", N_ ("Alpha-carotene"), "mcg",
                                   FM_NUTRIENT_GROUP_OTHER, 0, NO_DV },
  [FM_NUTRIENT_CAROTENE_BETA] = { "carotene_beta", N_ ("Beta-carotene"), "mcg",
                                  FM_NUTRIENT_GROUP_OTHER, 0, NO_DV },
  [FM_NUTRIENT_CRYPTOXANTHIN_BETA] = { "cryptoxanthin_beta", N_ ("Beta-cryptoxanthin"), "mcg",
                                       FM_NUTRIENT_GROUP_OTHER, 0, NO_DV },
  [FM_NUTRIENT_LYCOPENE] = { "lycopene", N_ ("Lycopene"), "mcg", FM_NUTRIENT_GROUP_OTHER, 0,
                             NO_DV },
  [FM_NUTRIENT_LUTEIN_ZEAXANTHIN] = { "lutein_zeaxanthin", N_ ("Lutein and zeaxanthin"), "mcg",
                                      FM_NUTRIENT_GROUP_OTHER, 0, NO_DV },
  [FM_NUTRIENT_VITAMIN_E] = { "vitamin_e", N_ ("Vitamin E (alpha-tocopherol)"), "mg",
                              FM_NUTRIENT_GROUP_VITAMINS, 2, 15.0 },
  [FM_NUTRIENT_VITAMIN_D_MCG] = { "vitamin_d_mcg", N_ ("Vitamin D"), "mcg",
                                  FM_NUTRIENT_GROUP_VITAMINS, 1, 20.0 },
  [FM_NUTRIENT_VITAMIN_D_IU] = { "vitamin_d_iu", N_ ("Vitamin D, international units"), "IU",
                                 FM_NUTRIENT_GROUP_VITAMINS, 0, NO_DV },
  [FM_NUTRIENT_VITAMIN_K] = { "vitamin_k", N_ ("Vitamin K (phylloquinone)"), "mcg",
                              FM_NUTRIENT_GROUP_VITAMINS, 1, 120.0 },
  [FM_NUTRIENT_SATURATED_FAT] = { "saturated_fat", N_ ("Saturated fat"), "g",
                                  FM_NUTRIENT_GROUP_FATTY_ACIDS, 2, 20.0 },
  [FM_NUTRIENT_MONOUNSATURATED_FAT] = { "monounsaturated_fat", N_ ("Monounsaturated fat"), "g",
                                        FM_NUTRIENT_GROUP_FATTY_ACIDS, 2, NO_DV },
  [FM_NUTRIENT_POLYUNSATURATED_FAT] = { "polyunsaturated_fat", N_ ("Polyunsaturated fat"), "g",
                                        FM_NUTRIENT_GROUP_FATTY_ACIDS, 2, NO_DV },
  [FM_NUTRIENT_CHOLESTEROL] = { "cholesterol", N_ ("Cholesterol"), "mg", FM_NUTRIENT_GROUP_OTHER, 0,
                                300.0 },
};

static const char *const group_names[FM_N_NUTRIENT_GROUPS] = {
  [FM_NUTRIENT_GROUP_ENERGY_MACRO] = N_ ("Energy and macronutrients"),
  [FM_NUTRIENT_GROUP_FATTY_ACIDS] = N_ ("Fatty acids"),
  [FM_NUTRIENT_GROUP_MINERALS] = N_ ("Minerals"),
  [FM_NUTRIENT_GROUP_VITAMINS] = N_ ("Vitamins"),
  [FM_NUTRIENT_GROUP_OTHER] = N_ ("Other"),
};

const FmNutrientInfo *
fm_nutrient_info (FmNutrient nutrient)
{
  g_return_val_if_fail ((int)nutrient >= 0 && nutrient < FM_N_NUTRIENTS, NULL);

  return &infos[nutrient];
}

const char *
fm_nutrient_name (FmNutrient nutrient)
{
  g_return_val_if_fail ((int)nutrient >= 0 && nutrient < FM_N_NUTRIENTS, NULL);

  return _ (infos[nutrient].name);
}

FmNutrient
fm_nutrient_from_key (const char *key)
{
  for (int i = 0; i < FM_N_NUTRIENTS; i++) {
    if (g_strcmp0 (infos[i].key, key) == 0)
      return (FmNutrient)i;
  }
  return FM_NUTRIENT_NONE;
}

const char *
fm_nutrient_group_name (FmNutrientGroup group)
{
  g_return_val_if_fail (group < FM_N_NUTRIENT_GROUPS, NULL);

  return _ (group_names[group]);
}
