/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-process-pane.h - what the shown formula plans of its process, and the way to change it */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_PROCESS_PANE (fm_process_pane_get_type ())
G_DECLARE_FINAL_TYPE (FmProcessPane, fm_process_pane, FM, PROCESS_PANE, GtkWidget)

/** Shows the process of @session's formula, which is not NULL. */
void fm_process_pane_update (FmProcessPane *self, FmSession *session);

G_END_DECLS
