/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-sheet-window.c - a document of the notebook: what goes into it, a preview, paper and PDF */
#include "app/documents/fm-sheet-window.h"

struct _FmSheetWindow {
  FmPaperWindow parent_instance;

  GtkLabel *message_label;
  GtkBox *options_box;
  FmBatchSheetPreview *preview;

  FmSheetOrder order;
  GCancellable *making;
};

G_DEFINE_FINAL_TYPE (FmSheetWindow, fm_sheet_window, FM_TYPE_PAPER_WINDOW)

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
  fm_paper_window_show (FM_PAPER_WINDOW (self), sheet, error);
}

static void
renew_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmSheetWindow *self = FM_SHEET_WINDOW (widget);
  gpointer order = self->order.new_order (self->order.options);

  stop_making (self);
  if (order == NULL) {
    fm_paper_window_show (FM_PAPER_WINDOW (self), NULL, NULL);
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
fm_sheet_window_dispose (GObject *object)
{
  FmSheetWindow *self = FM_SHEET_WINDOW (object);

  stop_making (self);
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_SHEET_WINDOW);
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
}

static void
fm_sheet_window_init (FmSheetWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_paper_window_set_parts (FM_PAPER_WINDOW (self), self->message_label, self->preview);
}

void
fm_sheet_window_present (GtkWidget *parent, const FmSheetOrder *order)
{
  FmSheetWindow *self = g_object_new (FM_TYPE_SHEET_WINDOW, "title", order->title, "transient-for",
                                      gtk_widget_get_root (parent), NULL);

  self->order = *order;
  g_object_ref (self->order.session);
  fm_paper_window_set_name (FM_PAPER_WINDOW (self), (const char *const[]){ order->title, NULL });
  gtk_box_append (self->options_box, order->options);
  gtk_widget_activate_action (GTK_WIDGET (self), "sheet.renew", NULL);
  gtk_window_present (GTK_WINDOW (self));
}
