/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-window.h - the cook screen: one experiment at the pan, over the whole screen
 *
 * It tells how long, how hot by reading and by estimate, and what authorities ask; never that
 * something is done or safe.
 */
#pragma once

#include <adwaita.h>

#include "app/session/fm-experiment-document.h"

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_WINDOW (fm_kitchen_window_get_type ())
G_DECLARE_FINAL_TYPE (FmKitchenWindow, fm_kitchen_window, FM, KITCHEN_WINDOW, AdwWindow)

/** Over the window of @parent. @origin: sentence that names blend and version; @process:
 * (nullable): what the version plans. (transfer none) the new window */
GtkWindow *fm_kitchen_window_present (GtkWidget *parent,
                                      FmSession *session,
                                      FmExperimentDocument *document,
                                      const char *origin,
                                      const FmProcess *process);

G_END_DECLS
