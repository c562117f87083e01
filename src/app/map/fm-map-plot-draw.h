/* fm-map-plot-draw.h - draws a map's picture */
#pragma once

#include <gtk/gtk.h>

#include "app/map/fm-map-picture.h"

G_BEGIN_DECLS

/** Where the triangle stands in a widget, in pixels. */
typedef struct {
  double left;
  double bottom;
  double side;
} FmMapFrame;

/** @picked: index in picture->placed of the mark with a ring; -1 = none. */
void fm_map_plot_draw (GtkWidget *widget,
                       cairo_t *cr,
                       const FmMapPicture *picture,
                       const FmMapFrame *frame,
                       int picked);
/** Pixels of a place in the plane. */
void fm_map_frame_place (const FmMapFrame *self, FmMixPlanePoint at, double *x, double *y);

G_END_DECLS
