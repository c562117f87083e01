/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-save-version-dialog.h - asks for the reason before a draft becomes a version */
#pragma once

#include <adwaita.h>

#include "app/session/fm-session.h"

G_BEGIN_DECLS

#define FM_TYPE_SAVE_VERSION_DIALOG (fm_save_version_dialog_get_type ())
G_DECLARE_FINAL_TYPE (
    FmSaveVersionDialog, fm_save_version_dialog, FM, SAVE_VERSION_DIALOG, AdwWindow)

/** A modal dialog over @parent that saves the session's draft when accepted. */
FmSaveVersionDialog *fm_save_version_dialog_new (GtkWindow *parent, FmSession *session);

G_END_DECLS
