/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets.h - the shares that meet a set of target bands
 *
 * A linear program over the shares of the permitted ingredients. Mixing is by mass, so every
 * target is linear in the shares: a nutrient or the cost as it is, the collagen share of protein
 * as collagen - limit x protein. Typical use:
 *
 *   FmTargets *targets = fm_targets_new_from_formula (formula);  // lines + bands of the brief
 *   fm_targets_add_candidate (targets, ingredient);              // also permitted, 0 g so far
 *   fm_targets_add_nutrient (targets, FM_NUTRIENT_IRON, band);   // any further band
 *   targets->objective = FM_OBJECTIVE_LEAST_COST;
 *   targets->scale_step_g = 5.0;
 *   FmTargetsResult *result = fm_targets_solve (targets, &error);
 */
#pragma once

#include "core/formula/fm-formula.h"
#include "core/composition/fm-nutrient.h"

G_BEGIN_DECLS

#define FM_MAX_CANDIDATES 200

typedef enum {
  FM_OBJECTIVE_LEAST_COST,
  FM_OBJECTIVE_NEAREST_CURRENT,   /* least sum of |share - current share|, then least cost */
  FM_OBJECTIVE_NEAREST_REFERENCE, /* the same against reference_share_pct */
} FmObjective;

/** One permitted ingredient. */
typedef struct {
  FmIngredient *ingredient;
  char *line_id;              /* (nullable) formula line; NULL = not in the formula yet */
  double current_g;           /* mass now, 0 for a new one */
  double reference_share_pct; /* share in the reference version, 0 if it is not there */
  gboolean locked;            /* keeps current_g; salt, spice, water and binders do unless freed */
  double min_share_pct;       /* NaN = none */
  double max_share_pct;       /* NaN = none */
} FmCandidate;

typedef enum {
  FM_QUANTITY_NUTRIENT,
  FM_QUANTITY_COLLAGEN, /* collagen as % of protein */
  FM_QUANTITY_COST,
} FmQuantity;

/** One band. Band and values are in @unit. */
typedef struct {
  char *name; /* translated, e.g. "Fat" or "Sodium per patty" */
  char *unit;
  FmQuantity quantity;
  FmNutrient nutrient; /* of FM_QUANTITY_NUTRIENT */
  double factor;       /* @unit per (unit per 100 g), of cost per (currency per kg) */
  double extra;        /* in @unit, that every blend has: sodium of the salt on the surface */
  int decimals;        /* worth showing */
  FmBand band;
} FmTargetRow;

typedef struct {
  GPtrArray *candidates; /* FmCandidate */
  GPtrArray *rows;       /* FmTargetRow */
  FmObjective objective;
  double surface_sodium_mg_per_100g; /* of the brief's salt on the surface */
  double total_g;      /* batch mass that locks refer to and that rounding keeps, > 0 */
  char *currency;      /* sign or code behind costs in sentences, "" = none */
  double scale_step_g; /* smallest step of the scale; 0 = do not round */
} FmTargets;

FmTargets *fm_targets_new (double total_g);
/** Lines with locks and limits, the brief's active bands; total = the formula's total. */
FmTargets *fm_targets_new_from_formula (const FmFormula *formula);
void fm_targets_free (FmTargets *self);
/** (transfer none): the new candidate, to be filled further. */
FmCandidate *fm_targets_add_candidate (FmTargets *self, FmIngredient *ingredient);
/** Band per 100 g of raw blend in the nutrient's own unit (fat: %). Returns its index. */
guint fm_targets_add_nutrient (FmTargets *self, FmNutrient nutrient, FmBand band);
/** Band in collagen % of protein. Skipped, and said so, when a candidate lacks the value. */
guint fm_targets_add_collagen (FmTargets *self, FmBand band);
/** Band in currency per kg of edible blend. */
guint fm_targets_add_cost (FmTargets *self, FmBand band);
/** The currency of prices: it becomes the unit of cost targets. */
void fm_targets_set_currency (FmTargets *self, const char *currency);
/** Value of row @row of the present masses; NaN when something used lacks it. */
double fm_targets_value_now (const FmTargets *self, guint row);
/** Takes reference shares from @reference; ingredients that are missing here are added. */
void fm_targets_set_reference (FmTargets *self, const FmFormula *reference);

/** What one target would need so that the others can be met. */
typedef struct {
  guint row;
  gboolean upper;     /* which end of the band is in the way */
  double limit;       /* the limit now */
  double alone_limit; /* smallest change of this one alone that makes it possible; NaN = none */
  double joint_limit; /* its part when all change by the least equal fraction of what each needs
                         alone; NaN = others are in the way too */
} FmRelaxation;

/** How far a value can go within locks and share limits, all other targets set aside. */
typedef struct {
  double min; /* NaN when nothing can be said */
  double max;
} FmReach;

typedef struct {
  gboolean met;       /* targets can be met; else see the second half */
  guint n_candidates; /* arrays below are in the order of the problem */
  guint n_rows;
  double *share_pct;   /* exact optimum, before rounding */
  double *mass_g;      /* weighable where on_scale, else the exact optimum */
  double total_g;      /* sum of mass_g */
  gboolean on_scale;   /* mass_g are whole scale steps and every target still holds */
  char *scale_note;    /* (nullable) translated sentence: why not, or that the total moved */
  char *rounding_note; /* (nullable) translated sentence: what whole steps cost */
  double rounding_cost_per_kg; /* cost of mass_g less that of the exact shares; NaN = not known */
  double *row_value;           /* of mass_g, in the row's unit; NaN = row skipped */
  double *row_tolerance; /* how far an exact target (min = max) may be off on the scale: half of
                          * what one step of it can move the value by; else 0 */
  double cost_per_kg;    /* of mass_g, edible; NaN when a price of something used is missing */
  double distance_pct;   /* sum of |share - reference share| of mass_g; NaN for least cost */
  /* Sensitivities of the cost, the other shares following the objective; NaN where a price that
   * they need is not known, and where what they ask for is not possible. */
  double *cost_per_share_pct; /* currency per kg for one more % point of the candidate */
  gboolean *can_take_more;    /* whether one more % point is possible at all */
  double *cost_per_unit;      /* currency per kg when the binding limit moves up by one unit */
  FmReach *reach;             /* n_rows, in the row's unit */
  FmReach fat_reach;          /* % fat within locks and limits */
  gboolean *left_out;         /* candidates that lack a value which is needed: share 0 */
  GStrv unknown_notes;        /* translated sentences naming who lacks what, empty when none */
  /* Not met (the masses are then the present ones): */
  GArray *conflict;       /* FmRelaxation: a smallest set of limits that exclude each other */
  gboolean limits_matter; /* without locks and share limits it could be met */
  char *sentence;         /* translated: conflict and ways out; met: what was reached */
} FmTargetsResult;

/** Checks the numbers of @self on their own; fm_targets_solve() does so first. */
gboolean fm_targets_check (const FmTargets *self, GError **error);
/**
 * Finds the shares. Takes milliseconds, and up to some tenths of a second with a scale. The work is
 * bounded by counts: the same input gives the same answer anywhere. Fails (NULL) with EMPTY (no
 * candidate, no mass), OUT_OF_RANGE (values, bands, limits that leave no blend at all), LOCKED
 * (locks weigh more than the batch) and UNKNOWN_VALUE (an ingredient that must be in lacks a value
 * that a target needs). Targets that cannot be met are no error: see FmTargetsResult.met.
 */
FmTargetsResult *fm_targets_solve (const FmTargets *self, GError **error);
void fm_targets_result_free (FmTargetsResult *self);
/** A copy of @formula with the masses of @result; used new candidates are appended. */
FmFormula *fm_targets_result_apply (const FmTargetsResult *result,
                                    const FmTargets *targets,
                                    const FmFormula *formula);
/** Two usable ingredients and a fat band: indices of them, for the Pearson square. */
gboolean fm_targets_is_pearson (const FmTargets *self, guint *a, guint *b);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmTargets, fm_targets_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmTargetsResult, fm_targets_result_free)

G_END_DECLS
