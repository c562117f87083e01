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
lane_width (guint n_lanes)
{
  return MIN (LANE_PX, (double)MAX_WIDTH_PX / MAX (n_lanes, 1));
}

double
fm_version_tree_graph_x (guint n_lanes, guint lane)
{
  return lane_width (n_lanes) * (lane + 0.5);
}

static void
draw_lines (const FmVersionTreePlace *place, guint n_lanes, cairo_t *cr, double height)
{
  const double middle = height / 2;

  cairo_new_path (cr);
  for (guint lane = 0; lane < FM_VERSION_TREE_MAX_LANES; lane++) {
    const guint32 bit = 1u << lane;
    const double x = fm_version_tree_graph_x (n_lanes, lane);

    if (place->above & bit) {
      cairo_move_to (cr, x, 0);
      cairo_line_to (cr, x, middle);
    }
    if (place->forks & bit) {
      cairo_move_to (cr, fm_version_tree_graph_x (n_lanes, place->lane), middle);
      cairo_curve_to (cr, x, middle, x, middle, x, height);
    } else if (place->below & bit) {
      cairo_move_to (cr, x, middle);
      cairo_line_to (cr, x, height);
    }
  }
  cairo_stroke (cr);
}

void
fm_version_tree_graph_draw (const FmVersionTreePlace *place,
                            guint n_lanes,
                            gboolean hollow,
                            FmChartCanvas *canvas)
{
  fm_chart_canvas_set_colour (canvas, &canvas->palette.ink, canvas->palette.ink.alpha);
  cairo_set_line_width (canvas->cr, LINE_PX);
  draw_lines (place, n_lanes, canvas->cr, canvas->height);
  fm_chart_canvas_circle (canvas, fm_version_tree_graph_x (n_lanes, place->lane),
                          canvas->height / 2, NODE_RADIUS_PX);
  if (!hollow) {
    cairo_fill (canvas->cr);
    return;
  }
  fm_chart_canvas_fill_ground (canvas);
  cairo_stroke (canvas->cr);
}

static void
fm_version_tree_graph_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmVersionTreeGraph *self = FM_VERSION_TREE_GRAPH (widget);
  int width = gtk_widget_get_width (widget);
  int height = gtk_widget_get_height (widget);
  FmChartCanvas canvas;
  cairo_t *cr;

  cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  fm_chart_canvas_init (&canvas, cr, gtk_widget_get_pango_context (widget), width, height,
                        FM_CHART_LIGHT);
  canvas.see_through = TRUE;
  /* A row has the colour of its words, also while it is chosen. */
  fm_newer_get_colour (widget, &canvas.palette.ink);
  if (gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL) {
    cairo_translate (cr, width, 0);
    cairo_scale (cr, -1, 1);
  }
  fm_version_tree_graph_draw (&self->place, self->n_lanes, self->hollow, &canvas);
  fm_chart_canvas_clear (&canvas);
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
    size = (int)ceil (lane_width (self->n_lanes) * MAX (self->n_lanes, 1));
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
