/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-sidebar.h - the notebook's blends, each with its draft and versions as a small tree */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_SIDEBAR (fm_sidebar_get_type ())
G_DECLARE_FINAL_TYPE (FmSidebar, fm_sidebar, FM, SIDEBAR, GtkWidget)

/* Signal "picked" (): something was chosen, so that a narrow window can turn to the pages. */

void fm_sidebar_set_session (FmSidebar *self, FmSession *session);
/** In a narrow window the sidebar fills it, and a single click picks. */
void fm_sidebar_set_folded (FmSidebar *self, gboolean folded);

G_END_DECLS
