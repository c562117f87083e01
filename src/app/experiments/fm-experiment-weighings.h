/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-weighings.h - planned and weighed grams of each ingredient, with the deviation */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-experiment-document.h"
#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_WEIGHINGS (fm_experiment_weighings_get_type ())
G_DECLARE_FINAL_TYPE (
    FmExperimentWeighings, fm_experiment_weighings, FM, EXPERIMENT_WEIGHINGS, GtkWidget)

/** @document: (nullable) */
void fm_experiment_weighings_set_document (FmExperimentWeighings *self,
                                           FmSession *session,
                                           FmExperimentDocument *document);
/** Shows another state of the same document. */
void fm_experiment_weighings_update (FmExperimentWeighings *self);

G_END_DECLS
