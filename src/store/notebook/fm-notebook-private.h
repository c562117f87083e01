/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-private.h - the parts of a notebook, shared by the fm-notebook-*.c files */
#pragma once

#include "store/notebook/fm-db.h"
#include "store/notebook/fm-notebook-lock.h"

G_BEGIN_DECLS

struct _FmNotebook {
  gatomicrefcount ref_count;
  char *path;        /* canonical */
  char *reader_name; /* the path, or a URI for a folder that cannot be written */
  gboolean read_only;
  FmFileId id;
  FmNotebookLock *lock; /* NULL when read only */
  FmDb *writer;         /* NULL when read only */
  ino_t wal_inode;      /* of the log beside; 0 = not known */
  int is_lost;          /* (atomic) the file has left its name; it is so for good */
  char *notice;         /* what was put aside when it was opened; NULL = nothing */
  GRecMutex writer_lock;
  GPtrArray *readers; /* FmDb: at least one until the file is let go */
  GMutex readers_lock;
  GCond reader_free;
  GThread *writer_owner; /* (atomic) the thread inside a transaction */
};

/** Opens one more connection for reading. NULL on error. */
FmDb *fm_notebook_add_reader (FmNotebook *self, GError **error);

/* fm-notebook-place.c */
/** FALSE + LOST once the file has left its name. A writer then lets its side files go. */
gboolean fm_notebook_check_place (FmNotebook *self, GError **error);

/** Sets LOST as an error of this notebook. */
void fm_notebook_set_lost (FmNotebook *self, GError **error);

/* fm-notebook-aside.c */
/** The side file of @path with this @ending. (transfer full) */
char *fm_notebook_beside (const char *path, const char *ending);
/** TRUE when there is such a side file and something in it. */
gboolean fm_notebook_has_beside (const char *path, const char *ending);
/** Puts the log, and what belongs to it, aside, and adds to @notice what is where. */
gboolean fm_notebook_put_aside (const char *path, char **notice, GError **error);
/** Puts what a file of the same name has left aside, and rolls back what was interrupted. */
gboolean fm_notebook_tidy_beside (FmNotebook *self, GError **error);

/**
 * Whether there is a readable file: NOT_FOUND, NO_PERMISSION, NOT_A_NOTEBOOK. Does not open it:
 * closing a descriptor would drop the locks that SQLite holds on it in another window.
 */
gboolean fm_notebook_check_file (const char *path, GError **error);
/** All checks of an open file that is not trusted yet. @version: (out): its user_version. */
gboolean fm_notebook_check (FmDb *db, GCancellable *cancellable, int *version, GError **error);

/** Those that do not look at every page. */
gboolean fm_notebook_check_tables (FmDb *db, int *version, GError **error);

/* fm-db-copy.c */
/** Copies @db as it is now to @path: temporary file, fsync, rename. */
gboolean
fm_notebook_copy_db (FmDb *db, const char *path, GCancellable *cancellable, GError **error);
/** Lets a copy say, in each sealed tasting, that it is one. */
gboolean fm_notebook_mark_sealed (FmDb *copy, GError **error);
/** Gives a file that is whole its name, which no other file may have. */
gboolean fm_notebook_publish_new (const char *temp_path, const char *path, GError **error);
/** Makes a renamed or linked file in the folder of @path survive a power cut. */
void fm_notebook_sync_folder (const char *path);

G_END_DECLS
