/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-derivation-window.c - where a figure comes from, to read and to copy */
#include "app/widgets/fm-derivation-window.h"

#include <glib/gi18n-lib.h>

struct _FmDerivationWindow {
  AdwWindow parent_instance;

  GtkLabel *figure_label;
  GtkTextView *text_view;
  GtkButton *copy_button;
};

G_DEFINE_FINAL_TYPE (FmDerivationWindow, fm_derivation_window, ADW_TYPE_WINDOW)

static void
copy_cb (FmDerivationWindow *self)
{
  g_autofree char *text = NULL;

  g_object_get (gtk_text_view_get_buffer (self->text_view), "text", &text, NULL);
  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (self)), text);
  gtk_button_set_label (self->copy_button, _ ("Copied"));
}

static void
fm_derivation_window_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_DERIVATION_WINDOW);
  G_OBJECT_CLASS (fm_derivation_window_parent_class)->dispose (object);
}

static void
fm_derivation_window_class_init (FmDerivationWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_derivation_window_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/widgets/fm-derivation-window.ui");
  gtk_widget_class_bind_template_child (widget_class, FmDerivationWindow, figure_label);
  gtk_widget_class_bind_template_child (widget_class, FmDerivationWindow, text_view);
  gtk_widget_class_bind_template_child (widget_class, FmDerivationWindow, copy_button);
  gtk_widget_class_bind_template_callback (widget_class, copy_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fm_derivation_window_init (FmDerivationWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_derivation_window_show (GtkWidget *parent, const char *figure, const char *text)
{
  FmDerivationWindow *self =
      g_object_new (FM_TYPE_DERIVATION_WINDOW, "transient-for", gtk_widget_get_root (parent), NULL);

  gtk_label_set_text (self->figure_label, figure);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->text_view), text, -1);
  gtk_window_present (GTK_WINDOW (self));
}
