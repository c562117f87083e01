/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-paper-window.c - a window beside the sheet that it makes: parent of those that go to paper */
#include "app/print/fm-paper-window.h"

#include "app/print/fm-batch-sheet-print.h"
#include "app/widgets/fm-widget.h"

typedef struct {
  GtkLabel *message;            /* of the template; NULL once that is gone, as the next */
  FmBatchSheetPreview *preview; /* keeps what is shown */
  char *name;
} FmPaperWindowPrivate;

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (FmPaperWindow, fm_paper_window, ADW_TYPE_WINDOW)

static FmPaperWindowPrivate *
get (FmPaperWindow *self)
{
  return fm_paper_window_get_instance_private (self);
}

/* (transfer full) (nullable) */
static FmBatchSheet *
sheet_to_keep (FmPaperWindow *self)
{
  FmBatchSheet *sheet = fm_batch_sheet_preview_get_sheet (get (self)->preview);

  return fm_paper_window_may_keep (self) && sheet != NULL ? fm_batch_sheet_ref (sheet) : NULL;
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmBatchSheet *sheet = sheet_to_keep (FM_PAPER_WINDOW (widget));

  if (sheet != NULL)
    fm_batch_sheet_print (widget, sheet, fm_paper_window_say);
}

static void
save_pdf_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmPaperWindow *self = FM_PAPER_WINDOW (widget);
  FmBatchSheet *sheet = sheet_to_keep (self);
  g_autofree char *file = fm_paper_window_file_name (self, "pdf");

  if (sheet != NULL)
    fm_batch_sheet_save_pdf (widget, sheet, file, fm_paper_window_say);
}

static void
allow_paper (FmPaperWindow *self, gboolean allowed)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "sheet.print", allowed);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "sheet.save-pdf", allowed);
}

static void
fm_paper_window_dispose (GObject *object)
{
  FmPaperWindowPrivate *priv = get (FM_PAPER_WINDOW (object));

  g_clear_weak_pointer (&priv->message);
  g_clear_weak_pointer (&priv->preview);
  g_clear_pointer (&priv->name, g_free);
  G_OBJECT_CLASS (fm_paper_window_parent_class)->dispose (object);
}

static void
fm_paper_window_class_init (FmPaperWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_paper_window_dispose;
  gtk_widget_class_install_action (widget_class, "sheet.print", NULL, print_action);
  gtk_widget_class_install_action (widget_class, "sheet.save-pdf", NULL, save_pdf_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_p, GDK_CONTROL_MASK, "sheet.print",
                                       NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fm_paper_window_init (FmPaperWindow *self)
{
  allow_paper (self, FALSE);
}

void
fm_paper_window_set_parts (FmPaperWindow *self, GtkLabel *message, FmBatchSheetPreview *preview)
{
  g_return_if_fail (FM_IS_PAPER_WINDOW (self));
  g_set_weak_pointer (&get (self)->message, message);
  g_set_weak_pointer (&get (self)->preview, preview);
}

void
fm_paper_window_set_name (FmPaperWindow *self, const char *const *parts)
{
  g_return_if_fail (FM_IS_PAPER_WINDOW (self));
  g_free (get (self)->name);
  get (self)->name = g_strjoinv (", ", (char **)parts);
}

void
fm_paper_window_show (FmPaperWindow *self, FmBatchSheet *sheet, const GError *error)
{
  g_return_if_fail (FM_IS_PAPER_WINDOW (self));
  fm_batch_sheet_preview_set_sheet (get (self)->preview, sheet);
  fm_paper_window_say (GTK_WIDGET (self), error != NULL ? error->message : "", error != NULL);
  allow_paper (self, sheet != NULL);
  g_clear_pointer (&sheet, fm_batch_sheet_free);
}

void
fm_paper_window_say (GtkWidget *self, const char *text, gboolean failed)
{
  GtkLabel *message;

  g_return_if_fail (FM_IS_PAPER_WINDOW (self));
  message = get (FM_PAPER_WINDOW (self))->message;
  if (message == NULL) /* closed meanwhile */
    return;
  gtk_label_set_text (message, text);
  gtk_widget_set_visible (GTK_WIDGET (message), *text != '\0');
  fm_widget_set_class (GTK_WIDGET (message), "error", failed);
}

gboolean
fm_paper_window_may_keep (FmPaperWindow *self)
{
  const FmPaperWindowClass *klass;
  const char *bad;

  g_return_val_if_fail (FM_IS_PAPER_WINDOW (self), FALSE);
  klass = FM_PAPER_WINDOW_GET_CLASS (self);
  bad = klass->bad_text != NULL ? klass->bad_text (self) : NULL;
  if (bad != NULL)
    fm_paper_window_say (GTK_WIDGET (self), bad, TRUE);
  return bad == NULL;
}

char *
fm_paper_window_file_name (FmPaperWindow *self, const char *ending)
{
  g_return_val_if_fail (FM_IS_PAPER_WINDOW (self), NULL);
  return fm_print_file_name (get (self)->name, ending);
}
