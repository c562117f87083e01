/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-page-slot.c - keeps the place of a page that is built when it is first shown
 *
 * While the window has not painted anything yet, building waits for its first frame: an empty
 * window at once is better than a full one later.
 */
#include "app/window/fm-page-slot.h"

#include "app/widgets/fm-widget.h"

struct _FmPageSlot {
  GtkWidget parent_instance;

  GType page_type;
  guint tick_id; /* while it waits for the first frame */
};

G_DEFINE_FINAL_TYPE (FmPageSlot, fm_page_slot, GTK_TYPE_WIDGET)

enum {
  PROP_PAGE_TYPE = 1,
};

enum {
  BUILD,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
build (FmPageSlot *self)
{
  if (fm_page_slot_get_page (self) == NULL)
    g_signal_emit (self, signals[BUILD], 0);
}

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  FmPageSlot *self = FM_PAGE_SLOT (widget);

  if (!fm_widget_has_painted (widget))
    return G_SOURCE_CONTINUE;
  self->tick_id = 0;
  build (self);
  return G_SOURCE_REMOVE;
}

static void
fm_page_slot_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_PAGE_TYPE)
    g_value_set_gtype (value, FM_PAGE_SLOT (object)->page_type);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fm_page_slot_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_PAGE_TYPE)
    FM_PAGE_SLOT (object)->page_type = g_value_get_gtype (value);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fm_page_slot_map (GtkWidget *widget)
{
  FmPageSlot *self = FM_PAGE_SLOT (widget);

  if (fm_widget_has_painted (widget))
    build (self);
  else if (self->tick_id == 0)
    self->tick_id = gtk_widget_add_tick_callback (widget, tick_cb, NULL, NULL);
  GTK_WIDGET_CLASS (fm_page_slot_parent_class)->map (widget);
}

static void
fm_page_slot_dispose (GObject *object)
{
  FmPageSlot *self = FM_PAGE_SLOT (object);
  GtkWidget *page = fm_page_slot_get_page (self);

  if (self->tick_id != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick_id);
  self->tick_id = 0;
  if (page != NULL)
    gtk_widget_unparent (page);
  G_OBJECT_CLASS (fm_page_slot_parent_class)->dispose (object);
}

static void
fm_page_slot_class_init (FmPageSlotClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->get_property = fm_page_slot_get_property;
  object_class->set_property = fm_page_slot_set_property;
  object_class->dispose = fm_page_slot_dispose;
  widget_class->map = fm_page_slot_map;
  g_object_class_install_property (
      object_class, PROP_PAGE_TYPE,
      g_param_spec_gtype ("page-type", NULL, NULL, G_TYPE_NONE,
                          G_PARAM_READWRITE | G_PARAM_CONSTRUCT_ONLY | G_PARAM_STATIC_STRINGS));
  signals[BUILD] = g_signal_new ("build", FM_TYPE_PAGE_SLOT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
fm_page_slot_init (FmPageSlot *self)
{
}

void
fm_page_slot_set_page (FmPageSlot *self, GtkWidget *page)
{
  gtk_widget_set_parent (page, GTK_WIDGET (self));
}

GtkWidget *
fm_page_slot_get_page (FmPageSlot *self)
{
  return gtk_widget_get_first_child (GTK_WIDGET (self));
}

GType
fm_page_slot_get_page_type (FmPageSlot *self)
{
  return self->page_type;
}
