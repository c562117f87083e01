/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-lock.c - one writer at a time
 *
 * The lock is on an open file description of a file beside the notebook, so it goes with its
 * owner, however that ends, and also holds between two windows of one process. The notebook
 * itself cannot carry it: closing any descriptor of it would drop SQLite's own locks.
 */
#include "store/notebook/fm-notebook-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

#define LOCK_TRIES 100

static char *
lock_path (const char *path)
{
  return g_strconcat (path, "-lock", NULL);
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

int
fm_notebook_lock_acquire (const char *path, GError **error)
{
  g_autofree char *name = lock_path (path);

  for (int i = 0; i < LOCK_TRIES; i++) {
    struct flock range = { .l_type = F_WRLCK, .l_whence = SEEK_SET };
    int fd = open (name, O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);

    if (fd < 0) {
      set_open_error (path, errno, error);
      return -1;
    }
    if (fcntl (fd, F_OFD_SETLK, &range) != 0) {
      set_lock_error (path, errno, error);
      close (fd);
      return -1;
    }
    if (still_named (name, fd))
      return fd;
    close (fd);
  }
  set_lock_error (path, EAGAIN, error);
  return -1;
}

void
fm_notebook_lock_release (const char *path, int fd)
{
  g_autofree char *name = lock_path (path);

  if (fd < 0)
    return;
  g_unlink (name);
  close (fd);
}
