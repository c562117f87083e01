/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook.c - creating, opening and closing the notebook file */
#include "store/notebook/fm-db-private.h"
#include "store/notebook/fm-notebook-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <unistd.h>

#include "store/notebook/fm-record-check-private.h"
#include "store/notebook/fm-schema.h"
#include "store/notebook/fm-store-thread.h"

static FmNotebook *
notebook_new (const char *path, GError **error)
{
  g_autofree char *real = realpath (path, NULL);
  FmNotebook *self;

  if (!fm_notebook_check_file (real != NULL ? real : path, error))
    return NULL;
  self = g_new0 (FmNotebook, 1);
  g_atomic_ref_count_init (&self->ref_count);
  self->path = g_strdup (real != NULL ? real : path);
  self->reader_name = g_filename_to_uri (self->path, NULL, NULL);
  fm_file_id_read (self->path, &self->id);
  g_rec_mutex_init (&self->writer_lock);
  g_mutex_init (&self->readers_lock);
  g_cond_init (&self->reader_free);
  self->readers = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_db_close);
  return self;
}

static void
notebook_free (FmNotebook *self)
{
  g_ptr_array_unref (self->readers);
  /* The file alone is then whole, even when another window still reads it. */
  if (self->writer != NULL && fm_notebook_check_place (self, NULL))
    fm_db_exec (self->writer, "PRAGMA wal_checkpoint(TRUNCATE)", NULL);
  fm_db_close (self->writer);
  fm_notebook_lock_free (self->lock);
  g_rec_mutex_clear (&self->writer_lock);
  g_mutex_clear (&self->readers_lock);
  g_cond_clear (&self->reader_free);
  g_free (self->notice);
  g_free (self->reader_name);
  g_free (self->path);
  g_free (self);
}

/* Looks before anything is written. Only reading, SQLite leaves its empty side files behind. */
static gboolean
inspect (FmNotebook *self, GCancellable *cancellable, int *version, GError **error)
{
  g_autofree char *wal = fm_notebook_beside (self->path, "-wal");
  g_autofree char *shm = fm_notebook_beside (self->path, "-shm");
  gboolean had_wal = g_file_test (wal, G_FILE_TEST_EXISTS);
  FmDb *db = fm_db_open (self->reader_name, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, error);
  gboolean ok = db != NULL && fm_notebook_check (db, cancellable, version, error);

  fm_db_close (db);
  if (!had_wal) {
    g_unlink (wal);
    g_unlink (shm);
  }
  return ok;
}

/* Without its log the notebook is as it was when it was last closed. */
static gboolean
is_whole_alone (FmNotebook *self, GCancellable *cancellable)
{
  g_autofree char *name = g_strconcat (self->reader_name, "?immutable=1", NULL);
  g_autoptr (FmDb) db = fm_db_open (name, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, NULL);
  int version;

  return db != NULL && fm_notebook_check (db, cancellable, &version, NULL);
}

/* A log that makes a whole notebook a damaged one is not its own. */
static gboolean
inspect_beside (FmNotebook *self, GCancellable *cancellable, int *version, GError **error)
{
  g_autoptr (GError) local_error = NULL;

  if (inspect (self, cancellable, version, &local_error))
    return TRUE;
  if (fm_notebook_has_beside (self->path, "-wal") &&
      !g_error_matches (local_error, G_IO_ERROR, G_IO_ERROR_CANCELLED) &&
      is_whole_alone (self, cancellable))
    return fm_notebook_put_aside (self->path, &self->notice, error) &&
           inspect (self, cancellable, version, error);
  g_propagate_error (error, g_steal_pointer (&local_error));
  return FALSE;
}

static gboolean
check_writable (FmNotebook *self, GError **error)
{
  g_autofree char *shown = NULL;

  if (access (self->path, W_OK) == 0)
    return TRUE;
  shown = g_filename_display_basename (self->path);
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION,
               _ ("“%s” may not be written. Open it for reading only, or copy it elsewhere."),
               shown);
  return FALSE;
}

static gboolean
expect_pragma (FmDb *db, const char *sql, const char *expected, GError **error)
{
  g_autofree char *value = fm_db_query_text (db, sql, error);

  if (value == NULL)
    return FALSE;
  if (g_strcmp0 (value, expected) == 0)
    return TRUE;
  fm_db_set_error_code (SQLITE_ERROR, sql, error);
  return FALSE;
}

/* FULL: what was reported as saved survives a power cut, too. */
static gboolean
open_writer (FmNotebook *self, GError **error)
{
  self->writer = fm_db_open (self->path, SQLITE_OPEN_READWRITE, error);
  if (self->writer == NULL)
    return FALSE;
  self->writer->notebook = self;
  return expect_pragma (self->writer, "PRAGMA journal_mode = WAL", "wal", error) &&
         fm_db_exec (self->writer, "PRAGMA synchronous = FULL", error) &&
         expect_pragma (self->writer, "PRAGMA synchronous", "2", error) &&
         expect_pragma (self->writer, "PRAGMA foreign_keys", "1", error);
}

/* Locked is the file that has the name now, which may be a newer one than was looked at. */
static gboolean
lock (FmNotebook *self, GError **error)
{
  self->lock = fm_notebook_lock_acquire (self->path, error);
  if (self->lock == NULL)
    return FALSE;
  self->id = fm_notebook_lock_get_id (self->lock);
  return TRUE;
}

static gboolean
note_log (FmNotebook *self, GError **error)
{
  g_autofree char *wal = fm_notebook_beside (self->path, "-wal");
  gint64 n_objects;
  FmFileId id;

  /* The first look at the notebook makes the log. */
  if (!fm_db_query_int (self->writer, "SELECT count(*) FROM sqlite_schema", &n_objects, error))
    return FALSE;
  if (fm_file_id_read (wal, &id))
    self->wal_inode = id.inode;
  fm_notebook_lock_note (self->lock, self->wal_inode);
  return TRUE;
}

FmDb *
fm_notebook_add_reader (FmNotebook *self, GError **error)
{
  g_autoptr (FmDb) reader =
      fm_db_open (self->reader_name, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, error);
  gint64 n_objects;

  /* The first look opens the log, which later might not be found by its name. */
  if (reader == NULL ||
      !fm_db_query_int (reader, "SELECT count(*) FROM sqlite_schema", &n_objects, error))
    return NULL;
  reader->notebook = self;
  g_ptr_array_add (self->readers, reader);
  return g_steal_pointer (&reader);
}

/* Never over an older backup. */
static char *
backup_path (FmNotebook *self, int version)
{
  char *path = g_strdup_printf ("%s.version-%d-backup", self->path, version);

  for (guint i = 2; g_file_test (path, G_FILE_TEST_EXISTS); i++) {
    g_free (path);
    path = g_strdup_printf ("%s.version-%d-backup-%u", self->path, version, i);
  }
  return path;
}

/* A step that fails leaves the notebook as it was, which makes its backup one copy too many. */
static gboolean
migrate_step (FmNotebook *self,
              int version,
              const FmMigration *migration,
              GCancellable *cancellable,
              GError **error)
{
  g_autofree char *backup = backup_path (self, version);

  if (!fm_notebook_copy_db (self->writer, backup, cancellable, error))
    return FALSE;
  if (fm_schema_migrate_step (self->writer->handle, migration, error))
    return TRUE;
  g_unlink (backup);
  return FALSE;
}

static gboolean
migrate (FmNotebook *self, int version, GCancellable *cancellable, GError **error)
{
  guint n_migrations;
  const FmMigration *migrations = fm_schema_migrations (&n_migrations);

  for (guint i = 0; i < n_migrations; i++) {
    if (migrations[i].to_version <= version)
      continue;
    if (!migrate_step (self, version, &migrations[i], cancellable, error)) {
      g_prefix_error (error, _ ("The notebook could not be brought up to date. "));
      return FALSE;
    }
    version = migrations[i].to_version;
  }
  return TRUE;
}

FmNotebook *
fm_notebook_open (const char *path, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmNotebook) self = notebook_new (path, error);
  int version;

  fm_store_check_thread ();
  if (self == NULL || !check_writable (self, error))
    return NULL;
  if (!lock (self, error) || !fm_notebook_tidy_beside (self, error) ||
      !inspect_beside (self, cancellable, &version, error) || !open_writer (self, error) ||
      !note_log (self, error) || !migrate (self, version, cancellable, error) ||
      !fm_record_check_watch (self->writer, error) ||
      !fm_record_check_begin (self->writer, error) ||
      fm_notebook_add_reader (self, error) == NULL || !fm_notebook_check_place (self, error))
    return NULL;
  return g_steal_pointer (&self);
}

/* WAL needs side files; where none can be made, and so no writer can be, the file stands alone. */
static void
allow_unwritable_folder (FmNotebook *self)
{
  g_autofree char *wal = fm_notebook_beside (self->path, "-wal");
  g_autofree char *folder = g_path_get_dirname (self->path);

  if (access (folder, W_OK) != 0 && !g_file_test (wal, G_FILE_TEST_EXISTS)) {
    char *name = g_strconcat (self->reader_name, "?immutable=1", NULL);

    g_free (self->reader_name);
    self->reader_name = name;
  }
}

static gboolean
check_not_older (int version, GError **error)
{
  if (version == fm_schema_version ())
    return TRUE;
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                       _ ("This notebook was written by an older Forcemeat and must be brought up "
                          "to date first. Copy it to a folder that you may write, and open it "
                          "there."));
  return FALSE;
}

static FmNotebook *
open_for_reading (const char *path, gboolean is_damaged, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmNotebook) self = notebook_new (path, error);
  FmDb *reader;
  int version;

  fm_store_check_thread ();
  if (self == NULL)
    return NULL;
  self->read_only = TRUE;
  allow_unwritable_folder (self);
  reader = fm_notebook_add_reader (self, error);
  if (reader == NULL ||
      !(is_damaged ? fm_notebook_check_tables (reader, &version, error)
                   : fm_notebook_check (reader, cancellable, &version, error)) ||
      !check_not_older (version, error))
    return NULL;
  return g_steal_pointer (&self);
}

FmNotebook *
fm_notebook_open_read_only (const char *path, GCancellable *cancellable, GError **error)
{
  return open_for_reading (path, FALSE, cancellable, error);
}

FmNotebook *
fm_notebook_open_damaged (const char *path, GCancellable *cancellable, GError **error)
{
  return open_for_reading (path, TRUE, cancellable, error);
}

static gboolean
write_new (const char *temp_path, GError **error)
{
  g_autoptr (FmDb) db = fm_db_open (temp_path, SQLITE_OPEN_READWRITE, error);

  return db != NULL && fm_schema_create (db->handle, error);
}

/* link() does not replace; where the file system has no links, the check just before must do. */
gboolean
fm_notebook_publish_new (const char *temp_path, const char *path, GError **error)
{
  int saved_errno = 0;
  g_autofree char *shown = NULL;

  if (link (temp_path, path) == 0) {
    g_unlink (temp_path);
    fm_notebook_sync_folder (path);
    return TRUE;
  }
  saved_errno = errno;
  if (saved_errno != EEXIST && !g_file_test (path, G_FILE_TEST_EXISTS) &&
      g_rename (temp_path, path) == 0) {
    fm_notebook_sync_folder (path);
    return TRUE;
  }
  shown = g_filename_display_name (path);
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
               _ ("“%s” is there already. Choose another name, or open it."), shown);
  return FALSE;
}

static void
set_create_error (const char *path, int saved_errno, GError **error)
{
  g_autofree char *shown = NULL;

  if (saved_errno == ENOSPC || saved_errno == EDQUOT) {
    fm_db_set_error_code (SQLITE_FULL, g_strerror (saved_errno), error);
    return;
  }
  shown = g_filename_display_name (path);
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION,
               _ ("“%s” cannot be made (%s). Choose another folder."), shown,
               g_strerror (saved_errno));
}

static gboolean
make_new (const char *path, GError **error)
{
  g_autofree char *temp_path = g_strconcat (path, ".XXXXXX", NULL);
  int fd = g_mkstemp_full (temp_path, O_RDWR | O_CLOEXEC, 0644);
  gboolean ok;

  if (fd < 0) {
    set_create_error (path, errno, error);
    return FALSE;
  }
  ok = write_new (temp_path, error);
  if (ok && fsync (fd) != 0) {
    set_create_error (path, errno, error);
    ok = FALSE;
  }
  close (fd);
  ok = ok && fm_notebook_publish_new (temp_path, path, error);
  if (!ok)
    g_unlink (temp_path);
  return ok;
}

FmNotebook *
fm_notebook_create (const char *path, GError **error)
{
  g_autofree char *notice = NULL;
  FmNotebook *self = NULL;

  if (fm_notebook_clear_name (path, &notice, error) && make_new (path, error))
    self = fm_notebook_open (path, NULL, error);
  if (self != NULL && notice != NULL)
    fm_notebook_set_notice (self, notice);
  return self;
}

FmNotebook *
fm_notebook_ref (FmNotebook *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fm_notebook_unref (FmNotebook *self)
{
  if (self != NULL && g_atomic_ref_count_dec (&self->ref_count))
    notebook_free (self);
}

const char *
fm_notebook_path (FmNotebook *self)
{
  return self->path;
}

gboolean
fm_notebook_is_read_only (FmNotebook *self)
{
  return self->read_only;
}

const char *
fm_notebook_get_notice (FmNotebook *self)
{
  return self->notice;
}

void
fm_notebook_set_notice (FmNotebook *self, const char *notice)
{
  g_free (self->notice);
  self->notice = g_strdup (notice);
}
