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
  FM_STORE_ERROR_LOST,    /* deleted, renamed or replaced while it was open */
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
/**
 * Opens a notebook of which some pages are damaged, for reading only: what can be read is shown,
 * and each record that cannot says so. See fm-notebook-recover.h too.
 */
FmNotebook *fm_notebook_open_damaged (const char *path, GCancellable *cancellable, GError **error);
FmNotebook *fm_notebook_ref (FmNotebook *self);
void fm_notebook_unref (FmNotebook *self); /* the last one checkpoints and closes */
const char *fm_notebook_path (FmNotebook *self);
gboolean fm_notebook_is_read_only (FmNotebook *self);
/** What was found beside the file when it was opened and put aside; NULL when nothing was. */
const char *fm_notebook_get_notice (FmNotebook *self);
void fm_notebook_set_notice (FmNotebook *self, const char *notice);

/** Where the file of an open notebook is. */
typedef struct {
  gboolean in_place;
  gboolean is_replaced; /* another file has its name */
  gboolean has_name;    /* FALSE when it was deleted: what it holds ends with this program */
  char *path;           /* where it is now; NULL when that is not known */
} FmNotebookPlace;

/** Looks for the file. Once it has left its name, the notebook can be read and copied only. */
FmNotebookPlace *fm_notebook_find_place (FmNotebook *self);
void fm_notebook_place_free (FmNotebookPlace *place);
/**
 * Closes the file of a lost notebook, so that it can be opened under the name that it has now.
 * From then on this notebook can neither be read nor copied.
 */
void fm_notebook_let_go (FmNotebook *self);
/** What to tell of a notebook that was lost. (transfer full) */
GError *fm_notebook_lost_error (FmNotebook *self);
/** TRUE once it was found, while writing or looking, that the file has left its name. */
gboolean fm_notebook_is_lost (FmNotebook *self);

/**
 * Makes room for a notebook @path that is not there: puts aside what another one has left beside
 * that name, and adds to @notice what was done. IN_USE when a program has it open.
 */
gboolean fm_notebook_clear_name (const char *path, char **notice, GError **error);
/**
 * Consistent copy by the backup interface; replaces @path atomically. Also of a notebook that was
 * lost, and then to the name it had.
 */
gboolean fm_notebook_save_copy (FmNotebook *self,
                                const char *path,
                                GCancellable *cancellable,
                                GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmNotebook, fm_notebook_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmNotebookPlace, fm_notebook_place_free)

G_END_DECLS
