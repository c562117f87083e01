/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-alarm.h - tells of the end of a timer through the desktop, once for each */
#pragma once

#include <gtk/gtk.h>

#include "core/kitchen/fm-kitchen-state.h"

G_BEGIN_DECLS

typedef struct {
  FmKitchenStage told[FM_KITCHEN_MAX_PORTIONS]; /* the stage whose end was told; WAITING = none */
  guint n_turns[FM_KITCHEN_MAX_PORTIONS];       /* turns by then */
} FmKitchenAlarm;

/** Looks which timers have ended since, and tells of them with @widget's sound. */
void fm_kitchen_alarm_look (FmKitchenAlarm *self,
                            GtkWidget *widget,
                            const FmKitchenState *state,
                            const FmKitchenPlan *plan,
                            const FmKitchenMoment *now);

G_END_DECLS
