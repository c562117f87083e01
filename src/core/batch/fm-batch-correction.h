/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-correction.h - bringing a real batch back to its target
 *
 * Mass balance: M g at f % with a g of an ingredient at c % makes (M + a) g at t % where
 * a = M (t - f) / (c - t). Nothing can be taken out of a ground mix, so a >= 0 is needed; and more
 * than the batch itself is never proposed: a cut that near to the aim makes another batch.
 */
#pragma once

#include "core/formula/fm-formula.h"

G_BEGIN_DECLS

/** One addition, and the fat that it aims at. */
typedef struct {
  double aim_pct; /* NaN = there is no such aim */
  gboolean possible;
  double add_g; /* edible g to add, at most the batch itself; NaN when not possible */
  double new_total_g;
  double new_fat_pct;
  double added_cost; /* NaN = no price or not possible */
  char *sentence; /* (nullable) translated: what to add and the new mass, or why it does not help;
                   * NULL without an aim */
} FmAddition;

/** One way: what this ingredient alone would do. */
typedef struct {
  FmIngredient *ingredient;
  FmAddition to_edge;   /* the nearest end of the band, reached or passed; nothing from inside it */
  FmAddition to_middle; /* of a band with two different ends, as near as the scale comes */
} FmCorrection;

/**
 * What each of @ingredients (array of FmIngredient) would need to bring a ground mix of @batch_g
 * at @fat_pct (a fat test, or by the weighed grams) into @band (% fat; NaN = open; both ends the
 * same = one aim). Possible ones first, the smallest addition first. @scale_step_g rounds the
 * addition, 0 = exact.
 *
 * Returns: (transfer full) (element-type FmCorrection): NULL + error: EMPTY for no mass,
 * OUT_OF_RANGE, UNKNOWN_VALUE for a fat of NaN or a band without an end.
 */
GPtrArray *fm_batch_corrections (double batch_g,
                                 double fat_pct,
                                 const FmBand *band,
                                 GPtrArray *ingredients,
                                 double scale_step_g,
                                 GError **error);
void fm_correction_free (FmCorrection *self);

/** Back to the planned shares of everything. */
typedef struct {
  guint n;
  double *add_g;    /* n, >= 0 */
  double total_g;   /* new batch mass */
  double factor;    /* new batch / planned batch */
  int most_over;    /* index whose surplus sets the new batch; -1 = all as planned or under */
  gboolean is_sane; /* the new batch is at most twice the planned one */
} FmTopUp;

/**
 * The smallest batch with the planned shares that holds all that was weighed in.
 * @planned_g, @weighed_g: (array length=n): >= 0. Fails with EMPTY when nothing is planned, with
 * OUT_OF_RANGE naming the ingredient for bad masses and when something unplanned was weighed in.
 */
gboolean fm_top_up_init (FmTopUp *self,
                         guint n,
                         const char *const *names,
                         const double *planned_g,
                         const double *weighed_g,
                         GError **error);
void fm_top_up_clear (FmTopUp *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmCorrection, fm_correction_free)
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FmTopUp, fm_top_up_clear)

G_END_DECLS
