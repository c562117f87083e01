/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-panel.h - the cook of one experiment by its numbers: measured, estimated and lost */
#pragma once

#include <gtk/gtk.h>

#include "app/session/fm-experiment-document.h"
#include "core/cooking/fm-authority.h"

G_BEGIN_DECLS

#define FM_TYPE_COOK_PANEL (fm_cook_panel_get_type ())
G_DECLARE_FINAL_TYPE (FmCookPanel, fm_cook_panel, FM, COOK_PANEL, GtkWidget)

/** @document: (nullable) */
void fm_cook_panel_set_document (FmCookPanel *self, FmExperimentDocument *document);

/** What the document's version is made of, once it has been read. */
void fm_cook_panel_set_food (FmCookPanel *self, const FmCookFood *food);

G_END_DECLS
