/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-private.h - the linear program behind a set of targets, for the core only */
#pragma once

#include "core/targets/fm-solve.h"
#include "core/targets/fm-targets.h"

G_BEGIN_DECLS

/** One end of one band, as a row of the program. */
typedef struct {
  guint row;
  gboolean upper;
  double limit; /* in the target's unit */
} FmTargetLimit;

/** Shares are fractions of 1 here; a row's coefficients are in the row's own unit. */
typedef struct {
  const FmTargets *targets;
  guint n;
  guint n_rows;
  gboolean *usable; /* n: knows every value that is needed */
  gboolean *active; /* n_rows: has a band and is not skipped */
  double *coef;     /* n_rows x n; 0 for what is not usable */
  double *over;     /* n_rows x n: what a ratio is taken over; 1 = no ratio */
  double *price;    /* n, per kg edible; NaN = not known */
  double *min;      /* n */
  double *max;      /* n */
  double *base;     /* n: shares to stay near; NULL for least cost */
  GArray *limits;   /* FmTargetLimit */
  FmSolver *solver;
} FmTargetsModel;

/** What @ingredient brings into @row per unit share, in the row's unit; NaN when not known. */
double fm_target_row_amount (const FmTargetRow *row, const FmIngredient *ingredient);
/** What that amount is taken over: its protein for collagen, else 1; NaN when not known. */
double fm_target_row_over (const FmTargetRow *row, const FmIngredient *ingredient);

/** NULL + error for what no answer can be given to; notes on unknown values go to @notes. */
FmTargetsModel *
fm_targets_model_new (const FmTargets *targets, GStrvBuilder *notes, GError **error);
void fm_targets_model_free (FmTargetsModel *self);
/** Switches one end of a band on or off. */
void fm_targets_model_use_limit (FmTargetsModel *self, guint index, gboolean use);
/** Moves one end of a band to @limit and switches it on. */
void fm_targets_model_move_limit (FmTargetsModel *self, guint index, double limit);
/** Lets every usable share lie anywhere from 0 to 1, or takes that back. */
void fm_targets_model_free_shares (FmTargetsModel *self, gboolean free_shares);
/** Makes the objective of the targets, or nothing at all, that of the program. */
void fm_targets_model_aim (FmTargetsModel *self);
void fm_targets_model_aim_at_nothing (FmTargetsModel *self);
/** TRUE when row @row is a share of something else than the blend. */
gboolean fm_targets_model_is_ratio (const FmTargetsModel *self, guint row);
/** Cost per kg at @share (fractions); NaN when something used has no price. */
double fm_targets_model_cost (const FmTargetsModel *self, const double *share);
/** Value of row @row at @share (fractions or masses), in its unit; NaN when it has none. */
double fm_targets_model_value (const FmTargetsModel *self, guint row, const double *share);
/** The least (or greatest) value of @row within the limits in use; NaN when there is none. */
double fm_targets_model_extreme (FmTargetsModel *self, guint row, gboolean greatest);
/** The same within locks and share limits alone, all targets set aside. */
double fm_targets_model_reach (FmTargetsModel *self, guint row, gboolean greatest);
/** The same of any value: (array length=n), per unit share. */
double fm_targets_model_reach_of (FmTargetsModel *self, const double *value, gboolean greatest);
/** The shares that the last run found, cleaned of rounding errors outside their limits. */
void fm_targets_model_shares (const FmTargetsModel *self, double *share);
/** Coefficients of @limit in a row whose limit is 0: coef - limit x over. (array length=n) */
void fm_targets_model_homogeneous (const FmTargetsModel *self,
                                   const FmTargetLimit *limit,
                                   double *coefficients);

/**
 * Fills the sensitivities of @result. @share: the optimum that the program was just solved for; the
 * program is changed by it.
 */
void
fm_targets_fill_sensitivities (FmTargetsModel *self, FmTargetsResult *result, const double *share);
/**
 * Puts the masses of @result on the scale, where that is possible. An exact target (min = max) may
 * then be off by half of what one step of the scale can move it by: row_tolerance.
 */
void fm_targets_round_masses (const FmTargetsModel *self, FmTargetsResult *result);
/** Says what became of total, cost and distance by that. @share: the exact optimum. */
void
fm_targets_note_rounding (const FmTargetsModel *self, FmTargetsResult *result, const double *share);
/** Sum of |share - base share| in % points; NaN where nothing is to be near to. */
double fm_targets_model_distance_pct (const FmTargetsModel *self, const double *share);
/** Fills the second half of @result: who stands against whom, and the ways out. */
void fm_targets_explain_conflict (FmTargetsModel *self, FmTargetsResult *result);
/** Translated text of one end of a band, e.g. "Fat at most 20.0 %". */
char *fm_targets_limit_text (const FmTargetRow *row, gboolean upper, double limit);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmTargetsModel, fm_targets_model_free)

G_END_DECLS
