/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-text.h - the sentences of the cook screen; all translated and (transfer full) */
#pragma once

#include "core/kitchen/fm-kitchen-land.h"

G_BEGIN_DECLS

/** What the space bar would say now. */
char *fm_kitchen_act_text (FmKitchenKind kind, int portion);
/** Which portion is next, and what is to be weighed; @unweighed: -1 = nothing. */
char *
fm_kitchen_next_text (const FmKitchenState *state, const FmExperiment *experiment, int unweighed);
/** The timers that run, in one line. */
char *fm_kitchen_timers_text (const FmKitchenState *state,
                              const FmKitchenPlan *plan,
                              const FmKitchenMoment *now);
/** The last @n_told events, the newest first; readings of a probe are left out. */
char *fm_kitchen_log_text (const GPtrArray *events, guint n_told);

G_END_DECLS
