/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window.h - the one window: blends at the left, pages in the centre, nutrition at the right */
#pragma once

#include <adwaita.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_WINDOW (fm_window_get_type ())
G_DECLARE_FINAL_TYPE (FmWindow, fm_window, FM, WINDOW, AdwApplicationWindow)

/*
 * Actions for the pages, besides those of the menus:
 *   win.page (i)     shows page 1 formula, 2 versions, 3 experiments, 4 compare
 *   win.branch (x)   starts a draft from a version; asks first if the draft has changes
 *   win.save-version asks for a reason and saves the draft
 */
FmWindow *fm_window_new (AdwApplication *application, FmSession *session);
FmSession *fm_window_get_session (FmWindow *self);

/** The name of what is shown, as the manual has it: a page, or "notebooks" before there is a blend.
 */
const char *fm_window_get_page (FmWindow *self);

G_END_DECLS
