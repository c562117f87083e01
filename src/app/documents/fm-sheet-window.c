/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-sheet-window.c - a document of the notebook: what goes into it, a preview, paper and PDF */
#include "app/documents/fm-sheet-window.h"

#include <glib/gi18n-lib.h>

#include "app/print/fm-batch-sheet-preview.h"
#include "app/print/fm-batch-sheet-print.h"
#include "app/widgets/fm-widget.h"

struct _FmSheetWindow {
  AdwWindow parent_instance;

  GtkLabel *message_label;
  GtkBox *options_box;
  FmBatchSheetPreview *preview;

  FmSheetOrder order;
  char *title;
  FmBatchSheet *sheet; /* (nullable) shown */
  GCancellable *making;
};

G_DEFINE_FINAL_TYPE (FmSheetWindow, fm_sheet_window, ADW_TYPE_WINDOW)

static void
say (GtkWidget *widget, const char *text, gboolean failed)
{
  FmSheetWindow *self = FM_SHEET_WINDOW (widget);

  gtk_label_set_text (self->message_label, text);
  gtk_widget_set_visible (GTK_WIDGET (self->message_label), *text != '\0');
  fm_widget_set_class (GTK_WIDGET (self->message_label), "error", failed);
}

/* (transfer full) sheet */
static void
show_sheet (FmSheetWindow *self, FmBatchSheet *sheet)
{
  fm_batch_sheet_preview_set_sheet (self->preview, sheet);
  g_clear_pointer (&self->sheet, fm_batch_sheet_free);
  self->sheet = sheet;
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "sheet.print", sheet != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "sheet.save-pdf", sheet != NULL);
}

static void
stop_making (FmSheetWindow *self)
{
  g_cancellable_cancel (self->making);
  g_clear_object (&self->making);
}

static void
made_cb (GObject *owner, GAsyncResult *result, gpointer data)
{
  FmSheetWindow *self = FM_SHEET_WINDOW (owner);
  g_autoptr (GError) error = NULL;
  FmBatchSheet *sheet = fm_store_task_finish (result, &error);

  if (g_task_get_cancellable (G_TASK (result)) != self->making || self->preview == NULL) {
    g_clear_pointer (&sheet, fm_batch_sheet_free);
    return;
  }
  g_clear_object (&self->making);
  show_sheet (self, sheet);
  say (GTK_WIDGET (self), error != NULL ? error->message : "", error != NULL);
}

static void
renew_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmSheetWindow *self = FM_SHEET_WINDOW (widget);
  gpointer order = self->order.new_order (self->order.options);

  stop_making (self);
  if (order == NULL) {
    show_sheet (self, NULL);
    return;
  }
  self->making = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = fm_session_get_notebook (self->order.session),
      .run = self->order.make,
      .free_result = (GDestroyNotify)fm_batch_sheet_free,
      .data = order,
      .free_data = self->order.free_order,
      .cancellable = self->making,
      .done = made_cb,
  });
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_batch_sheet_print (widget, fm_batch_sheet_ref (FM_SHEET_WINDOW (widget)->sheet), say);
}

static void
save_pdf_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmSheetWindow *self = FM_SHEET_WINDOW (widget);
  g_autofree char *file = g_strconcat (self->title, ".pdf", NULL);

  fm_batch_sheet_save_pdf (widget, fm_batch_sheet_ref (self->sheet), g_strdelimit (file, "/", '-'),
                           say);
}

static void
fm_sheet_window_dispose (GObject *object)
{
  FmSheetWindow *self = FM_SHEET_WINDOW (object);

  stop_making (self);
  if (self->preview != NULL)
    fm_batch_sheet_preview_set_sheet (self->preview, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_SHEET_WINDOW);
  g_clear_pointer (&self->sheet, fm_batch_sheet_free);
  g_clear_pointer (&self->title, g_free);
  g_clear_object (&self->order.session);
  G_OBJECT_CLASS (fm_sheet_window_parent_class)->dispose (object);
}

static void
fm_sheet_window_class_init (FmSheetWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_sheet_window_dispose;
  g_type_ensure (FM_TYPE_BATCH_SHEET_PREVIEW);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/documents/fm-sheet-window.ui");
  gtk_widget_class_bind_template_child (widget_class, FmSheetWindow, message_label);
  gtk_widget_class_bind_template_child (widget_class, FmSheetWindow, options_box);
  gtk_widget_class_bind_template_child (widget_class, FmSheetWindow, preview);
  gtk_widget_class_install_action (widget_class, "sheet.renew", NULL, renew_action);
  gtk_widget_class_install_action (widget_class, "sheet.print", NULL, print_action);
  gtk_widget_class_install_action (widget_class, "sheet.save-pdf", NULL, save_pdf_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_p, GDK_CONTROL_MASK, "sheet.print",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fm_sheet_window_init (FmSheetWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "sheet.print", FALSE);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "sheet.save-pdf", FALSE);
}

void
fm_sheet_window_present (GtkWidget *parent, const FmSheetOrder *order)
{
  FmSheetWindow *self = g_object_new (FM_TYPE_SHEET_WINDOW, "title", order->title, "transient-for",
                                      gtk_widget_get_root (parent), NULL);

  self->order = *order;
  g_object_ref (self->order.session);
  self->title = g_strdup (order->title);
  gtk_box_append (self->options_box, order->options);
  gtk_widget_activate_action (GTK_WIDGET (self), "sheet.renew", NULL);
  gtk_window_present (GTK_WINDOW (self));
}
