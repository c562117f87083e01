/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-bounds-row.h - how much of one component there may be
 *
 * Signal: "bounds-changed" (double lower, double upper): shares, 0 .. 1.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_MAP_BOUNDS_ROW (fm_map_bounds_row_get_type ())
G_DECLARE_FINAL_TYPE (FmMapBoundsRow, fm_map_bounds_row, FM, MAP_BOUNDS_ROW, GtkListBoxRow)

GtkWidget *fm_map_bounds_row_new (const char *name);
/** Shares, 0 .. 1; @now: of the base. */
void fm_map_bounds_row_update (
    FmMapBoundsRow *self, double lower, double upper, double now, gboolean editable);

G_END_DECLS
