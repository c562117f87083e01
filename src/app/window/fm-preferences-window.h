/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-preferences-window.h - units, colours and currency */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

#define FM_TYPE_PREFERENCES_WINDOW (fm_preferences_window_get_type ())
G_DECLARE_FINAL_TYPE (
    FmPreferencesWindow, fm_preferences_window, FM, PREFERENCES_WINDOW, AdwPreferencesWindow)

FmPreferencesWindow *fm_preferences_window_new (GtkWindow *parent);

G_END_DECLS
