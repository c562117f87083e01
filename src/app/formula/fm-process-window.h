/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-process-window.h - plans the process of the draft; each change is kept as it is made */
#pragma once

#include <adwaita.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_PROCESS_WINDOW (fm_process_window_get_type ())
G_DECLARE_FINAL_TYPE (FmProcessWindow, fm_process_window, FM, PROCESS_WINDOW, AdwWindow)

/** Over the window of @parent, for the draft that @session shows. */
void fm_process_window_present (GtkWidget *parent, FmSession *session);

G_END_DECLS
