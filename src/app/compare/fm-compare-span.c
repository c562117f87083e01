/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-span.c - scrolls a table by whole columns, so that its first one stays in sight */
#include "app/compare/fm-compare-span.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NAME_WIDTH_PX 210
#define CELL_WIDTH_PX 128
/* A narrow table still shows two columns beside the names. */
#define NARROW_PX 500
#define NARROW_NAME_WIDTH_PX 132
#define NARROW_CELL_WIDTH_PX 104

struct _FmCompareSpan {
  GtkWidget parent_instance;

  GtkColumnView *view;
  GtkWidget *scroller;
  GtkWidget *scrollbar;
  GtkAdjustment *first; /* column in sight after the names; its page is how many are */
  guint fit_id;
};

G_DEFINE_FINAL_TYPE (FmCompareSpan, fm_compare_span, GTK_TYPE_WIDGET)

static guint
n_value_columns (FmCompareSpan *self)
{
  return g_list_model_get_n_items (gtk_column_view_get_columns (self->view)) - 1;
}

static void
set_column (FmCompareSpan *self, guint position, int width_px, gboolean in_sight)
{
  g_autoptr (GtkColumnViewColumn) column =
      g_list_model_get_item (gtk_column_view_get_columns (self->view), position);

  gtk_column_view_column_set_fixed_width (column, width_px);
  gtk_column_view_column_set_visible (column, in_sight);
}

static gboolean
is_narrow (FmCompareSpan *self)
{
  return gtk_widget_get_width (GTK_WIDGET (self)) < NARROW_PX;
}

static int
name_width_px (FmCompareSpan *self)
{
  return is_narrow (self) ? NARROW_NAME_WIDTH_PX : NAME_WIDTH_PX;
}

/* For the values. */
static int
room_px (FmCompareSpan *self)
{
  return MAX (gtk_widget_get_width (GTK_WIDGET (self)) - name_width_px (self), CELL_WIDTH_PX);
}

/* The room is shared out here: rows would be as high as their words need in columns that have not
 * expanded. */
static void
show_columns (FmCompareSpan *self)
{
  const guint first = (guint)lround (gtk_adjustment_get_value (self->first));
  const guint page = MAX ((guint)lround (gtk_adjustment_get_page_size (self->first)), 1);
  const guint n = n_value_columns (self);

  set_column (self, 0, name_width_px (self), TRUE);
  for (guint i = 0; i < n; i++)
    set_column (self, i + 1, room_px (self) / (int)page, i >= first && i < first + page);
}

static gboolean
fit_cb (gpointer user_data)
{
  FmCompareSpan *self = FM_COMPARE_SPAN (user_data);

  self->fit_id = 0;
  fm_compare_span_fit (self);
  return G_SOURCE_REMOVE;
}

/* Columns cannot come and go while they are given their room. */
static void
room_changed_cb (FmCompareSpan *self)
{
  if (self->fit_id == 0)
    self->fit_id = g_idle_add_full (G_PRIORITY_HIGH_IDLE, fit_cb, self, NULL);
}

static void
step (FmCompareSpan *self, double n_columns)
{
  gtk_adjustment_set_value (self->first,
                            round (gtk_adjustment_get_value (self->first)) + n_columns);
}

/* A list lets Left and Right do nothing, but takes them. */
static gboolean
key_pressed_cb (GtkEventControllerKey *controller,
                guint keyval,
                guint keycode,
                GdkModifierType state,
                gpointer user_data)
{
  FmCompareSpan *self = FM_COMPARE_SPAN (user_data);
  const int forward = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL ? -1 : 1;

  if ((state & (GDK_CONTROL_MASK | GDK_SHIFT_MASK | GDK_ALT_MASK)) != 0 ||
      (keyval != GDK_KEY_Left && keyval != GDK_KEY_Right))
    return GDK_EVENT_PROPAGATE;
  step (self, keyval == GDK_KEY_Right ? forward : -forward);
  return GDK_EVENT_STOP;
}

static gboolean
scroll_cb (GtkEventControllerScroll *controller, double dx, double dy, gpointer user_data)
{
  step (FM_COMPARE_SPAN (user_data), dx);
  return GDK_EVENT_STOP;
}

static void
fm_compare_span_dispose (GObject *object)
{
  FmCompareSpan *self = FM_COMPARE_SPAN (object);

  g_clear_handle_id (&self->fit_id, g_source_remove);
  g_clear_pointer (&self->scroller, gtk_widget_unparent);
  g_clear_pointer (&self->scrollbar, gtk_widget_unparent);
  g_clear_object (&self->first);
  G_OBJECT_CLASS (fm_compare_span_parent_class)->dispose (object);
}

static void
fm_compare_span_class_init (FmCompareSpanClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fm_compare_span_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
}

static void
add_controllers (FmCompareSpan *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *scroll = gtk_event_controller_scroll_new (
      GTK_EVENT_CONTROLLER_SCROLL_HORIZONTAL | GTK_EVENT_CONTROLLER_SCROLL_DISCRETE);

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  g_signal_connect (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  gtk_widget_add_controller (GTK_WIDGET (self), scroll);
}

static void
fm_compare_span_init (FmCompareSpan *self)
{
  self->first = g_object_ref_sink (gtk_adjustment_new (0.0, 0.0, 0.0, 1.0, 1.0, 1.0));
  self->scroller = gtk_scrolled_window_new ();
  self->scrollbar = gtk_scrollbar_new (GTK_ORIENTATION_HORIZONTAL, self->first);
  gtk_orientable_set_orientation (
      GTK_ORIENTABLE (gtk_widget_get_layout_manager (GTK_WIDGET (self))), GTK_ORIENTATION_VERTICAL);
  /* The columns in sight have room; a frame may be drawn before those that have none go. */
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller), GTK_POLICY_EXTERNAL,
                                  GTK_POLICY_AUTOMATIC);
  gtk_widget_set_vexpand (self->scroller, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scrollbar), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Columns of the comparison"), -1);
  g_signal_connect_swapped (self->first, "value-changed", G_CALLBACK (show_columns), self);
  g_signal_connect_swapped (
      gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (self->scroller)),
      "notify::page-size", G_CALLBACK (room_changed_cb), self);
  gtk_widget_set_parent (self->scroller, GTK_WIDGET (self));
  gtk_widget_set_parent (self->scrollbar, GTK_WIDGET (self));
  add_controllers (self);
}

FmCompareSpan *
fm_compare_span_new (GtkColumnView *view)
{
  FmCompareSpan *self = g_object_new (FM_TYPE_COMPARE_SPAN, NULL);

  self->view = view;
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), GTK_WIDGET (view));
  return self;
}

void
fm_compare_span_fit (FmCompareSpan *self)
{
  const int n = (int)n_value_columns (self);
  const int fitting = room_px (self) / (is_narrow (self) ? NARROW_CELL_WIDTH_PX : CELL_WIDTH_PX);
  const int page = CLAMP (fitting, 1, MAX (n, 1));
  const double first = round (gtk_adjustment_get_value (self->first));

  gtk_adjustment_configure (self->first, MIN (first, MAX (n - page, 0)), 0.0, n, 1.0, page, page);
  gtk_widget_set_visible (self->scrollbar, page < n);
  show_columns (self);
}
