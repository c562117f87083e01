/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-brief-pane.h - what is to be developed: patty, number, doneness and target bands */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_BRIEF_PANE (fm_brief_pane_get_type ())
G_DECLARE_FINAL_TYPE (FmBriefPane, fm_brief_pane, FM, BRIEF_PANE, GtkWidget)

void fm_brief_pane_set_session (FmBriefPane *self, FmSession *session);
/** Puts the focus into the band of target @kind. */
void fm_brief_pane_focus_target (FmBriefPane *self, FmTargetKind kind);
/** Brings the fields and the states of the targets up to date. */
void fm_brief_pane_update (FmBriefPane *self);

G_END_DECLS
