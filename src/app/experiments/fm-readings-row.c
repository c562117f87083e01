/* fm-readings-row.c - one core reading: a time and a temperature, each checked as it is typed */
#include "app/experiments/fm-readings-row.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-temperature-unit.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-number.h"

struct _FmReadingsRow {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkEntry *time_entry;
  GtkEntry *temp_entry;
  GtkLabel *unit_label;
  GtkButton *remove_button;
  GtkLabel *message_label;

  FmCoreReading reading;
  FmTemperatureUnit *units;
  char *time_error;
  char *temp_error;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmReadingsRow, fm_readings_row, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  REMOVE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static char *
format_time (double time_s)
{
  const int seconds = isnan (time_s) ? 0 : (int)lround (time_s);

  if (isnan (time_s))
    return g_strdup ("");
  return g_strdup_printf ("%d:%02d", seconds / 60, seconds % 60);
}

static void
mark (GtkEntry *entry, const char *message)
{
  if (message != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (entry), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (entry), "error");
  gtk_widget_set_tooltip_text (GTK_WIDGET (entry), message);
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
      message != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

static void
show_errors (FmReadingsRow *self)
{
  const char *message = self->time_error != NULL ? self->time_error : self->temp_error;

  mark (self->time_entry, self->time_error);
  mark (self->temp_entry, self->temp_error);
  gtk_label_set_text (self->message_label, message != NULL ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message_label), message != NULL);
}

/* Reads one field by the rules of pasted text, with a good neighbour beside it. */
static gboolean
parse_field (FmReadingsRow *self, const char *line, FmCoreReading *reading, char **message)
{
  g_autoptr (FmExperiment) scratch = fm_experiment_new ();
  g_autoptr (GError) error = NULL;
  const gboolean fahrenheit = fm_temperature_unit_get_fahrenheit (self->units);
  const char *text;

  g_clear_pointer (message, g_free);
  if (!fm_experiment_parse_readings (scratch, line, fahrenheit, &error)) {
    text = strstr (error->message, ": ");
    *message = g_strdup (text != NULL ? text + 2 : error->message);
    return FALSE;
  }
  if (scratch->core_readings->len != 1)
    return FALSE;
  *reading = g_array_index (scratch->core_readings, FmCoreReading, 0);
  return TRUE;
}

static void
finish_edit (FmReadingsRow *self, gboolean good)
{
  show_errors (self);
  if (good && !isnan (self->reading.time_s) && !isnan (self->reading.temp_c))
    g_signal_emit (self, signals[CHANGED], 0);
}

static void
time_changed_cb (FmReadingsRow *self)
{
  g_autofree char *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->time_entry)));
  g_autofree char *line = g_strdup_printf ("%s 50", g_strstrip (text));
  FmCoreReading reading;
  gboolean good;

  if (self->loading)
    return;
  good = parse_field (self, line, &reading, &self->time_error);
  if (good)
    self->reading.time_s = reading.time_s;
  finish_edit (self, good);
}

static void
temp_changed_cb (FmReadingsRow *self)
{
  g_autofree char *text = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->temp_entry)));
  g_autofree char *line = g_strdup_printf ("0 %s", g_strstrip (text));
  FmCoreReading reading;
  gboolean good;

  if (self->loading)
    return;
  good = parse_field (self, line, &reading, &self->temp_error);
  if (good)
    self->reading.temp_c = reading.temp_c;
  finish_edit (self, good);
}

static void
remove_clicked_cb (FmReadingsRow *self)
{
  g_signal_emit (self, signals[REMOVE], 0);
}

static void
show_reading (FmReadingsRow *self)
{
  const double temp = fm_temperature_unit_to_shown (self->units, self->reading.temp_c);
  g_autofree char *time_text = format_time (self->reading.time_s);
  g_autofree char *temp_text = fm_number_to_edit (temp, 1);

  self->loading = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->time_entry), time_text);
  gtk_editable_set_text (GTK_EDITABLE (self->temp_entry), temp_text);
  gtk_label_set_text (self->unit_label, fm_temperature_unit_symbol (self->units));
  self->loading = FALSE;
  g_clear_pointer (&self->time_error, g_free);
  g_clear_pointer (&self->temp_error, g_free);
  show_errors (self);
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
fm_readings_row_finalize (GObject *object)
{
  FmReadingsRow *self = FM_READINGS_ROW (object);

  g_free (self->time_error);
  g_free (self->temp_error);
  G_OBJECT_CLASS (fm_readings_row_parent_class)->finalize (object);
}

static void
fm_readings_row_class_init (FmReadingsRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GType type = FM_TYPE_READINGS_ROW;

  object_class->dispose = fm_readings_row_dispose;
  object_class->finalize = fm_readings_row_finalize;
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
  gtk_widget_class_bind_template_child (widget_class, FmReadingsRow, unit_label);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsRow, remove_button);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsRow, message_label);
  gtk_widget_class_bind_template_callback (widget_class, time_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, temp_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, remove_clicked_cb);
}

static void
fm_readings_row_init (FmReadingsRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->units = fm_temperature_unit_get_default ();
  g_signal_connect_object (self->units, "notify::fahrenheit", G_CALLBACK (show_reading), self,
                           G_CONNECT_SWAPPED);
}

static void
set_label (gpointer widget, const char *text)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

GtkWidget *
fm_readings_row_new (guint number, const FmCoreReading *reading)
{
  FmReadingsRow *self = g_object_new (FM_TYPE_READINGS_ROW, NULL);
  g_autofree char *time_name = g_strdup_printf (_ ("Time of reading %u"), number);
  g_autofree char *temp_name = g_strdup_printf (_ ("Core temperature of reading %u"), number);
  g_autofree char *remove_name = g_strdup_printf (_ ("Remove reading %u"), number);

  self->reading = *reading;
  set_label (self->time_entry, time_name);
  set_label (self->temp_entry, temp_name);
  set_label (self->remove_button, remove_name);
  show_reading (self);
  return GTK_WIDGET (self);
}

const FmCoreReading *
fm_readings_row_get_reading (FmReadingsRow *self)
{
  g_return_val_if_fail (FM_IS_READINGS_ROW (self), NULL);
  return &self->reading;
}
