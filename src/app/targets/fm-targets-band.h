/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-band.h - one target beyond those of the brief: its band and the value now */
#pragma once

#include <gtk/gtk.h>

#include "core/targets/fm-targets.h"

G_BEGIN_DECLS

#define FM_TYPE_TARGETS_BAND (fm_targets_band_get_type ())
G_DECLARE_FINAL_TYPE (FmTargetsBand, fm_targets_band, FM, TARGETS_BAND, GtkListBoxRow)

/** @nutrient: of FM_QUANTITY_NUTRIENT, else FM_NUTRIENT_NONE. Both ends start blank. */
GtkWidget *fm_targets_band_new (FmQuantity quantity, FmNutrient nutrient);
gboolean fm_targets_band_is (FmTargetsBand *self, FmQuantity quantity, FmNutrient nutrient);
/** Shows what the masses of @formula amount to now. */
void fm_targets_band_update (FmTargetsBand *self, const FmFormula *formula);
/** FALSE while an end holds no good number or the ends are crossed. */
gboolean fm_targets_band_is_good (FmTargetsBand *self);
/** Adds the band to @targets unless both ends are blank. */
void fm_targets_band_add_to (FmTargetsBand *self, FmTargets *targets);
/** Name of such a target: translated. Returns: (transfer full). */
char *fm_targets_band_title (FmQuantity quantity, FmNutrient nutrient);

/**
 * Signals:
 *   "band-changed" ()     the user typed another end
 *   "removal-wanted" ()   the user takes the target back
 */

G_END_DECLS
