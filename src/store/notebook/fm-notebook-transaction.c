/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-transaction.c - who may write and read, and when */
#include "store/notebook/fm-db-private.h"
#include "store/notebook/fm-notebook-private.h"

#include <glib/gi18n-lib.h>

#include "store/notebook/fm-record-check-private.h"
#include "store/notebook/fm-store-thread.h"

#define MAX_READERS 4 /* a list, what is chosen meanwhile, its photos and one more */

/* A BEGIN that fails half way leaves a transaction open as well. */
static void
roll_back (FmDb *db)
{
  if (!sqlite3_get_autocommit (db->handle))
    fm_db_exec (db, "ROLLBACK", NULL);
}

FmDb *
fm_notebook_begin (FmNotebook *self, GError **error)
{
  FmDb *db = self->writer;

  fm_store_check_thread ();
  if (db == NULL && fm_notebook_is_lost (self)) {
    fm_notebook_set_lost (self, error);
    return NULL;
  }
  if (db == NULL) {
    g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION,
                         _ ("This notebook is open for reading only. Save a copy and change that, "
                            "or close it in the other window first."));
    return NULL;
  }
  g_rec_mutex_lock (&self->writer_lock);
  if (db->depth == 0 && !fm_notebook_check_place (self, error)) {
    g_rec_mutex_unlock (&self->writer_lock);
    return NULL;
  }
  if (!fm_db_exec (db, db->depth == 0 ? "BEGIN IMMEDIATE" : "SAVEPOINT nested", error)) {
    if (db->depth == 0)
      roll_back (db);
    g_rec_mutex_unlock (&self->writer_lock);
    return NULL;
  }
  db->depth++;
  g_atomic_pointer_set (&self->writer_owner, g_thread_self ());
  return db;
}

static gboolean
end_nested (FmDb *db, gboolean success, GError **error)
{
  if (success)
    return fm_db_exec (db, "RELEASE nested", error);
  /* When SQLite has rolled back the whole transaction, the outer commit fails and says so. */
  fm_db_exec (db, "ROLLBACK TO nested; RELEASE nested", NULL);
  return FALSE;
}

/* What was written while the file left its name is not saved where one would look for it. */
static gboolean
end_outer (FmDb *db, gboolean success, GError **error)
{
  if (success && fm_record_check_store (db, error) && fm_db_exec (db, "COMMIT", error))
    return fm_notebook_check_place (db->notebook, error);
  roll_back (db);
  return FALSE;
}

gboolean
fm_notebook_end (FmNotebook *self, gboolean success, GError **error)
{
  FmDb *db = self->writer;
  gboolean ended;

  db->depth--;
  if (db->depth > 0) {
    ended = end_nested (db, success, error);
  } else {
    ended = end_outer (db, success, error);
    g_atomic_pointer_set (&self->writer_owner, NULL);
  }
  g_rec_mutex_unlock (&self->writer_lock);
  return ended;
}

static FmDb *
find_reader (FmNotebook *self, GThread *user)
{
  for (guint i = 0; i < self->readers->len; i++) {
    FmDb *reader = g_ptr_array_index (self->readers, i);

    if (reader->user == user)
      return reader;
  }
  return NULL;
}

/* The reader that this thread has already, or a free one. One of them there always is, if not
 * now, so a further one that cannot be opened is no failure. NULL when the file was let go. */
static FmDb *
take_reader (FmNotebook *self)
{
  g_autoptr (GMutexLocker) locker = g_mutex_locker_new (&self->readers_lock);
  FmDb *db = find_reader (self, g_thread_self ());

  if (db == NULL)
    db = find_reader (self, NULL);
  /* Another file may have the name of one that is lost. */
  if (db == NULL && self->readers->len < MAX_READERS && fm_notebook_check_place (self, NULL))
    db = fm_notebook_add_reader (self, NULL);
  for (; db == NULL && self->readers->len > 0; db = find_reader (self, NULL))
    g_cond_wait (&self->reader_free, &self->readers_lock);
  if (db != NULL)
    db->user = g_thread_self ();
  return db;
}

static void
free_reader (FmNotebook *self, FmDb *db)
{
  g_autoptr (GMutexLocker) locker = g_mutex_locker_new (&self->readers_lock);

  db->user = NULL;
  g_cond_signal (&self->reader_free);
}

FmReader *
fm_notebook_reader (FmNotebook *self, GCancellable *cancellable, GError **error)
{
  FmDb *db;

  fm_store_check_thread ();
  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;
  if (g_atomic_pointer_get (&self->writer_owner) == g_thread_self ())
    return self->writer;
  db = take_reader (self);
  if (db == NULL) {
    fm_notebook_set_lost (self, error);
    return NULL;
  }
  if (db->depth == 0) {
    if (!fm_db_exec (db, "BEGIN", error)) {
      roll_back (db);
      free_reader (self, db);
      return NULL;
    }
    fm_db_set_cancellable (db, cancellable);
  }
  db->depth++;
  return db;
}

void
fm_reader_release (FmReader *reader)
{
  FmNotebook *self = reader != NULL ? reader->notebook : NULL;

  if (self == NULL || reader == self->writer)
    return;
  reader->depth--;
  if (reader->depth > 0)
    return;
  fm_db_set_cancellable (reader, NULL);
  fm_db_exec (reader, "COMMIT", NULL);
  free_reader (self, reader);
}
