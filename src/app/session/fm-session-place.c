/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-session-place.c - is the file of the notebook still where it was opened? */
#include "app/session/fm-session-private.h"

static gpointer
look (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  return fm_notebook_find_place (notebook);
}

static char *
lost_message (FmNotebook *notebook)
{
  g_autoptr (GError) error = fm_notebook_lost_error (notebook);

  return g_strdup (error->message);
}

static void
looked_cb (GObject *source, GAsyncResult *result, gpointer serial)
{
  FmSession *self = FM_SESSION (source);
  g_autoptr (FmNotebookPlace) place = fm_store_task_finish (result, NULL);
  g_autofree char *message = NULL;

  self->n_in_flight--;
  if (GPOINTER_TO_UINT (serial) != self->serial || place == NULL || place->in_place)
    return;
  g_clear_pointer (&self->place, fm_notebook_place_free);
  self->place = g_steal_pointer (&place);
  message = lost_message (self->notebook);
  fm_documents_tell_lost (self->documents, self->notebook, message);
  fm_session_emit_changed (self, FM_CHANGE_PLACE, 0);
}

void
fm_session_look_for_file (FmSession *self)
{
  if (!fm_session_is_writable (self))
    return;
  self->n_in_flight++;
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = self->notebook,
      .run = look,
      .free_result = (GDestroyNotify)fm_notebook_place_free,
      .done = looked_cb,
      .user_data = GUINT_TO_POINTER (self->serial),
  });
}

/* Our own writing changes the file all the time; what matters is a change of its name. */
static void
file_changed_cb (FmSession *self, GFile *file, GFile *other, GFileMonitorEvent event)
{
  if (event != G_FILE_MONITOR_EVENT_CHANGED && event != G_FILE_MONITOR_EVENT_CHANGES_DONE_HINT)
    fm_session_look_for_file (self);
}

void
fm_session_watch_place (FmSession *self)
{
  g_autoptr (GFile) file = NULL;

  if (!fm_session_is_writable (self))
    return;
  file = g_file_new_for_path (fm_notebook_path (self->notebook));
  self->monitor = g_file_monitor_file (file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (self->monitor != NULL)
    g_signal_connect_object (self->monitor, "changed", G_CALLBACK (file_changed_cb), self,
                             G_CONNECT_SWAPPED);
  /* It may have gone before it was watched. */
  fm_session_look_for_file (self);
}

void
fm_session_forget_place (FmSession *self)
{
  g_clear_pointer (&self->place, fm_notebook_place_free);
  if (self->monitor == NULL)
    return;
  g_signal_handlers_disconnect_by_data (self->monitor, self);
  g_file_monitor_cancel (self->monitor);
  g_clear_object (&self->monitor);
}

const FmNotebookPlace *
fm_session_get_place (FmSession *self)
{
  return self->place;
}
