/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook.h - the notebook file: one SQLite database that holds everything
 *
 * Threads: every function of this layer may be called from any thread; a notebook serialises its
 * writes on one connection, and several threads read beside it on their own (WAL). The app calls
 * this layer from the threads of fm_store_task(); see fm-store-thread.h.
 *
 * Errors are FM_STORE_ERROR with a translated sentence that says what happened and what to do.
 */
#pragma once

#include <gio/gio.h>

#include "core/experiment/fm-experiment.h"

G_BEGIN_DECLS

#define FM_STORE_ERROR (fm_store_error_quark ())
#define FM_NOTEBOOK_APPLICATION_ID 0x464d4e42 /* "FMNB" */
#define FM_NOTEBOOK_SUFFIX ".forcemeat"

typedef enum {
  FM_STORE_ERROR_FAILED,
  FM_STORE_ERROR_NOT_A_NOTEBOOK, /* another kind of file */
  FM_STORE_ERROR_DAMAGED,        /* integrity check failed */
  FM_STORE_ERROR_NEWER,          /* written by a newer program */
  FM_STORE_ERROR_IN_USE,         /* another window or program writes it */
  FM_STORE_ERROR_NO_PERMISSION,
  FM_STORE_ERROR_DISK_FULL,
  FM_STORE_ERROR_NOT_FOUND,
  FM_STORE_ERROR_FROZEN, /* a saved version cannot change */
  FM_STORE_ERROR_BAD_IMAGE,
  FM_STORE_ERROR_HOSTILE, /* triggers, views or tables that are not ours */
} FmStoreError;

GQuark fm_store_error_quark (void);

typedef struct _FmNotebook FmNotebook; /* atomic ref counted */

/** Creates a new, empty notebook; fails when the file exists. */
FmNotebook *fm_notebook_create (const char *path, GError **error);
/**
 * Opens for writing: lock, pragmas (foreign_keys, WAL, trusted_schema off, defensive), schema
 * check against strangers, application_id, quick integrity check, migrations with a backup
 * beside the file before each. @progress may be NULL; @cancellable too.
 */
FmNotebook *fm_notebook_open (const char *path, GCancellable *cancellable, GError **error);
/** Opens a notebook that another program writes, for reading only. */
FmNotebook *
fm_notebook_open_read_only (const char *path, GCancellable *cancellable, GError **error);
FmNotebook *fm_notebook_ref (FmNotebook *self);
void fm_notebook_unref (FmNotebook *self); /* the last one checkpoints and closes */
const char *fm_notebook_path (FmNotebook *self);
gboolean fm_notebook_is_read_only (FmNotebook *self);
/** Consistent copy by the backup interface; replaces @path atomically. */
gboolean fm_notebook_save_copy (FmNotebook *self,
                                const char *path,
                                GCancellable *cancellable,
                                GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmNotebook, fm_notebook_unref)

G_END_DECLS
