/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-plan.h - a tasting before it starts: samples, tasters, what is asked, what it can show
 */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-tasting-document.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_PLAN (fm_tasting_plan_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingPlan, fm_tasting_plan, FM, TASTING_PLAN, GtkWidget)

/** @document: (nullable) of a tasting that is still planned */
void fm_tasting_plan_set_document (FmTastingPlan *self, FmTastingDocument *document);

G_END_DECLS
