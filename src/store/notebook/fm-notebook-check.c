/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-notebook-check.c - is this file ours, whole, and free of strange parts? */
#include "store/notebook/fm-notebook-private.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "store/notebook/fm-schema.h"

static gboolean
set_not_a_notebook (GError **error)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_A_NOTEBOOK,
                       _ ("This is not a Forcemeat notebook, or its beginning is damaged. Choose "
                          "another file, or a backup or saved copy of this one."));
  return FALSE;
}

static gboolean
set_unreadable (const char *path, int saved_errno, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);
  gboolean missing = saved_errno == ENOENT || saved_errno == ENOTDIR;

  g_set_error (error, FM_STORE_ERROR,
               missing ? FM_STORE_ERROR_NOT_FOUND : FM_STORE_ERROR_NO_PERMISSION,
               missing ? _ ("There is no notebook “%s”. It may have been moved or renamed.")
                       : _ ("“%s” may not be read. Check the permissions of the file."),
               shown);
  return FALSE;
}

gboolean
fm_notebook_check_file (const char *path, GError **error)
{
  struct stat info;

  if (stat (path, &info) != 0)
    return set_unreadable (path, errno, error);
  if (!S_ISREG (info.st_mode))
    return set_not_a_notebook (error);
  if (access (path, R_OK) != 0)
    return set_unreadable (path, errno, error);
  return TRUE;
}

static gboolean
check_identity (FmDb *db, int *version, GError **error)
{
  gint64 application_id, user_version;

  if (!fm_db_query_int (db, "PRAGMA application_id", &application_id, error) ||
      !fm_db_query_int (db, "PRAGMA user_version", &user_version, error))
    return FALSE;
  if (application_id != FM_NOTEBOOK_APPLICATION_ID)
    return set_not_a_notebook (error);
  if (user_version > fm_schema_version ()) {
    g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NEWER,
                         _ ("This notebook was written by a newer Forcemeat. It was left as it is. "
                            "Update Forcemeat to open it."));
    return FALSE;
  }
  if (user_version < 1) {
    fm_db_set_error_code (SQLITE_CORRUPT, "user_version", error);
    return FALSE;
  }
  *version = (int)user_version;
  return TRUE;
}

static gboolean
check_pages (FmDb *db, GError **error)
{
  g_autofree char *verdict = fm_db_query_text (db, "PRAGMA quick_check(1)", error);
  const char *finding;

  if (verdict == NULL)
    return FALSE;
  if (g_strcmp0 (verdict, "ok") == 0)
    return TRUE;
  /* The finding is the last line, after a heading. */
  finding = strrchr (verdict, '\n');
  fm_db_set_error_code (SQLITE_CORRUPT, finding != NULL ? finding + 1 : verdict, error);
  return FALSE;
}

gboolean
fm_notebook_check_tables (FmDb *db, int *version, GError **error)
{
  return check_identity (db, version, error) &&
         fm_schema_check (fm_db_handle (db), *version, error);
}

gboolean
fm_notebook_check (FmDb *db, GCancellable *cancellable, int *version, GError **error)
{
  gboolean ok;

  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return FALSE;
  fm_db_set_cancellable (db, cancellable);
  ok = fm_notebook_check_tables (db, version, error) && check_pages (db, error);
  fm_db_set_cancellable (db, NULL);
  return ok;
}
