/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* slow-disk.c - loaded before a program, it lets each sync of the disk take one second
 *
 * A sync that does nothing else is one that is not noticed to be missing while the machine runs.
 */
#include <unistd.h>

#define SYNC_S 1

int
fsync (int fd)
{
  sleep (SYNC_S);
  return 0;
}

int
fdatasync (int fd)
{
  return fsync (fd);
}
