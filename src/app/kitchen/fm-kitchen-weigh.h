/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-weigh.h - the planned weights, ticked off with what the scale says
 *
 * Signal: "asked" (guint index): the cook wants to type the weight of this weighing.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/experiment/fm-experiment.h"

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_WEIGH (fm_kitchen_weigh_get_type ())
G_DECLARE_FINAL_TYPE (FmKitchenWeigh, fm_kitchen_weigh, FM, KITCHEN_WEIGH, GtkWidget)

/** Shows what @experiment plans and what is weighed. */
void fm_kitchen_weigh_show (FmKitchenWeigh *self, const FmExperiment *experiment);
/** The first weighing without a weight; -1 = all are weighed. */
int fm_kitchen_weigh_next (const FmExperiment *experiment);
/** "planned 600 g". (transfer full) (nullable): nothing is planned. */
char *fm_kitchen_weigh_planned_text (const FmWeighing *weighing);

G_END_DECLS
