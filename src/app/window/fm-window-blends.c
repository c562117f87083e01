/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-blends.c - making, naming and removing blends; saving and branching versions */
#include <glib/gi18n-lib.h>

#include "app/session/fm-store-task.h"
#include "app/versions/fm-save-version-dialog.h"
#include "app/window/fm-window-private.h"

typedef enum {
  BLEND_ADD,
  BLEND_RENAME,
  BLEND_REMOVE,
} BlendAct;

typedef struct {
  BlendAct act;
  gint64 blend_id;
  char *name;
} BlendOrder;

static void
blend_order_free (BlendOrder *order)
{
  g_free (order->name);
  g_free (order);
}

static gpointer
do_blend_act (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  BlendOrder *order = data;

  switch (order->act) {
  case BLEND_ADD:
    order->blend_id = fm_blends_add (notebook, order->name, error);
    return GINT_TO_POINTER (order->blend_id != 0);
  case BLEND_RENAME:
    return GINT_TO_POINTER (fm_blends_rename (notebook, order->blend_id, order->name, error));
  case BLEND_REMOVE:
    return GINT_TO_POINTER (fm_blends_remove (notebook, order->blend_id, error));
  }
  g_return_val_if_reached (NULL);
}

static void
tell_of_blend_act (FmWindow *self, const BlendOrder *order)
{
  switch (order->act) {
  case BLEND_ADD:
    fm_session_emit_changed (self->session, FM_CHANGE_BLEND, order->blend_id);
    self->begins = TRUE;
    fm_session_show_blend (self->session, order->blend_id);
    adw_view_stack_set_visible_child_name (self->stack, "formula");
    adw_leaflet_set_visible_child_name (self->leaflet, "work");
    break;
  case BLEND_RENAME:
    fm_session_blend_renamed (self->session, order->blend_id, order->name);
    break;
  case BLEND_REMOVE:
    fm_session_blend_removed (self->session, order->blend_id);
    break;
  }
}

static void
blend_done_cb (GObject *source, GAsyncResult *result, gpointer notebook)
{
  FmWindow *self = FM_WINDOW (source);
  g_autoptr (GError) error = NULL;
  const gboolean done = fm_store_task_finish (result, &error) != NULL;

  if (self->session == NULL || notebook != fm_session_get_notebook (self->session))
    return;
  if (done)
    tell_of_blend_act (self, fm_store_task_data (result));
  else
    fm_session_failure (self->session, error);
}

static void
start_blend_act (FmWindow *self, BlendAct act, gint64 blend_id, const char *name)
{
  FmNotebook *notebook = fm_session_get_notebook (self->session);
  BlendOrder *order = g_new0 (BlendOrder, 1);

  order->act = act;
  order->blend_id = blend_id;
  order->name = g_strdup (name);
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = notebook,
      .run = do_blend_act,
      .data = order,
      .free_data = (GDestroyNotify)blend_order_free,
      .done = blend_done_cb,
      .user_data = notebook, /* only compared */
  });
}

static gboolean
is_writable (FmWindow *self)
{
  FmNotebook *notebook = fm_session_get_notebook (self->session);

  return notebook != NULL && !fm_notebook_is_read_only (notebook);
}

static void
name_changed_cb (GtkEditable *entry, AdwMessageDialog *dialog)
{
  g_autofree char *text = g_strdup (gtk_editable_get_text (entry));

  adw_message_dialog_set_response_enabled (dialog, "accept", *g_strstrip (text) != '\0');
}

static void
name_response_cb (AdwMessageDialog *dialog, const char *response, FmWindow *self)
{
  GtkEditable *entry = GTK_EDITABLE (adw_message_dialog_get_extra_child (dialog));
  gint64 *blend_id = g_object_get_data (G_OBJECT (dialog), "blend-id");
  g_autofree char *name = g_strdup (gtk_editable_get_text (entry));

  if (!g_str_equal (response, "accept") || !is_writable (self))
    return;
  start_blend_act (self, *blend_id == 0 ? BLEND_ADD : BLEND_RENAME, *blend_id, g_strstrip (name));
}

static void
ask_name (FmWindow *self, gint64 blend_id, const char *name)
{
  GtkWidget *dialog = adw_message_dialog_new (
      GTK_WINDOW (self), blend_id == 0 ? _ ("New Blend") : _ ("Rename Blend"), NULL);
  GtkWidget *entry = gtk_entry_new ();

  if (blend_id == 0)
    adw_message_dialog_set_body (ADW_MESSAGE_DIALOG (dialog),
                                 _ ("Name the line of development, for example after its cuts."));
  gtk_editable_set_text (GTK_EDITABLE (entry), name != NULL ? name : "");
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_entry_set_max_length (GTK_ENTRY (entry), 200);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Name of the blend"), -1);
  adw_message_dialog_set_extra_child (ADW_MESSAGE_DIALOG (dialog), entry);
  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "cancel", _ ("Cancel"), "accept",
                                    blend_id == 0 ? _ ("Create") : _ ("Rename"), NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "accept",
                                              ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "accept");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  g_object_set_data_full (G_OBJECT (dialog), "blend-id", g_memdup2 (&blend_id, sizeof blend_id),
                          g_free);
  g_signal_connect (entry, "changed", G_CALLBACK (name_changed_cb), dialog);
  name_changed_cb (GTK_EDITABLE (entry), ADW_MESSAGE_DIALOG (dialog));
  g_signal_connect_object (dialog, "response", G_CALLBACK (name_response_cb), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
  gtk_widget_grab_focus (entry);
}

static void
new_blend_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  ask_name (FM_WINDOW (widget), 0, NULL);
}

static void
rename_blend_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gint64 blend_id;
  const char *blend;

  g_variant_get (parameter, "(x&s)", &blend_id, &blend);
  ask_name (FM_WINDOW (widget), blend_id, blend);
}

static void
remove_response_cb (AdwMessageDialog *dialog, const char *response, FmWindow *self)
{
  gint64 *blend_id = g_object_get_data (G_OBJECT (dialog), "blend-id");

  if (g_str_equal (response, "remove") && is_writable (self))
    start_blend_act (self, BLEND_REMOVE, *blend_id, NULL);
}

static void
remove_blend_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkWidget *dialog;
  gint64 blend_id;
  const char *blend;

  g_variant_get (parameter, "(x&s)", &blend_id, &blend);
  dialog = adw_message_dialog_new (GTK_WINDOW (widget), _ ("Remove the Blend?"), NULL);
  adw_message_dialog_format_body (
      ADW_MESSAGE_DIALOG (dialog),
      _ ("“%s” with its draft and all its versions leaves the notebook. This cannot be undone. "
         "A blend with experiments is kept."),
      blend);
  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "keep", _ ("Keep"), "remove",
                                    _ ("Remove"), NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "remove",
                                              ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "keep");
  g_object_set_data_full (G_OBJECT (dialog), "blend-id", g_memdup2 (&blend_id, sizeof blend_id),
                          g_free);
  g_signal_connect_object (dialog, "response", G_CALLBACK (remove_response_cb), widget, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
save_version_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmWindow *self = FM_WINDOW (widget);

  fm_session_seal (self->session);
  gtk_window_present (GTK_WINDOW (fm_save_version_dialog_new (GTK_WINDOW (self), self->session)));
}

static void
show_draft_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  fm_session_show_draft (FM_WINDOW (widget)->session);
}

static void
branch (FmWindow *self, gint64 version_id)
{
  fm_session_branch (self->session, version_id);
  adw_view_stack_set_visible_child_name (self->stack, "formula");
  adw_leaflet_set_visible_child_name (self->leaflet, "work");
}

static void
branch_response_cb (AdwMessageDialog *dialog, const char *response, FmWindow *self)
{
  gint64 *version_id = g_object_get_data (G_OBJECT (dialog), "version-id");

  if (g_str_equal (response, "replace")) {
    branch (self, *version_id);
  } else if (g_str_equal (response, "save")) {
    fm_session_show_draft (self->session);
    gtk_widget_activate_action (GTK_WIDGET (self), "win.save-version", NULL);
  }
}

static void
ask_before_branch (FmWindow *self, gint64 version_id)
{
  GtkWidget *dialog =
      adw_message_dialog_new (GTK_WINDOW (self), _ ("Replace the Draft?"),
                              _ ("The draft has changes that are in no version yet. Save them as a "
                                 "version first, or replace them; undo brings them back until "
                                 "the window is closed."));

  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog), "cancel", _ ("Cancel"), "replace",
                                    _ ("Replace the Draft"), "save", _ ("Save It First…"), NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog), "replace",
                                              ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "save");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  g_object_set_data_full (G_OBJECT (dialog), "version-id",
                          g_memdup2 (&version_id, sizeof version_id), g_free);
  g_signal_connect_object (dialog, "response", G_CALLBACK (branch_response_cb), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
start_branch (FmWindow *self, gint64 version_id)
{
  if (!is_writable (self) || version_id == 0)
    return;
  if (fm_session_has_draft_changes (self->session))
    ask_before_branch (self, version_id);
  else
    branch (self, version_id);
}

static void
branch_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  start_branch (FM_WINDOW (widget), g_variant_get_int64 (parameter));
}

static void
branch_shown_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmWindow *self = FM_WINDOW (widget);

  start_branch (self, fm_session_get_version_id (self->session));
}

void
fm_window_install_blend_actions (GtkWidgetClass *klass)
{
  gtk_widget_class_install_action (klass, "win.new-blend", NULL, new_blend_action);
  gtk_widget_class_install_action (klass, "win.rename-blend", "(xs)", rename_blend_action);
  gtk_widget_class_install_action (klass, "win.remove-blend", "(xs)", remove_blend_action);
  gtk_widget_class_install_action (klass, "win.save-version", NULL, save_version_action);
  gtk_widget_class_install_action (klass, "win.show-draft", NULL, show_draft_action);
  gtk_widget_class_install_action (klass, "win.branch", "x", branch_action);
  gtk_widget_class_install_action (klass, "win.branch-shown", NULL, branch_shown_action);
}
