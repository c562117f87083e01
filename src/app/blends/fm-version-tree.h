/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-version-tree.h - where the nodes and lines of a tree of versions are drawn
 *
 * One row per version, oldest first. The first child of a version stays in its lane; every
 * further child opens a lane at its parent's row, which stays taken until the branch ends:
 *
 *   1  o
 *   2  o-.      lane 0 goes on to 3, lane 1 opens for 4
 *   3  o |
 *   4    o
 */
#pragma once

#include "store/fm-versions.h"

G_BEGIN_DECLS

#define FM_VERSION_TREE_MAX_LANES 12 /* further lanes share the last one */

typedef struct {
  guint lane;
  guint32 above; /* lanes with a line from the row above, one bit each */
  guint32 below; /* lanes with a line to the row below */
  guint32 forks; /* lanes that open here; part of @below */
} FmVersionTreePlace;

/**
 * Places @versions (FmVersionInfo in order of number, parents before children). A parent that is
 * not among them counts as none.
 * Returns: (transfer full) (element-type FmVersionTreePlace): one for each version.
 */
GArray *fm_version_tree_layout (GPtrArray *versions);
/** Number of lanes that @places use, at least 1. */
guint fm_version_tree_n_lanes (const GArray *places);

G_END_DECLS
