/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-batch-sheet-print.c - a sheet to the printer or into a file */
#include "app/print/fm-batch-sheet-print.h"

#include "app/session/fm-store-task.h"

#include <glib/gi18n-lib.h>

typedef struct {
  GtkWidget *owner;
  FmBatchSheet *sheet;
  FmSheetLayout *layout; /* while it prints */
  FmBatchSheetSay say;
} Job;

static void
job_free (Job *job)
{
  g_object_unref (job->owner);
  fm_batch_sheet_free (job->sheet);
  g_clear_pointer (&job->layout, fm_sheet_layout_free);
  g_free (job);
}

static Job *
job_new (GtkWidget *owner, FmBatchSheet *sheet, FmBatchSheetSay say)
{
  Job *job = g_new0 (Job, 1);

  job->owner = g_object_ref (owner);
  job->sheet = sheet;
  job->say = say;
  return job;
}

static void
begin_print_cb (GtkPrintOperation *operation, GtkPrintContext *context, Job *job)
{
  g_clear_pointer (&job->layout, fm_sheet_layout_free);
  job->layout = fm_sheet_layout_new (job->sheet, gtk_print_context_get_cairo_context (context),
                                     gtk_print_context_get_width (context),
                                     gtk_print_context_get_height (context));
  gtk_print_operation_set_n_pages (operation, (int)fm_sheet_layout_n_pages (job->layout));
}

static void
draw_page_cb (GtkPrintOperation *operation, GtkPrintContext *context, int page, Job *job)
{
  fm_sheet_layout_paint (job->layout, job->sheet, gtk_print_context_get_cairo_context (context),
                         gtk_print_context_get_width (context), (guint)page);
}

/* The print dialog offers a look at the pages; what is not for this screen ends there. */
static gboolean
refuse_preview_cb (GtkPrintOperation *operation,
                   GtkPrintOperationPreview *preview,
                   GtkPrintContext *context,
                   GtkWindow *parent,
                   Job *job)
{
  gtk_print_operation_preview_end_preview (preview);
  job->say (job->owner, _ ("This sheet is never shown on the screen. Print it instead."), TRUE);
  return TRUE;
}

static void
print_done_cb (GtkPrintOperation *operation, GtkPrintOperationResult result, Job *job)
{
  g_autoptr (GError) error = NULL;

  if (result == GTK_PRINT_OPERATION_RESULT_APPLY)
    job->say (job->owner, _ ("The sheet went to the printer."), FALSE);
  if (result != GTK_PRINT_OPERATION_RESULT_ERROR)
    return;
  /* Asked for only now: the toolkit takes it amiss when there is none. */
  gtk_print_operation_get_error (operation, &error);
  job->say (job->owner, error != NULL ? error->message : _ ("The sheet was not printed."), TRUE);
}

void
fm_batch_sheet_print (GtkWidget *owner, FmBatchSheet *sheet, FmBatchSheetSay say)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (GError) error = NULL;
  Job *job = job_new (owner, sheet, say);

  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_allow_async (operation, TRUE);
  gtk_print_operation_set_job_name (operation, sheet->what);
  g_object_set_data_full (G_OBJECT (operation), "fm-job", job, (GDestroyNotify)job_free);
  g_signal_connect (operation, "begin-print", G_CALLBACK (begin_print_cb), job);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_page_cb), job);
  if (sheet->secret)
    g_signal_connect (operation, "preview", G_CALLBACK (refuse_preview_cb), job);
  g_signal_connect (operation, "done", G_CALLBACK (print_done_cb), job);
  /* Errors reach the "done" handler as well. */
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG,
                           GTK_WINDOW (gtk_widget_get_root (owner)), &error);
}

typedef struct {
  FmPrintSave order;
  GFile *file;
} Save;

static void
save_free (Save *save)
{
  g_object_unref (save->order.owner);
  save->order.free_data (save->order.data);
  g_clear_object (&save->file);
  g_free (save);
}

static gpointer
write_file (FmNotebook *none, gpointer data, GCancellable *cancellable, GError **error)
{
  const Save *save = data;
  g_autofree char *name = g_file_get_basename (save->file);
  g_autoptr (GBytes) bytes = save->order.make (save->order.data, name, error);

  if (bytes == NULL)
    return NULL;
  return GINT_TO_POINTER (g_file_replace_contents (save->file, g_bytes_get_data (bytes, NULL),
                                                   g_bytes_get_size (bytes), NULL, FALSE,
                                                   G_FILE_CREATE_NONE, NULL, cancellable, error));
}

static void
written_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  const Save *save = fm_store_task_data (result);
  g_autofree char *name = g_file_get_parse_name (save->file);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  if (fm_store_task_finish (result, &error) != NULL)
    text = g_strdup_printf (_ ("Saved as “%s”."), name);
  else
    text =
        g_strdup_printf (_ ("The sheet was not saved: %s. Choose another place."), error->message);
  save->order.say (GTK_WIDGET (owner), text, error != NULL);
}

static void
file_chosen_cb (GtkNativeDialog *chooser, int response, Save *save)
{
  if (response == GTK_RESPONSE_ACCEPT) {
    save->file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (chooser));
    fm_store_task (&(FmStoreTask){
        .owner = save->order.owner,
        .run = write_file,
        .data = save,
        .free_data = (GDestroyNotify)save_free,
        .done = written_cb,
    });
  } else {
    save_free (save);
  }
  g_object_unref (chooser);
}

char *
fm_print_file_name (const char *name, const char *ending)
{
  return g_strdelimit (g_strdup_printf ("%s.%s", name, ending), "/", '-');
}

GBytes *
fm_print_make_text (gpointer text, const char *name, GError **error)
{
  return g_bytes_new (text, strlen (text));
}

void
fm_print_save (const FmPrintSave *order)
{
  GtkFileChooserNative *chooser =
      gtk_file_chooser_native_new (order->title, GTK_WINDOW (gtk_widget_get_root (order->owner)),
                                   GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), _ ("_Cancel"));
  Save *save = g_new0 (Save, 1);

  save->order = *order;
  g_object_ref (order->owner);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), order->name);
  /* The chooser and the order live until the answer. */
  g_signal_connect (chooser, "response", G_CALLBACK (file_chosen_cb), save);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static GBytes *
make_pdf (gpointer sheet, const char *name, GError **error)
{
  return fm_batch_sheet_to_pdf (sheet, error);
}

void
fm_batch_sheet_save_pdf (GtkWidget *owner,
                         FmBatchSheet *sheet,
                         const char *name,
                         FmBatchSheetSay say)
{
  /* Translators: "Batch Sheet", "Taster Sheets" ... */
  g_autofree char *title = g_strdup_printf (_ ("Save %s"), sheet->what);

  fm_print_save (&(FmPrintSave){ owner, title, name, make_pdf, sheet,
                                 (GDestroyNotify)fm_batch_sheet_free, say });
}
