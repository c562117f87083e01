/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-window-busy.c - what the window shows as a whole: its pages, or work under way */
#include "app/window/fm-window-private.h"

#define BUSY_DELAY_MS 250 /* work that ends sooner shows no bar */

static gboolean
busy_delay_cb (gpointer user_data)
{
  FmWindow *self = user_data;

  self->busy_delay_id = 0;
  gtk_spinner_start (self->busy_spinner);
  gtk_revealer_set_reveal_child (self->busy_revealer, TRUE);
  return G_SOURCE_REMOVE;
}

void
fm_window_set_enabled (FmWindow *self, const char *action, gboolean enabled)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (self), action, enabled);
}

void
fm_window_update_switcher (FmWindow *self)
{
  gboolean has_pages = self->session != NULL && fm_session_get_formula (self->session) != NULL;

  /* The buttons of both switchers are made when there is something to switch. */
  if (has_pages && adw_view_switcher_title_get_stack (self->switcher_title) == NULL) {
    adw_view_switcher_title_set_stack (self->switcher_title, self->stack);
    adw_view_switcher_bar_set_stack (self->switcher_bar, self->stack);
  }
  adw_view_switcher_bar_set_reveal (
      self->switcher_bar,
      has_pages && adw_view_switcher_title_get_title_visible (self->switcher_title));
}

void
fm_window_update_content (FmWindow *self)
{
  FmNotebook *notebook = fm_session_get_notebook (self->session);
  gboolean shows_blend = fm_session_get_formula (self->session) != NULL;
  const char *name = "pages";

  if (notebook == NULL)
    name = self->loading ? "loading" : "no-notebook";
  else if (!shows_blend)
    name = fm_session_is_reading (self->session) ? "loading" : "no-blend";
  gtk_stack_set_visible_child_name (self->content_stack, name);
  adw_view_switcher_title_set_view_switcher_enabled (self->switcher_title, shows_blend);
  fm_window_update_switcher (self);
  fm_window_set_enabled (self, "win.save-copy", notebook != NULL);
  fm_window_set_enabled (self, "win.backups", notebook != NULL);
  fm_window_set_enabled (self, "win.find", notebook != NULL);
  fm_window_set_enabled (self, "win.export", notebook != NULL);
  fm_window_set_enabled (self, "win.tables", notebook != NULL);
  fm_window_set_enabled (self, "win.shopping-list", notebook != NULL);
  fm_window_set_enabled (self, "win.prices", shows_blend);
  fm_window_set_enabled (self, "win.development-report", shows_blend);
  fm_window_set_enabled (self, "win.new-blend",
                         notebook != NULL && !fm_notebook_is_read_only (notebook));
}

void
fm_window_begin_busy (FmWindow *self, const char *text, GCancellable *cancellable)
{
  g_set_object (&self->busy, cancellable);
  gtk_label_set_text (self->busy_label, text);
  g_clear_handle_id (&self->busy_delay_id, g_source_remove);
  self->busy_delay_id = g_timeout_add (BUSY_DELAY_MS, busy_delay_cb, self);
}

void
fm_window_end_busy (FmWindow *self)
{
  g_clear_object (&self->busy);
  g_clear_handle_id (&self->busy_delay_id, g_source_remove);
  gtk_spinner_stop (self->busy_spinner);
  gtk_revealer_set_reveal_child (self->busy_revealer, FALSE);
}

void
fm_window_cancel_busy (FmWindow *self)
{
  if (self->busy != NULL)
    g_cancellable_cancel (self->busy);
}
