/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-derivation-window.h - where a figure comes from, to read and to copy */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

#define FM_TYPE_DERIVATION_WINDOW (fm_derivation_window_get_type ())
G_DECLARE_FINAL_TYPE (FmDerivationWindow, fm_derivation_window, FM, DERIVATION_WINDOW, AdwWindow)

/** Over the window of @parent. @figure: what it is about, e.g. "Sodium"; @text: the derivation. */
void fm_derivation_window_show (GtkWidget *parent, const char *figure, const char *text);

G_END_DECLS
