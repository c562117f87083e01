/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-sheet-tools.c - papers of an arranged tasting, and the way into blind mode */
#include "app/tastings/fm-tasting-sheet-tools.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/print/fm-batch-sheet-print.h"
#include "app/session/fm-notebook-settings.h"
#include "app/tastings/fm-tasting-blind-window.h"
#include "app/tastings/fm-tasting-cautions.h"
#include "app/tastings/fm-tasting-key-window.h"
#include "app/tastings/fm-tasting-reason.h"
#include "app/tastings/fm-tasting-text.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"
#include "core/base/fm-date.h"
#include "report/fm-taster-sheet.h"

struct _FmTastingSheetTools {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkWidget *blind_button;
  GtkWidget *key_button;
  GtkLabel *say_label;

  FmTastingDocument *document;
  FmTastingDocument *key_document; /* whose key sheet is on its way to paper or a file */
  GCancellable *checking;          /* while the record of the samples is read, before blind mode */
};

G_DEFINE_FINAL_TYPE (FmTastingSheetTools, fm_tasting_sheet_tools, GTK_TYPE_WIDGET)

static FmTasting *
get_tasting (FmTastingSheetTools *self)
{
  return fm_tasting_document_get_tasting (self->document);
}

static void
refresh (FmTastingSheetTools *self)
{
  const gboolean editable = fm_tasting_document_is_editable (self->document);

  gtk_widget_set_visible (self->blind_button, fm_tasting_is_sealed (get_tasting (self)));
  gtk_widget_set_sensitive (self->blind_button,
                            editable &&
                                fm_tasting_n_sheets (get_tasting (self), FM_SHEET_WAITED_FOR) > 0);
  /* It has to be written down that it was made. */
  gtk_widget_set_sensitive (self->key_button, editable);
}

static void
say (GtkWidget *owner, const char *text, gboolean failed)
{
  FmTastingSheetTools *self = FM_TASTING_SHEET_TOOLS (owner);

  if (self->say_label == NULL)
    return;
  fm_widget_set_label (self->say_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->say_label), *text != '\0');
}

static void
say_of_key (GtkWidget *owner, const char *text, gboolean failed)
{
  FmTastingSheetTools *self = FM_TASTING_SHEET_TOOLS (owner);

  if (!failed && self->key_document != NULL) {
    fm_tasting_document_record (self->key_document, FM_TASTING_EVENT_KEY_SHEET, NULL);
    fm_tasting_document_flush (self->key_document);
  }
  say (owner, text, failed);
}

static char *
get_file_name (FmTastingSheetTools *self, const char *what)
{
  g_autofree char *name =
      g_strdup_printf ("%s - %s", fm_tasting_text_title (get_tasting (self)->title), what);

  return fm_print_file_name (name, "pdf");
}

static FmBatchSheet *
new_sheets (FmTastingSheetTools *self)
{
  g_autofree char *date = fm_date_text (get_tasting (self)->held_at);
  FmBatchSheet *sheets = fm_taster_sheets_new (get_tasting (self), date);

  sheets->notice = fm_notebook_notice ();
  return sheets;
}

static FmBatchSheet *
new_key_sheet (FmTastingSheetTools *self)
{
  g_autofree char *date = fm_date_text (get_tasting (self)->held_at);
  FmBatchSheet *sheet = fm_taster_key_sheet_new (get_tasting (self), date);

  sheet->notice = fm_notebook_notice ();
  return sheet;
}

static void
print_clicked_cb (FmTastingSheetTools *self)
{
  fm_batch_sheet_print (GTK_WIDGET (self), new_sheets (self), say);
}

static void
save_clicked_cb (FmTastingSheetTools *self)
{
  g_autofree char *name = get_file_name (self, _ ("Taster Sheets"));

  fm_batch_sheet_save_pdf (GTK_WIDGET (self), new_sheets (self), name, say);
}

/* It is on record before it is seen. */
static void
show_key (FmTastingSheetTools *self, const char *helper)
{
  g_autoptr (FmBatchSheet) sheet = new_key_sheet (self);
  g_autofree char *key = fm_batch_sheet_text (sheet);

  fm_tasting_document_record (self->document, FM_TASTING_EVENT_KEY_SHEET, helper);
  fm_tasting_document_flush (self->document);
  fm_tasting_key_window_show (helper, key);
}

static void
helper_answered_cb (AdwMessageDialog *dialog, const char *response, FmTastingSheetTools *self)
{
  g_autofree char *helper = g_strstrip (g_strdup (fm_tasting_reason_dialog_get (dialog)));

  if (self->document == NULL || !g_str_equal (response, "go"))
    return;
  if (fm_tasting_find_taster (get_tasting (self), helper) >= 0) {
    /* Translators: name of a taster */
    g_autofree char *text = g_strdup_printf (
        _ ("%s tastes, so the key is not shown: who has seen it cannot taste blind."), helper);

    say (GTK_WIDGET (self), text, TRUE);
    return;
  }
  show_key (self, helper);
}

static void
ask_helper (FmTastingSheetTools *self)
{
  AdwMessageDialog *dialog = fm_tasting_reason_dialog_new (
      GTK_WIDGET (self), _ ("Show the Key to a Helper?"),
      _ ("It stays on the screen until the helper closes it. The helper must not taste, and who "
         "tastes leaves the desk meanwhile. The helper’s name and the time are kept with the "
         "tasting."),
      _ ("_Cancel"), _ ("_Show the Key"), _ ("Name of the helper"));

  g_signal_connect_object (dialog, "response", G_CALLBACK (helper_answered_cb), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
key_answered_cb (FmTastingSheetTools *self, const char *response)
{
  FmBatchSheet *sheet;

  if (self->document == NULL || g_str_equal (response, "close"))
    return;
  if (g_str_equal (response, "show")) {
    ask_helper (self);
    return;
  }
  sheet = new_key_sheet (self);
  g_set_object (&self->key_document, self->document);
  if (g_str_equal (response, "print")) {
    fm_batch_sheet_print (GTK_WIDGET (self), sheet, say_of_key);
  } else {
    g_autofree char *name = get_file_name (self, _ ("Key Sheet"));

    fm_batch_sheet_save_pdf (GTK_WIDGET (self), sheet, name, say_of_key);
  }
}

static void
key_clicked_cb (FmTastingSheetTools *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *dialog = adw_message_dialog_new (
      GTK_WINDOW (root), _ ("Key Sheet for the Kitchen"),
      _ ("It tells which code is which sample. It is for the kitchen only: nobody who tastes or "
         "types the sheets may see it. That it was made or shown is written down with the "
         "tasting."));

  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "close", _ ("_Cancel"), "show",
                                    _ ("_Show to a Helper…"), "pdf", _ ("_Save as PDF…"), "print",
                                    _ ("_Print…"), NULL);
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "close");
  g_signal_connect_object (dialog, "response", G_CALLBACK (key_answered_cb), self,
                           G_CONNECT_SWAPPED);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
checked_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmTastingSheetTools *self = FM_TASTING_SHEET_TOOLS (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) cautions = fm_tasting_cautions_read_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) || self->document == NULL)
    return;
  g_clear_object (&self->checking);
  if (cautions == NULL)
    say (GTK_WIDGET (self), error->message, TRUE);
  else if (fm_tasting_is_sealed (get_tasting (self)))
    fm_tasting_blind_window_begin (self->document, cautions);
}

static void
blind_clicked_cb (FmTastingSheetTools *self)
{
  if (self->checking != NULL)
    return;
  fm_tasting_document_flush (self->document);
  self->checking = g_cancellable_new ();
  fm_tasting_cautions_read_async (self->document, self, self->checking, checked_cb, NULL);
}

static void
leave_document (FmTastingSheetTools *self)
{
  g_cancellable_cancel (self->checking);
  g_clear_object (&self->checking);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
}

static void
fm_tasting_sheet_tools_dispose (GObject *object)
{
  FmTastingSheetTools *self = FM_TASTING_SHEET_TOOLS (object);

  leave_document (self);
  g_clear_object (&self->key_document);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_TASTING_SHEET_TOOLS);
  G_OBJECT_CLASS (fm_tasting_sheet_tools_parent_class)->dispose (object);
}

static void
fm_tasting_sheet_tools_class_init (FmTastingSheetToolsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_sheet_tools_dispose;
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-sheet-tools.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheetTools, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheetTools, blind_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheetTools, key_button);
  gtk_widget_class_bind_template_child (widget_class, FmTastingSheetTools, say_label);
  gtk_widget_class_bind_template_callback (widget_class, blind_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, print_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, save_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, key_clicked_cb);
}

static void
fm_tasting_sheet_tools_init (FmTastingSheetTools *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_tasting_sheet_tools_set_document (FmTastingSheetTools *self, FmTastingDocument *document)
{
  g_return_if_fail (FM_IS_TASTING_SHEET_TOOLS (self));
  leave_document (self);
  if (document == NULL)
    return;
  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  say (GTK_WIDGET (self), "", FALSE);
  refresh (self);
}
