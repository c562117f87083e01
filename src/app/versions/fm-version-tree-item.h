/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-version-tree-item.h - a blend, its draft or a version, as a row of a list */
#pragma once

#include <gio/gio.h>

#include "app/versions/fm-version-tree.h"

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

/** One blend with all that its rows show. */
typedef struct {
  FmBlendInfo *info;
  GPtrArray *versions; /* FmVersionInfo */
} FmVersionTreeBlend;

void fm_version_tree_blend_free (FmVersionTreeBlend *blend);
/** Reads every blend with its versions; may take a while. (element-type FmVersionTreeBlend) */
GPtrArray *fm_version_tree_read (FmNotebook *notebook, GError **error);
/** Reads one blend with its versions; may take a while. */
FmVersionTreeBlend *
fm_version_tree_read_blend (FmNotebook *notebook, gint64 blend_id, GError **error);
/** Brings @store (of blend items) up to date and keeps the items that stay. */
void fm_version_tree_update (GListStore *store, GPtrArray *blends);
/** Brings @store (of version items, then the draft) up to date with one blend. */
void fm_version_tree_update_versions (GListStore *store, const FmVersionTreeBlend *blend);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmVersionTreeBlend, fm_version_tree_blend_free)

G_END_DECLS
