/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-key-window.h - which code is which sample, for a helper's eyes, until it is closed
 *
 * All other windows are hidden while it is there. It keeps nothing when it is closed. That it was
 * shown is for the caller to record, before.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_TASTING_KEY_WINDOW (fm_tasting_key_window_get_type ())
G_DECLARE_FINAL_TYPE (FmTastingKeyWindow, fm_tasting_key_window, FM, TASTING_KEY_WINDOW, GtkWindow)

/** Takes over the screen. @helper: who looks; @key: the key as lines of text */
void fm_tasting_key_window_show (const char *helper, const char *key);

G_END_DECLS
