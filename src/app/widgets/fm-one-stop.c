/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-one-stop.c - a list that Tab enters once and leaves again; the arrows go through its rows */
#include "app/widgets/fm-one-stop.h"

#include "app/widgets/fm-widget.h"

struct _FmOneStop {
  GtkWidget parent_instance;

  GtkWidget *child;
  GtkWidget *row; /* the one that had the focus last; NULL once it is gone */
};

G_DEFINE_FINAL_TYPE (FmOneStop, fm_one_stop, GTK_TYPE_WIDGET)

enum {
  PROP_CHILD = 1,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static gboolean
is_row (GtkWidget *widget)
{
  GtkWidget *parent = gtk_widget_get_parent (widget);

  return GTK_IS_LIST_BOX (parent) || GTK_IS_LIST_VIEW (parent);
}

static GtkWidget *
find_focused_row (FmOneStop *self)
{
  GtkWidget *widget = gtk_root_get_focus (gtk_widget_get_root (GTK_WIDGET (self)));

  if (widget == NULL || !gtk_widget_is_ancestor (widget, GTK_WIDGET (self)))
    return NULL;
  while (widget != GTK_WIDGET (self) && !is_row (widget))
    widget = gtk_widget_get_parent (widget);
  return widget != GTK_WIDGET (self) ? widget : NULL;
}

static gboolean
can_come_back (FmOneStop *self)
{
  return self->row != NULL && gtk_widget_get_mapped (self->row) &&
         gtk_widget_is_ancestor (self->row, GTK_WIDGET (self));
}

static gboolean
fm_one_stop_focus (GtkWidget *widget, GtkDirectionType direction)
{
  FmOneStop *self = FM_ONE_STOP (widget);
  const gboolean is_tab = direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD;
  GtkWidget *row = is_tab ? find_focused_row (self) : NULL;

  if (row != NULL) {
    g_set_weak_pointer (&self->row, row);
    return gtk_widget_child_focus (row, direction);
  }
  if (is_tab && can_come_back (self) && gtk_widget_child_focus (self->row, direction))
    return TRUE;
  return fm_widget_pass_focus (widget, direction);
}

static void
fm_one_stop_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FmOneStop *self = FM_ONE_STOP (object);

  if (id != PROP_CHILD) {
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    return;
  }
  g_return_if_fail (self->child == NULL);
  self->child = g_value_get_object (value);
  if (self->child == NULL)
    return;
  gtk_widget_set_parent (self->child, GTK_WIDGET (self));
  /* A list that is hidden takes no room. */
  g_object_bind_property (self->child, "visible", self, "visible", G_BINDING_SYNC_CREATE);
}

static void
fm_one_stop_dispose (GObject *object)
{
  FmOneStop *self = FM_ONE_STOP (object);

  g_clear_weak_pointer (&self->row);
  g_clear_pointer (&self->child, gtk_widget_unparent);
  G_OBJECT_CLASS (fm_one_stop_parent_class)->dispose (object);
}

static void
fm_one_stop_class_init (FmOneStopClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->set_property = fm_one_stop_set_property;
  object_class->dispose = fm_one_stop_dispose;
  widget_class->focus = fm_one_stop_focus;
  props[PROP_CHILD] =
      g_param_spec_object ("child", NULL, NULL, GTK_TYPE_WIDGET,
                           G_PARAM_WRITABLE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
fm_one_stop_init (FmOneStop *self)
{
}

GtkWidget *
fm_one_stop_new (GtkWidget *child)
{
  return g_object_new (FM_TYPE_ONE_STOP, "child", child, NULL);
}
