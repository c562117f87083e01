/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-pad.c - large keys for one number that is to be noted */
#include "app/kitchen/fm-kitchen-pad.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "app/kitchen/fm-kitchen-weigh.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-widget.h"

/* What a kitchen scale shows at least. */
#define MIN_MASS_G 0.1

struct _FmKitchenPad {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkLabel *what_label;
  GtkLabel *hint_label;
  GtkEditable *entry;
  GtkLabel *unit_label;
  GtkLabel *message_label;
  GtkGrid *keys;

  FmKitchenKind kind; /* what is asked for, and of which portion; -1 = none */
  int portion;
  char *words; /* (nullable) of the weighing */
  char *what;
  FmMeasure measure;
  double min;
  double max;
};

G_DEFINE_FINAL_TYPE (FmKitchenPad, fm_kitchen_pad, GTK_TYPE_WIDGET)

enum {
  ENTERED,
  CANCELLED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
say (FmKitchenPad *self, const char *message)
{
  gtk_label_set_text (self->message_label, message != NULL ? message : "");
}

static void
set_asked (FmKitchenPad *self, FmKitchenKind kind, int portion, const char *words)
{
  self->kind = kind;
  self->portion = portion;
  g_free (self->words);
  self->words = g_strdup (words);
}

static void
ask (FmKitchenPad *self,
     const char *what,
     const char *hint,
     FmMeasure measure,
     double min,
     double max)
{
  g_autofree char *unit = fm_measure_unit (measure, fm_notebook_units ());

  g_free (self->what);
  self->what = g_strdup (what);
  self->measure = measure;
  self->min = min;
  self->max = max;
  gtk_label_set_text (self->what_label, what);
  gtk_label_set_text (self->hint_label, hint != NULL ? hint : "");
  gtk_label_set_text (self->unit_label, unit);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, what,
                                  -1);
  gtk_editable_set_text (self->entry, "");
  say (self, NULL);
  gtk_widget_grab_focus (GTK_WIDGET (self->entry));
}

static void
enter_cb (FmKitchenPad *self)
{
  const FmMeasureRange range = {
    .measure = self->measure, .what = self->what, .min = self->min, .max = self->max
  };
  g_autoptr (GError) error = NULL;
  double value;

  if (fm_measure_parse (gtk_editable_get_text (self->entry), &range, fm_notebook_units (), &value,
                        &error))
    g_signal_emit (self, signals[ENTERED], 0, (int)self->kind, self->portion, value, self->words);
  else
    say (self, error->message);
}

static void
cancel_cb (FmKitchenPad *self)
{
  g_signal_emit (self, signals[CANCELLED], 0, (int)self->kind);
}

static void
typed_cb (FmKitchenPad *self)
{
  say (self, NULL);
}

static void
key_cb (FmKitchenPad *self, GtkButton *key)
{
  int position = -1;

  gtk_editable_insert_text (self->entry, gtk_button_get_label (key), -1, &position);
  gtk_editable_set_position (self->entry, -1);
}

static void
back_cb (FmKitchenPad *self)
{
  const int length = (int)g_utf8_strlen (gtk_editable_get_text (self->entry), -1);

  if (length > 0)
    gtk_editable_delete_text (self->entry, length - 1, length);
}

static void
add_keys (FmKitchenPad *self)
{
  const char *labels = "789456123.0";

  for (guint i = 0; labels[i] != '\0'; i++) {
    const char label[] = { labels[i], '\0' };
    GtkWidget *key = gtk_button_new_with_label (label);

    /* Taps leave the cursor where the digits go. */
    gtk_widget_set_focus_on_click (key, FALSE);
    gtk_widget_add_css_class (key, "fm-kitchen-key");
    g_signal_connect_swapped (key, "clicked", G_CALLBACK (key_cb), self);
    gtk_grid_attach (self->keys, key, (int)i % 3, (int)i / 3, 1, 1);
  }
}

static gboolean
fm_kitchen_pad_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FM_KITCHEN_PAD (widget)->entry));
}

static void
fm_kitchen_pad_dispose (GObject *object)
{
  FmKitchenPad *self = FM_KITCHEN_PAD (object);

  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_KITCHEN_PAD);
  g_clear_pointer (&self->what, g_free);
  g_clear_pointer (&self->words, g_free);
  G_OBJECT_CLASS (fm_kitchen_pad_parent_class)->dispose (object);
}

static void
fm_kitchen_pad_class_init (FmKitchenPadClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_kitchen_pad_dispose;
  widget_class->grab_focus = fm_kitchen_pad_grab_focus;
  widget_class->focus = fm_widget_pass_focus;
  signals[ENTERED] =
      g_signal_new ("entered", FM_TYPE_KITCHEN_PAD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                    G_TYPE_NONE, 4, G_TYPE_INT, G_TYPE_INT, G_TYPE_DOUBLE, G_TYPE_STRING);
  signals[CANCELLED] = g_signal_new ("cancelled", FM_TYPE_KITCHEN_PAD, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/kitchen/fm-kitchen-pad.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenPad, box);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenPad, what_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenPad, hint_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenPad, entry);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenPad, unit_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenPad, message_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenPad, keys);
  gtk_widget_class_bind_template_callback (widget_class, enter_cb);
  gtk_widget_class_bind_template_callback (widget_class, cancel_cb);
  gtk_widget_class_bind_template_callback (widget_class, typed_cb);
  gtk_widget_class_bind_template_callback (widget_class, back_cb);
}

static void
fm_kitchen_pad_init (FmKitchenPad *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_keys (self);
}

void
fm_kitchen_pad_ask_portion (FmKitchenPad *self, FmKitchenKind kind, int portion)
{
  const gboolean is_core = kind == FM_KITCHEN_CORE;
  g_autofree char *what = NULL;

  g_return_if_fail (FM_IS_KITCHEN_PAD (self));
  if (is_core)
    what = g_strdup_printf (_ ("Core of portion %d now"), portion + 1);
  else if (kind == FM_KITCHEN_RAW)
    what = g_strdup_printf (_ ("Raw mass of portion %d"), portion + 1);
  else
    what = g_strdup_printf (_ ("Cooked mass of portion %d"), portion + 1);
  set_asked (self, kind, portion, NULL);
  if (is_core)
    ask (self, what, NULL, FM_MEASURE_TEMPERATURE, FM_MIN_CORE_C, FM_MAX_CORE_C);
  else
    ask (self, what, NULL, FM_MEASURE_MASS, MIN_MASS_G, FM_MAX_PATTY_MASS_G);
}

void
fm_kitchen_pad_ask_weighing (FmKitchenPad *self, const FmWeighing *weighing)
{
  g_autofree char *planned = fm_kitchen_weigh_planned_text (weighing);

  g_return_if_fail (FM_IS_KITCHEN_PAD (self));
  set_asked (self, FM_KITCHEN_WEIGHED, -1,
             weighing->line_id != NULL ? weighing->line_id : weighing->name);
  ask (self, weighing->name, planned, FM_MEASURE_MASS, MIN_MASS_G, FM_MAX_LINE_MASS_G);
}
