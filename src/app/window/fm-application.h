/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-application.h - command line, start, and what belongs to no window */
#pragma once

#include <adwaita.h>

G_BEGIN_DECLS

#define FM_TYPE_APPLICATION (fm_application_get_type ())
G_DECLARE_FINAL_TYPE (FmApplication, fm_application, FM, APPLICATION, AdwApplication)

FmApplication *fm_application_new (void);

G_END_DECLS
