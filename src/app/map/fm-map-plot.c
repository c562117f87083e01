/* fm-map-plot.c - a map of three components as a triangle with curves of equal prediction */
#include "app/map/fm-map-plot.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/map/fm-map-plot-draw.h"

#define MARGIN_SIDE 16
#define MARGIN_LINE 30 /* above and below, for the names of the corners */
#define SMALLEST_WIDTH 240
#define NATURAL_WIDTH 560
/* The same for every width: a request that grows with the width is none that a stack can keep. */
#define HEIGHT 420
#define HALF_ROOT_3 0.866025403784
#define NEAR_PX 24

struct _FmMapPlot {
  GtkWidget parent_instance;

  FmMapDocument *document;
  FmMapPicture *picture; /* (nullable) */
  int picked;            /* index in picture->placed; -1 = none */
  char *picked_text;
};

G_DEFINE_FINAL_TYPE (FmMapPlot, fm_map_plot, GTK_TYPE_WIDGET)

enum {
  PROP_0,
  PROP_PICKED,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static FmMapFrame
make_frame (FmMapPlot *self)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self));
  const double height = gtk_widget_get_height (GTK_WIDGET (self));
  FmMapFrame frame;

  frame.side = MIN (width - 2 * MARGIN_SIDE, (height - 2 * MARGIN_LINE) / HALF_ROOT_3);
  frame.side = MAX (frame.side, 10);
  frame.left = (width - frame.side) / 2.0;
  frame.bottom = MARGIN_LINE + frame.side * HALF_ROOT_3;
  return frame;
}

static void
pick (FmMapPlot *self, int index)
{
  self->picked = index;
  g_clear_pointer (&self->picked_text, g_free);
  if (index >= 0 && self->picture != NULL) {
    const FmMapPlaced *placed = &g_array_index (self->picture->placed, FmMapPlaced, index);

    self->picked_text =
        fm_map_mark_text (&g_array_index (self->picture->marks, FmMapMark, placed->index),
                          self->document, self->picture->response);
  }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT,
                                  self->picked_text != NULL ? self->picked_text : "", -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PICKED]);
}

static gboolean
key_cb (FmMapPlot *self, guint keyval)
{
  const int n = self->picture != NULL ? (int)self->picture->placed->len : 0;

  if (n == 0)
    return FALSE;
  if (keyval == GDK_KEY_Right || keyval == GDK_KEY_KP_Right)
    pick (self, (self->picked + 1) % n);
  else if (keyval == GDK_KEY_Left || keyval == GDK_KEY_KP_Left)
    pick (self, self->picked <= 0 ? n - 1 : self->picked - 1);
  else if (keyval == GDK_KEY_Home)
    pick (self, 0);
  else if (keyval == GDK_KEY_End)
    pick (self, n - 1);
  else
    return FALSE;
  return TRUE;
}

static void
pressed_cb (FmMapPlot *self, int n_press, double at_x, double at_y)
{
  const FmMapFrame frame = make_frame (self);
  double nearest = NEAR_PX;
  int found = -1;

  gtk_widget_grab_focus (GTK_WIDGET (self));
  for (guint i = 0; self->picture != NULL && i < self->picture->placed->len; i++) {
    double x, y;

    fm_map_frame_place (&frame, g_array_index (self->picture->placed, FmMapPlaced, i).at, &x, &y);
    if (hypot (x - at_x, y - at_y) <= nearest) {
      nearest = hypot (x - at_x, y - at_y);
      found = (int)i;
    }
  }
  pick (self, found);
}

static void
fm_map_plot_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmMapPlot *self = FM_MAP_PLOT (widget);
  const int width = gtk_widget_get_width (widget);
  const int height = gtk_widget_get_height (widget);
  const FmMapFrame frame = make_frame (self);
  cairo_t *cr;

  if (self->picture == NULL)
    return;
  cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  fm_map_plot_draw (widget, cr, self->picture, &frame, self->picked);
  cairo_destroy (cr);
  if (gtk_widget_has_visible_focus (widget))
    gtk_snapshot_render_focus (snapshot, gtk_widget_get_style_context (widget), 0, 0, width,
                               height);
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
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? SMALLEST_WIDTH : HEIGHT;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? NATURAL_WIDTH : HEIGHT;
}

static void
fm_map_plot_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  if (prop_id == PROP_PICKED)
    g_value_set_string (value, FM_MAP_PLOT (object)->picked_text);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
fm_map_plot_finalize (GObject *object)
{
  FmMapPlot *self = FM_MAP_PLOT (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->picture, fm_map_picture_free);
  g_free (self->picked_text);
  G_OBJECT_CLASS (fm_map_plot_parent_class)->finalize (object);
}

static void
fm_map_plot_class_init (FmMapPlotClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->get_property = fm_map_plot_get_property;
  G_OBJECT_CLASS (klass)->finalize = fm_map_plot_finalize;
  widget_class->snapshot = fm_map_plot_snapshot;
  widget_class->measure = fm_map_plot_measure;
  props[PROP_PICKED] =
      g_param_spec_string ("picked", NULL, NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, props);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
fm_map_plot_init (FmMapPlot *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  self->picked = -1;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
}

void
fm_map_plot_take (FmMapPlot *self, FmMapDocument *document, FmMapPicture *picture)
{
  g_autofree char *description = NULL;

  g_return_if_fail (FM_IS_MAP_PLOT (self));
  g_set_object (&self->document, document);
  g_clear_pointer (&self->picture, fm_map_picture_free);
  self->picture = picture;
  description =
      picture != NULL ? fm_map_picture_describe (picture, document) : g_strdup (_ ("No map."));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Map of three components"),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, description, -1);
  pick (self, -1);
}

const FmMapPicture *
fm_map_plot_get_picture (FmMapPlot *self)
{
  return self->picture;
}
