/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart.c - the parent of every chart */
#include "app/charts/fm-chart.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#define NEAR_PX 24.0
#define RING_PX 4.0

typedef struct {
  char *description;
  FmChartTable *table; /* (nullable) */
  GArray *marks;       /* FmChartMark, of the last drawing */
  int picked;          /* row of the table; -1 = none */
} FmChartPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (FmChart, fm_chart, GTK_TYPE_WIDGET)

enum {
  PROP_0,
  PROP_PICKED,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static FmChartPrivate *
get_private (FmChart *self)
{
  return fm_chart_get_instance_private (self);
}

static int
n_rows (const FmChartPrivate *priv)
{
  return priv->table != NULL ? (int)priv->table->rows->len : 0;
}

static const char *
picked_sentence (const FmChartPrivate *priv)
{
  return priv->picked >= 0 ? fm_chart_table_row (priv->table, (guint)priv->picked)->sentence : NULL;
}

/* A screen reader speaks the description of what has the focus when it changes. */
static void
describe_as (FmChart *self, const char *text)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  text != NULL ? text : "", -1);
}

static FmChartScheme
current_scheme (void)
{
  AdwStyleManager *manager = adw_style_manager_get_default ();
  const gboolean dark = adw_style_manager_get_dark (manager);

  if (adw_style_manager_get_high_contrast (manager))
    return dark ? FM_CHART_DARK_CONTRAST : FM_CHART_LIGHT_CONTRAST;
  return dark ? FM_CHART_DARK : FM_CHART_LIGHT;
}

/* Last of what is drawn lies on top. */
static const FmChartMark *
mark_at (FmChart *self, double x, double y)
{
  const GArray *marks = get_private (self)->marks;
  const FmChartMark *found = NULL;
  double nearest = NEAR_PX;

  for (guint i = 0; i < marks->len; i++) {
    const FmChartMark *mark = &g_array_index (marks, FmChartMark, i);
    const double distance = fm_box_distance (&mark->box, x, y);

    if (distance <= nearest) {
      nearest = distance;
      found = mark;
    }
  }
  return found;
}

static const FmChartMark *
mark_of_row (FmChart *self, int row)
{
  const GArray *marks = get_private (self)->marks;

  for (guint i = 0; i < marks->len; i++)
    if ((int)g_array_index (marks, FmChartMark, i).row == row)
      return &g_array_index (marks, FmChartMark, i);
  return NULL;
}

static gboolean
key_cb (FmChart *self, guint keyval, guint keycode, GdkModifierType state)
{
  const int n = n_rows (get_private (self));
  const int at = get_private (self)->picked;

  if (n == 0 || (state & gtk_accelerator_get_default_mod_mask ()) != 0)
    return FALSE;
  switch (keyval) {
  case GDK_KEY_Right:
  case GDK_KEY_KP_Right:
  case GDK_KEY_Down:
  case GDK_KEY_KP_Down:
    fm_chart_pick (self, (at + 1) % n);
    return TRUE;
  case GDK_KEY_Left:
  case GDK_KEY_KP_Left:
  case GDK_KEY_Up:
  case GDK_KEY_KP_Up:
    fm_chart_pick (self, at <= 0 ? n - 1 : at - 1);
    return TRUE;
  case GDK_KEY_Home:
  case GDK_KEY_KP_Home:
    fm_chart_pick (self, 0);
    return TRUE;
  case GDK_KEY_End:
  case GDK_KEY_KP_End:
    fm_chart_pick (self, n - 1);
    return TRUE;
  default:
    return FALSE;
  }
}

static void
pressed_cb (FmChart *self, int n_press, double x, double y)
{
  const FmChartMark *mark = mark_at (self, x, y);

  gtk_widget_grab_focus (GTK_WIDGET (self));
  fm_chart_pick (self, mark != NULL ? (int)mark->row : -1);
}

/* Whoever comes back hears all of it again. */
static void
left_cb (FmChart *self)
{
  describe_as (self, get_private (self)->description);
}

static gboolean
query_tooltip_cb (FmChart *self, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  const FmChartMark *mark =
      keyboard ? mark_of_row (self, get_private (self)->picked) : mark_at (self, x, y);

  if (mark == NULL)
    return FALSE;
  gtk_tooltip_set_text (tooltip,
                        fm_chart_table_row (get_private (self)->table, mark->row)->sentence);
  return TRUE;
}

static void
draw_ring (FmChart *self, FmChartCanvas *canvas)
{
  const FmChartMark *mark = mark_of_row (self, get_private (self)->picked);
  FmBox ring;
  double round_px;

  if (mark == NULL)
    return;
  ring = fm_box_grown (&mark->box, RING_PX);
  round_px = MIN (ring.width, ring.height) / 2;
  /* A bar keeps its corners, a small mark gets a circle. */
  round_px = ring.width < 2 * NEAR_PX && ring.height < 2 * NEAR_PX ? round_px : RING_PX;
  cairo_new_path (canvas->cr);
  for (int i = 0; i < 4; i++) {
    const double x = i == 0 || i == 3 ? ring.x + ring.width - round_px : ring.x + round_px;
    const double y = i < 2 ? ring.y + ring.height - round_px : ring.y + round_px;

    cairo_arc (canvas->cr, x, y, round_px, i * G_PI / 2, (i + 1) * G_PI / 2);
  }
  cairo_close_path (canvas->cr);
  fm_chart_canvas_set_colour (canvas, &canvas->palette.accent, 1);
  cairo_set_line_width (canvas->cr, 3);
  cairo_stroke (canvas->cr);
}

static void
fm_chart_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmChart *self = FM_CHART (widget);
  FmChartPrivate *priv = get_private (self);
  const int width = gtk_widget_get_width (widget);
  const int height = gtk_widget_get_height (widget);
  cairo_t *cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  FmChartCanvas canvas;

  fm_chart_canvas_init (&canvas, cr, gtk_widget_get_pango_context (widget), width, height,
                        current_scheme ());
  canvas.see_through = TRUE;
  fm_chart_draw (self, &canvas);
  g_array_set_size (priv->marks, 0);
  g_array_append_vals (priv->marks, canvas.marks->data, canvas.marks->len);
  draw_ring (self, &canvas);
  fm_chart_canvas_clear (&canvas);
  cairo_destroy (cr);
  if (gtk_widget_has_visible_focus (widget))
    gtk_snapshot_render_focus (snapshot, gtk_widget_get_style_context (widget), 0, 0, width,
                               height);
}

static void
fm_chart_measure (GtkWidget *widget,
                  GtkOrientation orientation,
                  int for_size,
                  int *minimum,
                  int *natural,
                  int *minimum_baseline,
                  int *natural_baseline)
{
  FM_CHART_GET_CLASS (widget)->get_size (FM_CHART (widget), orientation, minimum, natural);
}

static void
fm_chart_get_property (GObject *object, guint prop_id, GValue *value, GParamSpec *pspec)
{
  if (prop_id == PROP_PICKED)
    g_value_set_string (value, picked_sentence (get_private (FM_CHART (object))));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
}

static void
fm_chart_finalize (GObject *object)
{
  FmChartPrivate *priv = get_private (FM_CHART (object));

  g_free (priv->description);
  g_clear_pointer (&priv->table, fm_chart_table_free);
  g_array_unref (priv->marks);
  G_OBJECT_CLASS (fm_chart_parent_class)->finalize (object);
}

static void
fm_chart_class_init (FmChartClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = fm_chart_get_property;
  object_class->finalize = fm_chart_finalize;
  widget_class->snapshot = fm_chart_snapshot;
  widget_class->measure = fm_chart_measure;
  props[PROP_PICKED] =
      g_param_spec_string ("picked", NULL, NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
fm_chart_init (FmChart *self)
{
  AdwStyleManager *manager = adw_style_manager_get_default ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkGesture *click = gtk_gesture_click_new ();

  get_private (self)->picked = -1;
  get_private (self)->marks = g_array_new (FALSE, FALSE, sizeof (FmChartMark));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  g_signal_connect (self, "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (left_cb), self);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  g_signal_connect_object (manager, "notify::dark", G_CALLBACK (gtk_widget_queue_draw), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (manager, "notify::high-contrast", G_CALLBACK (gtk_widget_queue_draw),
                           self, G_CONNECT_SWAPPED);
}

void
fm_chart_say (FmChart *self, const char *title, const char *description, FmChartTable *table)
{
  FmChartPrivate *priv = get_private (self);

  g_return_if_fail (FM_IS_CHART (self));
  g_free (priv->description);
  g_clear_pointer (&priv->table, fm_chart_table_free);
  g_array_set_size (priv->marks, 0);
  priv->table = table;
  priv->description = description != NULL || table == NULL ? g_strdup (description)
                                                           : fm_chart_table_describe (table);
  priv->picked = -1;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  describe_as (self, priv->description);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PICKED]);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
fm_chart_pick (FmChart *self, int row)
{
  FmChartPrivate *priv = get_private (self);

  g_return_if_fail (FM_IS_CHART (self));
  g_return_if_fail (row < n_rows (priv));
  if (priv->picked == row)
    return;
  priv->picked = row;
  describe_as (self, row >= 0 ? picked_sentence (priv) : priv->description);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PICKED]);
}

void
fm_chart_draw (FmChart *self, FmChartCanvas *canvas)
{
  if (get_private (self)->table != NULL)
    FM_CHART_GET_CLASS (self)->draw (self, canvas);
}
