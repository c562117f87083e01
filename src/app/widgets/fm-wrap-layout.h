/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-wrap-layout.h - places children in columns, as many beside each other as there is room for
 *
 * Unlike a GtkFlowBox it leaves the focus alone: Tab and Shift+Tab go from one control in it to
 * the next and out of it, also where a child has nothing to focus.
 *
 * Properties: "column-spacing" and "row-spacing" in px, "min-per-line" (1), "max-per-line" (7), and
 * "homogeneous": all columns are as wide as the widest.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define FM_TYPE_WRAP_LAYOUT (fm_wrap_layout_get_type ())
G_DECLARE_FINAL_TYPE (FmWrapLayout, fm_wrap_layout, FM, WRAP_LAYOUT, GtkLayoutManager)

/** @spacing: between columns and between rows, in px. */
GtkLayoutManager *fm_wrap_layout_new (guint spacing, guint max_per_line);
void fm_wrap_layout_set_max_per_line (FmWrapLayout *self, guint max_per_line);

G_END_DECLS
