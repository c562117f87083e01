/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-estimate.h - an estimated cook as a curve over the readings, in words and as a table */
#pragma once

#include <gtk/gtk.h>

#include "core/heat/fm-heat.h"

G_BEGIN_DECLS

#define FM_TYPE_COOK_ESTIMATE (fm_cook_estimate_get_type ())
G_DECLARE_FINAL_TYPE (FmCookEstimate, fm_cook_estimate, FM, COOK_ESTIMATE, GtkWidget)

/** @readings: FmCoreReading by time, copied */
void fm_cook_estimate_set_readings (FmCookEstimate *self, const GArray *readings);
/** @result: (nullable): read only during the call; @target_c: NaN = none chosen */
void
fm_cook_estimate_set_result (FmCookEstimate *self, const FmHeatResult *result, double target_c);

G_END_DECLS
