/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-undo-keys.h - undo and redo by keyboard: of what was typed first, then of the page
 *
 * A text field keeps Ctrl+Z to itself even when it has nothing to take back. Inside @widget it goes
 * on to "win.undo" and "win.redo" then, and at once from a field without an undo of its own.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

void fm_undo_keys_install (GtkWidget *widget);

G_END_DECLS
