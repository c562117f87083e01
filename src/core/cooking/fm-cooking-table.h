/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cooking-table.h - the dataset's raw and cooked rows of ground meat, and how a yield is fitted
 *
 * Private to the cooking model and its tests. The rows come from the USDA National Nutrient
 * Database for Standard Reference, Release 28; tools/make-cooking-table writes the table.
 *
 * Yield. Few rows state what a raw mass yields. A weight is used when it passes one open rule,
 * fm_cook_weight_is_plausible(). A "1 patty" without a raw mass is taken as the 1/4 lb patty that
 * its neighbours state. Over the weights that pass, least squares fits one common slope over raw
 * fat % and one level per method. Leaving out one weight at a time, that predicts the yield to
 * 0.9 points rms (worst 1.1); keeping zinc constant gives 3.6, protein 4.6 (recomputed by
 * tests/reference/test-cooking.c), solids other than fat 3.9, iron 4.5, one line for all methods
 * 4.0. At 30 % fat it meets the pan-broiled loss of Troutt et al. 1992.
 */
#pragma once

#include "core/cooking/fm-cooking.h"

G_BEGIN_DECLS

#define FM_N_COOK_LEVELS 8
/* A single pair speaks for blends within this many points of its raw fat: common practice, no
 * source. */
#define FM_COOK_PAIR_FAT_REACH_PCT 5.0
/*
 * Protein does not boil off and little of it drips: a stated weight that would keep less or more
 * of it than this is a slip or belongs to another raw mass. The weights fall in two groups far
 * from these bounds (73 to 74 % and 95 to 109 %), so their exact place does not matter.
 */
#define FM_COOK_PROTEIN_KEPT_MIN_PCT 85.0
#define FM_COOK_PROTEIN_KEPT_MAX_PCT 115.0

/** One fat level: values per 100 g, NaN = not known. */
typedef struct {
  double raw_fat_pct;
  int raw_ndb;
  int cooked_ndb[FM_N_COOK_METHODS];
  double raw[FM_N_NUTRIENTS];
  double cooked[FM_N_COOK_METHODS][FM_N_NUTRIENTS];
} FmCookLevel;

/**
 * A household weight of a cooked row.
 *
 * @raw_g: the raw mass that the row states; for a "1 patty" without one, the 1/4 lb that the
 *   patties of the same table state
 */
typedef struct {
  int cooked_ndb;
  guint level;
  FmCookMethod method;
  double cooked_g;
  double raw_g;
  gboolean raw_stated;
  const char *description;
} FmCookWeight;

/**
 * A raw and a cooked row of another ground meat whose household weight states the raw mass; the
 * build writes them (tools/make-cooking-pairs).
 *
 * @methods: a bit for each FmCookMethod that it stands for
 * @method_named: FALSE when the dataset only says "cooked", so that it stands for patties
 */
typedef struct {
  FmSpecies species;
  guint methods;
  gboolean method_named;
  int raw_ndb;
  int cooked_ndb;
  double cooked_g;
  double raw_g;
  const char *description;
  double raw[FM_N_NUTRIENTS];
  double cooked[FM_N_NUTRIENTS];
} FmCookPair;

/** yield % = level[method] + slope x raw fat % */
typedef struct {
  double slope;
  double level_pct[FM_N_COOK_METHODS];
  guint n_weights[FM_N_COOK_METHODS];
} FmCookYieldFit;

extern const FmCookLevel fm_cook_levels[FM_N_COOK_LEVELS];
extern const FmCookWeight fm_cook_weights[];
extern const guint fm_n_cook_weights;
extern const FmCookPair fm_cook_pairs[];
extern const guint fm_n_cook_pairs;

/** Protein kept by @weight, % of the raw row's. */
double fm_cook_weight_protein_kept_pct (const FmCookWeight *weight);
gboolean fm_cook_weight_is_plausible (const FmCookWeight *weight);
/**
 * Fits the plausible weights; @skip: index of one to leave out, or a number past the last.
 * A method that has no weight left gets the mean level of the others.
 */
void fm_cook_yield_fit (guint skip, FmCookYieldFit *fit);
/** Below the lowest level its yield; NaN above the highest, where no pair tells. */
double fm_cook_yield_fit_pct (const FmCookYieldFit *fit, FmCookMethod method, double raw_fat_pct);
/** The fit over all plausible weights. */
const FmCookYieldFit *fm_cook_yield_whole_fit (void);
/** Retention beyond this is more than the noise of the pairs: the most that they keep of protein,
 * which cooking cannot add. About 110 %. */
double fm_cook_retention_limit_pct (void);
/**
 * True retention % = cooked x yield / raw at @raw_fat_pct, interpolated between fat levels and held
 * below the lowest; @skip_level: level to leave out, or FM_N_COOK_LEVELS. NaN when the rows cannot
 * tell: above the highest level, or where a neighbouring level keeps more than the limit.
 */
double fm_cook_retention_pct (FmCookMethod method,
                              FmNutrient nutrient,
                              double raw_fat_pct,
                              guint skip_level);
double fm_cook_pair_yield_pct (const FmCookPair *pair);
/** As fm_cook_retention_pct(), of one pair. */
double fm_cook_pair_retention_pct (const FmCookPair *pair, FmNutrient nutrient);
/** Beef is the only animal in it. */
gboolean fm_cook_food_is_beef (const FmCookFood *food);
/** The pair that speaks for @food, which is of that animal alone; NULL when none does. */
const FmCookPair *fm_cook_pair_for (const FmCookFood *food, FmCookMethod method);

G_END_DECLS
