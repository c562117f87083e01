/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-copy.c - consistent copies while the notebook is in use */
#include "store/notebook/fm-notebook-private.h"
#include "store/notebook/fm-store-thread.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>

static gboolean
check_nothing_beside (const char *path, GError **error)
{
  static const char *const endings[] = { "-wal", "-journal" };

  for (gsize i = 0; i < G_N_ELEMENTS (endings); i++) {
    g_autofree char *name = fm_notebook_beside (path, endings[i]);
    g_autofree char *shown = g_filename_display_name (name);

    if (!fm_notebook_has_beside (path, endings[i]))
      continue;
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED,
                 _ ("“%s” lies beside that name and belongs to another notebook, so a copy there "
                    "would be damaged. Choose another name, or move it to another folder first."),
                 shown);
    return FALSE;
  }
  return TRUE;
}

/* Replacing a notebook that somebody writes would pull it from under them. */
static gboolean
check_target_is_free (FmNotebook *self, const char *path, GError **error)
{
  g_autofree char *real = realpath (path, NULL);
  g_autoptr (FmNotebookLock) lock = NULL;
  FmFileId id;

  if (real == NULL)
    return check_nothing_beside (path, error);
  if (fm_file_id_read (real, &id) && fm_file_id_equal (id, self->id)) {
    g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_IN_USE,
                         _ ("A notebook cannot be copied onto itself. Choose another name."));
    return FALSE;
  }
  lock = fm_notebook_lock_acquire (real, error);
  return lock != NULL && check_nothing_beside (real, error);
}

/* A connection of its own, held on one state, so that work goes on meanwhile. */
static gboolean
copy_by_name (FmNotebook *self, const char *path, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmDb) db =
      fm_db_open (self->reader_name, SQLITE_OPEN_READONLY | SQLITE_OPEN_URI, error);
  gint64 n_objects;

  return db != NULL && fm_db_exec (db, "BEGIN", error) &&
         fm_db_query_int (db, "SELECT count(*) FROM sqlite_schema", &n_objects, error) &&
         fm_notebook_check_place (self, error) &&
         fm_notebook_copy_db (db, path, cancellable, error);
}

/* What has no name is read through a connection that is open already. */
static gboolean
copy_by_reader (FmNotebook *self, const char *path, GCancellable *cancellable, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);

  return db != NULL && fm_notebook_copy_db (db, path, cancellable, error);
}

gboolean
fm_notebook_save_copy (FmNotebook *self,
                       const char *path,
                       GCancellable *cancellable,
                       GError **error)
{
  fm_store_check_thread ();
  /* First, because a notebook that is lost lets go of what lies beside its name. */
  if (fm_notebook_check_place (self, NULL))
    return check_target_is_free (self, path, error) &&
           copy_by_name (self, path, cancellable, error);
  return check_target_is_free (self, path, error) &&
         copy_by_reader (self, path, cancellable, error);
}
