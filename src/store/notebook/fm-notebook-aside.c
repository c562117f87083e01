/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-aside.c - what lies beside a notebook, and whose it is
 *
 * SQLite takes in whatever log has the right name. One that was left by another file of that name
 * would mix two notebooks; it is put aside, never deleted, because it may be all that is left.
 */
#include "store/notebook/fm-notebook-private.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

static const char *const endings[] = { "-wal", "-shm", "-journal" };

char *
fm_notebook_beside (const char *path, const char *ending)
{
  return g_strconcat (path, ending, NULL);
}

gboolean
fm_notebook_has_beside (const char *path, const char *ending)
{
  g_autofree char *name = fm_notebook_beside (path, ending);
  struct stat info;

  return stat (name, &info) == 0 && info.st_size > 0;
}

static char *
free_name (const char *name)
{
  char *aside = g_strconcat (name, ".put-aside", NULL);

  for (guint i = 2; g_file_test (aside, G_FILE_TEST_EXISTS); i++) {
    g_free (aside);
    aside = g_strdup_printf ("%s.put-aside-%u", name, i);
  }
  return aside;
}

static void
add_notice (char **notice, const char *name, const char *aside)
{
  g_autofree char *before = *notice;
  g_autofree char *shown = g_filename_display_basename (name);
  g_autofree char *shown_aside = g_filename_display_name (aside);
  g_autofree char *text = g_strdup_printf (
      _ ("Beside the notebook lay “%s”, which was left by another file of that name. Nothing of it "
         "was used; it was put aside as “%s”."),
      shown, shown_aside);

  *notice = g_strjoin (before != NULL ? "\n" : "", before != NULL ? before : "", text, NULL);
}

/* The shared memory holds nothing of its own, so nobody need be told of it. */
static gboolean
put_one_aside (const char *path, const char *ending, char **notice, GError **error)
{
  g_autofree char *name = fm_notebook_beside (path, ending);
  g_autofree char *aside = free_name (name);
  g_autofree char *shown = NULL;

  if (!g_file_test (name, G_FILE_TEST_EXISTS))
    return TRUE;
  if (g_rename (name, aside) == 0) {
    if (!g_str_equal (ending, "-shm"))
      add_notice (notice, name, aside);
    return TRUE;
  }
  shown = g_filename_display_name (name);
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION,
               _ ("“%s” was left by another notebook and cannot be put aside (%s). Move it to "
                  "another folder, then try again."),
               shown, g_strerror (errno));
  return FALSE;
}

gboolean
fm_notebook_put_aside (const char *path, char **notice, GError **error)
{
  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++) {
    if (!put_one_aside (path, endings[i], notice, error))
      return FALSE;
  }
  return TRUE;
}

/* A copy of a whole folder has another notebook and another log: these belong together. */
static gboolean
is_log_of_another_file (FmNotebook *self)
{
  g_autofree char *wal = fm_notebook_beside (self->path, "-wal");
  const FmLockNote left = fm_notebook_lock_get_left (self->lock);
  FmFileId id;

  return left.notebook_inode != 0 && left.notebook_inode != self->id.inode &&
         fm_file_id_read (wal, &id) && id.inode == left.wal_inode;
}

static gboolean
is_journal_of_another_file (FmNotebook *self)
{
  const FmLockNote left = fm_notebook_lock_get_left (self->lock);

  return fm_notebook_has_beside (self->path, "-journal") && left.notebook_inode != 0 &&
         left.notebook_inode != self->id.inode;
}

/* The first opening of a copy writes it once without a log; a kill then leaves a journal, which
 * only a connection that may write can roll back. */
static gboolean
roll_back_journal (FmNotebook *self, GError **error)
{
  g_autoptr (FmDb) db = NULL;
  gint64 n_objects;

  if (!fm_notebook_has_beside (self->path, "-journal"))
    return TRUE;
  db = fm_db_open (self->path, SQLITE_OPEN_READWRITE, error);
  return db != NULL &&
         fm_db_query_int (db, "SELECT count(*) FROM sqlite_schema", &n_objects, error);
}

gboolean
fm_notebook_tidy_beside (FmNotebook *self, GError **error)
{
  if ((is_log_of_another_file (self) || is_journal_of_another_file (self)) &&
      !fm_notebook_put_aside (self->path, &self->notice, error))
    return FALSE;
  return roll_back_journal (self, error);
}

gboolean
fm_notebook_clear_name (const char *path, char **notice, GError **error)
{
  g_autoptr (FmNotebookLock) lock = NULL;

  if (g_file_test (path, G_FILE_TEST_EXISTS) ||
      (!fm_notebook_has_beside (path, "-wal") && !fm_notebook_has_beside (path, "-journal")))
    return TRUE;
  lock = fm_notebook_lock_acquire (path, error);
  return lock != NULL && fm_notebook_put_aside (path, notice, error);
}
