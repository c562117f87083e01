/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cooking-yield.c - what a raw mass yields and what it keeps, from the dataset's own pairs */
#include "core/cooking/fm-cooking-table.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"

/* Fat printed to a tenth may stand this far past the last level. */
#define FAT_SLACK_PCT 0.05

typedef struct {
  double x;
  double y;
} Point;

/* Piecewise linear through @points (ascending x), the first one held below. NaN above the last one
 * and beside a point that is not known. */
static double
interpolate (const Point *points, guint n, double x)
{
  guint i = 1;

  if (n == 0 || isnan (x) || x > points[n - 1].x + FAT_SLACK_PCT)
    return (double)NAN;
  if (n == 1 || x <= points[0].x)
    return points[0].y;
  while (i + 1 < n && x > points[i].x)
    i++;
  if (x >= points[i].x)
    return points[i].y;
  return points[i - 1].y +
         (points[i].y - points[i - 1].y) * (x - points[i - 1].x) / (points[i].x - points[i - 1].x);
}

double
fm_cook_weight_protein_kept_pct (const FmCookWeight *weight)
{
  const FmCookLevel *level = &fm_cook_levels[weight->level];

  return 100.0 * level->cooked[weight->method][FM_NUTRIENT_PROTEIN] * weight->cooked_g /
         (level->raw[FM_NUTRIENT_PROTEIN] * weight->raw_g);
}

gboolean
fm_cook_weight_is_plausible (const FmCookWeight *weight)
{
  double kept_pct = fm_cook_weight_protein_kept_pct (weight);

  return kept_pct >= FM_COOK_PROTEIN_KEPT_MIN_PCT && kept_pct <= FM_COOK_PROTEIN_KEPT_MAX_PCT;
}

static double
weight_yield_pct (const FmCookWeight *weight)
{
  return 100.0 * weight->cooked_g / weight->raw_g;
}

/* Means of fat and yield per method; the slope then comes from the deviations within methods. */
static void
method_means (guint skip, double mean_fat[], double mean_yield[], guint n[])
{
  for (guint i = 0; i < fm_n_cook_weights; i++) {
    const FmCookWeight *weight = &fm_cook_weights[i];

    if (i == skip || !fm_cook_weight_is_plausible (weight))
      continue;
    mean_fat[weight->method] += fm_cook_levels[weight->level].raw_fat_pct;
    mean_yield[weight->method] += weight_yield_pct (weight);
    n[weight->method]++;
  }
  for (guint m = 0; m < FM_N_COOK_METHODS; m++) {
    mean_fat[m] /= MAX (n[m], 1);
    mean_yield[m] /= MAX (n[m], 1);
  }
}

static double
common_slope (guint skip, const double mean_fat[], const double mean_yield[])
{
  double sum_xy = 0.0;
  double sum_xx = 0.0;

  for (guint i = 0; i < fm_n_cook_weights; i++) {
    const FmCookWeight *weight = &fm_cook_weights[i];
    double dx = fm_cook_levels[weight->level].raw_fat_pct - mean_fat[weight->method];

    if (i == skip || !fm_cook_weight_is_plausible (weight))
      continue;
    sum_xy += dx * (weight_yield_pct (weight) - mean_yield[weight->method]);
    sum_xx += dx * dx;
  }
  return sum_xx > 0.0 ? sum_xy / sum_xx : 0.0;
}

void
fm_cook_yield_fit (guint skip, FmCookYieldFit *fit)
{
  double mean_fat[FM_N_COOK_METHODS] = { 0 };
  double mean_yield[FM_N_COOK_METHODS] = { 0 };
  double sum = 0.0;
  guint n_known = 0;

  *fit = (FmCookYieldFit){ 0 };
  method_means (skip, mean_fat, mean_yield, fit->n_weights);
  fit->slope = common_slope (skip, mean_fat, mean_yield);
  for (guint m = 0; m < FM_N_COOK_METHODS; m++) {
    if (fit->n_weights[m] == 0)
      continue;
    fit->level_pct[m] = mean_yield[m] - fit->slope * mean_fat[m];
    sum += fit->level_pct[m];
    n_known++;
  }
  for (guint m = 0; m < FM_N_COOK_METHODS; m++)
    if (fit->n_weights[m] == 0)
      fit->level_pct[m] = n_known > 0 ? sum / n_known : NAN;
}

double
fm_cook_yield_fit_pct (const FmCookYieldFit *fit, FmCookMethod method, double raw_fat_pct)
{
  double lowest_pct = fm_cook_levels[0].raw_fat_pct;
  double highest_pct = fm_cook_levels[FM_N_COOK_LEVELS - 1].raw_fat_pct;

  if (!(raw_fat_pct <= highest_pct + FAT_SLACK_PCT))
    return (double)NAN;
  return fit->level_pct[method] + fit->slope * MAX (raw_fat_pct, lowest_pct);
}

const FmCookYieldFit *
fm_cook_yield_whole_fit (void)
{
  static FmCookYieldFit fit;
  static gsize once = 0;

  if (g_once_init_enter (&once)) {
    fm_cook_yield_fit (G_MAXUINT, &fit);
    g_once_init_leave (&once, 1);
  }
  return &fit;
}

static double
level_retention_pct (guint level, FmCookMethod method, FmNutrient nutrient)
{
  const FmCookLevel *row = &fm_cook_levels[level];
  double yield_pct = fm_cook_yield_fit_pct (fm_cook_yield_whole_fit (), method, row->raw_fat_pct);

  return row->raw[nutrient] > 0.0 ? row->cooked[method][nutrient] * yield_pct / row->raw[nutrient]
                                  : (double)NAN;
}

/* Protein is neither made nor drawn from the pan: what the pairs keep of it beyond 100 % is how
 * far their raw and cooked samples differ. */
double
fm_cook_retention_limit_pct (void)
{
  double limit_pct = 100.0;

  for (guint level = 0; level < FM_N_COOK_LEVELS; level++)
    for (guint m = 0; m < FM_N_COOK_METHODS; m++)
      limit_pct =
          fmax (limit_pct, level_retention_pct (level, (FmCookMethod)m, FM_NUTRIENT_PROTEIN));
  return limit_pct;
}

static double
within_limit (double retention_pct)
{
  return retention_pct <= fm_cook_retention_limit_pct () + 1e-9 ? retention_pct : (double)NAN;
}

double
fm_cook_retention_pct (FmCookMethod method,
                       FmNutrient nutrient,
                       double raw_fat_pct,
                       guint skip_level)
{
  Point points[FM_N_COOK_LEVELS];
  guint n = 0;

  for (guint i = 0; i < FM_N_COOK_LEVELS; i++) {
    if (i == skip_level)
      continue;
    points[n].x = fm_cook_levels[i].raw_fat_pct;
    points[n].y = within_limit (level_retention_pct (i, method, nutrient));
    n++;
  }
  return interpolate (points, n, raw_fat_pct);
}

double
fm_cook_pair_yield_pct (const FmCookPair *pair)
{
  return 100.0 * pair->cooked_g / pair->raw_g;
}

double
fm_cook_pair_retention_pct (const FmCookPair *pair, FmNutrient nutrient)
{
  double raw = pair->raw[nutrient];

  return raw > 0.0 ? within_limit (pair->cooked[nutrient] * fm_cook_pair_yield_pct (pair) / raw)
                   : (double)NAN;
}

gboolean
fm_cook_food_is_beef (const FmCookFood *food)
{
  return (food->species & ~FM_SPECIES_BIT (FM_SPECIES_NONE)) == FM_SPECIES_BIT (FM_SPECIES_BEEF);
}

const FmCookPair *
fm_cook_pair_for (const FmCookFood *food, FmCookMethod method)
{
  FmSpeciesSet kinds = food->species & ~FM_SPECIES_BIT (FM_SPECIES_NONE);

  for (guint i = 0; i < fm_n_cook_pairs; i++) {
    const FmCookPair *pair = &fm_cook_pairs[i];

    if (kinds == FM_SPECIES_BIT (pair->species) && (pair->methods & (1u << method)) != 0 &&
        fabs (food->fat_pct - pair->raw[FM_NUTRIENT_FAT]) <= FM_COOK_PAIR_FAT_REACH_PCT)
      return pair;
  }
  return NULL;
}

double
fm_cook_yield_pct (FmCookMethod method, const FmCookFood *food)
{
  const FmCookPair *pair;

  g_return_val_if_fail (method < FM_N_COOK_METHODS, (double)NAN);
  if (isnan (food->fat_pct))
    return (double)NAN;
  if (fm_cook_food_is_beef (food))
    return fm_cook_yield_fit_pct (fm_cook_yield_whole_fit (), method, food->fat_pct);
  pair = fm_cook_pair_for (food, method);
  return pair != NULL ? fm_cook_pair_yield_pct (pair) : (double)NAN;
}

char *
fm_cook_unknown_text (FmCookMethod method, const FmCookFood *food)
{
  g_autofree char *kinds = fm_species_set_join (food->species);
  g_autofree char *fat = fm_number_format_unit (food->fat_pct, 1, "%");
  FmSpeciesSet open = FM_SPECIES_BIT (FM_SPECIES_UNKNOWN) | FM_SPECIES_BIT (FM_SPECIES_MIXED);

  if (!isnan (fm_cook_yield_pct (method, food)))
    return NULL;
  if (isnan (food->fat_pct))
    return g_strdup (_ ("Cooked values need the fat of every ingredient. Add an analysis or a lean "
                        "point to those that have none."));
  if ((food->species & open) != 0 || fm_species_set_is_meatless (food->species))
    return g_strdup_printf (_ ("Cooked values are not known: they need the kind of animal of each "
                               "ingredient (now: %s). State it there."),
                            kinds);
  if (fm_cook_food_is_beef (food))
    return g_strdup_printf (_ ("Cooked values are not known: the raw and cooked pairs of USDA SR28 "
                               "ground beef end at 30 %% fat, and this blend has %s."),
                            fat);
  /* Translators: kinds of meat, fat with its percent sign, cooking method */
  return g_strdup_printf (_ ("Cooked values are not known: USDA SR28 has no raw and cooked pair "
                             "with a stated yield for this meat (%s, %s fat) and method (%s)."),
                          kinds, fat, fm_cook_method_name (method));
}
