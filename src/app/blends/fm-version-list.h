/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-version-list.h - the blends of the notebook with their drafts and versions, as rows that all
 * lists of them share
 *
 * There is one for a session, as long as somebody shows it. Of a change only the rows that it is
 * about are read.
 *
 * Signal: "updated" (gint64 blend_id) rows of a blend were read; 0: of all, or the notebook is
 * another one
 */
#pragma once

#include "app/session/fm-session.h"
#include "app/blends/fm-version-tree-item.h"

G_BEGIN_DECLS

#define FM_TYPE_VERSION_LIST (fm_version_list_get_type ())
G_DECLARE_FINAL_TYPE (FmVersionList, fm_version_list, FM, VERSION_LIST, GObject)

/** Of @session. Returns: (transfer full). */
FmVersionList *fm_version_list_of (FmSession *session);
/** FmVersionTreeItem, one a blend, whose children are its versions, then its draft. (transfer none)
 */
GListModel *fm_version_list_get_blends (FmVersionList *self);
/** The row of a blend; NULL when there is none. (transfer none) */
FmVersionTreeItem *fm_version_list_find_blend (FmVersionList *self, gint64 blend_id);
/** FmVersionInfo of a blend by number; NULL until they are read. (transfer none) */
GPtrArray *fm_version_list_get_versions (FmVersionList *self, gint64 blend_id);
/** FALSE until the notebook was read. */
gboolean fm_version_list_is_read (FmVersionList *self);

G_END_DECLS
