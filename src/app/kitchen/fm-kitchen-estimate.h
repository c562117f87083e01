/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-estimate.h - what the heat model thinks of each portion while it cooks
 *
 * The filter of fm-heat-filter.h, portion by portion: what one tells of the pan is where the next
 * starts. Worked out in a thread, one portion after another.
 *
 * Signal: "estimated" (int portion, char *text): a new estimate, or why there is none.
 */
#pragma once

#include "app/cook/fm-cook-job.h"
#include "core/kitchen/fm-kitchen-state.h"

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_ESTIMATE (fm_kitchen_estimate_get_type ())
G_DECLARE_FINAL_TYPE (FmKitchenEstimate, fm_kitchen_estimate, FM, KITCHEN_ESTIMATE, GObject)

/** Reads what the version and @experiment say; @process: (nullable): fills what is not recorded. */
FmKitchenEstimate *fm_kitchen_estimate_new (FmNotebook *notebook,
                                            const FmExperiment *experiment,
                                            const FmProcess *process);
/** Works out the next portion that is on the heat or rests and whose estimate is out of date: by
 * new events or by time. Does nothing while one is worked on. */
void fm_kitchen_estimate_go_on (FmKitchenEstimate *self,
                                const GPtrArray *events,
                                const FmKitchenState *state,
                                const FmKitchenPlan *plan,
                                const FmKitchenMoment *now);

G_END_DECLS
