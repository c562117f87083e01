/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-caution.h - the ground meat caution, with the authority behind each figure */
#pragma once

#include <gtk/gtk.h>

#include "core/cooking/fm-authority.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_CAUTION (fm_experiment_caution_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentCaution, fm_experiment_caution, FM, EXPERIMENT_CAUTION, GtkWidget)

/** @peak_core_c: highest core reading, NaN when there is none. */
void fm_experiment_caution_set_peak (FmExperimentCaution *self, double peak_core_c);

/** Shows the figures for what is cooked. */
void fm_experiment_caution_set_food (FmExperimentCaution *self, const FmCookFood *food);

G_END_DECLS
