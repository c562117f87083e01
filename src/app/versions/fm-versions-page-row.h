/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-page-row.h - one version or the draft in the tree of the versions page */
#pragma once

#include <gtk/gtk.h>

#include "app/blends/fm-version-tree-item.h"

G_BEGIN_DECLS

#define FM_TYPE_VERSIONS_PAGE_ROW (fm_versions_page_row_get_type ())
G_DECLARE_FINAL_TYPE (FmVersionsPageRow, fm_versions_page_row, FM, VERSIONS_PAGE_ROW, GtkWidget)

GtkWidget *fm_versions_page_row_new (void);
/** NULL when the row shows nothing. */
void fm_versions_page_row_set_item (FmVersionsPageRow *self, FmVersionTreeItem *item);

G_END_DECLS
