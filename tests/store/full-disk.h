/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* full-disk.h - a disk that is full from some write on, put below SQLite */
#pragma once

#include <errno.h>
#include <glib.h>
#include <sqlite3.h>
#include <sys/types.h>

static int writes_left = G_MAXINT;
static ssize_t (*real_pwrite) (int fd, const void *bytes, size_t size, off_t offset);

static inline ssize_t
failing_pwrite (int fd, const void *bytes, size_t size, off_t offset)
{
  if (writes_left <= 0) {
    errno = ENOSPC;
    return -1;
  }
  writes_left--;
  return real_pwrite (fd, bytes, size, offset);
}

static inline gboolean
replace_pwrite (gboolean failing)
{
  static const char *const names[] = { "pwrite64", "pwrite" };
  sqlite3_vfs *vfs = sqlite3_vfs_find (NULL);
  gboolean replaced = FALSE;

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++) {
    sqlite3_syscall_ptr now = vfs->xGetSystemCall (vfs, names[i]);

    if (now == NULL)
      continue;
    if (failing)
      real_pwrite = (ssize_t (*) (int, const void *, size_t, off_t))now;
    vfs->xSetSystemCall (vfs, names[i], failing ? (sqlite3_syscall_ptr)failing_pwrite : NULL);
    replaced = TRUE;
  }
  return replaced;
}
