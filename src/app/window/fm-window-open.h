/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-open.h - opening, creating and copying notebooks from a window */
#pragma once

#include "app/window/fm-window.h"

G_BEGIN_DECLS

/** Opens @path in a thread; on failure says why and keeps the notebook that is open. */
void fm_window_open_path (FmWindow *self, const char *path);
/**
 * Opens the first of @files in @self, and each further one in a program of its own. Answers whether
 * the first has a path on this computer; what has none is told.
 */
gboolean fm_window_open_files (FmWindow *self, GFile **files, guint n_files);
/** The notebook that was open last, or the first of all; where there is none, the ways in. */
void fm_window_open_last (FmWindow *self);
/** The demo notebook; made when it is not there yet. */
void fm_window_open_demo (FmWindow *self);

/** Opens what can be read of a damaged notebook, for reading only. */
void fm_window_read_damaged (FmWindow *self, const char *path);
/** Makes a notebook of what can be read of the one at @path, and opens it. */
void fm_window_recover (FmWindow *self, const char *path);

G_END_DECLS
