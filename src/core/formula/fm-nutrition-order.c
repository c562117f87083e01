/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrition-order.c - nutrients in the order in which a label has them */
#include "core/formula/fm-nutrition-order.h"

#include <glib/gi18n-lib.h>

static const FmNutrient label[] = {
  FM_NUTRIENT_ENERGY_KCAL,
  FM_NUTRIENT_FAT,
  FM_NUTRIENT_SATURATED_FAT,
  FM_NUTRIENT_POLYUNSATURATED_FAT,
  FM_NUTRIENT_MONOUNSATURATED_FAT,
  FM_NUTRIENT_CHOLESTEROL,
  FM_NUTRIENT_SODIUM,
  FM_NUTRIENT_CARBOHYDRATE,
  FM_NUTRIENT_FIBRE,
  FM_NUTRIENT_SUGARS,
  FM_NUTRIENT_PROTEIN,
};

static const FmNutrient vitamins_minerals[] = {
  FM_NUTRIENT_VITAMIN_D_MCG, FM_NUTRIENT_CALCIUM,       FM_NUTRIENT_IRON,
  FM_NUTRIENT_POTASSIUM,     FM_NUTRIENT_VITAMIN_A_RAE, FM_NUTRIENT_VITAMIN_C,
  FM_NUTRIENT_VITAMIN_E,     FM_NUTRIENT_VITAMIN_K,     FM_NUTRIENT_THIAMIN,
  FM_NUTRIENT_RIBOFLAVIN,    FM_NUTRIENT_NIACIN,        FM_NUTRIENT_VITAMIN_B6,
  FM_NUTRIENT_FOLATE_DFE,    FM_NUTRIENT_VITAMIN_B12,   FM_NUTRIENT_PANTOTHENIC_ACID,
  FM_NUTRIENT_PHOSPHORUS,    FM_NUTRIENT_MAGNESIUM,     FM_NUTRIENT_ZINC,
  FM_NUTRIENT_SELENIUM,      FM_NUTRIENT_COPPER,        FM_NUTRIENT_MANGANESE,
  FM_NUTRIENT_CHOLINE,
};

static const FmNutrient further[] = {
  FM_NUTRIENT_WATER,         FM_NUTRIENT_ASH,
  FM_NUTRIENT_FOLATE_TOTAL,  FM_NUTRIENT_FOLIC_ACID,
  FM_NUTRIENT_FOLATE_FOOD,   FM_NUTRIENT_VITAMIN_A_IU,
  FM_NUTRIENT_RETINOL,       FM_NUTRIENT_CAROTENE_ALPHA,
  FM_NUTRIENT_CAROTENE_BETA, FM_NUTRIENT_CRYPTOXANTHIN_BETA,
  FM_NUTRIENT_LYCOPENE,      FM_NUTRIENT_LUTEIN_ZEAXANTHIN,
  FM_NUTRIENT_VITAMIN_D_IU,
};

static const struct {
  const char *name;
  const FmNutrient *nutrients;
  guint n;
} groups[FM_N_NUTRITION_GROUPS] = {
  [FM_NUTRITION_LABEL] = { N_ ("As on a label"), label, G_N_ELEMENTS (label) },
  [FM_NUTRITION_VITAMINS_MINERALS] = { N_ ("Vitamins and minerals"), vitamins_minerals,
                                       G_N_ELEMENTS (vitamins_minerals) },
  [FM_NUTRITION_FURTHER] = { N_ ("On no label"), further, G_N_ELEMENTS (further) },
};

const char *
fm_nutrition_group_name (FmNutritionGroup group)
{
  g_return_val_if_fail (group < FM_N_NUTRITION_GROUPS, "");
  return _ (groups[group].name);
}

const FmNutrient *
fm_nutrition_group_nutrients (FmNutritionGroup group, guint *n)
{
  g_return_val_if_fail (group < FM_N_NUTRITION_GROUPS && n != NULL, NULL);
  *n = groups[group].n;
  return groups[group].nutrients;
}

gboolean
fm_nutrition_is_part (FmNutrient nutrient)
{
  return nutrient == FM_NUTRIENT_SATURATED_FAT || nutrient == FM_NUTRIENT_POLYUNSATURATED_FAT ||
         nutrient == FM_NUTRIENT_MONOUNSATURATED_FAT || nutrient == FM_NUTRIENT_FIBRE ||
         nutrient == FM_NUTRIENT_SUGARS;
}
