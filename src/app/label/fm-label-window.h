/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-label-window.h - the label of a draft or a version: panel, ingredients, claims, and what is
 * near */
#pragma once

#include "app/print/fm-paper-window.h"
#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_LABEL_WINDOW (fm_label_window_get_type ())
G_DECLARE_FINAL_TYPE (FmLabelWindow, fm_label_window, FM, LABEL_WINDOW, FmPaperWindow)

/** Over the window of @parent, for what @session shows; for version @version_id of the shown blend
 * when it is not 0. */
void fm_label_window_present (GtkWidget *parent, FmSession *session, gint64 version_id);
/** For a serving of the shown blend. @version_name: "version 3, serving 2"; @eaten, @used: as in
 * FmDishSum, copied. */
void fm_label_window_present_serving (GtkWidget *parent,
                                      FmSession *session,
                                      const char *version_name,
                                      const FmFormula *eaten,
                                      const FmFormula *used);

G_END_DECLS
