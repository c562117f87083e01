/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-predict.h - an estimate of the core temperature, beside the readings of an experiment */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-experiment-document.h"
#include "core/composition/fm-species.h"

G_BEGIN_DECLS

#define FM_TYPE_COOK_PREDICT (fm_cook_predict_get_type ())
G_DECLARE_FINAL_TYPE (FmCookPredict, fm_cook_predict, FM, COOK_PREDICT, GtkWidget)

/** @document: (nullable) */
void fm_cook_predict_set_document (FmCookPredict *self, FmExperimentDocument *document);

/** Kinds of animal of the version; they decide which figure rules. */
void fm_cook_predict_set_species (FmCookPredict *self, FmSpeciesSet species);

G_END_DECLS
