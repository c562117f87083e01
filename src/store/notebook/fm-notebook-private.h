/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-private.h - the parts of a notebook, shared by the fm-notebook-*.c files */
#pragma once

#include "store/notebook/fm-db.h"

G_BEGIN_DECLS

struct _FmNotebook {
  gatomicrefcount ref_count;
  char *path;        /* canonical */
  char *reader_name; /* the path, or a URI for a folder that cannot be written */
  gboolean read_only;
  int lock_fd;  /* -1 when read only */
  FmDb *writer; /* NULL when read only */
  GRecMutex writer_lock;
  GPtrArray *readers; /* FmDb: at least one, which is opened with the notebook */
  GMutex readers_lock;
  GCond reader_free;
  GThread *writer_owner; /* (atomic) the thread inside a transaction */
};

/** Opens one more connection for reading. NULL on error. */
FmDb *fm_notebook_add_reader (FmNotebook *self, GError **error);

/** Takes the one writer's lock; -1 + IN_USE when another one has it. */
int fm_notebook_lock_acquire (const char *path, GError **error);
void fm_notebook_lock_release (const char *path, int fd);

/**
 * Whether there is a readable file: NOT_FOUND, NO_PERMISSION, NOT_A_NOTEBOOK. Does not open it:
 * closing a descriptor would drop the locks that SQLite holds on it in another window.
 */
gboolean fm_notebook_check_file (const char *path, GError **error);
/** All checks of an open file that is not trusted yet. @version: (out): its user_version. */
gboolean fm_notebook_check (FmDb *db, GCancellable *cancellable, int *version, GError **error);

/** Copies @db as it is now to @path: temporary file, fsync, rename. */
gboolean
fm_notebook_copy_db (FmDb *db, const char *path, GCancellable *cancellable, GError **error);
/** Makes a renamed or linked file in the folder of @path survive a power cut. */
void fm_notebook_sync_folder (const char *path);

G_END_DECLS
