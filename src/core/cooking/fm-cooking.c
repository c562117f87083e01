/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cooking.c - from raw to cooked, by stated method */
#include "core/cooking/fm-cooking.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-error.h"
#include "core/base/fm-number.h"
#include "core/cooking/fm-cooking-table.h"

/* Atwater specific factors of meat, kcal/g: USDA Agriculture Handbook 74. */
#define PROTEIN_KCAL_PER_G 4.27
#define FAT_KCAL_PER_G 9.02
/* General factor, 21 CFR 101.9(c)(1)(i). */
#define CARBOHYDRATE_KCAL_PER_G 4.0
/* Rounded rows add up to 100 g within this; beyond it something is missing from an analysis. */
#define SUM_SLACK_G 2.0
#define FULLY_COVERED_PCT 99.995

/* "23478, 23479": the weights that fail the rule, so that the reader can look them up. */
static char *
excluded_weights (void)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < fm_n_cook_weights; i++)
    if (!fm_cook_weight_is_plausible (&fm_cook_weights[i]))
      g_string_append_printf (text, "%s%d", text->len > 0 ? ", " : "",
                              fm_cook_weights[i].cooked_ndb);
  return g_string_free (text, FALSE);
}

static char *
yield_basis (const FmCooked *self, const FmCookPair *pair)
{
  g_autofree char *yield = fm_number_format_unit (self->yield_pct, 1, "%");
  g_autofree char *excluded = NULL;

  if (self->yield_measured)
    return g_strdup_printf (_ ("Cooked mass: as measured, %s of the raw mass. What it differs from "
                               "the predicted mass is taken as water."),
                            yield);
  if (pair != NULL)
    return g_strdup_printf (_ ("Cooked mass: %s of the raw mass, the one weight that USDA states "
                               "for this meat (NDB %05d, “%s”)."),
                            yield, pair->cooked_ndb, pair->description);
  excluded = excluded_weights ();
  return g_strdup_printf (_ ("Cooked mass: predicted, %s of the raw mass, by a line over fat %% "
                             "through the weights that USDA SR28 states (%u for this method). "
                             "Weights left out because their protein does not add up: NDB %s."),
                          yield, fm_cook_yield_whole_fit ()->n_weights[self->method], excluded);
}

static char *
retention_basis (FmCookMethod method, double raw_fat_pct)
{
  guint upper = 1;
  const FmCookLevel *a;
  const FmCookLevel *b;

  while (upper + 1 < FM_N_COOK_LEVELS && raw_fat_pct > fm_cook_levels[upper].raw_fat_pct)
    upper++;
  a = &fm_cook_levels[upper - 1];
  b = &fm_cook_levels[upper];
  return g_strdup_printf (
      _ ("Nutrients: what USDA SR28 ground beef of %g %% fat (NDB %05d raw, %05d cooked) and "
         "%g %% fat (NDB %05d, %05d) keeps of each, between the two levels."),
      a->raw_fat_pct, a->raw_ndb, a->cooked_ndb[method], b->raw_fat_pct, b->raw_ndb,
      b->cooked_ndb[method]);
}

static char *
pair_basis (const FmCookPair *pair, double raw_fat_pct)
{
  g_autofree char *pair_fat = fm_number_format_unit (pair->raw[FM_NUTRIENT_FAT], 1, "%");
  g_autofree char *fat = fm_number_format_unit (raw_fat_pct, 1, "%");

  return g_strdup_printf (
      pair->method_named
          ? _ ("Nutrients: what one pair of %s fat (NDB %05d raw, %05d cooked) keeps of each; this "
               "blend has %s.")
          : _ ("Nutrients: what one pair of %s fat (NDB %05d raw, %05d cooked, by a method that "
               "USDA does not name) keeps of each; this blend has %s."),
      pair_fat, pair->raw_ndb, pair->cooked_ndb, fat);
}

static char *
make_basis (const FmCooked *self, const FmCookPair *pair, double raw_fat_pct)
{
  g_autofree char *yield_text = yield_basis (self, pair);
  g_autofree char *kept =
      pair != NULL ? pair_basis (pair, raw_fat_pct) : retention_basis (self->method, raw_fat_pct);
  const char *plain = _ ("The pairs are of plain ground meat: salt and binders may behave "
                         "otherwise. Carbohydrate is taken as kept whole; water is what remains of "
                         "the cooked mass. What would be kept beyond the noise of the pairs is not "
                         "known.");
  const char *below = _ ("This fat level lies below the table, whose lowest level stands for it.");

  if (self->extrapolated && pair == NULL)
    return g_strjoin (" ", yield_text, kept, plain, below, NULL);
  return g_strjoin (" ", yield_text, kept, plain, NULL);
}

static const FmAmount unknown = { (double)NAN, 0.0 };

static gboolean
is_full (const FmAmount *amount)
{
  return amount->covered_pct >= FULLY_COVERED_PCT;
}

/* Nothing of it in the raw blend: nothing of it cooked, whatever the rows know. */
static FmAmount
cooked_amount (const FmAmount *raw, double retention_pct, double yield_pct)
{
  if (isnan (retention_pct))
    return raw->known_g_per_100g > 0.0 ? unknown : *raw;
  return (FmAmount){ raw->known_g_per_100g * retention_pct / yield_pct, raw->covered_pct };
}

static double
retention_pct (const FmCookPair *pair, FmCookMethod method, FmNutrient nutrient, double fat_pct)
{
  if (nutrient == FM_NUTRIENT_CARBOHYDRATE)
    return 100.0;
  return pair != NULL ? fm_cook_pair_retention_pct (pair, nutrient)
                      : fm_cook_retention_pct (method, nutrient, fat_pct, FM_N_COOK_LEVELS);
}

/* Grams in 100 g beside water; NaN when one of them is not known. */
static double
solids_g (const FmAmount *amounts)
{
  static const FmNutrient solids[] = { FM_NUTRIENT_PROTEIN, FM_NUTRIENT_FAT, FM_NUTRIENT_ASH,
                                       FM_NUTRIENT_CARBOHYDRATE };
  double sum_g = 0.0;

  for (gsize i = 0; i < G_N_ELEMENTS (solids); i++)
    sum_g += is_full (&amounts[solids[i]]) ? amounts[solids[i]].known_g_per_100g : (double)NAN;
  return sum_g;
}

/* What remains of the cooked mass is water, which can be lost and not won. */
static gboolean
close_mass (FmCooked *self, const FmAnalysis *raw, GError **error)
{
  const FmAmount *raw_water = &raw->amounts[FM_NUTRIENT_WATER];
  double raw_sum_g = solids_g (raw->amounts) + raw_water->known_g_per_100g;
  double water_g = 100.0 - solids_g (self->amounts);
  g_autofree char *yield = fm_number_format_unit (self->yield_pct, 1, "%");

  self->amounts[FM_NUTRIENT_WATER] = unknown;
  if (isnan (water_g) || !is_full (raw_water) || !(fabs (raw_sum_g - 100.0) <= SUM_SLACK_G))
    return TRUE;
  if (water_g < 0.0) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A cooked mass of %s of the raw mass would leave no room for what the blend "
                    "keeps of its protein and fat. Check the raw and the cooked mass."),
                 yield);
    return FALSE;
  }
  if (water_g * self->yield_pct / 100.0 > raw_water->known_g_per_100g + SUM_SLACK_G) {
    g_set_error (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                 _ ("A cooked mass of %s of the raw mass would hold more water than the raw blend: "
                    "cooked values are not known. Check the raw and the cooked mass; a blend with "
                    "little meat does not cook like ground meat."),
                 yield);
    return FALSE;
  }
  self->amounts[FM_NUTRIENT_WATER] = (FmAmount){ water_g, raw_water->covered_pct };
  return TRUE;
}

/* kcal in 100 g by what it holds of protein, fat and carbohydrate. */
static double
counted_kcal (const FmAmount *amounts)
{
  return PROTEIN_KCAL_PER_G * amounts[FM_NUTRIENT_PROTEIN].known_g_per_100g +
         FAT_KCAL_PER_G * amounts[FM_NUTRIENT_FAT].known_g_per_100g +
         CARBOHYDRATE_KCAL_PER_G * amounts[FM_NUTRIENT_CARBOHYDRATE].known_g_per_100g;
}

/* Rows count their energy by factors of their own: the cooked blend keeps the raw one's share of
 * the count, so that its energy goes with its protein, fat and carbohydrate. */
static FmAmount
cooked_energy (const FmCooked *self, const FmAnalysis *raw)
{
  const FmAmount *energy = &raw->amounts[FM_NUTRIENT_ENERGY_KCAL];
  double counted_raw_kcal = counted_kcal (raw->amounts);

  if (!is_full (energy) || isnan (solids_g (raw->amounts)) || isnan (solids_g (self->amounts)) ||
      !(counted_raw_kcal > 0.0))
    return unknown;
  return (FmAmount){ counted_kcal (self->amounts) * energy->known_g_per_100g / counted_raw_kcal,
                     energy->covered_pct };
}

static gboolean
check_input (const FmCookFood *food, FmCookMethod method, double measured_yield_pct, GError **error)
{
  g_autofree char *reason = fm_cook_unknown_text (method, food);

  if (reason != NULL) {
    g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_UNKNOWN_VALUE, reason);
    return FALSE;
  }
  if (isnan (measured_yield_pct) || (measured_yield_pct > 0.0 && measured_yield_pct <= 150.0))
    return TRUE;
  g_set_error_literal (error, FM_CORE_ERROR, FM_CORE_ERROR_OUT_OF_RANGE,
                       _ ("The cooked mass must be more than zero and not above 150 % of the raw "
                          "mass. Check both masses."));
  return FALSE;
}

FmCooked *
fm_cooked_new (const FmAnalysis *raw,
               FmSpeciesSet species,
               FmCookMethod method,
               double measured_yield_pct,
               GError **error)
{
  g_autoptr (FmCooked) self = NULL;
  const FmCookFood food = { species, raw->fat_pct };
  const FmCookPair *pair;

  g_return_val_if_fail (method < FM_N_COOK_METHODS, NULL);
  if (!check_input (&food, method, measured_yield_pct, error))
    return NULL;

  pair = fm_cook_food_is_beef (&food) ? NULL : fm_cook_pair_for (&food, method);
  self = g_new0 (FmCooked, 1);
  self->method = method;
  self->yield_measured = !isnan (measured_yield_pct);
  self->yield_pct = self->yield_measured ? measured_yield_pct : fm_cook_yield_pct (method, &food);
  self->extrapolated = pair != NULL || raw->fat_pct < fm_cook_levels[0].raw_fat_pct;
  for (int i = 0; i < FM_N_NUTRIENTS; i++)
    self->amounts[i] =
        cooked_amount (&raw->amounts[i], retention_pct (pair, method, (FmNutrient)i, raw->fat_pct),
                       self->yield_pct);
  self->amounts[FM_NUTRIENT_ENERGY_KCAL] = cooked_energy (self, raw);
  if (!close_mass (self, raw, error))
    return NULL;
  self->basis = make_basis (self, pair, raw->fat_pct);
  return g_steal_pointer (&self);
}

/* Water and energy are no nutrient with a retention of its own. */
static char *
rule_text (const FmCooked *self, const FmAnalysis *raw, FmNutrient nutrient)
{
  const FmAmount *amount = &self->amounts[nutrient];
  const int decimals = fm_nutrient_info (nutrient)->display_decimals + 2;
  const double kept_pct =
      amount->known_g_per_100g * self->yield_pct / raw->amounts[nutrient].known_g_per_100g;
  g_autofree char *before = fm_number_format (raw->amounts[nutrient].known_g_per_100g, decimals);
  g_autofree char *after = fm_number_format (amount->known_g_per_100g, decimals);
  g_autofree char *kept = fm_number_format (kept_pct, 1);
  g_autofree char *yield = fm_number_format (self->yield_pct, 1);
  const char *unit = fm_nutrient_info (nutrient)->unit;

  if (nutrient == FM_NUTRIENT_WATER)
    return g_strdup_printf (_ ("Water is what remains of 100 g cooked beside protein, fat, ash and "
                               "carbohydrate: %s g."),
                            after);
  if (nutrient == FM_NUTRIENT_ENERGY_KCAL)
    return g_strdup_printf (_ ("Energy of 100 g cooked goes with what is kept of protein, fat and "
                               "carbohydrate, at 4.27, 9.02 and 4 kcal per g and in the share that "
                               "the raw rows have of that count: %s kcal."),
                            after);
  if (isnan (amount->known_g_per_100g) || isnan (kept_pct))
    return g_strdup (_ ("What is kept of it in cooking is not known."));
  /* Translators: "66.000 mg in 100 g raw × 92.0 % kept ÷ 74.5 % cooked mass = 81.503 mg ..." */
  return g_strdup_printf (_ ("%s %s in 100 g raw × %s %% kept ÷ %s %% cooked mass = %s %s in 100 g "
                             "cooked"),
                          before, unit, kept, yield, after, unit);
}

char *
fm_cooked_derivation (const FmCooked *self, const FmAnalysis *raw, FmNutrient nutrient)
{
  g_autofree char *rule = rule_text (self, raw, nutrient);

  return g_strjoin ("\n\n", rule, self->basis, NULL);
}

void
fm_cooked_free (FmCooked *self)
{
  if (self == NULL)
    return;
  g_free (self->basis);
  g_free (self);
}
