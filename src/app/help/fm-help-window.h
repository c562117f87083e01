/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-help-window.h - reads the manual where the desktop has no reader of its own */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

#define FM_TYPE_HELP_WINDOW (fm_help_window_get_type ())
G_DECLARE_FINAL_TYPE (FmHelpWindow, fm_help_window, FM, HELP_WINDOW, AdwWindow)

/** Shows @page in the reader of @parent, which is opened when it is not. */
void fm_help_window_show (GtkWindow *parent, const char *page);

G_END_DECLS
