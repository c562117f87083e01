/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-key-window.c - which code is which sample, for a helper's eyes, until it is closed */
#include "app/tastings/fm-tasting-key-window.h"

#include <glib/gi18n-lib.h>

#include "app/tastings/fm-tasting-cover.h"

struct _FmTastingKeyWindow {
  GtkWindow parent_instance;

  GtkLabel *heading_label;
  GtkLabel *key_label;
  GtkWidget *close_button;

  GPtrArray *hidden; /* GtkWindow */
};

G_DEFINE_FINAL_TYPE (FmTastingKeyWindow, fm_tasting_key_window, GTK_TYPE_WINDOW)

static gboolean
close_request_cb (FmTastingKeyWindow *self)
{
  fm_tasting_cover_end (self->hidden);
  return FALSE;
}

static void
fm_tasting_key_window_dispose (GObject *object)
{
  g_clear_pointer (&FM_TASTING_KEY_WINDOW (object)->hidden, g_ptr_array_unref);
  G_OBJECT_CLASS (fm_tasting_key_window_parent_class)->dispose (object);
}

static void
fm_tasting_key_window_class_init (FmTastingKeyWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_key_window_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-key-window.ui");
  gtk_widget_class_bind_template_child (widget_class, FmTastingKeyWindow, heading_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingKeyWindow, key_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingKeyWindow, close_button);
  gtk_widget_class_bind_template_callback (widget_class, close_request_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fm_tasting_key_window_init (FmTastingKeyWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_tasting_key_window_show (const char *helper, const char *key)
{
  FmTastingKeyWindow *self = g_object_new (FM_TYPE_TASTING_KEY_WINDOW, NULL);
  /* Translators: name of a helper */
  g_autofree char *heading = g_strdup_printf (_ ("The key, for %s only"), helper);

  gtk_label_set_text (self->heading_label, heading);
  gtk_label_set_text (self->key_label, key);
  self->hidden = fm_tasting_cover_begin (GTK_WINDOW (self));
  gtk_window_fullscreen (GTK_WINDOW (self));
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (self->close_button);
}
