/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-version-tree-graph.c - draws one row of the tree of versions */
#include "app/versions/fm-version-tree-graph.h"

#include <math.h>

#include "app/widgets/fm-newer.h"

#define LANE_PX 14
/* Many branches draw closer together, so that the words beside them keep their room. */
#define MAX_WIDTH_PX 72
#define NODE_RADIUS_PX 4.5
#define LINE_PX 2.0

struct _FmVersionTreeGraph {
  GtkWidget parent_instance;

  FmVersionTreePlace place;
  guint n_lanes;
  gboolean hollow;
};

G_DEFINE_FINAL_TYPE (FmVersionTreeGraph, fm_version_tree_graph, GTK_TYPE_WIDGET)

static double
lane_width (FmVersionTreeGraph *self)
{
  return MIN (LANE_PX, (double)MAX_WIDTH_PX / MAX (self->n_lanes, 1));
}

static double
lane_x (FmVersionTreeGraph *self, guint lane)
{
  return lane_width (self) * (lane + 0.5);
}

static void
draw_lines (FmVersionTreeGraph *self, cairo_t *cr, double height)
{
  const FmVersionTreePlace *place = &self->place;
  double middle = height / 2;

  for (guint lane = 0; lane < FM_VERSION_TREE_MAX_LANES; lane++) {
    guint32 bit = 1u << lane;
    double x = lane_x (self, lane);

    if (place->above & bit) {
      cairo_move_to (cr, x, 0);
      cairo_line_to (cr, x, middle);
    }
    if (place->forks & bit) {
      cairo_move_to (cr, lane_x (self, place->lane), middle);
      cairo_curve_to (cr, x, middle, x, middle, x, height);
    } else if (place->below & bit) {
      cairo_move_to (cr, x, middle);
      cairo_line_to (cr, x, height);
    }
  }
  cairo_stroke (cr);
}

static void
draw_node (FmVersionTreeGraph *self, cairo_t *cr, double height)
{
  double x = lane_x (self, self->place.lane);

  cairo_arc (cr, x, height / 2, NODE_RADIUS_PX, 0, 2 * G_PI);
  if (!self->hollow) {
    cairo_fill (cr);
    return;
  }
  cairo_save (cr);
  cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
  cairo_fill_preserve (cr);
  cairo_restore (cr);
  cairo_stroke (cr);
}

static void
fm_version_tree_graph_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmVersionTreeGraph *self = FM_VERSION_TREE_GRAPH (widget);
  int width = gtk_widget_get_width (widget);
  int height = gtk_widget_get_height (widget);
  GdkRGBA colour;
  cairo_t *cr;

  fm_newer_get_colour (widget, &colour);
  cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  gdk_cairo_set_source_rgba (cr, &colour);
  cairo_set_line_width (cr, LINE_PX);
  if (gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL) {
    cairo_translate (cr, width, 0);
    cairo_scale (cr, -1, 1);
  }
  draw_lines (self, cr, height);
  draw_node (self, cr, height);
  cairo_destroy (cr);
}

static void
fm_version_tree_graph_measure (GtkWidget *widget,
                               GtkOrientation orientation,
                               int for_size,
                               int *minimum,
                               int *natural,
                               int *minimum_baseline,
                               int *natural_baseline)
{
  FmVersionTreeGraph *self = FM_VERSION_TREE_GRAPH (widget);
  int size = LANE_PX;

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    size = (int)ceil (lane_width (self) * MAX (self->n_lanes, 1));
  *minimum = *natural = size;
}

static void
fm_version_tree_graph_class_init (FmVersionTreeGraphClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->snapshot = fm_version_tree_graph_snapshot;
  widget_class->measure = fm_version_tree_graph_measure;
  /* The row says in words what the lines show. */
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
fm_version_tree_graph_init (FmVersionTreeGraph *self)
{
  self->n_lanes = 1;
}

void
fm_version_tree_graph_set_place (FmVersionTreeGraph *self,
                                 const FmVersionTreePlace *place,
                                 guint n_lanes,
                                 gboolean hollow)
{
  self->place = *place;
  self->hollow = hollow;
  if (self->n_lanes != n_lanes) {
    self->n_lanes = n_lanes;
    gtk_widget_queue_resize (GTK_WIDGET (self));
  }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
