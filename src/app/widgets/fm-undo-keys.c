/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-undo-keys.c - undo and redo by keyboard: of what was typed first, then of the page */
#include "app/widgets/fm-undo-keys.h"

/* Whether an entry has something to take back shows only in that it does. */
static gboolean
change_text (GtkText *text, const char *action)
{
  g_autofree char *before = g_strdup (gtk_editable_get_text (GTK_EDITABLE (text)));

  if (!gtk_editable_get_enable_undo (GTK_EDITABLE (text)))
    return FALSE;
  gtk_widget_activate_action (GTK_WIDGET (text), action, NULL);
  return !g_str_equal (gtk_editable_get_text (GTK_EDITABLE (text)), before);
}

static gboolean
change_buffer (GtkTextBuffer *buffer, gboolean undoes)
{
  if (undoes && gtk_text_buffer_get_can_undo (buffer))
    gtk_text_buffer_undo (buffer);
  else if (!undoes && gtk_text_buffer_get_can_redo (buffer))
    gtk_text_buffer_redo (buffer);
  else
    return FALSE;
  return TRUE;
}

static gboolean
change_focus (GtkWidget *focus, gboolean undoes)
{
  if (GTK_IS_TEXT (focus))
    return change_text (GTK_TEXT (focus), undoes ? "text.undo" : "text.redo");
  if (GTK_IS_TEXT_VIEW (focus))
    return change_buffer (gtk_text_view_get_buffer (GTK_TEXT_VIEW (focus)), undoes);
  return FALSE;
}

static gboolean
key_cb (GtkWidget *widget, guint keyval, guint keycode, GdkModifierType state)
{
  const guint lower = gdk_keyval_to_lower (keyval);
  const gboolean undoes = lower == GDK_KEY_z && (state & GDK_SHIFT_MASK) == 0;

  if ((state & GDK_CONTROL_MASK) == 0 || (state & GDK_ALT_MASK) != 0 ||
      (lower != GDK_KEY_z && lower != GDK_KEY_y))
    return GDK_EVENT_PROPAGATE;
  if (!change_focus (gtk_root_get_focus (gtk_widget_get_root (widget)), undoes))
    gtk_widget_activate_action (widget, undoes ? "win.undo" : "win.redo", NULL);
  return GDK_EVENT_STOP;
}

void
fm_undo_keys_install (GtkWidget *widget)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), widget);
  gtk_widget_add_controller (widget, keys);
}
