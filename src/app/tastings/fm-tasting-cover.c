/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-cover.c - one window alone on the screen while others must not be seen or heard */
#include "app/tastings/fm-tasting-cover.h"

GPtrArray *
fm_tasting_cover_begin (GtkWindow *alone)
{
  GPtrArray *hidden = g_ptr_array_new_with_free_func (g_object_unref);
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++) {
    g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

    if (window != GTK_WIDGET (alone) && gtk_widget_get_visible (window))
      g_ptr_array_add (hidden, g_object_ref (window));
  }
  for (guint i = 0; i < hidden->len; i++)
    gtk_widget_set_visible (g_ptr_array_index (hidden, i), FALSE);
  return hidden;
}

void
fm_tasting_cover_end (GPtrArray *hidden)
{
  for (guint i = 0; i < hidden->len; i++)
    gtk_window_present (g_ptr_array_index (hidden, i));
  g_ptr_array_set_size (hidden, 0);
}
