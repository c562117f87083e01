/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-making.h - how it was made: grinding, salting, cooking and rest */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-experiment-document.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_MAKING (fm_experiment_making_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentMaking, fm_experiment_making, FM, EXPERIMENT_MAKING, GtkWidget)

/** @document: (nullable) */
void fm_experiment_making_set_document (FmExperimentMaking *self, FmExperimentDocument *document);
/** Shows anew what came into the experiment by another way. */
void fm_experiment_making_update (FmExperimentMaking *self);

G_END_DECLS
