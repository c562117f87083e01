/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-serving-choice.h - a serving of a version: patties, what comes with them, saved servings */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_SERVING_CHOICE (fm_serving_choice_get_type ())
G_DECLARE_FINAL_TYPE (FmServingChoice, fm_serving_choice, FM, SERVING_CHOICE, GtkWidget)

/** Opens the servings of a version of the shown blend, over the window of @parent. What was being
 * put together there goes on. */
void fm_serving_choice_present (GtkWidget *parent, FmSession *session, gint64 version_id);

G_END_DECLS
