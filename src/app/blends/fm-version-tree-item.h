/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-version-tree-item.h - a blend, its draft or a version, as a row of a list */
#pragma once

#include <gio/gio.h>

#include "app/blends/fm-version-read.h"
#include "app/blends/fm-version-tree.h"

G_BEGIN_DECLS

typedef enum {
  FM_VERSION_TREE_BLEND,
  FM_VERSION_TREE_DRAFT,
  FM_VERSION_TREE_VERSION,
} FmVersionTreeKind;

#define FM_TYPE_VERSION_TREE_ITEM (fm_version_tree_item_get_type ())
G_DECLARE_FINAL_TYPE (FmVersionTreeItem, fm_version_tree_item, FM, VERSION_TREE_ITEM, GObject)

/* Signal "changed" (): the texts or the place in the tree changed. */

FmVersionTreeItem *
fm_version_tree_item_new (FmVersionTreeKind kind, gint64 blend_id, gint64 version_id);
FmVersionTreeKind fm_version_tree_item_get_kind (FmVersionTreeItem *self);
gint64 fm_version_tree_item_get_blend_id (FmVersionTreeItem *self);
gint64 fm_version_tree_item_get_version_id (FmVersionTreeItem *self); /* 0 unless a version */
const char *fm_version_tree_item_get_title (FmVersionTreeItem *self);
/** The numbers in a line: date, fat, experiments, rating, tastings. */
const char *fm_version_tree_item_get_detail (FmVersionTreeItem *self);
/** The place in the tree in words: "Version 5, from version 2 ...". */
const char *fm_version_tree_item_get_spoken (FmVersionTreeItem *self);
const FmVersionTreePlace *fm_version_tree_item_get_place (FmVersionTreeItem *self, guint *n_lanes);
/** The draft and versions of a blend; NULL for others. (transfer none) */
GListStore *fm_version_tree_item_get_children (FmVersionTreeItem *self);
/** TRUE when @needle (casefolded) is in the title. */
gboolean fm_version_tree_item_matches (FmVersionTreeItem *self, const char *needle);
/** Shows what is known of a blend in its row and in those of its versions and draft; rows that stay
 * are kept. */
void fm_version_tree_item_update (FmVersionTreeItem *self, const FmVersionBlend *blend);

G_END_DECLS
