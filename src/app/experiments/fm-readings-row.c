/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-readings-row.c - one core reading: a time and a temperature, each checked as it is typed */
#include "app/experiments/fm-readings-row.h"

#include <glib/gi18n-lib.h>

#include "app/widgets/fm-number-entry.h"
#include "app/widgets/fm-widget.h"
#include "core/experiment/fm-strange.h"

struct _FmReadingsRow {
  GtkWidget parent_instance;

  GtkWidget *box;
  FmNumberEntry *time_entry;
  FmNumberEntry *temp_entry;
  GtkButton *remove_button;
  GtkLabel *message_label;

  FmCoreReading reading;
  double surface_c;
  FmNumberEntry *typed; /* what was changed last */
};

G_DEFINE_FINAL_TYPE (FmReadingsRow, fm_readings_row, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  REMOVE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
message_changed_cb (FmReadingsRow *self, double value, FmNumberEntry *entry)
{
  self->typed = entry;
  const char *message = fm_number_entry_get_message (self->time_entry);

  if (message == NULL)
    message = fm_number_entry_get_message (self->temp_entry);
  gtk_label_set_text (self->message_label, message != NULL ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message_label), message != NULL);
}

static void
warn (FmReadingsRow *self)
{
  fm_number_entry_set_warning (self->temp_entry,
                               fm_strange_core (self->reading.temp_c, self->surface_c));
}

static void
changed_cb (FmReadingsRow *self)
{
  self->reading.time_s = fm_number_entry_get_value (self->time_entry);
  self->reading.temp_c = fm_number_entry_get_value (self->temp_entry);
  warn (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
remove_clicked_cb (FmReadingsRow *self)
{
  g_signal_emit (self, signals[REMOVE], 0);
}

static gboolean
fm_readings_row_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FM_READINGS_ROW (widget)->time_entry));
}

static void
fm_readings_row_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_READINGS_ROW);
  G_OBJECT_CLASS (fm_readings_row_parent_class)->dispose (object);
}

static void
fm_readings_row_class_init (FmReadingsRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GType type = FM_TYPE_READINGS_ROW;

  object_class->dispose = fm_readings_row_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  widget_class->focus = fm_widget_pass_focus;
  widget_class->grab_focus = fm_readings_row_grab_focus;
  signals[CHANGED] =
      g_signal_new ("changed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[REMOVE] =
      g_signal_new ("remove", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-readings-row.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsRow, box);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsRow, time_entry);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsRow, temp_entry);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsRow, remove_button);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsRow, message_label);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, message_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_clicked_cb);
}

static void
fm_readings_row_init (FmReadingsRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_number_entry_set_range (self->time_entry, 0.0, FM_MAX_READING_S);
  fm_number_entry_set_range (self->temp_entry, FM_MIN_CORE_C, FM_MAX_CORE_C);
}

GtkWidget *
fm_readings_row_new (guint number, const FmCoreReading *reading, double surface_c)
{
  FmReadingsRow *self = g_object_new (FM_TYPE_READINGS_ROW, NULL);
  g_autofree char *time_name = g_strdup_printf (_ ("Time of reading %u"), number);
  g_autofree char *temp_name = g_strdup_printf (_ ("Core temperature of reading %u"), number);
  g_autofree char *remove_name = g_strdup_printf (_ ("Remove reading %u"), number);

  self->reading = *reading;
  self->surface_c = surface_c;
  fm_number_entry_set_what (self->time_entry, time_name);
  fm_number_entry_set_what (self->temp_entry, temp_name);
  fm_number_entry_load_value (self->time_entry, reading->time_s);
  fm_number_entry_load_value (self->temp_entry, reading->temp_c);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->remove_button),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL, remove_name, -1);
  warn (self);
  return GTK_WIDGET (self);
}

const FmCoreReading *
fm_readings_row_get_reading (FmReadingsRow *self)
{
  g_return_val_if_fail (FM_IS_READINGS_ROW (self), NULL);
  return &self->reading;
}

const char *
fm_readings_row_get_what (FmReadingsRow *self)
{
  g_return_val_if_fail (FM_IS_READINGS_ROW (self), NULL);
  return fm_number_entry_get_what (self->typed != NULL ? self->typed : self->time_entry);
}
