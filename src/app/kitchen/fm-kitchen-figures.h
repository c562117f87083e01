/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-figures.h - what each authority asks for the blend's animals, while it cooks
 *
 * Property: "ruling" (string, nullable): a sentence with the figure that rules; NULL until it is
 * read.
 */
#pragma once

#include <gtk/gtk.h>

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

#define FM_TYPE_KITCHEN_FIGURES (fm_kitchen_figures_get_type ())
G_DECLARE_FINAL_TYPE (FmKitchenFigures, fm_kitchen_figures, FM, KITCHEN_FIGURES, GtkWidget)

/** Reads what is in the version. Where that fails the figures for meat of unknown kind stand. */
void
fm_kitchen_figures_set_version (FmKitchenFigures *self, FmNotebook *notebook, gint64 version_id);

G_END_DECLS
