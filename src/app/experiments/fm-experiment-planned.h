/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-planned.h - what the version plans of its process beside what was done
 *
 * Signal: "taken": what was not recorded yet was filled from the plan.
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-experiment-document.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_PLANNED (fm_experiment_planned_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentPlanned, fm_experiment_planned, FM, EXPERIMENT_PLANNED, GtkWidget)

void fm_experiment_planned_set_document (FmExperimentPlanned *self, FmExperimentDocument *document);
/** @plan: (nullable): the version's process; nothing is shown where nothing is planned. */
void fm_experiment_planned_set_plan (FmExperimentPlanned *self, const FmProcess *plan);
/** After the experiment was edited elsewhere. */
void fm_experiment_planned_update (FmExperimentPlanned *self);

G_END_DECLS
