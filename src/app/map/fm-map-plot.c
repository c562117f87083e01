/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-plot.c - a map of three components as a triangle with curves of equal prediction */
#include "app/map/fm-map-plot.h"

#include <glib/gi18n-lib.h>

#include "app/map/fm-map-plot-draw.h"

#define SMALLEST_WIDTH 240
#define NATURAL_WIDTH 560
/* A wider room leaves the triangle as it is, so that all of it can be seen at once. */
#define LARGEST_WIDTH 680

struct _FmMapPlot {
  FmChart parent_instance;

  FmMapPicture *picture; /* (nullable) */
};

G_DEFINE_FINAL_TYPE (FmMapPlot, fm_map_plot, FM_TYPE_CHART)

static void
draw (FmChart *chart, FmChartCanvas *canvas)
{
  fm_map_plot_draw (FM_MAP_PLOT (chart)->picture, canvas);
}

static GtkSizeRequestMode
fm_map_plot_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
fm_map_plot_measure (GtkWidget *widget,
                     GtkOrientation orientation,
                     int for_size,
                     int *minimum,
                     int *natural,
                     int *minimum_baseline,
                     int *natural_baseline)
{
  const int width = for_size > 0 ? CLAMP (for_size, SMALLEST_WIDTH, LARGEST_WIDTH) : SMALLEST_WIDTH;

  *minimum =
      orientation == GTK_ORIENTATION_HORIZONTAL ? SMALLEST_WIDTH : fm_map_plot_height (width);
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? NATURAL_WIDTH : *minimum;
}

static void
fm_map_plot_finalize (GObject *object)
{
  g_clear_pointer (&FM_MAP_PLOT (object)->picture, fm_map_picture_free);
  G_OBJECT_CLASS (fm_map_plot_parent_class)->finalize (object);
}

static void
fm_map_plot_class_init (FmMapPlotClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_map_plot_finalize;
  FM_CHART_CLASS (klass)->draw = draw;
  GTK_WIDGET_CLASS (klass)->get_request_mode = fm_map_plot_get_request_mode;
  GTK_WIDGET_CLASS (klass)->measure = fm_map_plot_measure;
}

static void
fm_map_plot_init (FmMapPlot *self)
{
}

/* One row for each mark that is drawn. */
static FmChartTable *
make_table (const FmMapPicture *picture, FmMapDocument *document)
{
  FmChartTable *table = fm_map_marks_table_new ();

  for (guint i = 0; i < picture->placed->len; i++) {
    const FmMapPlaced *placed = &g_array_index (picture->placed, FmMapPlaced, i);

    fm_map_mark_add_row (&g_array_index (picture->marks, FmMapMark, placed->index), document,
                         picture->response, table);
  }
  return table;
}

void
fm_map_plot_take (FmMapPlot *self, FmMapDocument *document, FmMapPicture *picture)
{
  g_autofree char *description = fm_map_picture_describe (picture, document);

  g_return_if_fail (FM_IS_MAP_PLOT (self));
  g_clear_pointer (&self->picture, fm_map_picture_free);
  self->picture = picture;
  fm_chart_say (FM_CHART (self), _ ("Map of three components"), description,
                make_table (picture, document));
}

const FmMapPicture *
fm_map_plot_get_picture (FmMapPlot *self)
{
  return self->picture;
}
