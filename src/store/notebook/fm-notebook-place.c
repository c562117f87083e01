/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-place.c - a notebook that is deleted, renamed or replaced while it is open
 *
 * What is written then would end in a file without a name, or lie beside a file of another. So the
 * notebook is given up for writing: the log is taken into the file that was opened, wherever that
 * is now, and nothing of it stays beside the name. What was read can still be read and copied.
 */
#include "store/notebook/fm-db-private.h"
#include "store/notebook/fm-notebook-private.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

#include "store/notebook/fm-store-thread.h"

static gboolean
is_in_place (FmNotebook *self)
{
  FmFileId now;

  return g_atomic_int_get (&self->is_lost) == 0 && fm_file_id_read (self->path, &now) &&
         fm_file_id_equal (now, self->id);
}

static gboolean
is_own_log (FmNotebook *self)
{
  g_autofree char *wal = fm_notebook_beside (self->path, "-wal");
  FmFileId id;

  return self->wal_inode != 0 && fm_file_id_read (wal, &id) && id.device == self->id.device &&
         id.inode == self->wal_inode;
}

/* The log is empty then, or what it holds is kept under a name that nobody takes for another's. */
static void
remove_log (FmNotebook *self, gboolean is_taken_in)
{
  g_autofree char *wal = fm_notebook_beside (self->path, "-wal");
  g_autofree char *shm = fm_notebook_beside (self->path, "-shm");

  if (!is_own_log (self))
    return;
  if (is_taken_in) {
    g_unlink (wal);
    g_unlink (shm);
  } else {
    fm_notebook_put_aside (self->path, &self->notice, NULL);
  }
}

static void
leave_place (FmNotebook *self)
{
  gint64 is_busy = 1;

  g_rec_mutex_lock (&self->writer_lock);
  if (g_atomic_int_compare_and_exchange (&self->is_lost, 0, 1) && self->writer != NULL) {
    const gboolean done =
        fm_db_query_int (self->writer, "PRAGMA wal_checkpoint(TRUNCATE)", &is_busy, NULL);

    remove_log (self, done && is_busy == 0);
    fm_notebook_lock_release_name (self->lock);
  }
  g_rec_mutex_unlock (&self->writer_lock);
}

void
fm_notebook_set_lost (FmNotebook *self, GError **error)
{
  g_autofree char *shown = g_filename_display_basename (self->path);

  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_LOST,
               _ ("“%s” was deleted, renamed or replaced while it was open, so nothing is saved in "
                  "it any more. Save the notebook elsewhere."),
               shown);
}

gboolean
fm_notebook_check_place (FmNotebook *self, GError **error)
{
  if (is_in_place (self))
    return TRUE;
  leave_place (self);
  fm_notebook_set_lost (self, error);
  return FALSE;
}

FmNotebookPlace *
fm_notebook_find_place (FmNotebook *self)
{
  FmNotebookPlace *place = g_new0 (FmNotebookPlace, 1);

  fm_store_check_thread ();
  place->in_place = fm_notebook_check_place (self, NULL);
  if (place->in_place)
    return place;
  place->is_replaced = g_file_test (self->path, G_FILE_TEST_EXISTS);
  if (self->lock == NULL)
    return place;
  place->has_name = fm_notebook_lock_file_has_name (self->lock);
  place->path = fm_notebook_lock_find_file (self->lock);
  return place;
}

void
fm_notebook_place_free (FmNotebookPlace *place)
{
  g_free (place->path);
  g_free (place);
}

gboolean
fm_notebook_is_lost (FmNotebook *self)
{
  return g_atomic_int_get (&self->is_lost) != 0;
}

GError *
fm_notebook_lost_error (FmNotebook *self)
{
  GError *error = NULL;

  fm_notebook_set_lost (self, &error);
  return error;
}

void
fm_notebook_let_go (FmNotebook *self)
{
  g_return_if_fail (fm_notebook_is_lost (self));
  g_mutex_lock (&self->readers_lock);
  while (self->readers->len > 0) {
    for (guint i = self->readers->len; i > 0; i--) {
      if (((FmDb *)g_ptr_array_index (self->readers, i - 1))->user == NULL)
        g_ptr_array_remove_index_fast (self->readers, i - 1);
    }
    if (self->readers->len > 0)
      g_cond_wait (&self->reader_free, &self->readers_lock);
  }
  g_cond_broadcast (&self->reader_free);
  g_mutex_unlock (&self->readers_lock);
  g_rec_mutex_lock (&self->writer_lock);
  g_clear_pointer (&self->writer, fm_db_close);
  g_clear_pointer (&self->lock, fm_notebook_lock_free);
  g_rec_mutex_unlock (&self->writer_lock);
}
