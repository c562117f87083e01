/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-inputs.h - what an estimate of a cook starts from, as entries
 *
 * Bad text is told at its entry and the last good value stays.
 *
 * Signal: "changed" (): the user gave another good value
 */
#pragma once

#include <gtk/gtk.h>

#include "core/heat/fm-heat.h"

G_BEGIN_DECLS

#define FM_TYPE_COOK_INPUTS (fm_cook_inputs_get_type ())
G_DECLARE_FINAL_TYPE (FmCookInputs, fm_cook_inputs, FM, COOK_INPUTS, GtkWidget)

/** Shows a copy of @setup. Does not emit. */
void fm_cook_inputs_set_setup (FmCookInputs *self, const FmHeatSetup *setup);
/** The setup as shown. (transfer none) */
const FmHeatSetup *fm_cook_inputs_get_setup (FmCookInputs *self);
/** Does not emit. */
void fm_cook_inputs_set_contact (FmCookInputs *self, double contact_w_m2k);
/** NaN shows the consumers' temperature of the USDA FSIS chart. Does not emit. */
void fm_cook_inputs_set_target_c (FmCookInputs *self, double target_c);
/** The core temperature that the developer wants to reach; NaN when blank. */
double fm_cook_inputs_get_target_c (FmCookInputs *self);

G_END_DECLS
