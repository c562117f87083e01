/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-help.h - opens the manual: in the desktop's reader, else in our own */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/**
 * fm_help_show:
 * @page: of the manual, such as "formula"
 *
 * An installed manual is opened by what the desktop has for "help:"; where it has nothing, where
 * that fails, and in an uninstalled run, a window of the program shows it.
 */
void fm_help_show (GtkWindow *parent, const char *page);

G_END_DECLS
