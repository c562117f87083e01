/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-db-error.c - what a failure of SQLite means to a cook */
#include "store/notebook/fm-db.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#include "store/notebook/fm-schema-v2.h"

GQuark
fm_store_error_quark (void)
{
  return g_quark_from_static_string ("fm-store-error-quark");
}

typedef struct {
  int code; /* primary result code */
  FmStoreError error;
  const char *message;
} Meaning;

static const Meaning meanings[] = {
  { SQLITE_FULL, FM_STORE_ERROR_DISK_FULL,
    N_ ("The disk is full, so nothing was changed. Free some space and try again.") },
  { SQLITE_READONLY, FM_STORE_ERROR_NO_PERMISSION,
    N_ ("The notebook may not be written. Save a copy elsewhere, or ask for permission.") },
  { SQLITE_PERM, FM_STORE_ERROR_NO_PERMISSION,
    N_ ("The notebook may not be used. Check the permissions of the file.") },
  { SQLITE_CANTOPEN, FM_STORE_ERROR_NO_PERMISSION,
    N_ ("The file or its folder cannot be opened. Check that it exists and its permissions.") },
  { SQLITE_AUTH, FM_STORE_ERROR_NO_PERMISSION,
    N_ ("The notebook may not be used. Check the permissions of the file.") },
  { SQLITE_BUSY, FM_STORE_ERROR_IN_USE,
    N_ ("Another program is using the notebook. Close it there and try again.") },
  { SQLITE_LOCKED, FM_STORE_ERROR_IN_USE,
    N_ ("Another program is using the notebook. Close it there and try again.") },
  { SQLITE_CORRUPT, FM_STORE_ERROR_DAMAGED,
    N_ ("The notebook is damaged. Leave it as it is, and open a backup or a saved copy.") },
  { SQLITE_NOTADB, FM_STORE_ERROR_NOT_A_NOTEBOOK,
    N_ ("This is not a Forcemeat notebook. Choose another file.") },
  { SQLITE_IOERR, FM_STORE_ERROR_FAILED,
    N_ ("The disk could not be read or written. Check the disk, then try again.") },
};

/* What a trigger says, and what it means; the last one stands for ON DELETE RESTRICT. */
static const struct {
  const char *said;
  const char *message;
} refusals[] = {
  { "a saved version cannot change",
    N_ ("A saved version cannot change. Edit the draft and save it as the next version.") },
  { FM_SCHEMA_V2_SEALED,
    N_ ("The codes of this tasting are given out, so its plan cannot change any more. Plan another "
        "tasting.") },
  { FM_SCHEMA_V2_BACK,
    N_ ("A tasting that was arranged or opened cannot go back. Plan another tasting.") },
  { FM_SCHEMA_V2_RECORD,
    N_ ("What was recorded of this tasting cannot change. Load the tasting again.") },
  { FM_SCHEMA_V2_OUTCOME,
    N_ ("This tasting is sealed, so it has no outcome yet. Open the tasting first.") },
  { FM_SCHEMA_V2_CODE,
    N_ ("Two samples of this tasting have the same code. Arrange the samples again.") },
  { "FOREIGN KEY constraint failed",
    N_ ("Something else in the notebook still uses this, so it cannot be removed.") },
};

static const char *
refusal (const char *said)
{
  for (gsize i = 0; said != NULL && i < G_N_ELEMENTS (refusals); i++) {
    if (strcmp (refusals[i].said, said) == 0)
      return _ (refusals[i].message);
  }
  return _ ("The notebook refused that change. Nothing was changed.");
}

static const Meaning *
find_meaning (int code)
{
  for (gsize i = 0; i < G_N_ELEMENTS (meanings); i++) {
    if (meanings[i].code == (code & 0xff))
      return &meanings[i];
  }
  return NULL;
}

void
fm_db_set_error_code (int code, const char *detail, GError **error)
{
  const Meaning *meaning = find_meaning (code);
  /* SQLite quotes names out of the file, whatever bytes they have. */
  g_autofree char *shown = g_utf8_make_valid (detail != NULL ? detail : sqlite3_errstr (code), -1);

  if (code == SQLITE_CONSTRAINT_TRIGGER) {
    g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_FROZEN, refusal (detail));
    return;
  }
  g_set_error (error, FM_STORE_ERROR, meaning != NULL ? (int)meaning->error : FM_STORE_ERROR_FAILED,
               "%s (%s)",
               meaning != NULL ? _ (meaning->message)
                               : _ ("The notebook could not do that. Nothing was changed."),
               shown);
}

void
fm_db_set_error (sqlite3 *handle, GError **error)
{
  int code = sqlite3_extended_errcode (handle);
  int system_errno = sqlite3_system_errno (handle);

  /* The shared memory beside a WAL reports a full disk as a plain I/O error. */
  if ((code & 0xff) == SQLITE_IOERR && (system_errno == ENOSPC || system_errno == EDQUOT))
    code = SQLITE_FULL;
  fm_db_set_error_code (code, sqlite3_errmsg (handle), error);
}

gboolean
fm_db_exec_handle (sqlite3 *handle, const char *sql, GError **error)
{
  if (sqlite3_exec (handle, sql, NULL, NULL, NULL) == SQLITE_OK)
    return TRUE;
  fm_db_set_error (handle, error);
  return FALSE;
}
