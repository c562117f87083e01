/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-help.h - which page of the manual tells of a window */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/** Opens the manual at what @window shows. */
void fm_window_help_show (GtkWindow *window);
/** From now on F1 does so in every window: the keys of an application hold in its main windows
 * only. */
void fm_window_help_watch (void);

G_END_DECLS
