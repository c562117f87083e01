/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-map-plot.c - a map of three components as a triangle with curves of equal prediction */
#include "app/map/fm-map-plot.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "app/map/fm-map-plot-draw.h"

#define SMALLEST_WIDTH 240
#define NATURAL_WIDTH 560
#define HEIGHT_PART 0.8
/* A wider room makes it no higher, so that all of it can be seen at once. */
#define LARGEST_HEIGHT 600
/* A key moves the point by so much of the triangle in sight. */
#define STEP_PX 6.0
#define FAR_STEPS 6

struct _FmMapPlot {
  FmChart parent_instance;

  FmMapPicture *picture;   /* (nullable) */
  FmMapDocument *document; /* (nullable) */
  FmMixPlanePoint point;
  gboolean has_point;
  gboolean telling; /* of the point */
};

enum {
  OPEN_VERSION,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (FmMapPlot, fm_map_plot, FM_TYPE_CHART)

static void
draw (FmChart *chart, FmChartCanvas *canvas)
{
  fm_map_plot_draw (FM_MAP_PLOT (chart)->picture, canvas);
}

static void
draw_over (FmChart *chart, FmChartCanvas *canvas)
{
  const FmMapPlot *self = FM_MAP_PLOT (chart);

  if (self->has_point)
    fm_map_plot_draw_point (self->picture, self->point, canvas);
}

static void
get_frame (FmMapPlot *self, FmMapFrame *frame)
{
  double width, height;

  fm_chart_get_canvas_size (FM_CHART (self), &width, &height);
  fm_map_frame_init (frame, self->picture, width, height);
}

static gboolean
is_in_triangle (FmMixPlanePoint at)
{
  double u[3];

  fm_mix_slice_from_plane (at, u);
  return MIN (u[0], MIN (u[1], u[2])) >= 0;
}

static char *
text_at (FmChart *chart, double x, double y)
{
  FmMapPlot *self = FM_MAP_PLOT (chart);
  FmMapFrame frame;
  FmMixPlanePoint at;

  if (self->picture == NULL)
    return NULL;
  get_frame (self, &frame);
  at = fm_map_frame_back (&frame, x, y);
  return is_in_triangle (at) ? fm_map_picture_text_at (self->picture, self->document, at) : NULL;
}

/* Says what the model says there, and keeps the point in sight until a mark is picked. */
static void
set_point (FmMapPlot *self, FmMixPlanePoint at)
{
  if (!is_in_triangle (at))
    return;
  self->point = at;
  self->telling = TRUE;
  fm_chart_tell (FM_CHART (self), fm_map_picture_text_at (self->picture, self->document, at));
  self->telling = FALSE;
  self->has_point = TRUE;
}

static void
point_at (FmChart *chart, double x, double y)
{
  FmMapPlot *self = FM_MAP_PLOT (chart);
  FmMapFrame frame;

  if (self->picture == NULL)
    return;
  get_frame (self, &frame);
  set_point (self, fm_map_frame_back (&frame, x, y));
}

/* The mark picked, else the middle of the region. */
static FmMixPlanePoint
first_point (FmMapPlot *self)
{
  const GArray *outline = self->picture->outline;
  const int picked = fm_chart_get_picked (FM_CHART (self));
  FmMixPlanePoint middle = { 0, 0 };

  if (picked >= 0)
    return g_array_index (self->picture->placed, FmMapPlaced, picked).at;
  if (outline->len == 0)
    return (FmMixPlanePoint){ 0.5, 0.3 };
  for (guint i = 0; i < outline->len; i++) {
    const FmMixPlanePoint *corner = &g_array_index (outline, FmMixPlanePoint, i);

    middle.x += corner->x / outline->len;
    middle.y += corner->y / outline->len;
  }
  return middle;
}

static void
move (FmChart *chart, int right, int down, gboolean far)
{
  FmMapPlot *self = FM_MAP_PLOT (chart);
  FmMixPlanePoint at;
  FmMapFrame frame;
  double step;

  if (self->picture == NULL)
    return;
  get_frame (self, &frame);
  step = STEP_PX * (far ? FAR_STEPS : 1) / frame.scale;
  at = self->has_point ? self->point : first_point (self);
  set_point (self, (FmMixPlanePoint){ at.x + right * step, at.y - down * step });
}

static void
activate (FmChart *chart, guint row)
{
  const FmMapPicture *picture = FM_MAP_PLOT (chart)->picture;
  const FmMapPlaced *placed = &g_array_index (picture->placed, FmMapPlaced, row);
  const FmMapMark *mark = &g_array_index (picture->marks, FmMapMark, placed->index);

  if (mark->version_id > 0)
    g_signal_emit (chart, signals[OPEN_VERSION], 0, mark->version_id);
}

static void
picked_cb (FmMapPlot *self)
{
  self->has_point = self->telling;
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
  const int width = MAX (for_size, SMALLEST_WIDTH);

  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum = SMALLEST_WIDTH;
    *natural = NATURAL_WIDTH;
    return;
  }
  *minimum = *natural = MIN ((int)(HEIGHT_PART * width), LARGEST_HEIGHT);
}

static void
fm_map_plot_finalize (GObject *object)
{
  g_clear_pointer (&FM_MAP_PLOT (object)->picture, fm_map_picture_free);
  g_clear_object (&FM_MAP_PLOT (object)->document);
  G_OBJECT_CLASS (fm_map_plot_parent_class)->finalize (object);
}

static void
fm_map_plot_class_init (FmMapPlotClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_map_plot_finalize;
  FM_CHART_CLASS (klass)->draw = draw;
  FM_CHART_CLASS (klass)->draw_over = draw_over;
  FM_CHART_CLASS (klass)->text_at = text_at;
  FM_CHART_CLASS (klass)->point_at = point_at;
  FM_CHART_CLASS (klass)->move = move;
  FM_CHART_CLASS (klass)->activate = activate;
  FM_CHART_CLASS (klass)->button_over = TRUE;
  GTK_WIDGET_CLASS (klass)->get_request_mode = fm_map_plot_get_request_mode;
  GTK_WIDGET_CLASS (klass)->measure = fm_map_plot_measure;
  signals[OPEN_VERSION] = g_signal_new ("open-version", FM_TYPE_MAP_PLOT, G_SIGNAL_RUN_LAST, 0,
                                        NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT64);
}

static void
fm_map_plot_init (FmMapPlot *self)
{
  g_signal_connect (self, "notify::picked", G_CALLBACK (picked_cb), NULL);
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
  g_set_object (&self->document, document);
  fm_chart_say (FM_CHART (self), _ ("Map of three components"), description,
                make_table (picture, document));
}

void
fm_map_plot_drop (FmMapPlot *self)
{
  g_return_if_fail (FM_IS_MAP_PLOT (self));
  fm_chart_say (FM_CHART (self), _ ("Map of three components"), NULL, NULL);
  g_clear_pointer (&self->picture, fm_map_picture_free);
  g_clear_object (&self->document);
}

gboolean
fm_map_plot_get_asked (FmMapPlot *self, double *x)
{
  const int picked = fm_chart_get_picked (FM_CHART (self));

  if (self->picture == NULL)
    return FALSE;
  if (self->has_point)
    return fm_map_picture_blend_at (self->picture, self->point, x);
  if (picked < 0)
    return FALSE;
  const FmMapPlaced *placed = &g_array_index (self->picture->placed, FmMapPlaced, picked);
  memcpy (x, g_array_index (self->picture->marks, FmMapMark, placed->index).x,
          FM_MIX_MAX_COMPONENTS * sizeof *x);
  return TRUE;
}

const FmMapPicture *
fm_map_plot_get_picture (FmMapPlot *self)
{
  return self->picture;
}
