/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-lock.h - one writer at a time, under whatever name it has opened the notebook */
#pragma once

#include <glib.h>
#include <sys/stat.h>

G_BEGIN_DECLS

/** A file, however it is called. */
typedef struct {
  dev_t device;
  ino_t inode;
} FmFileId;

gboolean fm_file_id_read (const char *path, FmFileId *id);
gboolean fm_file_id_equal (FmFileId a, FmFileId b);

typedef struct _FmNotebookLock FmNotebookLock;

/** What an owner that was killed had open; 0 = not known. */
typedef struct {
  guint64 notebook_inode;
  guint64 wal_inode;
} FmLockNote;

/** Takes the one writer's lock of the name and, if it is there, of the file @path. NULL + IN_USE
 * when another one has it. */
FmNotebookLock *fm_notebook_lock_acquire (const char *path, GError **error);
/** After SQLite has closed the notebook. (nullable) */
void fm_notebook_lock_free (FmNotebookLock *self);
/** The name is somebody else's from now on; the file stays locked. */
void fm_notebook_lock_release_name (FmNotebookLock *self);
FmFileId fm_notebook_lock_get_id (const FmNotebookLock *self);
FmLockNote fm_notebook_lock_get_left (const FmNotebookLock *self);
/** Notes beside the notebook which files are open. */
void fm_notebook_lock_note (FmNotebookLock *self, ino_t wal_inode);
/** A name that the locked file has now. (transfer full); NULL when none is known */
char *fm_notebook_lock_find_file (const FmNotebookLock *self);
/** FALSE once its last name was deleted: it ends with its descriptors. */
gboolean fm_notebook_lock_file_has_name (const FmNotebookLock *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmNotebookLock, fm_notebook_lock_free)

G_END_DECLS
