/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-db.c - one connection with its cached statements */
#include "store/notebook/fm-db-private.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "core/base/fm-number.h"
#include "core/base/fm-text-limit.h"

#define BUSY_TIMEOUT_MS 5000
#define VM_STEPS_PER_POLL 2000

/* Settings against files from strangers: none of them may run code through its schema. */
static gboolean
harden (FmDb *self, GError **error)
{
  static const struct {
    int option;
    int value;
  } options[] = {
    { SQLITE_DBCONFIG_DEFENSIVE, 1 },      { SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0 },
    { SQLITE_DBCONFIG_ENABLE_FKEY, 1 },    { SQLITE_DBCONFIG_ENABLE_TRIGGER, 1 },
    { SQLITE_DBCONFIG_ENABLE_VIEW, 0 },    { SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, 0 },
    { SQLITE_DBCONFIG_DQS_DML, 0 },        { SQLITE_DBCONFIG_DQS_DDL, 0 },
    { SQLITE_DBCONFIG_WRITABLE_SCHEMA, 0 }
  };

  for (gsize i = 0; i < G_N_ELEMENTS (options); i++) {
    int now = -1;
    int code = sqlite3_db_config (self->handle, options[i].option, options[i].value, &now);

    if (code != SQLITE_OK || now != options[i].value) {
      fm_db_set_error_code (code != SQLITE_OK ? code : SQLITE_ERROR, NULL, error);
      return FALSE;
    }
  }
  return fm_db_exec (self, "PRAGMA cell_size_check = ON; PRAGMA mmap_size = 0;", error);
}

static void
finalize (gpointer stmt)
{
  sqlite3_finalize (stmt);
}

FmDb *
fm_db_open (const char *path, int flags, GError **error)
{
  g_autoptr (FmDb) self = g_new0 (FmDb, 1);

  self->statements = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, finalize);
  if (sqlite3_open_v2 (path, &self->handle, flags | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE,
                       NULL) != SQLITE_OK) {
    fm_db_set_error (self->handle, error);
    return NULL;
  }
  sqlite3_busy_timeout (self->handle, BUSY_TIMEOUT_MS);
  if (!harden (self, error))
    return NULL;
  return g_steal_pointer (&self);
}

void
fm_db_close (FmDb *self)
{
  if (self == NULL)
    return;
  fm_db_set_cancellable (self, NULL);
  g_clear_pointer (&self->statements, g_hash_table_unref);
  sqlite3_close_v2 (self->handle);
  g_free (self);
}

sqlite3 *
fm_db_handle (FmDb *self)
{
  return self->handle;
}

static int
poll_cancellable (void *data)
{
  FmDb *self = data;

  return g_cancellable_is_cancelled (self->cancellable) ? 1 : 0;
}

void
fm_db_set_cancellable (FmDb *self, GCancellable *cancellable)
{
  if (self->cancellable == cancellable)
    return;
  g_set_object (&self->cancellable, cancellable);
  sqlite3_progress_handler (self->handle, cancellable != NULL ? VM_STEPS_PER_POLL : 0,
                            cancellable != NULL ? poll_cancellable : NULL, self);
}

static void
set_error (FmDb *self, GError **error)
{
  if (sqlite3_errcode (self->handle) == SQLITE_INTERRUPT &&
      g_cancellable_set_error_if_cancelled (self->cancellable, error))
    return;
  fm_db_set_error (self->handle, error);
}

gboolean
fm_db_exec (FmDb *self, const char *sql, GError **error)
{
  if (sqlite3_exec (self->handle, sql, NULL, NULL, NULL) == SQLITE_OK)
    return TRUE;
  set_error (self, error);
  return FALSE;
}

static gboolean
step_first_row (FmDb *self, FmStmt *stmt, GError **error)
{
  FmStep step = fm_stmt_step (self, stmt, error);

  if (step == FM_DONE)
    fm_db_set_error_code (SQLITE_ERROR, NULL, error);
  return step == FM_ROW;
}

gboolean
fm_db_run_with_id (FmDb *self, const char *sql, gint64 id, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (self, sql, error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, id);
  return fm_stmt_run (self, stmt, error);
}

gboolean
fm_db_query_int (FmDb *self, const char *sql, gint64 *value, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (self, sql, error);

  if (stmt == NULL || !step_first_row (self, stmt, error))
    return FALSE;
  *value = fm_stmt_int (stmt, 0);
  return fm_stmt_run (self, stmt, error);
}

char *
fm_db_query_text (FmDb *self, const char *sql, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (self, sql, error);
  g_autofree char *text = NULL;

  if (stmt == NULL || !step_first_row (self, stmt, error))
    return NULL;
  text = fm_stmt_text (stmt, 0);
  /* A pragma that writes is committed after its row, and may only then find the disk full. */
  if (!fm_stmt_run (self, stmt, error))
    return NULL;
  return text != NULL ? g_steal_pointer (&text) : g_strdup ("");
}

FmStmt *
fm_db_prepare (FmDb *self, const char *sql, GError **error)
{
  FmStmt *stmt = g_hash_table_lookup (self->statements, sql);

  if (stmt != NULL)
    return stmt;
  if (sqlite3_prepare_v3 (self->handle, sql, -1, SQLITE_PREPARE_PERSISTENT, &stmt, NULL) !=
      SQLITE_OK) {
    set_error (self, error);
    return NULL;
  }
  g_hash_table_insert (self->statements, g_strdup (sql), stmt);
  return stmt;
}

static void
check_bind (FmStmt *stmt, int code)
{
  if (code != SQLITE_OK)
    g_critical ("Binding to \"%s\" failed: %s", sqlite3_sql (stmt), sqlite3_errstr (code));
}

void
fm_stmt_bind_int (FmStmt *stmt, int index, gint64 value)
{
  check_bind (stmt, sqlite3_bind_int64 (stmt, index, value));
}

void
fm_stmt_bind_double (FmStmt *stmt, int index, double value)
{
  check_bind (stmt, sqlite3_bind_double (stmt, index, value));
}

void
fm_stmt_bind_text (FmStmt *stmt, int index, const char *value)
{
  check_bind (stmt, sqlite3_bind_text (stmt, index, value, -1, SQLITE_TRANSIENT));
}

void
fm_stmt_bind_bytes (FmStmt *stmt, int index, GBytes *value)
{
  gsize size = 0;
  gconstpointer data = value != NULL ? g_bytes_get_data (value, &size) : NULL;

  check_bind (stmt, value != NULL && size == 0
                        ? sqlite3_bind_zeroblob (stmt, index, 0)
                        : sqlite3_bind_blob64 (stmt, index, data, size, SQLITE_STATIC));
}

/* The texts of a formula have limits of their own (fm-formula-json-read.c). */
static gboolean
holds_json (FmStmt *stmt, int column)
{
  return g_str_has_suffix (sqlite3_column_name (stmt, column), "_json");
}

/* A file from a stranger may hold texts that stop a window for good. */
static gboolean
check_texts (FmStmt *stmt, GError **error)
{
  for (int i = 0; i < sqlite3_column_count (stmt); i++) {
    if (sqlite3_column_type (stmt, i) != SQLITE_TEXT)
      continue;
    const char *text = (const char *)sqlite3_column_text (stmt, i);
    if (text == NULL || holds_json (stmt, i) ||
        fm_text_fits (text, (gsize)sqlite3_column_bytes (stmt, i)))
      continue;

    g_autofree char *bytes = fm_number_format (FM_TEXT_MAX_BYTES, 0);
    g_autofree char *lines = fm_number_format (FM_TEXT_MAX_LINES, 0);
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
                 /* TRANSLATORS: Both are numbers. */
                 _ ("A text in this notebook has more than %s characters or %s lines, so it is not "
                    "shown. Forcemeat does not write such texts."),
                 bytes, lines);
    return FALSE;
  }
  return TRUE;
}

FmStep
fm_stmt_step (FmDb *db, FmStmt *stmt, GError **error)
{
  int code = sqlite3_step (stmt);

  if (code == SQLITE_ROW && check_texts (stmt, error))
    return FM_ROW;
  if (code == SQLITE_ROW) {
    sqlite3_reset (stmt);
    return FM_FAILED;
  }
  if (code != SQLITE_DONE)
    set_error (db, error);
  sqlite3_reset (stmt);
  return code == SQLITE_DONE ? FM_DONE : FM_FAILED;
}

gboolean
fm_stmt_run (FmDb *db, FmStmt *stmt, GError **error)
{
  FmStep step;

  do
    step = fm_stmt_step (db, stmt, error);
  while (step == FM_ROW);
  return step == FM_DONE;
}

gint64
fm_stmt_int (FmStmt *stmt, int column)
{
  return sqlite3_column_int64 (stmt, column);
}

double
fm_stmt_double (FmStmt *stmt, int column)
{
  return sqlite3_column_type (stmt, column) == SQLITE_NULL ? (double)NAN
                                                           : sqlite3_column_double (stmt, column);
}

char *
fm_stmt_text (FmStmt *stmt, int column)
{
  const char *text = (const char *)sqlite3_column_text (stmt, column);

  /* A file from a stranger may hold any bytes; the rest of the program relies on UTF-8. */
  return text == NULL ? NULL : g_utf8_make_valid (text, -1);
}

GBytes *
fm_stmt_bytes (FmStmt *stmt, int column)
{
  gconstpointer data = sqlite3_column_blob (stmt, column);

  return g_bytes_new (data, (gsize)sqlite3_column_bytes (stmt, column));
}

void
fm_stmt_release (FmStmt *stmt)
{
  sqlite3_reset (stmt);
  sqlite3_clear_bindings (stmt);
}

gint64
fm_db_last_id (FmDb *self)
{
  return sqlite3_last_insert_rowid (self->handle);
}

int
fm_db_changes (FmDb *self)
{
  return sqlite3_changes (self->handle);
}
