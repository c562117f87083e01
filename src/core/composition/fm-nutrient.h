/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-nutrient.h - the nutrients of the food-composition dataset
 *
 * The order is the dataset's own column order (USDA National Nutrient Database for Standard
 * Reference, Release 28, abbreviated file). The file carries 46 nutrient columns: vitamin D stands
 * there twice, in micrograms and in international units.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  FM_NUTRIENT_NONE = -1, /* what a search for an unknown key gives */
  FM_NUTRIENT_WATER = 0,
  FM_NUTRIENT_ENERGY_KCAL,
  FM_NUTRIENT_PROTEIN,
  FM_NUTRIENT_FAT,
  FM_NUTRIENT_ASH,
  FM_NUTRIENT_CARBOHYDRATE,
  FM_NUTRIENT_FIBRE,
  FM_NUTRIENT_SUGARS,
  FM_NUTRIENT_CALCIUM,
  FM_NUTRIENT_IRON,
  FM_NUTRIENT_MAGNESIUM,
  FM_NUTRIENT_PHOSPHORUS,
  FM_NUTRIENT_POTASSIUM,
  FM_NUTRIENT_SODIUM,
  FM_NUTRIENT_ZINC,
  FM_NUTRIENT_COPPER,
  FM_NUTRIENT_MANGANESE,
  FM_NUTRIENT_SELENIUM,
  FM_NUTRIENT_VITAMIN_C,
  FM_NUTRIENT_THIAMIN,
  FM_NUTRIENT_RIBOFLAVIN,
  FM_NUTRIENT_NIACIN,
  FM_NUTRIENT_PANTOTHENIC_ACID,
  FM_NUTRIENT_VITAMIN_B6,
  FM_NUTRIENT_FOLATE_TOTAL,
  FM_NUTRIENT_FOLIC_ACID,
  FM_NUTRIENT_FOLATE_FOOD,
  FM_NUTRIENT_FOLATE_DFE,
  FM_NUTRIENT_CHOLINE,
  FM_NUTRIENT_VITAMIN_B12,
  FM_NUTRIENT_VITAMIN_A_IU,
  FM_NUTRIENT_VITAMIN_A_RAE,
  FM_NUTRIENT_RETINOL,
  FM_NUTRIENT_CAROTENE_ALPHA,
  FM_NUTRIENT_CAROTENE_BETA,
  FM_NUTRIENT_CRYPTOXANTHIN_BETA,
  FM_NUTRIENT_LYCOPENE,
  FM_NUTRIENT_LUTEIN_ZEAXANTHIN,
  FM_NUTRIENT_VITAMIN_E,
  FM_NUTRIENT_VITAMIN_D_MCG,
  FM_NUTRIENT_VITAMIN_D_IU,
  FM_NUTRIENT_VITAMIN_K,
  FM_NUTRIENT_SATURATED_FAT,
  FM_NUTRIENT_MONOUNSATURATED_FAT,
  FM_NUTRIENT_POLYUNSATURATED_FAT,
  FM_NUTRIENT_CHOLESTEROL,
  FM_N_NUTRIENTS,
} FmNutrient;

typedef enum {
  FM_NUTRIENT_GROUP_ENERGY_MACRO,
  FM_NUTRIENT_GROUP_FATTY_ACIDS,
  FM_NUTRIENT_GROUP_MINERALS,
  FM_NUTRIENT_GROUP_VITAMINS,
  FM_NUTRIENT_GROUP_OTHER,
  FM_N_NUTRIENT_GROUPS,
} FmNutrientGroup;

/**
 * FmNutrientInfo: what is fixed about one nutrient.
 *
 * @key: stable ASCII name, e.g. "saturated_fat"; used in files, never translated
 * @name: untranslated; pass it through _() or use fm_nutrient_name()
 * @unit: "g", "mg", "mcg", "kcal" or "IU"; amounts are per 100 g edible portion
 * @display_decimals: places worth showing, as many as the dataset gives for meat
 * @daily_value: in @unit per day, NaN when there is none. Source: 21 CFR 101.9(c)(8)(iv) and
 *   (c)(9), adults and children from 4 years, as amended by FDA in 2016 (81 FR 33742). Total
 *   sugars have none (only added sugars do); folate counts in dietary folate equivalents,
 *   vitamin A in retinol activity equivalents.
 */
typedef struct {
  const char *key;
  const char *name;
  const char *unit;
  FmNutrientGroup group;
  int display_decimals;
  double daily_value;
} FmNutrientInfo;

/** @nutrient must lie in [0, FM_N_NUTRIENTS). Never NULL then. */
const FmNutrientInfo *fm_nutrient_info (FmNutrient nutrient);
/** Translated name. */
const char *fm_nutrient_name (FmNutrient nutrient);
/** FM_NUTRIENT_NONE when no nutrient has this key. */
FmNutrient fm_nutrient_from_key (const char *key);
/** Translated heading of a group. */
const char *fm_nutrient_group_name (FmNutrientGroup group);

G_END_DECLS
