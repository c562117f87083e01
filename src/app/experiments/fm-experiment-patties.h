/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-patties.h - raw and cooked mass of every patty, with mean, spread and cook loss */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-experiment-document.h"

G_BEGIN_DECLS

#define FM_TYPE_EXPERIMENT_PATTIES (fm_experiment_patties_get_type ())
G_DECLARE_FINAL_TYPE (FmExperimentPatties, fm_experiment_patties, FM, EXPERIMENT_PATTIES, GtkWidget)

/** @document: (nullable) */
void fm_experiment_patties_set_document (FmExperimentPatties *self, FmExperimentDocument *document);
/** Shows another state of the same document. */
void fm_experiment_patties_update (FmExperimentPatties *self);

G_END_DECLS
