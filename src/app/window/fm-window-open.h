/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-open.h - opening, creating and copying notebooks from a window */
#pragma once

#include "app/window/fm-window.h"

G_BEGIN_DECLS

/** Opens @path in a thread; on failure says why and keeps the notebook that is open. */
void fm_window_open_path (FmWindow *self, const char *path);
/** The notebook that was open last, or the first empty one. */
void fm_window_open_last (FmWindow *self);
/** The demo notebook; made when it is not there yet. */
void fm_window_open_demo (FmWindow *self);

G_END_DECLS
