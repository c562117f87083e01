/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-head.h - what stands over every page of the cook screen
 *
 * Property for templates: "ruling" (string): the figure that rules for the blend.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/experiment/fm-experiment.h"
#include "core/kitchen/fm-kitchen-state.h"

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_HEAD (fm_kitchen_head_get_type ())
G_DECLARE_FINAL_TYPE (FmKitchenHead, fm_kitchen_head, FM, KITCHEN_HEAD, GtkWidget)

/** @title: (nullable) of the experiment; @origin: (nullable): blend and version */
void fm_kitchen_head_set_origin (FmKitchenHead *self, const char *title, const char *origin);
/** @why: (nullable): why an event is not on the disk yet */
void fm_kitchen_head_set_unwritten (FmKitchenHead *self, const char *why);
/** Says which portion is next on the heat and what is to be weighed. */
void fm_kitchen_head_show_next (FmKitchenHead *self,
                                const FmKitchenState *state,
                                const FmExperiment *experiment);
/** @visible: FALSE where the tiles tell of the timers. */
void fm_kitchen_head_show_timers (FmKitchenHead *self,
                                  const FmKitchenState *state,
                                  const FmKitchenPlan *plan,
                                  const FmKitchenMoment *now,
                                  gboolean visible);

G_END_DECLS
