/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-readings-editor.h - core readings as a curve, as a table, and as text to paste */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-experiment-document.h"

G_BEGIN_DECLS

#define FM_TYPE_READINGS_EDITOR (fm_readings_editor_get_type ())
G_DECLARE_FINAL_TYPE (FmReadingsEditor, fm_readings_editor, FM, READINGS_EDITOR, GtkWidget)

/** @document: (nullable) */
void fm_readings_editor_set_document (FmReadingsEditor *self, FmExperimentDocument *document);
/** Shows another state of the same document. */
void fm_readings_editor_update (FmReadingsEditor *self);

G_END_DECLS
