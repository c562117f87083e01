/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-version-tree-graph.h - draws one row of the tree of versions: a node and the lines past it */
#pragma once

#include <gtk/gtk.h>

#include "app/charts/fm-chart-canvas.h"
#include "app/blends/fm-version-tree.h"

G_BEGIN_DECLS

#define FM_TYPE_VERSION_TREE_GRAPH (fm_version_tree_graph_get_type ())
G_DECLARE_FINAL_TYPE (FmVersionTreeGraph, fm_version_tree_graph, FM, VERSION_TREE_GRAPH, GtkWidget)

/** @hollow: a ring instead of a disc, for the draft. @n_lanes: lanes the whole tree needs. */
void fm_version_tree_graph_set_place (FmVersionTreeGraph *self,
                                      const FmVersionTreePlace *place,
                                      guint n_lanes,
                                      gboolean hollow);
/** Without a window: one row. */
void fm_version_tree_graph_draw (const FmVersionTreePlace *place,
                                 guint n_lanes,
                                 gboolean hollow,
                                 FmChartCanvas *canvas);
/** The middle of a lane. */
double fm_version_tree_graph_x (guint n_lanes, guint lane);

G_END_DECLS
