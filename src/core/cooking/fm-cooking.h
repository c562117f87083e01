/* fm-cooking.h - from raw to cooked, by stated method
 *
 * Predictions come from the dataset's own raw/cooked pairs (same fat level, raw and cooked rows,
 * and household weights such as "yield from 1/4 lb raw meat"). Fat and every other nutrient use
 * the true retention of the pair, interpolated over raw fat %; raw values are never scaled by
 * mass alone. A measured cooked mass overrides the predicted yield.
 */
#pragma once

#include "core/formula/fm-analysis.h"

G_BEGIN_DECLS

typedef enum {
  FM_COOK_PATTY_BROILED,
  FM_COOK_PATTY_PAN_BROILED,
  FM_COOK_CRUMBLES_PAN_BROWNED,
  FM_COOK_LOAF_BAKED,
  FM_N_COOK_METHODS,
} FmCookMethod;

typedef struct {
  FmCookMethod method;
  double yield_pct;                 /* cooked mass / raw mass x 100 */
  gboolean yield_measured;          /* from a measured cooked mass, not the tables */
  gboolean extrapolated;            /* raw fat % lies outside the table's 3-30 % */
  FmAmount amounts[FM_N_NUTRIENTS]; /* per 100 g cooked */
  char *basis;                      /* translated sentence: which pairs, which weights */
} FmCooked;

const char *fm_cook_method_name (FmCookMethod method); /* translated */
/** Predicted yield % at @raw_fat_pct, NaN if fat is unknown. */
double fm_cook_yield_pct (FmCookMethod method, double raw_fat_pct);
/** @measured_yield_pct: NaN = predict. NULL + error when the blend's fat is not known. */
FmCooked *fm_cooked_new (const FmAnalysis *raw,
                         FmCookMethod method,
                         double measured_yield_pct,
                         GError **error);
void fm_cooked_free (FmCooked *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmCooked, fm_cooked_free)

G_END_DECLS
