/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photo-paste.c - Ctrl+V anywhere on a page adds the photo of the clipboard */
#include "app/photos/fm-photo-paste.h"

/* A photo or files, and no text that a field could take. */
static gboolean
holds_no_text (GdkClipboard *clipboard)
{
  g_autoptr (GdkContentFormats) formats = gdk_content_formats_union_deserialize_gtypes (
      gdk_content_formats_ref (gdk_clipboard_get_formats (clipboard)));

  return !gdk_content_formats_contain_gtype (formats, G_TYPE_STRING) &&
         (gdk_content_formats_contain_gtype (formats, GDK_TYPE_TEXTURE) ||
          gdk_content_formats_contain_gtype (formats, GDK_TYPE_FILE_LIST));
}

static gboolean
key_cb (FmPhotoGrid *grid,
        guint keyval,
        guint keycode,
        GdkModifierType state,
        GtkEventControllerKey *keys)
{
  GtkWidget *page = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (keys));
  GtkWidget *focus = gtk_root_get_focus (gtk_widget_get_root (page));
  const GdkModifierType held = state & (GDK_CONTROL_MASK | GDK_SHIFT_MASK | GDK_ALT_MASK);

  if (held != GDK_CONTROL_MASK || gdk_keyval_to_lower (keyval) != GDK_KEY_v)
    return GDK_EVENT_PROPAGATE;
  if ((GTK_IS_TEXT (focus) || GTK_IS_TEXT_VIEW (focus)) &&
      !holds_no_text (gtk_widget_get_clipboard (page)))
    return GDK_EVENT_PROPAGATE;
  fm_photo_grid_paste (grid);
  return GDK_EVENT_STOP;
}

void
fm_photo_paste_install (GtkWidget *page, FmPhotoGrid *grid)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_object (keys, "key-pressed", G_CALLBACK (key_cb), grid, G_CONNECT_SWAPPED);
  gtk_widget_add_controller (page, keys);
}
