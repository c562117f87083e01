/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-bands.h - the targets: the bands of the brief, and further ones of any nutrient
 *
 * Works on a formula that its owner keeps; the bands of its brief are changed as the user types.
 * Further bands live here: a brief has no place for them.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/targets/fm-targets.h"

G_BEGIN_DECLS

#define FM_TYPE_TARGETS_BANDS (fm_targets_bands_get_type ())
G_DECLARE_FINAL_TYPE (FmTargetsBands, fm_targets_bands, FM, TARGETS_BANDS, GtkWidget)

/** @formula: (transfer none): must outlive the widget's use. */
void fm_targets_bands_set_formula (FmTargetsBands *self, FmFormula *formula);
/** Shows the values now again, as after another ingredient's figures changed. */
void fm_targets_bands_update (FmTargetsBands *self);
/** FALSE + error while some band is not good. */
gboolean fm_targets_bands_check (FmTargetsBands *self, GError **error);
/** Adds the further bands; those of the brief come with the formula. */
void fm_targets_bands_add_to (FmTargetsBands *self, FmTargets *targets);

/** Signal "changed" (): a band was typed, added or dropped. */

G_END_DECLS
