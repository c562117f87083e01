/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-lock.c - one writer at a time
 *
 * Two locks on open file descriptions, which go with their owner, however that ends: one of a file
 * beside the notebook, and one far behind the end of the notebook itself, which holds under all of
 * its names. Closing a descriptor of the notebook drops the locks that SQLite has on it in this
 * process; so it is not opened while this process has it, and closed after SQLite has closed it.
 *
 * The file beside tells which notebook and which log were open. When its owner was killed, that
 * tells a log that belongs to the notebook from one that was left by another file of its name.
 */
#include "store/notebook/fm-notebook-lock.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <unistd.h>

#include "store/notebook/fm-db.h"

#define LOCK_TRIES 100
#define IDENTITY_BYTE ((off_t)1 << 40) /* no notebook reaches it */
#define NOTE_LENGTH 64

struct _FmNotebookLock {
  char *name; /* of the file beside; NULL when the name was let go */
  int name_fd;
  int file_fd; /* the notebook itself; -1 when there is none */
  FmFileId id;
  FmLockNote left;
};

static GMutex held_mutex;
static GPtrArray *held; /* FmFileId of the locks of this process, not owned */

gboolean
fm_file_id_read (const char *path, FmFileId *id)
{
  struct stat info;

  if (stat (path, &info) != 0)
    return FALSE;
  *id = (FmFileId){ info.st_dev, info.st_ino };
  return TRUE;
}

gboolean
fm_file_id_equal (FmFileId a, FmFileId b)
{
  return a.device == b.device && a.inode == b.inode;
}

static void
set_lock_error (const char *path, int saved_errno, GError **error)
{
  g_autofree char *name = g_path_get_basename (path);
  g_autofree char *shown = g_filename_display_name (name);

  if (saved_errno == EAGAIN || saved_errno == EACCES || saved_errno == EWOULDBLOCK)
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE,
                 _ ("“%s” is open in another window or program. Close it there and try again, or "
                    "open it here for reading only."),
                 shown);
  else
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                 _ ("“%s” cannot be reserved for writing (%s). Open it for reading only, or copy "
                    "it to another disk."),
                 shown, g_strerror (saved_errno));
}

static void
set_open_error (const char *path, int saved_errno, GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);
  g_autofree char *shown = g_filename_display_name (folder);

  if (saved_errno == ENOSPC || saved_errno == EDQUOT)
    fm_db_set_error_code (SQLITE_FULL, g_strerror (saved_errno), error);
  else
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NO_PERMISSION,
                 _ ("The folder “%s” cannot be written (%s). Open the notebook for reading only, "
                    "or copy it elsewhere."),
                 shown, g_strerror (saved_errno));
}

/* A former owner may have removed the name between our open and our lock. */
static gboolean
still_named (const char *name, int fd)
{
  struct stat by_name, by_fd;

  return fstat (fd, &by_fd) == 0 && stat (name, &by_name) == 0 && by_fd.st_ino == by_name.st_ino &&
         by_fd.st_dev == by_name.st_dev;
}

static void
read_note (FmNotebookLock *self)
{
  char text[NOTE_LENGTH] = "";

  if (pread (self->name_fd, text, sizeof text - 1, 0) > 0 &&
      sscanf (text, "%" G_GUINT64_FORMAT " %" G_GUINT64_FORMAT, &self->left.notebook_inode,
              &self->left.wal_inode) != 2)
    self->left = (FmLockNote){ 0 };
}

static gboolean
lock_name (FmNotebookLock *self, const char *path, GError **error)
{
  self->name = g_strconcat (path, "-lock", NULL);
  for (int i = 0; i < LOCK_TRIES; i++) {
    struct flock range = { .l_type = F_WRLCK, .l_whence = SEEK_SET };
    int fd = open (self->name, O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);

    if (fd < 0) {
      set_open_error (path, errno, error);
      return FALSE;
    }
    if (fcntl (fd, F_OFD_SETLK, &range) != 0) {
      set_lock_error (path, errno, error);
      close (fd);
      return FALSE;
    }
    if (still_named (self->name, fd)) {
      self->name_fd = fd;
      read_note (self);
      return TRUE;
    }
    close (fd);
  }
  set_lock_error (path, EAGAIN, error);
  return FALSE;
}

static gboolean
is_held_here (FmFileId id)
{
  for (guint i = 0; held != NULL && i < held->len; i++) {
    if (fm_file_id_equal (*(FmFileId *)g_ptr_array_index (held, i), id))
      return TRUE;
  }
  return FALSE;
}

static void
hold (FmNotebookLock *self)
{
  if (held == NULL)
    held = g_ptr_array_new ();
  g_ptr_array_add (held, &self->id);
}

/* Where the disk knows no locks of files, the one of the name must do. */
static gboolean
lock_file (FmNotebookLock *self, const char *path, GError **error)
{
  g_autoptr (GMutexLocker) locker = g_mutex_locker_new (&held_mutex);
  struct flock range = {
    .l_type = F_WRLCK, .l_whence = SEEK_SET, .l_start = IDENTITY_BYTE, .l_len = 1
  };

  if (!fm_file_id_read (path, &self->id))
    return TRUE;
  if (is_held_here (self->id)) {
    set_lock_error (path, EAGAIN, error);
    return FALSE;
  }
  self->file_fd = open (path, O_RDWR | O_CLOEXEC);
  if (self->file_fd < 0 || !still_named (path, self->file_fd)) {
    set_lock_error (path, self->file_fd < 0 ? errno : EAGAIN, error);
    return FALSE;
  }
  if (fcntl (self->file_fd, F_OFD_SETLK, &range) != 0 && (errno == EAGAIN || errno == EACCES)) {
    set_lock_error (path, errno, error);
    return FALSE;
  }
  hold (self);
  return TRUE;
}

FmNotebookLock *
fm_notebook_lock_acquire (const char *path, GError **error)
{
  g_autoptr (FmNotebookLock) self = g_new0 (FmNotebookLock, 1);

  self->name_fd = self->file_fd = -1;
  return lock_name (self, path, error) && lock_file (self, path, error) ? g_steal_pointer (&self)
                                                                        : NULL;
}

void
fm_notebook_lock_release_name (FmNotebookLock *self)
{
  if (self->name_fd < 0)
    return;
  if (still_named (self->name, self->name_fd))
    g_unlink (self->name);
  close (self->name_fd);
  self->name_fd = -1;
}

void
fm_notebook_lock_free (FmNotebookLock *self)
{
  if (self == NULL)
    return;
  fm_notebook_lock_release_name (self);
  g_mutex_lock (&held_mutex);
  if (held != NULL)
    g_ptr_array_remove_fast (held, &self->id);
  g_mutex_unlock (&held_mutex);
  if (self->file_fd >= 0)
    close (self->file_fd);
  g_free (self->name);
  g_free (self);
}

FmFileId
fm_notebook_lock_get_id (const FmNotebookLock *self)
{
  return self->id;
}

FmLockNote
fm_notebook_lock_get_left (const FmNotebookLock *self)
{
  return self->left;
}

void
fm_notebook_lock_note (FmNotebookLock *self, ino_t wal_inode)
{
  char text[NOTE_LENGTH];
  const int length = g_snprintf (text, sizeof text, "%" G_GUINT64_FORMAT " %" G_GUINT64_FORMAT "\n",
                                 (guint64)self->id.inode, (guint64)wal_inode);

  /* Without the note the log is judged by what it holds. */
  if (ftruncate (self->name_fd, 0) != 0 || pwrite (self->name_fd, text, (gsize)length, 0) != length)
    g_debug ("%s: %s", self->name, g_strerror (errno));
}

char *
fm_notebook_lock_find_file (const FmNotebookLock *self)
{
  g_autofree char *link = g_strdup_printf ("/proc/self/fd/%d", self->file_fd);
  g_autofree char *path = g_file_read_link (link, NULL);
  FmFileId there;

  if (path == NULL || !fm_file_id_read (path, &there) || !fm_file_id_equal (there, self->id))
    return NULL;
  return g_steal_pointer (&path);
}

gboolean
fm_notebook_lock_file_has_name (const FmNotebookLock *self)
{
  struct stat info;

  return fstat (self->file_fd, &info) == 0 && info.st_nlink > 0;
}
