/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-sessions-window.h - spreads the samples of a plan over several sessions */
#pragma once

#include <adwaita.h>

#include "core/tasting/fm-tasting.h"

G_BEGIN_DECLS

#define FM_TYPE_TASTING_SESSIONS_WINDOW (fm_tasting_sessions_window_get_type ())
G_DECLARE_FINAL_TYPE (
    FmTastingSessionsWindow, fm_tasting_sessions_window, FM, TASTING_SESSIONS_WINDOW, AdwWindow)

/**
 * fm_tasting_sessions_window_new:
 * @plan: of three samples or more; it is copied
 *
 * Emits "planned" (GPtrArray of FmTasting) when the sessions are wanted, and closes.
 */
FmTastingSessionsWindow *fm_tasting_sessions_window_new (GtkWidget *parent, const FmTasting *plan);

G_END_DECLS
