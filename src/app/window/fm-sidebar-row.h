/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-sidebar-row.h - one row of the sidebar: a blend with its menu, a draft or a version */
#pragma once

#include <gtk/gtk.h>

#include "app/blends/fm-version-tree-item.h"

G_BEGIN_DECLS

#define FM_TYPE_SIDEBAR_ROW (fm_sidebar_row_get_type ())
G_DECLARE_FINAL_TYPE (FmSidebarRow, fm_sidebar_row, FM, SIDEBAR_ROW, GtkWidget)

GtkWidget *fm_sidebar_row_new (void);
/** @tree_row holds an FmVersionTreeItem; NULL when the row shows nothing. */
void fm_sidebar_row_set_row (FmSidebarRow *self, GtkTreeListRow *tree_row);

G_END_DECLS
