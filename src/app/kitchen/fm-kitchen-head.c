/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-head.c - what stands over every page of the cook screen */
#include "app/kitchen/fm-kitchen-head.h"

#include <glib/gi18n-lib.h>

#include "app/kitchen/fm-kitchen-text.h"
#include "app/kitchen/fm-kitchen-weigh.h"
#include "app/widgets/fm-widget.h"

struct _FmKitchenHead {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkLabel *failure_label;
  GtkLabel *origin_label;
  GtkLabel *next_label;
  GtkLabel *ruling_label;
  GtkLabel *timers_label;
};

G_DEFINE_FINAL_TYPE (FmKitchenHead, fm_kitchen_head, GTK_TYPE_WIDGET)

enum {
  PROP_0,
  PROP_RULING,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static void
fm_kitchen_head_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  const char *text = g_value_get_string (value);

  if (id == PROP_RULING)
    gtk_label_set_text (FM_KITCHEN_HEAD (object)->ruling_label, text != NULL ? text : "");
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fm_kitchen_head_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_KITCHEN_HEAD);
  G_OBJECT_CLASS (fm_kitchen_head_parent_class)->dispose (object);
}

static void
fm_kitchen_head_class_init (FmKitchenHeadClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fm_kitchen_head_dispose;
  object_class->set_property = fm_kitchen_head_set_property;
  props[PROP_RULING] =
      g_param_spec_string ("ruling", NULL, NULL, NULL, G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/kitchen/fm-kitchen-head.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenHead, box);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenHead, failure_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenHead, origin_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenHead, next_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenHead, ruling_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenHead, timers_label);
}

static void
fm_kitchen_head_init (FmKitchenHead *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_kitchen_head_set_origin (FmKitchenHead *self, const char *title, const char *origin)
{
  g_autofree char *text = g_strdup_printf (
      "%s · %s", title != NULL ? title : _ ("Untitled experiment"), origin != NULL ? origin : "");

  g_return_if_fail (FM_IS_KITCHEN_HEAD (self));
  gtk_label_set_text (self->origin_label, text);
}

void
fm_kitchen_head_set_unwritten (FmKitchenHead *self, const char *why)
{
  g_autofree char *text =
      why != NULL ? g_strdup_printf (_ ("Not on the disk yet, trying again: %s"), why) : NULL;

  g_return_if_fail (FM_IS_KITCHEN_HEAD (self));
  gtk_label_set_text (self->failure_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->failure_label), text != NULL);
}

void
fm_kitchen_head_show_next (FmKitchenHead *self,
                           const FmKitchenState *state,
                           const FmExperiment *experiment)
{
  const int unweighed = fm_kitchen_weigh_next (experiment);
  g_autofree char *text = fm_kitchen_next_text (state, experiment, unweighed);

  g_return_if_fail (FM_IS_KITCHEN_HEAD (self));
  gtk_label_set_text (self->next_label, text);
}

void
fm_kitchen_head_show_timers (FmKitchenHead *self,
                             const FmKitchenState *state,
                             const FmKitchenPlan *plan,
                             const FmKitchenMoment *now,
                             gboolean visible)
{
  g_autofree char *timers = fm_kitchen_timers_text (state, plan, now);

  g_return_if_fail (FM_IS_KITCHEN_HEAD (self));
  fm_widget_set_label (self->timers_label, timers);
  gtk_widget_set_visible (GTK_WIDGET (self->timers_label), visible);
}
