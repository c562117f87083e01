/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-seasoning-row.h - one seasoning of a process: what, when, and whether on the surface
 *
 * Signals: "changed"; "remove": the user wants it gone.
 */
#pragma once

#include <gtk/gtk.h>

#include "core/formula/fm-process.h"

G_BEGIN_DECLS

#define FM_TYPE_SEASONING_ROW (fm_seasoning_row_get_type ())
G_DECLARE_FINAL_TYPE (FmSeasoningRow, fm_seasoning_row, FM, SEASONING_ROW, GtkWidget)

/** @number: from 1, for its spoken names. @seasoning: (nullable): a new one. */
GtkWidget *fm_seasoning_row_new (guint number, const FmSeasoning *seasoning);
/** Adds what the row holds to @process, once it has a name. */
void fm_seasoning_row_add_to (FmSeasoningRow *self, FmProcess *process);

G_END_DECLS
