/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-chart.c - the parent of every chart */
#include "app/charts/fm-chart.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/charts/fm-chart-private.h"

#define NEAR_PX 24.0

typedef struct {
  char *title;
  char *description;
  char *subject;       /* (nullable): what the window shows */
  char *legend;        /* (nullable) */
  FmChartTable *table; /* (nullable) */
  GArray *marks;       /* FmChartMark, of the last drawing */
  int picked;          /* row of the table; -1 = none */
  char *told;          /* (nullable): said while none is picked */
  GtkWidget *button;
  GtkWidget *popover; /* (nullable): made when it is first asked for */
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
  return priv->picked >= 0 ? fm_chart_table_row (priv->table, (guint)priv->picked)->sentence
                           : priv->told;
}

static gboolean
is_rtl (FmChart *self)
{
  return gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
}

static int
button_width (FmChart *self)
{
  int width;

  gtk_widget_measure (get_private (self)->button, GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL,
                      NULL, NULL);
  return width;
}

/* What the button takes from the canvas. */
static int
beside_width (FmChart *self)
{
  return FM_CHART_GET_CLASS (self)->button_over ? 0 : button_width (self);
}

/* Where the canvas begins. */
static int
canvas_x (FmChart *self)
{
  return is_rtl (self) ? beside_width (self) : 0;
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

static void
pressed_cb (FmChart *self, int n_press, double x, double y)
{
  const double at_x = x - canvas_x (self);
  const FmChartMark *mark = mark_at (self, at_x, y);

  const int before = get_private (self)->picked;

  gtk_widget_grab_focus (GTK_WIDGET (self));
  fm_chart_pick (self, mark != NULL ? (int)mark->row : -1);
  if (mark == NULL && FM_CHART_GET_CLASS (self)->point_at != NULL)
    FM_CHART_GET_CLASS (self)->point_at (self, at_x, y);
  else if (get_private (self)->picked == before)
    fm_chart_keys_activate (self);
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
  const int at_x = x - canvas_x (self);
  const FmChartMark *mark =
      keyboard ? mark_of_row (self, get_private (self)->picked) : mark_at (self, at_x, y);
  g_autofree char *text = NULL;

  if (mark != NULL)
    text = g_strdup (fm_chart_table_row (get_private (self)->table, mark->row)->sentence);
  else if (!keyboard && FM_CHART_GET_CLASS (self)->text_at != NULL)
    text = FM_CHART_GET_CLASS (self)->text_at (self, at_x, y);
  gtk_tooltip_set_text (tooltip, text);
  return text != NULL;
}

static void
pop_up (FmChart *self, const GdkRectangle *at)
{
  FmChartPrivate *priv = get_private (self);

  if (priv->table == NULL)
    return;
  if (priv->popover == NULL)
    priv->popover = fm_chart_menu_new (self);
  gtk_popover_set_pointing_to (GTK_POPOVER (priv->popover), at);
  gtk_popover_popup (GTK_POPOVER (priv->popover));
}

static void
menu_pressed_cb (FmChart *self, int n_press, double x, double y)
{
  pop_up (self, &(GdkRectangle){ (int)x, (int)y, 1, 1 });
}

static void
menu_clicked_cb (FmChart *self)
{
  GtkAllocation at;

  gtk_widget_get_allocation (get_private (self)->button, &at);
  pop_up (self, &at);
}

/* By keyboard: at the mark picked, else in the middle. */
static void
menu_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmChart *self = FM_CHART (widget);
  const FmChartMark *mark = mark_of_row (self, get_private (self)->picked);
  GdkRectangle at = { gtk_widget_get_width (widget) / 2, gtk_widget_get_height (widget) / 2, 1, 1 };

  if (mark != NULL)
    at = (GdkRectangle){ (int)mark->box.x + canvas_x (self), (int)mark->box.y,
                         MAX ((int)mark->box.width, 1), MAX ((int)mark->box.height, 1) };
  pop_up (self, &at);
}

static void
draw_ring (FmChart *self, FmChartCanvas *canvas)
{
  const FmChartMark *mark = mark_of_row (self, get_private (self)->picked);

  if (mark != NULL)
    fm_chart_canvas_ring (canvas, &mark->box);
}

static void
fm_chart_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FmChart *self = FM_CHART (widget);
  FmChartPrivate *priv = get_private (self);
  const int full_width = gtk_widget_get_width (widget);
  const int width = MAX (full_width - beside_width (self), 1);
  const int height = gtk_widget_get_height (widget);
  GtkAllocation button;
  cairo_t *cr;
  FmChartCanvas canvas;

  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float)canvas_x (self), 0));
  cr =
      gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  fm_chart_canvas_init (&canvas, cr, gtk_widget_get_pango_context (widget), width, height,
                        current_scheme ());
  canvas.see_through = TRUE;
  gtk_widget_get_allocation (priv->button, &button);
  if (FM_CHART_GET_CLASS (self)->button_over)
    fm_chart_canvas_keep_clear (&canvas,
                                &(FmBox){ button.x, button.y, button.width, button.height });
  fm_chart_draw (self, &canvas);
  g_array_set_size (priv->marks, 0);
  g_array_append_vals (priv->marks, canvas.marks->data, canvas.marks->len);
  draw_ring (self, &canvas);
  if (FM_CHART_GET_CLASS (self)->draw_over != NULL && priv->table != NULL)
    FM_CHART_GET_CLASS (self)->draw_over (self, &canvas);
  fm_chart_canvas_clear (&canvas);
  cairo_destroy (cr);
  gtk_snapshot_restore (snapshot);
  gtk_widget_snapshot_child (widget, priv->button, snapshot);
  if (gtk_widget_has_visible_focus (widget))
    gtk_snapshot_render_focus (snapshot, gtk_widget_get_style_context (widget), 0, 0, full_width,
                               height);
}

static void
fm_chart_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  FmChart *self = FM_CHART (widget);
  FmChartPrivate *priv = get_private (self);
  GtkRequisition size;
  GtkAllocation at = { 0 };

  gtk_widget_get_preferred_size (priv->button, &size, NULL);
  at.width = size.width;
  at.height = size.height;
  at.x = is_rtl (self) ? 0 : MAX (width - at.width, 0);
  gtk_widget_size_allocate (priv->button, &at, -1);
  if (priv->popover != NULL)
    gtk_popover_present (GTK_POPOVER (priv->popover));
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
  FmChart *self = FM_CHART (widget);
  int button = 0;

  FM_CHART_GET_CLASS (self)->get_size (self, orientation, minimum, natural);
  if (orientation == GTK_ORIENTATION_HORIZONTAL) {
    *minimum += beside_width (self);
    *natural += beside_width (self);
    return;
  }
  gtk_widget_measure (get_private (self)->button, orientation, -1, &button, NULL, NULL, NULL);
  *minimum = MAX (*minimum, button);
  *natural = MAX (*natural, button);
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
fm_chart_dispose (GObject *object)
{
  FmChartPrivate *priv = get_private (FM_CHART (object));

  g_clear_pointer (&priv->popover, gtk_widget_unparent);
  g_clear_pointer (&priv->button, gtk_widget_unparent);
  G_OBJECT_CLASS (fm_chart_parent_class)->dispose (object);
}

static void
fm_chart_finalize (GObject *object)
{
  FmChartPrivate *priv = get_private (FM_CHART (object));

  g_free (priv->title);
  g_free (priv->description);
  g_free (priv->subject);
  g_free (priv->legend);
  g_free (priv->told);
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
  object_class->dispose = fm_chart_dispose;
  object_class->finalize = fm_chart_finalize;
  widget_class->size_allocate = fm_chart_size_allocate;
  widget_class->snapshot = fm_chart_snapshot;
  widget_class->measure = fm_chart_measure;
  props[PROP_PICKED] =
      g_param_spec_string ("picked", NULL, NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_install_action (widget_class, "menu.popup", NULL, menu_action);
  fm_chart_menu_install (widget_class);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F10, GDK_SHIFT_MASK, "menu.popup",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Menu, 0, "menu.popup", NULL);
}

/* No stop of its own on the way through the page: the chart opens the same menu by key. */
static void
add_button (FmChart *self)
{
  GtkWidget *button = gtk_button_new_from_icon_name ("view-more-symbolic");

  get_private (self)->button = button;
  gtk_widget_set_focusable (button, FALSE);
  gtk_widget_set_tooltip_text (button, _ ("Chart Menu"));
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_add_css_class (button, "circular");
  gtk_widget_set_visible (button, FALSE);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (menu_clicked_cb), self);
  gtk_widget_set_parent (button, GTK_WIDGET (self));
}

static void
fm_chart_init (FmChart *self)
{
  AdwStyleManager *manager = adw_style_manager_get_default ();
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkGesture *click = gtk_gesture_click_new ();
  GtkGesture *menu_click = gtk_gesture_click_new ();

  get_private (self)->picked = -1;
  get_private (self)->marks = g_array_new (FALSE, FALSE, sizeof (FmChartMark));
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
  g_signal_connect (self, "query-tooltip", G_CALLBACK (query_tooltip_cb), NULL);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (fm_chart_keys_press), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (left_cb), self);
  g_signal_connect_swapped (click, "pressed", G_CALLBACK (pressed_cb), self);
  gtk_gesture_single_set_button (GTK_GESTURE_SINGLE (menu_click), GDK_BUTTON_SECONDARY);
  g_signal_connect_swapped (menu_click, "pressed", G_CALLBACK (menu_pressed_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (menu_click));
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  g_signal_connect_object (manager, "notify::dark", G_CALLBACK (gtk_widget_queue_draw), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (manager, "notify::high-contrast", G_CALLBACK (gtk_widget_queue_draw),
                           self, G_CONNECT_SWAPPED);
  add_button (self);
}

/* Nothing to draw has nothing to show or save. */
static void
update_menu (FmChart *self)
{
  FmChartPrivate *priv = get_private (self);
  /* Translators: what is drawn. */
  g_autofree char *name = g_strdup_printf (_ ("Chart Menu: %s"), priv->title);

  gtk_widget_set_visible (priv->button, priv->table != NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (priv->button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  name, -1);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "chart.show-table", priv->table != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "chart.save", priv->table != NULL);
}

void
fm_chart_say (FmChart *self, const char *title, const char *description, FmChartTable *table)
{
  FmChartPrivate *priv = get_private (self);

  g_return_if_fail (FM_IS_CHART (self));
  g_free (priv->title);
  priv->title = g_strdup (title);
  g_free (priv->description);
  g_clear_pointer (&priv->told, g_free);
  g_clear_pointer (&priv->table, fm_chart_table_free);
  g_array_set_size (priv->marks, 0);
  priv->table = table;
  priv->description = description != NULL || table == NULL ? g_strdup (description)
                                                           : fm_chart_table_describe (table);
  priv->picked = -1;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  describe_as (self, priv->description);
  update_menu (self);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PICKED]);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* Says what is picked or told to whoever looks and listens. */
static void
tell (FmChart *self)
{
  const char *sentence = picked_sentence (get_private (self));

  describe_as (self, sentence != NULL ? sentence : get_private (self)->description);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_PICKED]);
}

void
fm_chart_pick (FmChart *self, int row)
{
  FmChartPrivate *priv = get_private (self);

  g_return_if_fail (FM_IS_CHART (self));
  g_return_if_fail (row < n_rows (priv));
  if (priv->picked == row && priv->told == NULL)
    return;
  priv->picked = row;
  g_clear_pointer (&priv->told, g_free);
  tell (self);
}

int
fm_chart_get_picked (FmChart *self)
{
  return get_private (self)->picked;
}

void
fm_chart_tell (FmChart *self, char *sentence)
{
  FmChartPrivate *priv = get_private (self);

  g_return_if_fail (FM_IS_CHART (self));
  priv->picked = -1;
  g_free (priv->told);
  priv->told = sentence;
  tell (self);
}

void
fm_chart_set_subject (FmChart *self, const char *subject)
{
  g_return_if_fail (FM_IS_CHART (self));
  g_free (get_private (self)->subject);
  get_private (self)->subject = g_strdup (subject);
}

const char *
fm_chart_get_subject (FmChart *self)
{
  return get_private (self)->subject;
}

void
fm_chart_set_legend (FmChart *self, const char *legend)
{
  g_return_if_fail (FM_IS_CHART (self));
  g_free (get_private (self)->legend);
  get_private (self)->legend = g_strdup (legend);
}

const char *
fm_chart_get_legend (FmChart *self)
{
  return get_private (self)->legend;
}

const char *
fm_chart_get_title (FmChart *self)
{
  return get_private (self)->title;
}

const FmChartTable *
fm_chart_get_table (FmChart *self)
{
  return get_private (self)->table;
}

void
fm_chart_get_canvas_size (FmChart *self, double *width, double *height)
{
  *width = MAX (gtk_widget_get_width (GTK_WIDGET (self)) - beside_width (self), 1);
  *height = gtk_widget_get_height (GTK_WIDGET (self));
}

void
fm_chart_draw (FmChart *self, FmChartCanvas *canvas)
{
  if (get_private (self)->table != NULL)
    FM_CHART_GET_CLASS (self)->draw (self, canvas);
}
