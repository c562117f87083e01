/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-db.h - one connection with its cached statements, and transactions on a notebook
 *
 * Internal to the store layer. Pattern of a write:
 *
 *   static gboolean
 *   rename_in (FmDb *db, ..., GError **error)
 *   {
 *     g_autoptr (FmStmt) stmt = fm_db_prepare (db, "UPDATE ... WHERE id = ?2", error);
 *     if (stmt == NULL)
 *       return FALSE;
 *     fm_stmt_bind_text (stmt, 1, name);
 *     fm_stmt_bind_int (stmt, 2, id);
 *     return fm_stmt_run (db, stmt, error);
 *   }
 *
 *   FmDb *db = fm_notebook_begin (self, error);
 *   return db != NULL && fm_notebook_end (self, rename_in (db, ..., error), error);
 *
 * Pattern of a read (statements are declared after the reader, so that they are released first):
 *
 *   g_autoptr (FmReader) db = fm_notebook_reader (self, cancellable, error);
 *   g_autoptr (FmStmt) stmt = db == NULL ? NULL : fm_db_prepare (db, "SELECT ...", error);
 *   while ((row = fm_stmt_step (db, stmt, error)) == FM_ROW) ...
 *
 * One SQL text is one statement: do not run the same text again inside its own loop.
 */
#pragma once

#include <sqlite3.h>

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

typedef struct _FmDb FmDb;
typedef FmDb FmReader;       /* a connection held for reading */
typedef sqlite3_stmt FmStmt; /* belongs to the cache of its connection */

typedef enum {
  FM_ROW,
  FM_DONE,
  FM_FAILED,
} FmStep;

/* Connection */

/** @flags: SQLITE_OPEN_*; sets and checks all pragmas that need no write. */
FmDb *fm_db_open (const char *path, int flags, GError **error);
void fm_db_close (FmDb *self);
sqlite3 *fm_db_handle (FmDb *self);
/** Polled while statements run; they then fail with G_IO_ERROR_CANCELLED. NULL ends that. */
void fm_db_set_cancellable (FmDb *self, GCancellable *cancellable);

/** Runs SQL text without parameters and drops its rows. */
gboolean fm_db_exec (FmDb *self, const char *sql, GError **error);
/** The same on a connection that is no FmDb. */
gboolean fm_db_exec_handle (sqlite3 *handle, const char *sql, GError **error);
/** Runs one statement whose only parameter, ?1, is @id. */
gboolean fm_db_run_with_id (FmDb *self, const char *sql, gint64 id, GError **error);
/** First column of the first row; fails when there is none. */
gboolean fm_db_query_int (FmDb *self, const char *sql, gint64 *value, GError **error);
/** First column of the first row as text, NULL + error when there is none. */
char *fm_db_query_text (FmDb *self, const char *sql, GError **error);

/* Statements */

/** A ready statement, from the cache when @sql was used before. NULL + error. */
FmStmt *fm_db_prepare (FmDb *self, const char *sql, GError **error);
void fm_stmt_bind_int (FmStmt *stmt, int index, gint64 value);
void fm_stmt_bind_double (FmStmt *stmt, int index, double value);    /* NaN = NULL */
void fm_stmt_bind_text (FmStmt *stmt, int index, const char *value); /* copied; NULL = NULL */
void fm_stmt_bind_bytes (FmStmt *stmt, int index, GBytes *value);    /* must outlive the step */
/** Next row. After FM_DONE or FM_FAILED the statement is reset and may be bound and run again. */
FmStep fm_stmt_step (FmDb *db, FmStmt *stmt, GError **error);
/** Steps to the end, dropping rows; TRUE on success. Bindings stay. */
gboolean fm_stmt_run (FmDb *db, FmStmt *stmt, GError **error);
gint64 fm_stmt_int (FmStmt *stmt, int column);    /* NULL = 0 */
double fm_stmt_double (FmStmt *stmt, int column); /* NULL = NaN */
char *fm_stmt_text (FmStmt *stmt, int column);    /* (transfer full) (nullable) */
GBytes *fm_stmt_bytes (FmStmt *stmt, int column); /* (transfer full); NULL = empty */
/** Gives the statement back to the cache. */
void fm_stmt_release (FmStmt *stmt);
gint64 fm_db_last_id (FmDb *self);
/** Rows changed by the last statement. */
int fm_db_changes (FmDb *self);

/* Transactions on a notebook */

/**
 * Locks the writer and begins a transaction (IMMEDIATE). NULL + error when the notebook is read
 * only or the transaction cannot begin; nothing is locked then. Nested calls in one thread are
 * savepoints of the outer transaction, so that many small writes can become one.
 */
FmDb *fm_notebook_begin (FmNotebook *self, GError **error);
/**
 * Ends it: commits when @success, else rolls back; unlocks. A failing commit rolls back, sets
 * @error and returns FALSE. @error is left alone when @success is FALSE.
 */
gboolean fm_notebook_end (FmNotebook *self, gboolean success, GError **error);
/**
 * Locks the reader on one consistent state. Inside a transaction of the same thread it reads what
 * that transaction wrote. Never begin a write while holding it: that write could not be seen.
 */
FmReader *fm_notebook_reader (FmNotebook *self, GCancellable *cancellable, GError **error);
void fm_reader_release (FmReader *reader);

/* Errors */

/** FM_STORE_ERROR for the last failure on @handle, with a sentence for the cook. */
void fm_db_set_error (sqlite3 *handle, GError **error);
/** The same for a result code; @detail (nullable): SQLite's own words, kept at the end. */
void fm_db_set_error_code (int code, const char *detail, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmDb, fm_db_close)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmReader, fm_reader_release)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmStmt, fm_stmt_release)

G_END_DECLS
