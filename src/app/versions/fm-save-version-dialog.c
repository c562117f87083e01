/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-save-version-dialog.c - asks for the reason before a draft becomes a version */
#include "app/versions/fm-save-version-dialog.h"

#include <glib/gi18n-lib.h>

struct _FmSaveVersionDialog {
  AdwWindow parent_instance;

  GtkEditable *reason_row;
  GtkWidget *unchanged_label;

  FmSession *session;
};

G_DEFINE_FINAL_TYPE (FmSaveVersionDialog, fm_save_version_dialog, ADW_TYPE_WINDOW)

static char *
get_reason (FmSaveVersionDialog *self)
{
  return g_strstrip (g_strdup (gtk_editable_get_text (self->reason_row)));
}

static void
reason_changed_cb (FmSaveVersionDialog *self)
{
  g_autofree char *reason = get_reason (self);

  gtk_widget_action_set_enabled (GTK_WIDGET (self), "dialog.save", *reason != '\0');
}

static void
save_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmSaveVersionDialog *self = FM_SAVE_VERSION_DIALOG (widget);
  g_autofree char *reason = get_reason (self);

  if (*reason == '\0')
    return;
  fm_session_save_version (self->session, reason);
  gtk_window_close (GTK_WINDOW (self));
}

static void
cancel_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_window_close (GTK_WINDOW (widget));
}

static void
reason_activated_cb (FmSaveVersionDialog *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "dialog.save", NULL);
}

static void
fm_save_version_dialog_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (fm_save_version_dialog_parent_class)->map (widget);
  gtk_widget_grab_focus (GTK_WIDGET (FM_SAVE_VERSION_DIALOG (widget)->reason_row));
}

static void
fm_save_version_dialog_dispose (GObject *object)
{
  FmSaveVersionDialog *self = FM_SAVE_VERSION_DIALOG (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_SAVE_VERSION_DIALOG);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_save_version_dialog_parent_class)->dispose (object);
}

static void
fm_save_version_dialog_class_init (FmSaveVersionDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_save_version_dialog_dispose;
  widget_class->map = fm_save_version_dialog_map;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/versions/fm-save-version-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, FmSaveVersionDialog, reason_row);
  gtk_widget_class_bind_template_child (widget_class, FmSaveVersionDialog, unchanged_label);
  gtk_widget_class_bind_template_callback (widget_class, reason_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, reason_activated_cb);
  gtk_widget_class_install_action (widget_class, "dialog.save", NULL, save_action);
  gtk_widget_class_install_action (widget_class, "dialog.cancel", NULL, cancel_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "dialog.cancel", NULL);
}

static void
fm_save_version_dialog_init (FmSaveVersionDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  reason_changed_cb (self);
}

FmSaveVersionDialog *
fm_save_version_dialog_new (GtkWindow *parent, FmSession *session)
{
  FmSaveVersionDialog *self =
      g_object_new (FM_TYPE_SAVE_VERSION_DIALOG, "transient-for", parent, NULL);

  self->session = g_object_ref (session);
  gtk_widget_set_visible (self->unchanged_label, !fm_session_has_draft_changes (session));
  return self;
}
