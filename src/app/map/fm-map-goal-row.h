/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-goal-row.h - whether and how a response counts among several goals
 *
 * Signal: "changed" (): the goal, or whether it counts, changed.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/map/fm-map-response.h"
#include "core/mixture/fm-mix-fit.h"

G_BEGIN_DECLS

#define FM_TYPE_MAP_GOAL_ROW (fm_map_goal_row_get_type ())
G_DECLARE_FINAL_TYPE (FmMapGoalRow, fm_map_goal_row, FM, MAP_GOAL_ROW, GtkWidget)

/** @low, @high: of what was measured; the first proposal. */
GtkWidget *fm_map_goal_row_new (FmMapResponse response, double low, double high);
FmMapResponse fm_map_goal_row_get_response (FmMapGoalRow *self);
/** FALSE: it does not count. @problem: (transfer full) (nullable): what is wrong with its numbers.
 */
gboolean fm_map_goal_row_get_goal (FmMapGoalRow *self, FmMixGoal *goal, char **problem);

G_END_DECLS
