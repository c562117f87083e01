/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-report-choice.h - the experiments that go into the development report of a blend */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_REPORT_CHOICE (fm_report_choice_get_type ())
G_DECLARE_FINAL_TYPE (FmReportChoice, fm_report_choice, FM, REPORT_CHOICE, GtkWidget)

/** Opens the development report of the shown blend, over the window of @parent. */
void fm_report_choice_present (GtkWidget *parent, FmSession *session);

G_END_DECLS
