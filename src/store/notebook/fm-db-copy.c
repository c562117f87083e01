/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-db-copy.c - an open file copied as it is now, whole or not at all */
#include "store/notebook/fm-notebook-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

#include "store/notebook/fm-record-check-private.h"

#define PAGES_PER_STEP 256
/* FM_TASTING_EVENT_COPIED as the schema knows it since version 3 */
#define COPIED_EVENT 6
#define COPIES_SINCE_VERSION 3

void
fm_notebook_sync_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);
  int fd = open (folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);

  if (fd < 0)
    return;
  fsync (fd);
  close (fd);
}

static void
set_file_error (const char *path, int saved_errno, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);

  if (saved_errno == ENOSPC || saved_errno == EDQUOT)
    fm_db_set_error_code (SQLITE_FULL, g_strerror (saved_errno), error);
  else
    g_set_error (error, FM_STORE_ERROR,
                 saved_errno == EIO ? FM_STORE_ERROR_FAILED : FM_STORE_ERROR_NO_PERMISSION,
                 _ ("“%s” cannot be written (%s). Choose another folder."), shown,
                 g_strerror (saved_errno));
}

static gboolean
copy_pages (FmDb *from, FmDb *to, GCancellable *cancellable, GError **error)
{
  sqlite3_backup *backup =
      sqlite3_backup_init (fm_db_handle (to), "main", fm_db_handle (from), "main");
  gboolean cancelled;
  int code;

  if (backup == NULL) {
    fm_db_set_error (fm_db_handle (to), error);
    return FALSE;
  }
  do {
    cancelled = g_cancellable_set_error_if_cancelled (cancellable, error);
    code = cancelled ? SQLITE_DONE : sqlite3_backup_step (backup, PAGES_PER_STEP);
  } while (code == SQLITE_OK);
  sqlite3_backup_finish (backup);
  if (!cancelled && code != SQLITE_DONE)
    fm_db_set_error (fm_db_handle (to), error);
  return !cancelled && code == SQLITE_DONE;
}

/* A sealed tasting can be opened in a copy without a trace in the first, so the copy says that it
 * is one. Older notebooks, copied before they are brought up to date, cannot record that. */
gboolean
fm_notebook_mark_sealed (FmDb *copy, GError **error)
{
  g_autofree char *sql =
      g_strdup_printf ("INSERT INTO tasting_events SELECT t.id,"
                       " (SELECT coalesce(max(position) + 1, 0) FROM tasting_events e"
                       "  WHERE e.tasting_id = t.id), %" G_GINT64_FORMAT ", %d, NULL"
                       " FROM tastings t WHERE t.state = 1",
                       g_get_real_time () / G_USEC_PER_SEC, COPIED_EVENT);
  gint64 version;

  if (!fm_db_query_int (copy, "PRAGMA user_version", &version, error))
    return FALSE;
  if (version < COPIES_SINCE_VERSION)
    return TRUE;
  return fm_record_check_watch (copy, error) && fm_db_exec (copy, sql, error) &&
         fm_record_check_store (copy, error);
}

/* A copy without WAL is one plain file, also for a reader without write permission. */
static gboolean
write_copy (FmDb *from, const char *temp_path, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmDb) to = fm_db_open (temp_path, SQLITE_OPEN_READWRITE, error);
  g_autofree char *mode = NULL;

  if (to == NULL || !copy_pages (from, to, cancellable, error))
    return FALSE;
  mode = fm_db_query_text (to, "PRAGMA journal_mode = DELETE", error);
  if (mode == NULL)
    return FALSE;
  if (g_strcmp0 (mode, "delete") != 0) {
    fm_db_set_error_code (SQLITE_ERROR, mode, error);
    return FALSE;
  }
  return fm_notebook_mark_sealed (to, error);
}

static gboolean
publish (const char *temp_path, const char *path, int fd, GError **error)
{
  if (fsync (fd) != 0 || g_rename (temp_path, path) != 0) {
    set_file_error (path, errno, error);
    return FALSE;
  }
  fm_notebook_sync_folder (path);
  return TRUE;
}

static void
remove_temporary (const char *temp_path)
{
  static const char *const endings[] = { "", "-journal", "-wal", "-shm" };

  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++) {
    g_autofree char *name = g_strconcat (temp_path, endings[i], NULL);

    g_unlink (name);
  }
}

gboolean
fm_notebook_copy_db (FmDb *db, const char *path, GCancellable *cancellable, GError **error)
{
  g_autofree char *temp_path = g_strconcat (path, ".XXXXXX", NULL);
  int fd = g_mkstemp_full (temp_path, O_RDWR | O_CLOEXEC, 0644);
  gboolean ok;

  if (fd < 0) {
    set_file_error (path, errno, error);
    return FALSE;
  }
  ok = write_copy (db, temp_path, cancellable, error) && publish (temp_path, path, fd, error);
  if (!ok)
    remove_temporary (temp_path);
  close (fd);
  return ok;
}
