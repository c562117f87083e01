/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-verdicts.h - integrated lethality and each authority's hold table for core readings */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-experiment-document.h"
#include "core/cooking/fm-authority.h"

G_BEGIN_DECLS

#define FM_TYPE_COOK_VERDICTS (fm_cook_verdicts_get_type ())
G_DECLARE_FINAL_TYPE (FmCookVerdicts, fm_cook_verdicts, FM, COOK_VERDICTS, GtkWidget)

/** @document: (nullable) */
void fm_cook_verdicts_set_document (FmCookVerdicts *self, FmExperimentDocument *document);

/** Chooses figures and sets of D and z for what is cooked; nothing is judged before. */
void fm_cook_verdicts_set_food (FmCookVerdicts *self, const FmCookFood *food);

G_END_DECLS
