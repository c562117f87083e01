/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-window.h - finds the shares that meet the targets of the brief
 *
 * Works on a copy of the shown formula; "Use This Blend" hands it to the session as one step.
 */
#pragma once

#include <adwaita.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_TARGETS_WINDOW (fm_targets_window_get_type ())
G_DECLARE_FINAL_TYPE (FmTargetsWindow, fm_targets_window, FM, TARGETS_WINDOW, AdwWindow)

/** The session must show a formula. */
FmTargetsWindow *fm_targets_window_new (GtkWindow *parent, FmSession *session);

G_END_DECLS
