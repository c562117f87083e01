/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-result.c - what an opened tasting says */
#include "app/tastings/fm-tasting-result.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "app/print/fm-batch-sheet-print.h"
#include "app/session/fm-notebook-settings.h"
#include "app/tastings/fm-tasting-result-job.h"
#include "app/tastings/fm-tasting-result-sections.h"
#include "app/tastings/fm-tasting-text.h"
#include "app/widgets/fm-derivation-window.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"
#include "core/base/fm-date.h"
#include "core/tasting/fm-tasting-derivation.h"
#include "report/fm-tasting-report.h"

/* Sheets are typed one mark after the other; the reading may take a second. */
#define READ_DELAY_MS 300

struct _FmTastingResult {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkWidget *working_box;
  GtkLabel *headline_label;
  GtkBox *sections_box;
  GtkWidget *export_box;
  GtkLabel *say_label;
  GtkFileChooserNative *chooser; /* while it is asked where the table goes */

  FmTastingDocument *document;
  FmTastingReading *reading; /* NULL = not read, or it cannot be */
  GCancellable *work;        /* the reading under way */
  guint read_id;
  gboolean is_kept; /* what was found is in the notebook, or on its way */
};

G_DEFINE_FINAL_TYPE (FmTastingResult, fm_tasting_result, GTK_TYPE_WIDGET)

static void
kept_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmTastingDocument) document = data;
  g_autoptr (GError) error = NULL;
  gboolean is_new;

  if (!fm_tasting_result_job_keep_finish (result, &is_new, &error))
    g_warning ("The outcome of a tasting was not kept: %s", error->message);
  else if (is_new)
    fm_tasting_document_tell_outcome (document);
}

/* The notebook takes an outcome only once it knows that the tasting is opened. */
static void
keep (FmTastingResult *self)
{
  const FmTasting *tasting;

  if (self->document == NULL || self->reading == NULL || self->is_kept ||
      !fm_tasting_document_is_editable (self->document) ||
      !fm_stored_document_is_saved (FM_STORED_DOCUMENT (self->document)))
    return;
  tasting = fm_tasting_document_get_tasting (self->document);
  if (tasting->state != FM_TASTING_OPENED)
    return;
  self->is_kept = TRUE;
  fm_tasting_result_job_keep_async (fm_tasting_document_get_notebook (self->document), tasting,
                                    self->reading, kept_cb, g_object_ref (self->document));
}

static void
show (FmTastingResult *self, const char *headline)
{
  const FmTasting *tasting = fm_tasting_document_get_tasting (self->document);

  gtk_widget_set_visible (self->working_box, FALSE);
  gtk_label_set_text (self->headline_label, headline);
  gtk_widget_set_visible (self->export_box, self->reading != NULL);
  fm_tasting_result_sections_show (self->sections_box, tasting, self->reading);
}

static void
read_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmTastingResult) self = data;
  g_autoptr (GError) error = NULL;
  FmTastingReading *reading = fm_tasting_result_job_read_finish (result, &error);

  if (g_task_get_cancellable (G_TASK (result)) != self->work || self->document == NULL) {
    g_clear_pointer (&reading, fm_tasting_reading_free);
    return;
  }
  g_clear_object (&self->work);
  g_clear_pointer (&self->reading, fm_tasting_reading_free);
  self->reading = reading;
  self->is_kept = FALSE;
  show (self, reading != NULL ? reading->headline : error->message);
  keep (self);
}

static void
stop (FmTastingResult *self)
{
  g_clear_handle_id (&self->read_id, g_source_remove);
  g_cancellable_cancel (self->work);
  g_clear_object (&self->work);
}

static gboolean
read_now_cb (gpointer data)
{
  FmTastingResult *self = data;

  self->read_id = 0;
  stop (self);
  self->work = g_cancellable_new ();
  gtk_widget_set_visible (self->working_box, TRUE);
  fm_tasting_result_job_read_async (fm_tasting_document_get_tasting (self->document), self->work,
                                    read_done_cb, g_object_ref (self));
  return G_SOURCE_REMOVE;
}

static void
changed_cb (FmTastingResult *self)
{
  stop (self);
  self->read_id = g_timeout_add (READ_DELAY_MS, read_now_cb, self);
}

static void
say (GtkWidget *owner, const char *text, gboolean failed)
{
  FmTastingResult *self = FM_TASTING_RESULT (owner);

  if (self->say_label == NULL)
    return;
  fm_widget_set_label (self->say_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->say_label), *text != '\0');
}

static FmBatchSheet *
new_report (FmTastingResult *self)
{
  const FmTasting *tasting = fm_tasting_document_get_tasting (self->document);
  g_autofree char *date = fm_date_text (tasting->held_at);

  FmBatchSheet *sheet = fm_tasting_report_new (tasting, self->reading, date);

  sheet->notice = fm_notebook_notice ();
  return sheet;
}

static char *
file_name (FmTastingResult *self, const char *ending)
{
  const FmTasting *tasting = fm_tasting_document_get_tasting (self->document);

  return fm_print_file_name (fm_tasting_text_title (tasting->title), ending);
}

static void
print_clicked_cb (FmTastingResult *self)
{
  if (self->reading != NULL)
    fm_batch_sheet_print (GTK_WIDGET (self), new_report (self), say);
}

static void
pdf_clicked_cb (FmTastingResult *self)
{
  g_autofree char *name = self->reading != NULL ? file_name (self, "pdf") : NULL;

  if (name != NULL)
    fm_batch_sheet_save_pdf (GTK_WIDGET (self), new_report (self), name, say);
}

static void
written_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmTastingResult) self = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *base = g_file_get_basename (G_FILE (source));
  g_autofree char *shown = g_filename_display_name (base);
  const gboolean ok = g_file_replace_contents_finish (G_FILE (source), result, NULL, &error);
  g_autofree char *text = ok ? g_strdup_printf (_ ("Reading exported to “%s”"), shown)
                             : g_strdup_printf (_ ("The reading could not be written to “%s”: %s"),
                                                shown, error->message);

  say (GTK_WIDGET (self), text, !ok);
}

static void
csv_chosen_cb (GtkNativeDialog *dialog, int response, FmTastingResult *self)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  g_autoptr (GBytes) bytes = NULL;
  char *csv;

  g_clear_object (&self->chooser);
  if (response != GTK_RESPONSE_ACCEPT || file == NULL || self->reading == NULL)
    return;
  csv = fm_tasting_report_csv (fm_tasting_document_get_tasting (self->document), self->reading,
                               fm_notebook_notice ());
  bytes = g_bytes_new_take (csv, strlen (csv));
  g_file_replace_contents_bytes_async (file, bytes, NULL, FALSE, G_FILE_CREATE_NONE, NULL,
                                       written_cb, g_object_ref (self));
}

static void
why_clicked_cb (FmTastingResult *self)
{
  const char *title;
  g_autofree char *text = NULL;

  if (self->reading == NULL)
    return;
  title = fm_tasting_document_get_tasting (self->document)->title;
  text = fm_tasting_derivation (self->reading);
  fm_derivation_window_show (GTK_WIDGET (self), fm_tasting_text_title (title), text);
}

static void
csv_clicked_cb (FmTastingResult *self)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
  g_autofree char *name = self->reading != NULL ? file_name (self, "csv") : NULL;

  if (name == NULL)
    return;
  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (
      _ ("Export the Reading"), window, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Export"), _ ("_Cancel"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  g_signal_connect_object (self->chooser, "response", G_CALLBACK (csv_chosen_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
fm_tasting_result_dispose (GObject *object)
{
  FmTastingResult *self = FM_TASTING_RESULT (object);

  fm_tasting_result_set_document (self, NULL);
  g_clear_object (&self->chooser);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_TASTING_RESULT);
  G_OBJECT_CLASS (fm_tasting_result_parent_class)->dispose (object);
}

static void
fm_tasting_result_class_init (FmTastingResultClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_result_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-result.ui");
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTastingResult, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingResult, working_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingResult, headline_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingResult, sections_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingResult, export_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingResult, say_label);
  gtk_widget_class_bind_template_callback (widget_class, print_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, pdf_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, csv_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, why_clicked_cb);
}

static void
fm_tasting_result_init (FmTastingResult *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
forget (FmTastingResult *self)
{
  stop (self);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_pointer (&self->reading, fm_tasting_reading_free);
  self->is_kept = FALSE;
}

void
fm_tasting_result_set_document (FmTastingResult *self, FmTastingDocument *document)
{
  g_return_if_fail (FM_IS_TASTING_RESULT (self));
  if (self->document == document)
    return;
  forget (self);
  g_set_object (&self->document, document);
  if (self->headline_label == NULL)
    return;
  gtk_label_set_text (self->headline_label, "");
  gtk_widget_set_visible (self->export_box, FALSE);
  say (GTK_WIDGET (self), "", FALSE);
  fm_tasting_result_sections_show (self->sections_box, NULL, NULL);
  if (document == NULL)
    return;
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "saved", G_CALLBACK (keep), self, G_CONNECT_SWAPPED);
  read_now_cb (self);
}
