/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-probe-pane.c - which probe is listened to, and which portion it is in */
#include "app/kitchen/fm-kitchen-probe-pane.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/kitchen/fm-kitchen-probe.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-widget.h"

/* A probe may tell oftener than a core changes. */
#define APART_US (G_USEC_PER_SEC * 9 / 10)

struct _FmKitchenProbePane {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkEditable *path_entry;
  GtkButton *listen_button;
  GtkButton *stop_button;
  GtkLabel *state_label;

  FmKitchenProbe *probe; /* (nullable) */
  int portion;           /* that it is in */
  int next_portion;      /* that it would go into */
  double temp_c;         /* heard last; NaN = none */
  gint64 told_us;
};

G_DEFINE_FINAL_TYPE (FmKitchenProbePane, fm_kitchen_probe_pane, GTK_TYPE_WIDGET)

enum {
  HEARD,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
show_state (FmKitchenProbePane *self)
{
  const guint n_good = self->probe != NULL ? fm_kitchen_probe_n_good (self->probe) : 0;
  const guint n_refused = self->probe != NULL ? fm_kitchen_probe_n_refused (self->probe) : 0;
  g_autofree char *temp = fm_notebook_text (FM_MEASURE_TEMPERATURE, self->temp_c, 1);
  g_autofree char *refused =
      g_strdup_printf (ngettext ("%u line refused", "%u lines refused", n_refused), n_refused);
  g_autofree char *good = g_strdup_printf (ngettext ("%u reading", "%u readings", n_good), n_good);
  g_autofree char *text =
      self->probe != NULL
          /* TRANSLATORS: portion, temperature, "12 readings", "1 line refused" */
          ? g_strdup_printf (_ ("In portion %d: %s, %s, %s"), self->portion + 1, temp, good,
                             refused)
          : g_strdup (_ ("No probe is listened to."));

  gtk_label_set_text (self->state_label, text);
  gtk_widget_set_sensitive (GTK_WIDGET (self->stop_button), self->probe != NULL);
}

static void
show_portion (FmKitchenProbePane *self)
{
  g_autofree char *label =
      g_strdup_printf (_ ("Listen: the probe is in portion %d"), self->next_portion + 1);

  gtk_button_set_label (self->listen_button, label);
  gtk_widget_set_sensitive (GTK_WIDGET (self->listen_button), self->next_portion >= 0);
}

static void
heard_cb (FmKitchenProbePane *self, double temp_c)
{
  const gint64 now_us = g_get_monotonic_time ();

  if (!isnan (temp_c)) {
    self->temp_c = temp_c;
    if (now_us - self->told_us >= APART_US) {
      self->told_us = now_us;
      g_signal_emit (self, signals[HEARD], 0, self->portion, temp_c);
    }
  }
  show_state (self);
}

static void
stop (FmKitchenProbePane *self)
{
  if (self->probe != NULL)
    g_signal_handlers_disconnect_by_data (self->probe, self);
  g_clear_object (&self->probe);
  self->temp_c = NAN;
}

static void
stop_cb (FmKitchenProbePane *self)
{
  stop (self);
  show_state (self);
}

static void
listen_cb (FmKitchenProbePane *self)
{
  g_autofree char *path = g_strstrip (g_strdup (gtk_editable_get_text (self->path_entry)));
  g_autoptr (GError) error = NULL;

  stop (self);
  self->portion = self->next_portion;
  self->probe = fm_kitchen_probe_new (path, &error);
  show_state (self);
  if (self->probe == NULL)
    gtk_label_set_text (self->state_label, error->message);
  else
    g_signal_connect_swapped (self->probe, "heard", G_CALLBACK (heard_cb), self);
}

static gboolean
fm_kitchen_probe_pane_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FM_KITCHEN_PROBE_PANE (widget)->path_entry));
}

static void
fm_kitchen_probe_pane_dispose (GObject *object)
{
  stop (FM_KITCHEN_PROBE_PANE (object));
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_KITCHEN_PROBE_PANE);
  G_OBJECT_CLASS (fm_kitchen_probe_pane_parent_class)->dispose (object);
}

static void
fm_kitchen_probe_pane_class_init (FmKitchenProbePaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_kitchen_probe_pane_dispose;
  widget_class->grab_focus = fm_kitchen_probe_pane_grab_focus;
  widget_class->focus = fm_widget_pass_focus;
  signals[HEARD] = g_signal_new ("heard", FM_TYPE_KITCHEN_PROBE_PANE, G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 2, G_TYPE_INT, G_TYPE_DOUBLE);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/kitchen/fm-kitchen-probe-pane.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenProbePane, box);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenProbePane, path_entry);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenProbePane, listen_button);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenProbePane, stop_button);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenProbePane, state_label);
  gtk_widget_class_bind_template_callback (widget_class, listen_cb);
  gtk_widget_class_bind_template_callback (widget_class, stop_cb);
}

static void
fm_kitchen_probe_pane_init (FmKitchenProbePane *self)
{
  self->temp_c = NAN;
  self->next_portion = -1;
  gtk_widget_init_template (GTK_WIDGET (self));
  show_portion (self);
  show_state (self);
}

void
fm_kitchen_probe_pane_set_portion (FmKitchenProbePane *self, int portion)
{
  g_return_if_fail (FM_IS_KITCHEN_PROBE_PANE (self));
  self->next_portion = portion;
  show_portion (self);
}
