/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-together-window.h - the opened tastings of a blend, or chosen ones, read together */
#pragma once

#include <adwaita.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_TOGETHER_WINDOW (fm_tasting_together_window_get_type ())
G_DECLARE_FINAL_TYPE (
    FmTastingTogetherWindow, fm_tasting_together_window, FM, TASTING_TOGETHER_WINDOW, AdwWindow)

/** Over the window of @parent, for the blend that @session shows. */
void fm_tasting_together_window_show (GtkWidget *parent, FmSession *session);

G_END_DECLS
