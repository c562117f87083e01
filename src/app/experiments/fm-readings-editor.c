/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-readings-editor.c - core readings as a curve, as a table, and as text to paste */
#include "app/experiments/fm-readings-editor.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "app/charts/fm-readings-chart.h"
#include "app/experiments/fm-readings-row.h"
#include "app/widgets/fm-text-room.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-double.h"
#include "core/base/fm-number.h"

/* Each row is a handful of widgets, so that a probe's thousands would stop the window. */
#define MAX_ROWS 100
#define PASTE_BYTES_PER_READING 40

struct _FmReadingsEditor {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkToggleButton *fahrenheit_button;
  GtkToggleButton *celsius_button;
  FmReadingsChart *chart;
  GtkBox *rows_box;
  GtkLabel *more_label;
  GtkButton *add_button;
  GtkTextView *paste_view;
  GtkButton *paste_button;
  GtkLabel *paste_label;

  FmExperimentDocument *document;
  GArray *beyond; /* FmCoreReading that have no row */
};

G_DEFINE_FINAL_TYPE (FmReadingsEditor, fm_readings_editor, GTK_TYPE_WIDGET)

static void rebuild (FmReadingsEditor *self);

static FmExperiment *
get_experiment (FmReadingsEditor *self)
{
  return fm_experiment_document_get_experiment (self->document);
}

static GArray *
get_readings (FmReadingsEditor *self)
{
  return get_experiment (self)->core_readings;
}

static int
compare_readings (gconstpointer a, gconstpointer b)
{
  const double time_a = ((const FmCoreReading *)a)->time_s;
  const double time_b = ((const FmCoreReading *)b)->time_s;

  return (time_a > time_b) - (time_a < time_b);
}

static void
show_more (FmReadingsEditor *self)
{
  g_autofree char *rows = fm_number_format (MAX_ROWS, 0);
  g_autofree char *all = fm_number_format (MAX_ROWS + self->beyond->len, 0);
  /* TRANSLATORS: Both are numbers. */
  g_autofree char *text = g_strdup_printf (
      _ ("The first %s of %s readings can be changed here; the curve shows all of them."), rows,
      all);

  gtk_label_set_text (self->more_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->more_label), self->beyond->len > 0);
}

/* The rows keep their places while someone types; the experiment has them by time. */
static void
collect_rows (FmReadingsEditor *self, const char *what)
{
  GArray *readings = get_readings (self);

  g_array_set_size (readings, 0);
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->rows_box)); row != NULL;
       row = gtk_widget_get_next_sibling (row)) {
    const FmCoreReading *reading = fm_readings_row_get_reading (FM_READINGS_ROW (row));

    if (!isnan (reading->time_s) && !isnan (reading->temp_c))
      g_array_append_vals (readings, reading, 1);
  }
  g_array_append_vals (readings, self->beyond->data, self->beyond->len);
  g_array_sort (readings, compare_readings);
  fm_readings_chart_set_readings (self->chart, readings);
  fm_experiment_document_did (self->document, what);
}

static void
row_changed_cb (FmReadingsEditor *self, FmReadingsRow *row)
{
  collect_rows (self, fm_readings_row_get_what (row));
}

static void
remove_row_cb (FmReadingsEditor *self, GtkWidget *row)
{
  gtk_box_remove (self->rows_box, row);
  collect_rows (self, _ ("Remove a reading"));
  rebuild (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->add_button));
}

static GtkWidget *
append_row (FmReadingsEditor *self, guint number, const FmCoreReading *reading)
{
  GtkWidget *row = fm_readings_row_new (number, reading, get_experiment (self)->surface_temp_c);

  g_signal_connect_swapped (row, "changed", G_CALLBACK (row_changed_cb), self);
  g_signal_connect_swapped (row, "remove", G_CALLBACK (remove_row_cb), self);
  gtk_box_append (self->rows_box, row);
  return row;
}

static void
rebuild (FmReadingsEditor *self)
{
  GtkWidget *child;
  const GArray *readings;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->rows_box))) != NULL)
    gtk_box_remove (self->rows_box, child);
  g_array_set_size (self->beyond, 0);
  if (self->document == NULL)
    return;
  readings = get_readings (self);
  if (readings->len > MAX_ROWS)
    g_array_append_vals (self->beyond, &g_array_index (readings, FmCoreReading, MAX_ROWS),
                         readings->len - MAX_ROWS);
  show_more (self);
  for (guint i = 0; i < MIN (readings->len, MAX_ROWS); i++)
    append_row (self, i + 1, &g_array_index (readings, FmCoreReading, i));
  fm_readings_chart_set_readings (self->chart, readings);
}

static guint
count_rows (FmReadingsEditor *self)
{
  guint n = 0;

  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->rows_box)); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    n++;
  return n;
}

static void
add_clicked_cb (FmReadingsEditor *self)
{
  const FmCoreReading blank = { NAN, NAN };

  if (self->document != NULL)
    gtk_widget_grab_focus (append_row (self, count_rows (self) + 1, &blank));
}

static void
show_paste_error (FmReadingsEditor *self, const char *message)
{
  gtk_label_set_text (self->paste_label, message != NULL ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->paste_label), message != NULL);
}

static void
paste_clicked_cb (FmReadingsEditor *self)
{
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (self->paste_view);
  g_autofree char *text = NULL;
  g_autoptr (GError) error = NULL;
  GtkTextIter start;
  GtkTextIter end;

  if (self->document == NULL)
    return;
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  text = gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
  if (!fm_experiment_parse_readings (get_experiment (self), text, fm_notebook_units ()->fahrenheit,
                                     &error)) {
    show_paste_error (self, error->message);
    return;
  }
  show_paste_error (self, NULL);
  gtk_text_buffer_set_text (buffer, "", -1);
  rebuild (self);
  fm_experiment_document_did (self->document, _ ("Paste readings"));
}

static void
fm_readings_editor_dispose (GObject *object)
{
  FmReadingsEditor *self = FM_READINGS_EDITOR (object);

  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_READINGS_EDITOR);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (fm_readings_editor_parent_class)->dispose (object);
}

static void
fm_readings_editor_finalize (GObject *object)
{
  g_array_unref (FM_READINGS_EDITOR (object)->beyond);
  G_OBJECT_CLASS (fm_readings_editor_parent_class)->finalize (object);
}

static void
fm_readings_editor_class_init (FmReadingsEditorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_readings_editor_dispose;
  G_OBJECT_CLASS (klass)->finalize = fm_readings_editor_finalize;
  g_type_ensure (FM_TYPE_READINGS_CHART);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-readings-editor.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsEditor, box);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsEditor, fahrenheit_button);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsEditor, celsius_button);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsEditor, chart);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsEditor, rows_box);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsEditor, more_label);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsEditor, add_button);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsEditor, paste_view);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsEditor, paste_button);
  gtk_widget_class_bind_template_child (widget_class, FmReadingsEditor, paste_label);
  gtk_widget_class_bind_template_callback (widget_class, add_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, paste_clicked_cb);
}

static void
fm_readings_editor_init (FmReadingsEditor *self)
{
  FmNotebookSettings *settings = fm_notebook_settings_get_default ();

  self->beyond = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_text_room_limit (self->paste_view, FM_MAX_READINGS * PASTE_BYTES_PER_READING,
                      FM_MAX_READINGS + 1);
  g_object_bind_property (settings, "fahrenheit", self->fahrenheit_button, "active",
                          G_BINDING_SYNC_CREATE | G_BINDING_BIDIRECTIONAL);
  g_object_bind_property (settings, "fahrenheit", self->celsius_button, "active",
                          G_BINDING_SYNC_CREATE | G_BINDING_INVERT_BOOLEAN);
}

void
fm_readings_editor_set_document (FmReadingsEditor *self, FmExperimentDocument *document)
{
  g_return_if_fail (FM_IS_READINGS_EDITOR (self));
  if (!g_set_object (&self->document, document))
    return;
  show_paste_error (self, NULL);
  rebuild (self);
}

/* TRUE when the rows show what the experiment has. */
static gboolean
is_shown (FmReadingsEditor *self)
{
  const GArray *readings = get_readings (self);
  GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->rows_box));

  for (guint i = 0; i < readings->len && row != NULL; i++) {
    const FmCoreReading *shown = fm_readings_row_get_reading (FM_READINGS_ROW (row));
    const FmCoreReading *reading = &g_array_index (readings, FmCoreReading, i);

    if (!fm_double_same (shown->time_s, reading->time_s) ||
        !fm_double_same (shown->temp_c, reading->temp_c))
      return FALSE;
    row = gtk_widget_get_next_sibling (row);
  }
  return count_rows (self) == readings->len;
}

void
fm_readings_editor_update (FmReadingsEditor *self)
{
  g_return_if_fail (FM_IS_READINGS_EDITOR (self));
  if (!is_shown (self))
    rebuild (self);
}
