/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-own-params.h - D and z of the developer's own, as entries
 *
 * Kept with the preferences of the person at the desk, since they come from their own laboratory.
 *
 * Signal: "changed" (): the user gave another good value
 */
#pragma once

#include <gtk/gtk.h>

#include "core/heat/fm-lethality.h"

G_BEGIN_DECLS

#define FM_TYPE_COOK_OWN_PARAMS (fm_cook_own_params_get_type ())
G_DECLARE_FINAL_TYPE (FmCookOwnParams, fm_cook_own_params, FM, COOK_OWN_PARAMS, GtkWidget)

/** What the entries say, marked as own; NaN where one is blank. */
void fm_cook_own_params_read (FmCookOwnParams *self, FmLethalityParams *params);

G_END_DECLS
